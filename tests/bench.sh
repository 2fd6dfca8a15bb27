#!/usr/bin/env bash
# Prints how fast things are on this machine; nothing is asserted. Needs what tests/all.sh brings.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
cargo bench --locked --bench speed
cargo bench --locked --bench grade
cargo build --locked
node tests/browser/speed.mjs
