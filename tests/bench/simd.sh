#!/bin/sh
# Stands in for cargo, so that `dicrotic build` makes the page's core with wasm's 128-bit vectors; see tests/bench.sh.
CARGO_ENCODED_RUSTFLAGS="-Ctarget-feature=+simd128" exec cargo "$@"
