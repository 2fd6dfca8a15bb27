#!/usr/bin/env python3
"""Scores the beat detector on recordings of real fingers and prints a table; asserts nothing, as the recordings are
not part of the project.

    detector.py DATA COMMAND...     e.g.  detector.py ../shared/data target/release/dicrotic detect

DATA holds welltory/, neurokit_rest5min/, physionet2015_samples/ (see its README for sources and licences). COMMAND gets
the name of a CSV file (t_s,value) as its last argument and prints one beat time in seconds a line. Needs numpy, pandas,
scipy, wfdb. Where DATA is missing it says so and ends with status 2.

Scoring as in Charlton et al. 2022 (Physiol. Meas. 43:085007): a beat counts as found within 150 ms after one constant
delay a recording; heart rate from the beats of 30 s windows. References: chest-strap intervals (Neshitov et al. 2021,
Sensors 21:6798) and R peaks of the simultaneous ECG.
"""
import os
import subprocess
import sys
import tempfile

import numpy as np
import pandas as pd

TOLERANCE_S = 0.15


def matches(ref, det):
    """Pairs each reference beat with at most one detection, nearest first in time order."""
    hit = i = j = 0
    while i < len(ref) and j < len(det):
        d = det[j] - ref[i]
        if abs(d) < TOLERANCE_S:
            if j + 1 < len(det) and abs(det[j + 1] - ref[i]) < abs(d):
                j += 1
                continue
            hit, i, j = hit + 1, i + 1, j + 1
        elif d < 0:
            j += 1
        else:
            i += 1
    return hit


def best_delay(ref, det, reach):
    """The constant delay under which most beats lie together; among equals the one with the smallest distances."""
    best = (-1, 0.0, 0.0)
    for delay in np.arange(-reach, reach + 0.01, 0.02):
        at = np.clip(np.searchsorted(ref, det - delay), 1, len(ref) - 1)
        near = np.minimum(np.abs(det - delay - ref[at - 1]), np.abs(det - delay - ref[at]))
        near = near[near < TOLERANCE_S]
        key = (len(near), -(near.mean() if len(near) else 9.0), delay)
        best = max(best, key)
    return best[2]


def score(ref, det, unsure, reach, seconds):
    """Hits, misses, extras, and the heart-rate errors of 30 s windows."""
    if len(det) == 0:
        return 0, len(ref), 0, []
    delay = best_delay(ref, det, reach)
    # The strap may have been on before and after the camera was: only beats within the pulse recording count.
    ref = ref[(ref + delay >= 0.3) & (ref + delay <= seconds - 0.3)]
    det = det - delay
    det = det[(det >= ref[0] - TOLERANCE_S) & (det <= ref[-1] + TOLERANCE_S)]
    sure = lambda t: ~np.any([(t >= a) & (t <= b) for a, b in unsure] or [np.zeros(len(t), bool)], axis=0)
    r, d = ref[sure(ref)], det[sure(det)]
    rate = lambda t: 60 * (len(t) - 1) / (t[-1] - t[0]) if len(t) > 2 else np.nan
    errors = []
    for start in np.arange(ref[0], ref[-1] - 30, 30):
        if any(a < start + 30 and b > start for a, b in unsure):
            continue
        window = lambda t: t[(t >= start) & (t < start + 30)]
        errors.append(abs(rate(window(det)) - rate(window(ref))))
    hit = matches(r, d)
    return hit, len(r) - hit, len(d) - hit, errors


def intervals(path):
    """Rows of start and end in a file that may be empty."""
    return np.loadtxt(path, delimiter=",", ndmin=2).reshape(-1, 2) if os.path.getsize(path) else np.zeros((0, 2))


def welltory(data):
    from scipy.interpolate import PchipInterpolator

    for i in range(1, 22):
        base = f"{data}/welltory/subject_{i:02d}"
        table = pd.read_csv(base + "_ppg.csv")
        t = table.time.to_numpy() / 1000
        # Red is saturated in some recordings; blood darkens the picture, so the sign is turned.
        y = -(table.R if table.R.std() >= 0.3 else table.G).to_numpy()
        new = np.r_[True, np.diff(t) > 0]
        grid = np.arange(t[0], t[-1], 0.01)
        beats = np.r_[0, np.cumsum(np.loadtxt(base + "_rr.txt"))] / 1000
        yield f"{i:02d}", PchipInterpolator(t[new], y[new])(grid), 100, beats, [], 12


def rest(data):
    base = f"{data}/neurokit_rest5min/rest5min_100hz"
    x = pd.read_csv(base + ".csv").PPG.to_numpy()
    yield "rest", x, 100, np.loadtxt(base + ".ecgbeats.csv"), intervals(base + ".badiv.csv"), 10


def alarm(data):
    import wfdb

    for name in ("a103l", "v102s"):
        base = f"{data}/physionet2015_samples/{name}"
        record = wfdb.rdrecord(base)
        x = np.nan_to_num(record.p_signal[:, record.sig_name.index("PLETH")])
        yield name, x, 250, np.loadtxt(base + ".ecgbeats.csv"), intervals(base + ".badiv.csv"), 10


def beats_of(command, x, rate_hz):
    with tempfile.NamedTemporaryFile("w", suffix=".csv", delete=False) as file:
        file.write("t_s,value\n")
        np.savetxt(file, np.c_[np.arange(len(x)) / rate_hz, x], delimiter=",", fmt="%.6f")
    try:
        out = subprocess.run([*command, file.name], capture_output=True, text=True, check=True).stdout
    finally:
        os.unlink(file.name)
    return np.array([float(word) for word in out.split()])


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    data, command = sys.argv[1], sys.argv[2:]
    if not os.path.isdir(data):
        print(f"no recordings at {data}: nothing was scored")
        sys.exit(2)
    print(f"{'set':22}{'records':>8}{'median F1':>11}{'pooled F1':>11}{'found %':>9}{'true %':>8}{'rate error bpm':>16}")
    for name, source in (("welltory", welltory), ("neurokit_rest5min", rest), ("physionet2015_samples", alarm)):
        rows = [score(ref, beats_of(command, x, hz), unsure, reach, len(x) / hz) for _, x, hz, ref, unsure, reach in source(data)]
        hit, miss, extra = (sum(row[k] for row in rows) for k in range(3))
        f1 = [200 * h / max(1, 2 * h + m + e) for h, m, e, _ in rows]
        error = np.nanmean([e for row in rows for e in row[3]])
        print(f"{name:22}{len(rows):8}{np.median(f1):11.2f}{200 * hit / (2 * hit + miss + extra):11.2f}"
              f"{100 * hit / (hit + miss):9.2f}{100 * hit / max(1, hit + extra):8.2f}{error:16.2f}")


if __name__ == "__main__":
    main()
