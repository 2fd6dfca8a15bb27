"""What others take for the same work, one thread: lines of name and figure parted by a tab, as tests/bench/figures.rs."""
import os

for variable in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[variable] = "1"
import time
import warnings

warnings.filterwarnings("ignore")
import numpy as np
import scipy.signal as ss

RATE = 1000
SECONDS = 300


def median(run, runs=5):
    run()
    took = []
    for _ in range(runs):
        began = time.perf_counter()
        run()
        took.append(time.perf_counter() - began)
    return float(np.median(took))


def scipy_peaks(x):
    """Band-pass .5 to 8 Hz forth and back, then peaks a third of a second apart: the plain pipeline."""
    y = ss.sosfiltfilt(ss.butter(2, [0.5, 8], btype="band", fs=RATE, output="sos"), x)
    return ss.find_peaks(y, distance=int(0.33 * RATE), prominence=0.5 * y.std())[0]


def pulse():
    t = np.arange(SECONDS * RATE) / RATE
    u = t % 0.83
    rng = np.random.default_rng(1)
    return np.exp(-(((u - 0.2) / 0.07) ** 2)) + 0.3 * np.exp(-(((u - 0.45) / 0.08) ** 2)) + 0.02 * rng.standard_normal(t.size)


x = pulse()
assert len(scipy_peaks(x)) > 300
print(f"scipy sosfiltfilt and find_peaks, {SECONDS} s at 1 kHz\t{1000 * median(lambda: scipy_peaks(x)):.1f} ms")
try:
    import neurokit2 as nk
except ImportError:
    print("neurokit2\tnot installed")
else:
    took = median(lambda: nk.ppg_simulate(duration=SECONDS, sampling_rate=RATE, random_state=1), 3)
    print(f"neurokit2 {nk.__version__} ppg_simulate, {SECONDS} s at 1 kHz\t{SECONDS * RATE / took / 1e6:.2f} million samples/s")
    clean = nk.ppg_clean(x, sampling_rate=RATE)
    print(f"neurokit2 ppg_clean and ppg_findpeaks (elgendi), {SECONDS} s at 1 kHz\t{1000 * median(lambda: nk.ppg_findpeaks(nk.ppg_clean(x, sampling_rate=RATE), sampling_rate=RATE), 3):.1f} ms")
