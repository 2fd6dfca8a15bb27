"""Our heart rate against that of other people's libraries, on the same samples, and against the simulator's truth.

The tolerance is 1 beat/min on the mean rate of at least 20 s: with 60 beats or fewer, one beat missed or made up by
either side shows. On a simulated trace the truth is known: a library that is itself further than that from the truth
says nothing about ours. Such slips of theirs are counted, printed and few.
"""

import argparse
import os
from pathlib import Path

import numpy as np

from reference import (
    ROOT,
    TARGET,
    WORK,
    Checks,
    detected,
    dicrotic,
    matched_share,
    mean_rate,
    median_rate,
    neurokit_beats,
    read_numbers,
    read_trace,
    scipy_beats,
    write_trace,
)

TOLERANCE = 1.0  # beats/min
SEEDS = (1, 2, 3)
SECONDS = 60
EDGE_S = 3.0  # filters settle at both ends
# Common practice: a finder of peaks with fixed thresholds fails on the odd good trace. One comparison in ten may fall out.
SLIPS_AT_MOST = 0.1

checks = Checks("heart rate")
slips = []
compared = 0


def same_rate(what, ours, others, start_s, end_s):
    rate = mean_rate(ours, start_s, end_s)
    for name, beats in others.items():
        other = mean_rate(beats, start_s, end_s)
        checks.check(abs(rate - other) <= TOLERANCE, f"{what}: ours {rate:.2f}, {name} {other:.2f} beats/min")


def simulated(scenario, seed):
    """A rendered strip: the simulator's own beats are the truth."""
    WORK.mkdir(parents=True, exist_ok=True)
    strip, truth_file = WORK / f"{scenario.stem}-{seed}.csv", WORK / f"{scenario.stem}-{seed}.truth"
    dicrotic("render", scenario, "--seed", seed, "--seconds", SECONDS, "--out", strip, "--truth", truth_file)
    times, values = read_trace(strip)
    rate_hz = round(1.0 / float(np.median(np.diff(times))))
    checks.check(len(times) == SECONDS * rate_hz, f"{strip}: {len(times)} samples at {rate_hz} Hz")
    truth = read_numbers(truth_file.read_text(encoding="utf-8"), truth_file)
    ours = detected(strip)
    what = f"{scenario.name}, seed {seed}"
    window = (EDGE_S, SECONDS - EDGE_S)
    same_rate(what, ours, {"truth": truth}, *window)
    true_rate = mean_rate(truth, *window)
    for name, beats in {"NeuroKit2": neurokit_beats(values, rate_hz), "scipy": scipy_beats(values, rate_hz)}.items():
        global compared
        compared += 1
        found = mean_rate(beats, *window)
        if abs(found - true_rate) > TOLERANCE:
            slips.append(f"{what}: {name} {found:.2f}, truth {true_rate:.2f} beats/min")
        else:
            same_rate(what, ours, {name: beats}, *window)
    share = matched_share(ours, truth)
    checks.check(share >= 0.97, f"{what}: F1 against the truth {share:.3f}")


def recorded(name, values, rate_hz, start_s, end_s, others=("NeuroKit2", "scipy")):
    """A recording of a real finger at an even rate. Its beats in s by our detector."""
    strip = WORK / f"{name}.csv"
    write_trace(strip, values, rate_hz)
    ours = detected(strip)
    finders = {"NeuroKit2": neurokit_beats, "scipy": scipy_beats}
    same_rate(name, ours, {key: finders[key](values, rate_hz) for key in others}, start_s, end_s)
    return ours


def package_recordings():
    """The two recordings that the HeartPy package (van Gent et al., MIT licence) carries."""
    folder = TARGET / "heartpy" / "heartpy" / "data"
    values = np.loadtxt(folder / "data.csv")
    ours = recorded("package-1", values, 100, 0.0, len(values) / 100)
    # Counted by eye on a plot of the file: 24 tall peaks from .6 to 24.1 s, each followed by a dicrotic wave of a
    # third of its height.
    inside = ours[(ours > 0.2) & (ours < 24.6)]
    checks.check(len(inside) == 24, f"package-1: {len(inside)} beats, 24 by eye")
    # Its timer steps by 8.547903 ms. Only from 85 to 100 s does the sensor sit still.
    table = np.loadtxt(folder / "data2.csv", delimiter=",", skiprows=1)
    recorded("package-2", table[:, 1], 1000.0 / 8.547903, 85.0, 100.0, others=("NeuroKit2",))


def folder_recordings(folder):
    """The open recordings beside the project, where they are; see the README there."""
    table = np.genfromtxt(folder / "neurokit_rest5min/rest5min_100hz.csv", delimiter=",", names=True)
    ours = recorded("rest-5-min", table["PPG"], 100, 0.0, 60.0)
    hearts = np.loadtxt(folder / "neurokit_rest5min/rest5min_100hz.ecgbeats.csv")
    share = matched_share(ours, hearts)
    checks.check(share >= 0.97, f"rest-5-min: F1 against the ECG {share:.3f}")

    recorded("short", np.loadtxt(folder / "biosppy_ppg/ppg.txt"), 1000, 1.0, 19.0)

    # Finger on a phone's camera, frames at uneven times, with a chest strap (Neshitov et al., Sensors 2021, 21,
    # 6798). Some are spoilt by movement: we must be near the strap at least as often as NeuroKit2 is.
    near = {"ours": 0, "NeuroKit2": 0}
    files = sorted((folder / "welltory").glob("subject_*_ppg.csv"))
    checks.check(len(files) == 21, f"welltory: {len(files)} recordings, 21 expected")
    for file in files:
        frames = np.loadtxt(file, delimiter=",", skiprows=1)
        seconds = frames[:, 0] / 1000.0
        even = np.interp(np.arange(0.0, seconds[-1], 0.02), seconds, frames[:, 1])
        strip = WORK / f"{file.stem}.csv"
        write_trace(strip, even, 50)
        intervals = np.loadtxt(file.with_name(file.name.replace("_ppg.csv", "_rr.txt")))
        strap = 60_000.0 / float(np.median(intervals))
        for name, beats in {"ours": detected(strip), "NeuroKit2": neurokit_beats(even, 50)}.items():
            near[name] += abs(median_rate(beats, EDGE_S, seconds[-1] - EDGE_S) - strap) <= 3.0
    checks.check(near["ours"] >= near["NeuroKit2"], f"welltory: within 3 beats/min of the strap {near}")


parser = argparse.ArgumentParser(description=__doc__)
parser.add_argument("scenario", nargs="*", type=Path, help="scenarios whose bench gives a good strip as it stands")
scenarios = parser.parse_args().scenario or sorted((ROOT / "tests/reference/scenarios").glob("*.toml"))
checks.check(bool(scenarios), "no scenario to render")
for one in scenarios:
    for number in SEEDS:
        simulated(one, number)
for slip in slips:
    print(f"a library's own slip: {slip}")
checks.check(len(slips) <= SLIPS_AT_MOST * compared, f"{len(slips)} of {compared} comparisons fell out")
package_recordings()
recordings = Path(os.environ.get("DICROTIC_RECORDINGS", ROOT.parent / "shared" / "data"))
if recordings.is_dir():
    folder_recordings(recordings)
else:
    print(f"left out: the open recordings, because there is no folder {recordings}")
checks.finish()
