"""The recorder's filters against scipy.signal: gain and phase at the frequencies that the program prints.

Butterworth sections by the bilinear transform with the corner prewarped (scipy.signal.butter), the notch of
scipy.signal.iirnotch, and the mean of the last n samples (scipy.signal.freqz of n equal taps).
"""

import cmath
import sys

import numpy as np
from scipy import signal

from reference import Checks, dicrotic

TOLERANCE = 1e-9  # of the complex gain
# A second-order section with a corner far below the rate cannot be held better in double precision: its response at
# the corner is a difference of numbers near 1 that is as small as the square of the corner's angle, and each of the
# two sides' coefficients is off by a unit or so in the last place.
ROUNDING = 4.0 * np.finfo(float).eps
NOTCH_Q = 30.0

checks = Checks("filters")


def ours(kind, hz, order, rate_hz):
    """Frequencies in Hz and complex gains."""
    text = dicrotic("filter-response", "--kind", kind, "--hz", hz, "--order", order, "--rate", rate_hz)
    lines = text.splitlines()
    if not lines or lines[0] != "hz,gain,phase_rad":
        sys.exit(f"filter-response: header {lines[:1]}, expected 'hz,gain,phase_rad'")
    rows = [tuple(map(float, line.split(","))) for line in lines[1:]]
    return np.array([row[0] for row in rows]), np.array([cmath.rect(row[1], row[2]) for row in rows])


def theirs(kind, hz, order, rate_hz, at_hz):
    if kind in ("high_pass", "low_pass"):
        sos = signal.butter(order, hz, kind.replace("_", ""), fs=rate_hz, output="sos")
        return signal.sosfreqz(sos, worN=at_hz, fs=rate_hz)[1]
    if kind == "notch":
        b, a = signal.iirnotch(hz, NOTCH_Q, fs=rate_hz)
        return signal.freqz(b, a, worN=at_hz, fs=rate_hz)[1]
    count = round(rate_hz / hz)
    return signal.freqz(np.full(count, 1.0 / count), worN=at_hz, fs=rate_hz)[1]


CASES = [
    *(("high_pass", hz, order, rate) for hz in (0.05, 0.1, 0.5, 1.0) for order in (1, 2) for rate in (100, 1000, 4000)),
    *(("low_pass", hz, order, rate) for hz in (5, 10, 20, 35) for order in (1, 2) for rate in (100, 1000, 4000)),
    *(("notch", hz, 2, rate) for hz in (50, 60) for rate in (200, 1000, 4000)),
    *(("average", hz, 1, rate) for hz in (10, 20, 50) for rate in (100, 1000, 4000)),
]

for case in CASES:
    at_hz, gain = ours(*case)
    inside = len(at_hz) >= 20 and at_hz.min() > 0 and at_hz.max() <= case[3] / 2
    checks.check(inside, f"{case}: the frequencies {at_hz.min():g} to {at_hz.max():g} Hz, {len(at_hz)} of them")
    apart = np.abs(gain - theirs(*case, at_hz))
    worst = int(np.argmax(apart))
    angle = 2.0 * np.pi * case[1] / case[3]
    limit = max(TOLERANCE, ROUNDING / angle**case[2])
    checks.check(apart[worst] <= limit, f"{case}: {apart[worst]:.2e} apart at {at_hz[worst]:g} Hz")
checks.finish()
