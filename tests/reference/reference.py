"""What the reference checks share: running the program, counting checks, and rates by other people's libraries."""

import os
import subprocess
import sys
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parents[2]
TARGET = ROOT / os.environ.get("CARGO_TARGET_DIR", "target")
HOST = TARGET / "debug" / "dicrotic"
WORK = TARGET / "reference"


class Checks:
    """Counts checks; a failed one is printed and makes the script fail at its end."""

    def __init__(self, name):
        self.name = name
        self.passed = 0
        self.failed = 0

    def check(self, holds, what):
        if holds:
            self.passed += 1
        else:
            self.failed += 1
            print(f"NOT SO: {what}")

    def finish(self):
        """Prints the count and ends the script: with 1 if a check failed or none was made."""
        print(f"{self.name}: {self.passed} passed, {self.failed} failed")
        sys.exit(0 if self.failed == 0 and self.passed > 0 else 1)


def dicrotic(*arguments):
    """The standard output of `dicrotic` with these arguments; its error ends the script."""
    run = subprocess.run([HOST, *map(str, arguments)], capture_output=True, text=True, check=False)
    if run.returncode != 0:
        sys.exit(f"dicrotic {' '.join(map(str, arguments))}: {run.returncode}\n{run.stderr}")
    return run.stdout


def read_numbers(text, what):
    """One finite number a line."""
    try:
        numbers = np.array([float(line) for line in text.split()])
    except ValueError as error:
        sys.exit(f"{what}: {error}")
    if not np.all(np.isfinite(numbers)):
        sys.exit(f"{what}: a number is not finite")
    return numbers


def read_trace(path):
    """Times in s and values of a file with the header `t_s,value`."""
    with open(path, encoding="utf-8") as file:
        header = file.readline().strip()
        if header != "t_s,value":
            sys.exit(f"{path}: header {header!r}, expected 't_s,value'")
        table = np.loadtxt(file, delimiter=",", ndmin=2)
    return table[:, 0], table[:, 1]


def write_trace(path, values, rate_hz):
    """The converse, for samples at an even rate."""
    WORK.mkdir(parents=True, exist_ok=True)
    with open(path, "w", encoding="utf-8") as file:
        file.write("t_s,value\n")
        for i, value in enumerate(values):
            file.write(f"{i / rate_hz:.6f},{value:.9g}\n")


def detected(path):
    """Beat times in s by our own detector."""
    return read_numbers(dicrotic("detect", path), f"dicrotic detect {path}")


def neurokit_beats(values, rate_hz):
    """Beat times in s by NeuroKit2: its cleaning, then the peak finder of Elgendi et al. 2013, its default."""
    import neurokit2 as nk

    clean = nk.ppg_clean(np.asarray(values, float), sampling_rate=rate_hz)
    return np.asarray(nk.ppg_findpeaks(clean, sampling_rate=rate_hz)["PPG_Peaks"]) / rate_hz


def scipy_beats(values, rate_hz):
    """Beat times in s by a band-pass from .5 to 8 Hz and scipy's peak finder; up to 150 beats/min, because with a
    shorter distance it takes tall dicrotic waves for beats."""
    from scipy import signal

    values = np.asarray(values, float)
    sos = signal.butter(2, [0.5, 8.0], "bandpass", fs=rate_hz, output="sos")
    band = signal.sosfiltfilt(sos, values - values.mean())
    height = np.percentile(band, 99) - np.median(band)
    peaks, _ = signal.find_peaks(band, distance=max(1, round(0.4 * rate_hz)), prominence=0.5 * height)
    return peaks / rate_hz


def mean_rate(beats, start_s, end_s):
    """Beats/min between the first and the last beat in the window; one beat missed or made up shows in it."""
    inside = beats[(beats >= start_s) & (beats <= end_s)]
    if len(inside) < 2:
        return float("nan")
    return 60.0 * (len(inside) - 1) / (inside[-1] - inside[0])


def matched_share(found, truth, within_s=0.15):
    """F1 of `found` against `truth` at the best constant lag of -1 to 1 s, one to one, as in Charlton et al. 2022
    (Physiol. Meas. 43 085007)."""
    best = 0.0
    for lag in np.arange(-1.0, 1.0, 0.02):
        i = j = hits = 0
        shifted = found - lag
        while i < len(shifted) and j < len(truth):
            apart = shifted[i] - truth[j]
            if abs(apart) <= within_s:
                hits, i, j = hits + 1, i + 1, j + 1
            elif apart < 0:
                i += 1
            else:
                j += 1
        best = max(best, 2.0 * hits / max(1, len(found) + len(truth)))
    return best


def median_rate(beats, start_s, end_s):
    """Beats/min from the median interval in the window; a few beats missed or made up do not show in it."""
    inside = beats[(beats >= start_s) & (beats <= end_s)]
    return 60.0 / np.median(np.diff(inside)) if len(inside) > 2 else float("nan")
