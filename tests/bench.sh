#!/usr/bin/env bash
# Measures everything on this machine in one run, ours and the peers in turn, and prints one table; nothing is asserted on time.
#   bash tests/bench.sh [--quick] [--simd] [--long] [--write]
# --quick  leaves out grading, load times and memory
# --simd   also builds the page's core with wasm's 128-bit vectors, which takes a minute or two the first time
# --long   also kills a browser 100 times, compares 10^7 samples of each scenario, leaves the page open for ten minutes and
#          fuzzes each target for an hour: a day, all in all, with thirteen targets
# --write  puts the table between the two marks in tests/bench/FIGURES.md; implies --simd
# Needs what tests/all.sh brings. The peers come with pip and npm; what cannot be had is said in the table.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
target="${CARGO_TARGET_DIR:-target}"
# The python that measures and the programs that it reads after must agree where that is.
case "$target" in /*) ;; *) target="$PWD/$target" ;; esac
export CARGO_TARGET_DIR="$target"
lines="$target/bench.tsv"
quick=no simd=no long=no write=no
for option in "$@"; do
  case "$option" in
    --quick) quick=yes ;;
    --simd) simd=yes ;;
    --long) long=yes ;;
    --write) write=yes simd=yes ;;
    *) echo "no option $option; there are --quick, --simd, --long, --write" >&2; exit 2 ;;
  esac
done
mkdir -p "$target"
: >"$lines"
began=$SECONDS

# took COMMAND...: its lines of name and figure, with the command behind them; the rest of what it says goes by.
took() {
  echo "$(printf '%5d s  ' $((SECONDS - began)))$*" | sed "s#$target/#target/#g" >&2
  local shown
  shown="$(printf '%s' "$*" | sed "s#$target/#target/#g; s# --locked --quiet##")"
  # Straight into the file: peers.py reads what was measured before it.
  "$@" | awk -F'\t' -v command="$shown" 'NF == 2 { print $1 "\t" $2 "\t" command; fflush() }' >>"$lines"
}

said() { printf '%s\t%s\t-\n' "$1" "$2" >>"$lines"; }

# Pinned versions; where one cannot be had the others are tried one by one, and peers.py says which are missing.
peers() {
  local venv="$target/bench-venv" one
  cmp -s tests/bench/peers.txt "$venv/installed.txt" && return 0
  rm -rf "$venv"
  python3 -m venv "$venv" || return 1
  if "$venv/bin/pip" install --quiet --only-binary=:all: -r tests/bench/peers.txt; then
    cp tests/bench/peers.txt "$venv/installed.txt"
    return 0
  fi
  for one in numpy scipy neurokit2 biosppy peakutils heartpy; do
    "$venv/bin/pip" install --quiet --only-binary=:all: "$(grep -i "^$one==" tests/bench/peers.txt)" || true
  done
  [ -d "$venv"/lib/python3*/site-packages/scipy ]
}

# --- what is measured ---

cargo build --locked --quiet
cargo bench --locked --quiet --no-run --bench figures --bench grade
host="$target/debug/dicrotic"
"$host" build --out "$target/bench-page" >/dev/null
pages=("$target/bench-page")
if [ "$simd" = yes ]; then
  CARGO_TARGET_DIR="$target/bench-simd" CARGO="$PWD/tests/bench/simd.sh" "$host" build --out "$target/bench-simd-page" >/dev/null
  pages+=("$target/bench-simd-page")
fi
cmp -s tests/browser/package-lock.json tests/browser/node_modules/.installed ||
  (cd tests/browser && npm ci && cp package-lock.json node_modules/.installed) >&2

took cargo bench --locked --quiet --bench figures
if peers >&2; then
  took "$target/bench-venv/bin/python" tests/bench/peers.py
else
  said "scipy, NeuroKit2, BioSPPy, HeartPy" "not measured: they could not be installed"
fi
took node tests/bench/engines.mjs "${pages[@]}"
if [ -d tests/browser/node_modules/uplot ]; then
  took node tests/bench/strip.mjs
else
  said "uPlot" "not measured: it could not be installed"
fi
if [ "$quick" = no ]; then
  took cargo bench --locked --quiet --bench grade
  took node tests/browser/speed.mjs
  took node tests/bench/soak.mjs "$([ "$long" = yes ] && echo 10 || echo 1)"
fi
if [ "$long" = yes ]; then
  took node tests/browser/kill.mjs 100
  took bash tests/bench/bits.sh 10000000
  echo "fuzzing" >&2
  if cargo +nightly fuzz --version >/dev/null 2>&1; then
    bash tests/fuzz/run.sh 3600 | awk '{ name = $1; $1 = ""; print "fuzzing " name "\t" $0 "\tbash tests/fuzz/run.sh 3600" }' >>"$lines"
  else
    said "fuzzing" "not done: no cargo-fuzz"
  fi
fi

# --- the table ---

# The page's server, the peers and the benches are gone by now: the load is that of the run itself and of whatever else went on.
machine="$(sed -nE 's/^model name[^:]*: //p' /proc/cpuinfo | head -1)"
table="$(
  echo "$(date -u +%F), commit $(git rev-parse --short HEAD 2>/dev/null || echo unknown); $(uname -sm), ${machine:-unknown processor}, $(nproc) cores, load average at the end $(cut -d' ' -f1 /proc/loadavg); $(rustc --version | cut -d' ' -f1-2). Medians of several runs where nothing else is said."
  echo
  echo "| what | figure | command |"
  echo "|---|---|---|"
  awk -F'\t' '{ print "| " $1 " | " $2 " | `" $3 "` |" }' "$lines"
)"
printf '%s\n' "$table"
if [ "$write" = yes ]; then
  printf '%s\n' "$table" >"$target/bench.md"
  awk -v table="$target/bench.md" '
    /^<!-- figures: / { print; print ""; while ((getline line < table) > 0) print line; print ""; inside = 1; marks++; next }
    /^<!-- end of the figures -->$/ { inside = 0; marks++ }
    !inside
    END { if (marks != 2) exit 1 }' tests/bench/FIGURES.md >"$target/figures.md" ||
    { echo "tests/bench/FIGURES.md: the two marks of the figures are not there" >&2; exit 1; }
  cp "$target/figures.md" tests/bench/FIGURES.md
fi
echo "all measured in $((SECONDS - began)) s" >&2
