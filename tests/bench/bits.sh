#!/usr/bin/env bash
# The same bits natively and as WebAssembly in node and in Chromium: SHA-256 of so many samples of every scenario, each way.
#   bash tests/bench/bits.sh [SAMPLES] [SEED]     a shorter one is among the tests: tests/browser/same_bits.test.mjs
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
samples="${1:-1000000}"
seed="${2:-1}"
target="${CARGO_TARGET_DIR:-target}"
cargo build --locked --quiet
page="$target/bits-page"
rm -rf "$page"
"$target/debug/dicrotic" build --out "$page" >/dev/null
program="${DICROTIC_HOST:-$target/debug/dicrotic}"
node tests/bench/bits.mjs "$page" "$program" "$samples" "$seed"
