#!/usr/bin/env bash
# Fuzzes one target after the other, each for so long (60 s) or for ten million runs, whichever is over first, and prints a
# line for each: bash tests/fuzz/run.sh [SECONDS] [TARGET...]
# Needs a nightly compiler and cargo-fuzz (cargo install cargo-fuzz). What is found lies in tests/fuzz/artifacts, what was
# learned in tests/fuzz/corpus; both stay on the machine. A found case becomes a test in tests/found.rs.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
seconds="${1:-60}"
shift || true
targets=("$@")
[ "${#targets[@]}" -gt 0 ] || targets=(scenario link code result saved csv edf wfdb sheet roster class course formula)
seeds="${CARGO_TARGET_DIR:-target}/fuzz-seeds"
cargo run --quiet --locked --example fuzz_seeds -- "$seeds"
failed=0
for target in "${targets[@]}"; do
  mkdir -p "tests/fuzz/corpus/$target"
  log="$seeds/$target.log"
  # No address sanitizer: the core forbids unsafe code. Arithmetic that overflows is found: debug assertions are on.
  words=()
  [ ! -f "tests/fuzz/dictionaries/$target.dict" ] || words=("-dict=tests/fuzz/dictionaries/$target.dict")
  # Tables and records say all they have to say in few bytes, and short ones are read faster; limits on length have tests.
  most=70000
  case "$target" in csv | edf | wfdb) most=6000 ;; esac
  code=0
  began=$SECONDS
  cargo +nightly fuzz run --fuzz-dir tests/fuzz --sanitizer none -a "$target" "tests/fuzz/corpus/$target" "$seeds/$target" -- \
    -runs=10000000 -max_total_time="$seconds" -timeout=10 -rss_limit_mb=1024 -max_len="$most" -print_final_stats=1 "${words[@]}" >"$log" 2>&1 || code=$?
  runs=$(sed -nE 's/^stat::number_of_executed_units: *([0-9]+)/\1/p' "$log" | tail -1)
  peak=$(sed -nE 's/^stat::peak_rss_mb: *([0-9]+)/\1/p' "$log" | tail -1)
  printf '%-10s %12s runs  %5s s  %5s MB  %s\n' "$target" "${runs:-?}" $((SECONDS - began)) "${peak:-?}" "$([ "$code" -eq 0 ] && echo clean || echo "FOUND (see $log)")"
  [ "$code" -eq 0 ] || failed=1
done
exit "$failed"
