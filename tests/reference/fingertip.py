#!/usr/bin/env python3
"""Scores one's own pulse on recordings of real fingertips, and on the same made worse, and prints a table; asserts
nothing, as the recordings are not part of the project.

    fingertip.py DATA COMMAND...     e.g.  fingertip.py DATA target/release/dicrotic camera

DATA holds fingertip_camera/ (subjectN_left.csv, subjectN_right.csv: t_s,red,green,blue; subjectN_rate.csv: t_s,bpm of
pulse meters on other fingers; Hoffman et al. 2022, npj Digital Medicine, s41746-022-00665-y) and welltory/ (Neshitov et
al. 2021, Sensors 21:6798: colors of a phone's camera and the intervals of a chest strap); either may be missing. COMMAND
gets the name of a CSV file as its last argument and prints a line a window, with --beats the beats. Needs numpy. Where
DATA is missing it says so and ends with status 2.

Meters average over seconds and were started by hand: of each recording one delay counts, the one with the smallest
error. Each row is one person's, so that a bound that suits one person alone would show. What is made worse is compared
with the rate of the untouched window, where that lies within 3/min of the meter.
"""
import glob
import os
import subprocess
import sys
import tempfile

import numpy as np

WINDOW_S = 10
FAR = 5


def run(command, t, colors, *more):
    with tempfile.NamedTemporaryFile("w", suffix=".csv", delete=False) as file:
        file.write("t_s,red,green,blue\n")
        np.savetxt(file, np.c_[t, np.clip(colors, 0, 255)], delimiter=",", fmt=["%.4f"] + 3 * ["%.3f"])
    try:
        done = subprocess.run([*command, *more, file.name], capture_output=True, text=True)
    finally:
        os.unlink(file.name)
    if done.returncode:
        sys.exit(done.stderr)
    return done.stdout


def windows(command, t, colors):
    """Beginning and rate of each window, NaN where it was refused, and the reasons."""
    rows = [line.split(",") for line in run(command, t, colors).splitlines()]
    rates = np.array([float(row[2]) if len(row) == 3 else np.nan for row in rows])
    return np.array([float(row[0]) for row in rows]), rates, [row[3] for row in rows if len(row) == 4]


def read(path, scale=1.0):
    table = np.genfromtxt(path, delimiter=",", skip_header=1)
    t, first = np.unique(table[:, 0] * scale, return_index=True)
    return t, table[first, 1:4]


def aligned(starts, rates, meter_t, meter):
    """The meter's mean over each window, at the delay with the smallest error."""
    best = (np.inf, 0, None)
    for delay in range(-15, 16):
        mean = np.array([meter[(meter_t >= s + delay) & (meter_t < s + delay + WINDOW_S)].mean()
                         if np.any((meter_t >= s + delay) & (meter_t < s + delay + WINDOW_S)) else np.nan for s in starts])
        error = np.nanmean(np.minimum(np.abs(mean - rates), 8))
        if error < best[0]:
            best = (error, delay, mean)
    return best[1], best[2]


def row(name, accepted, errors, reasons, more=""):
    """Accepted windows, and how far those are off of which the truth is known."""
    known = errors[np.isfinite(errors)]
    told = ", ".join(f"{why} {reasons.count(why)}" for why in sorted(set(reasons)))
    mean, far = (f"{known.mean():9.2f}", f"{100 * np.mean(known > FAR):9.2f}") if len(known) else (f"{'':9}",) * 2
    print(f"{name:24}{len(accepted):8}{100 * np.mean(accepted):10.1f}{mean}{far}  {more}{told}")


def heading(title):
    print(f"\n{title}\n{'':24}{'windows':>8}{'told %':>10}{'mean off':>9}{'off>5 %':>9}  refused")


def band(n, rate_hz, low, high, slope, random):
    """Noise between two frequencies, of size 1."""
    hz = np.fft.rfftfreq(n, 1 / rate_hz)
    shape = np.where((hz >= low) & (hz <= high), 1 / np.maximum(hz, low) ** slope, 0)
    x = np.fft.irfft(np.fft.rfft(random.normal(size=n)) * shape, n)
    return x / x.std()


def smooth(x, count):
    padded = np.pad(x, ((count, count), (0, 0)), mode="edge")
    sums = np.cumsum(np.vstack([np.zeros(x.shape[1]), padded]), axis=0)
    return ((sums[2 * count + 1:] - sums[:-2 * count - 1]) / (2 * count + 1))[:len(x)]


def worse(t, c, random):
    """Name, times and colors of the same recording made worse, and of what holds no pulse."""
    n, rate_hz = len(t), (len(t) - 1) / (t[-1] - t[0])
    mean, level = c.mean(axis=0), smooth(c, int(0.6 * rate_hz))
    # Usual size of the pulse: of three seconds the standard deviation about the level, the median of all.
    parts = [(c - level)[i:i + 90].std(axis=0) for i in range(0, n - 90, 90)]
    size = np.median(parts, axis=0)
    share = np.max(np.where(mean > 5, size / np.maximum(mean, 1), 0))
    white = lambda a: c + np.where(mean > 2, a * size.max(), 0) * random.normal(size=c.shape)
    moved = lambda a, x, gain=(1, 1.1, 0.9): c * (1 + np.outer(a * share * x, gain))
    slow, inside = lambda: band(n, rate_hz, 0.2, 4, 1, random), lambda: band(n, rate_hz, 0.6, 3, 0, random)
    for a in (0.3, 1.0, 1.6):
        yield f"noise, {a} of the pulse", t, white(a), True
    for a in (0.5, 1.0, 2.0):
        yield f"movement, {a}", t, moved(a, slow()), True
        yield f"in the band, {a}", t, moved(a, inside()), True
    bursts, at = np.zeros(n), t[0]
    while at < t[-1]:
        length = random.uniform(0.5, 3)
        bursts[(t >= at) & (t < at + length)] = 1
        at += length + random.uniform(2, 9)
    yield "bursts", t, moved(6, bursts * band(n, rate_hz, 0.3, 6, 1, random)), True
    yield "drift", t, moved(6, np.sin(2 * np.pi * np.cumsum(random.uniform(0.1, 0.4, n)) / rate_hz)), True
    steps, at = np.zeros(n), t[0]
    while at < t[-1]:
        at += random.uniform(2, 8)
        steps[t >= at] += 0.03 * random.normal()
    yield "steps of exposure", t, c * np.exp(steps)[:, None], True
    yield "15 frames a second", t[::2], c[::2], True
    kept = random.uniform(size=n) > 0.3
    yield "3 of 10 frames dropped", t[kept], c[kept], True
    yield "whole numbers", t, np.round(c), True
    yield "a quarter of the light", t, 0.25 * c + 0.1 * random.normal(size=c.shape), True
    flat = smooth(c, int(3 * rate_hz))
    noisy = lambda a: a * size.max() * random.normal(size=c.shape)
    still = lambda x, gain: flat * (1 + np.outer(2 * share * x, gain))
    yield "noise alone", t, flat + noisy(1), False
    yield "movement alone", t, still(slow(), (1, 1.1, 0.9)), False
    yield "the same in the band", t, still(inside(), (1, 1.3, 0.9)), False
    yield "the same, 0.9 to 1.6 Hz", t, still(band(n, rate_hz, 0.9, 1.6, 0, random), (1, 1.3, 0.9)), False
    turn = 2 * np.pi * np.cumsum(1 + 0.05 * band(n, rate_hz, 0.05, 0.5, 0, random)) / rate_hz
    yield "swaying, 1 Hz", t, still(np.sin(turn), (1, 1, 1)) + noisy(0.1), False
    turn *= 1.4
    yield "trembling, 1.4 Hz", t, still(np.sin(turn) + 0.3 * np.sin(2 * turn + 1), (1, 1.2, 0.8)) + noisy(0.3), False


def meters(data, command):
    """Scores against pulse meters; gives all recordings with what is known of them."""
    heading("fingertip_camera: against pulse meters")
    found, all_told, all_errors, all_why = [], [], [], []
    for path in sorted(glob.glob(f"{data}/fingertip_camera/*_left.csv") + glob.glob(f"{data}/fingertip_camera/*_right.csv")):
        name = os.path.basename(path)[:-4]
        t, c = read(path)
        meter = np.genfromtxt(path.rsplit("_", 1)[0] + "_rate.csv", delimiter=",", skip_header=1)
        starts, rates, why = windows(command, t, c)
        delay, mean = aligned(starts, rates, meter[:, 0], meter[:, 1])
        errors = np.abs(rates - mean)
        row(name, np.isfinite(rates), errors, why, f"delay {delay} s; ")
        all_told.append(np.isfinite(rates)), all_errors.append(errors)
        all_why += why
        found.append((t, c, starts, np.where(errors < 3, rates, np.nan)))
    if found:
        row("all", np.concatenate(all_told), np.concatenate(all_errors), all_why)
    return found


def strap(data, command):
    """Scores beats against a chest strap; gives all recordings with what is known of them."""
    heading("welltory: windows")
    found, errors, beats_of = [], [], []
    told, why_all = [], []
    for path in sorted(glob.glob(f"{data}/welltory/*_ppg.csv")):
        t, c = read(path, 1e-3)
        starts, rates, why = windows(command, t, c)
        told += list(np.isfinite(rates))
        why_all += why
        found.append((t, c, starts, rates))
        beats = np.array([float(word) for word in run(command, t, c, "--beats").split()])
        strap_s = np.r_[0, np.cumsum(np.loadtxt(path.replace("_ppg.csv", "_rr.txt")))] / 1000
        beats_of.append((os.path.basename(path)[:10], beats, strap_s))
    if not found:
        return found
    row("all", np.array(told), np.array([]), why_all)
    print(f"\nwelltory: intervals of matched beats\n{'':24}{'beats':>8}{'strap':>8}{'matched':>9}{'mean off ms':>13}{'median':>8}")
    for name, beats, strap_s in beats_of:
        # The delay at which most beats lie together and intervals differ least.
        best = (-np.inf, ())
        for delay in np.arange(-25, 60, 0.02):
            at = np.clip(np.searchsorted(strap_s, beats - delay), 1, len(strap_s) - 1)
            nearest = at - (np.abs(beats - delay - strap_s[at - 1]) <= np.abs(beats - delay - strap_s[at]))
            near = np.abs(beats - delay - strap_s[nearest]) < 0.15
            pairs = near[1:] & near[:-1] & (np.diff(nearest) == 1)
            if near.mean() < 0.5 or not pairs.any():
                continue
            off = np.abs(np.diff(beats) - np.diff(strap_s[nearest]))[pairs]
            best = max(best, (near.mean() - 20 * off.mean(), tuple(off)), key=lambda b: b[0])
        off = 1000 * np.array(best[1])
        errors.append(off)
        print(f"{name:24}{len(beats):8}{len(strap_s):8}{len(off):9}{off.mean():13.1f}{np.median(off):8.1f}")
    off = np.concatenate(errors)
    print(f"{'all':24}{sum(len(b[1]) for b in beats_of):8}{sum(len(b[2]) for b in beats_of):8}{len(off):9}{off.mean():13.1f}{np.median(off):8.1f}")
    return found


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    data, command = sys.argv[1], sys.argv[2:]
    recordings = meters(data, command) + strap(data, command) if os.path.isdir(data) else []
    if not recordings:
        print(f"no recordings at {data}: nothing was scored")
        sys.exit(2)
    sums = {}
    random = np.random.default_rng(1)
    for t, c, starts, truth in recordings:
        # Four minutes of each are enough.
        part = t < t[0] + 240
        for name, t_worse, c_worse, pulse in worse(t[part], c[part], random):
            _, rates, why = windows(command, t_worse, c_worse)
            known = truth[:len(rates)]
            rates = rates[:len(known)]
            told, errors, reasons = sums.setdefault((name, pulse), ([], [], []))
            # Of what has no truth nothing is scored; where no pulse is every window counts.
            keep = np.isfinite(known) if pulse else np.full(len(rates), True)
            told += list(np.isfinite(rates[keep]))
            errors += list(np.abs(rates - known)[keep]) if pulse else []
            reasons += why
    for pulse, title in ((True, "made worse: against the untouched"), (False, "no pulse in it: nothing should be told")):
        heading(title)
        for (name, has), (told, errors, reasons) in sums.items():
            if has == pulse:
                row(name, np.array(told), np.array(errors), reasons)


if __name__ == "__main__":
    main()
