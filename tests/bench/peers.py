"""What others take for the same work on the same samples, one thread, and how many times longer that is than ours.

Lines of name and figure parted by a tab, as tests/bench/figures writes them. The samples are those that its group
`detector` has written; our figures are read from bench.tsv, both in the target folder. Run by tests/bench.sh.
"""

import os

for variable in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS", "NUMBA_NUM_THREADS"):
    os.environ[variable] = "1"
import re
import sys
import time
import warnings
from importlib import import_module
from importlib.metadata import version
from pathlib import Path

warnings.filterwarnings("ignore")
import numpy as np
import scipy.signal as ss

TARGET = Path(__file__).resolve().parents[2] / os.environ.get("CARGO_TARGET_DIR", "target")
# A pulse between these rates, beats/min, has been found; a library that counts the notch waves too is named so.
PLAUSIBLE = (40.0, 110.0)


def told(name, figure):
    print(f"{name}\t{figure}", flush=True)


def median(run):
    """Median seconds of five runs after one that warms up; of three where one takes over a second, of one over ten."""
    began = time.perf_counter()
    run()
    first = time.perf_counter() - began
    if first > 10.0:
        return first, 1
    took = []
    for _ in range(5 if first < 1.0 else 3):
        began = time.perf_counter()
        run()
        took.append(time.perf_counter() - began)
    return float(np.median(took)), len(took)


def ours(pattern):
    """The number in the figure of our line whose name fits."""
    for line in (TARGET / "bench.tsv").read_text(encoding="utf-8").splitlines():
        name, figure = line.split("\t")[:2]
        if re.fullmatch(pattern, name):
            return float(re.match(r"[\d.]+", figure)[0])
    sys.exit(f"{TARGET / 'bench.tsv'}: no line {pattern}; tests/bench/figures comes first")


def samples(name):
    path = TARGET / "bench" / name
    if not path.exists():
        sys.exit(f"{path} is missing; tests/bench/figures writes it")
    return np.fromfile(path, dtype="<f8")


def scipy_peaks(x, rate):
    """Band-pass .5 to 8 Hz forth and back, then peaks a third of a second apart: the plain pipeline."""
    y = ss.sosfiltfilt(ss.butter(2, [0.5, 8], btype="band", fs=rate, output="sos"), x)
    return ss.find_peaks(y, distance=int(0.33 * rate), prominence=0.5 * y.std())[0]


def neurokit_peaks(x, rate):
    nk = import_module("neurokit2")
    return nk.ppg_findpeaks(nk.ppg_clean(x, sampling_rate=rate), sampling_rate=rate, method="elgendi")["PPG_Peaks"]


def biosppy_peaks(x, rate):
    return import_module("biosppy.signals.ppg").ppg(x, float(rate), show=False)["peaks"]


def heartpy_peaks(x, rate):
    # Its defaults take values in the units of a converter; volts of some millivolts are stretched first, unmeasured.
    return import_module("heartpy").process(x, float(rate))[0]["peaklist"]


def stretched(x):
    return (x - x.min()) / (x.max() - x.min()) * 1023.0


PEERS = [
    ("scipy", "scipy", "sosfiltfilt and find_peaks", scipy_peaks),
    ("NeuroKit2", "neurokit2", "ppg_clean and ppg_findpeaks (elgendi)", neurokit_peaks),
    ("BioSPPy", "biosppy", "ppg.ppg", biosppy_peaks),
    ("HeartPy", "heartpy", "process", heartpy_peaks),
]


def detector(rate, seconds, x, peers):
    own = ours(rf"detector, {seconds} s at {rate} Hz, native")
    where = f"detector, {seconds} s at {rate} Hz"
    for name, package, what, peaks in peers:
        values = stretched(x) if name == "HeartPy" else x
        try:
            found = len(peaks(values, rate))
            took, runs = median(lambda: peaks(values, rate))
        except Exception as error:  # noqa: BLE001 - whatever a peer stumbles over is told, not passed over
            told(f"{where}: {name}", f"not measured: {type(error).__name__}: {str(error)[:120]}")
            continue
        bpm = found / seconds * 60.0
        doubt = "" if PLAUSIBLE[0] < bpm < PLAUSIBLE[1] else f" ({bpm:.0f} beats/min is not the pulse)"
        once = ", one run" if runs == 1 else ""
        told(
            f"{where}: {name} {version(package)}, {what}",
            f"{1000 * took:.2f} ms{once}, {found} beats{doubt}; {1000 * took / own:.1f} times ours",
        )


def there(package):
    try:
        import_module(package)
    except Exception as error:  # noqa: BLE001
        told(package, f"not measured: {type(error).__name__}: {str(error)[:120]}")
        return False
    return True


present = [peer for peer in PEERS if there(peer[1])]
for hz in (100, 250, 1000):
    x = samples(f"pulse-{hz}.f64")
    assert len(x) == 300 * hz, f"{len(x)} samples at {hz} Hz"
    detector(hz, 300, x, present)
x = samples("pulse-1000-long.f64")
assert len(x) == 3_000_000, f"{len(x)} samples"
detector(1000, 30, x[:30_000], present)
detector(1000, 3000, x, present)

if any(peer[0] == "NeuroKit2" for peer in present):
    nk = import_module("neurokit2")
    took, _ = median(lambda: nk.ppg_simulate(duration=300, sampling_rate=1000, random_state=1))
    speed = 0.3 / took
    own = ours(r"chain, one fault, native, block of 1,000,000")
    told(
        f"generator: NeuroKit2 {version('neurokit2')} ppg_simulate, 300 s at 1 kHz",
        f"{speed:.2f} million samples/s; our chain makes {own / speed:.0f} times as many",
    )
