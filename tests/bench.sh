#!/usr/bin/env bash
# Measures everything on this machine in one run and prints one table; nothing is asserted. Needs what tests/all.sh brings; without
# the Python of tests/all.sh the peers are left out, and said to be. tests/bench/speed.rs has more of the core's single stages.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
target="${CARGO_TARGET_DIR:-target}"
lines="$target/bench.tsv"
: >"$lines"

# took COMMAND...: its lines of name and figure, with the command behind them.
took() {
  "$@" | awk -F'\t' -v command="$(printf '%s' "$*" | sed "s#$target/#target/#g")" 'NF == 2 { print $1 "\t" $2 "\t" command }' >>"$lines"
}

cargo build --locked --quiet
"$target/debug/dicrotic" build --out "$target/bench-page" >/dev/null
took cargo bench --locked --quiet --bench figures
if [ "${1:-}" != quick ]; then took cargo bench --locked --quiet --bench grade; fi
took node tests/bench/node.mjs "$target/bench-page"
took node tests/browser/speed.mjs
python="${DICROTIC_PYTHON:-$target/venv/bin/python}"
if [ -x "$python" ]; then
  took "$python" tests/bench/peers.py
else
  printf 'scipy, neurokit2\tnot measured: no %s\t-\n' "target/venv" >>"$lines"
fi

echo "$(date -u +%F); $(uname -sm), $(sed -nE 's/^model name[^:]*: //p' /proc/cpuinfo | head -1), $(nproc) cores, load at the end $(cut -d' ' -f1 /proc/loadavg); $(rustc --version | cut -d' ' -f1-2)"
echo
echo "| what | figure | command |"
echo "|---|---|---|"
awk -F'\t' '{ print "| " $1 " | " $2 " | `" $3 "` |" }' "$lines"
