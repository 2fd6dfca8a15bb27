// What the core as WebAssembly makes, in whatever engine runs this: the bench with its live trace, as tests/bench/figures does it.

/** Samples a second, in millions, for each number of samples: medians. `core` is the loaded module. */
export function chainSpeeds(core, toml, sizes) {
  const lab = new core.Lab(toml, "1");
  const speeds = sizes.map((samples) => {
    const took = [];
    // A browser's clock steps by a tenth of a millisecond: short runs are timed ten at a time.
    const times = samples < 1e5 ? 10 : 1;
    for (let run = -1; run < (samples < 1e6 ? 51 : 9); run += 1) {
      const began = performance.now();
      for (let k = 0; k < (times * samples) / 250; k += 1) lab.advance(0.25);
      if (run >= 0) took.push(performance.now() - began);
    }
    took.sort((a, b) => a - b);
    return (times * samples) / took[took.length >> 1] / 1e3;
  });
  lab.free();
  return speeds;
}
