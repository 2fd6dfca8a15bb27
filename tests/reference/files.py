"""Recordings between us and other people's readers and writers: pyEDFlib and edfio for EDF+, wfdb for WFDB records.

Ours must be read by them to within half of the written step, with every annotation; theirs must come back the same way.
"""

import shutil
from pathlib import Path

import edfio
import numpy as np
import pyedflib
import wfdb

from reference import ROOT, WORK, Checks, dicrotic

checks = Checks("files")
HERE = WORK / "files"
shutil.rmtree(HERE, ignore_errors=True)
HERE.mkdir(parents=True)

NOTES = [
    (0.25, None, "cursor a"),
    (0.25, 12.5, "window"),
    (0.5, None, "beat"),
    (0.5, None, "range v=0.2"),
    (1.375, None, "beat"),
    (2.0, None, "tap_sensor"),
    (2.25, None, "beat"),
    (7.5, 0.5, "missing"),
    (12.75, None, "cursor b"),
    (19.99, None, "größer als µ"),
]


def write_table(path, rate_hz, values, notes):
    """A table as the page saves it: notes are comments under it."""
    with open(path, "w", encoding="utf-8") as file:
        file.write("t_s,value\n")
        file.writelines(f"{k / rate_hz!r},{float(v)!r}\n" for k, v in enumerate(values))
        file.writelines(f"# note,{at},{'' if length is None else length},{text}\n" for at, length, text in notes)


def read_table(path):
    """Values, and notes as (s, length or None, text)."""
    lines = Path(path).read_text(encoding="utf-8").splitlines()
    notes = []
    for line in lines:
        if line.startswith("# note,"):
            at, length, text = line[len("# note,") :].split(",", 2)
            notes.append((float(at), float(length) if length else None, text))
    values = [float(line.split(",")[1]) for line in lines[1:] if not line.startswith("#")]
    return np.array(values), notes


def near(ours, theirs, half_step, what):
    if len(ours) != len(theirs):
        checks.check(False, f"{what}: {len(theirs)} samples, {len(ours)} were written")
        return
    apart = np.abs(np.asarray(ours) - theirs).max()
    checks.check(apart <= half_step * (1 + 1e-9) + 1e-12, f"{what}: {apart} apart, half a step is {half_step}")


def same_notes(ours, theirs, within_s, what):
    """Each note once, at its time."""
    left = list(theirs)
    for at, length, text in ours:
        found = [n for n in left if n[2] == text and abs(n[0] - at) <= within_s and (n[1] is None) == (length is None)]
        checks.check(found, f"{what}: {text!r} at {at} s is not among {theirs}")
        if found:
            left.remove(found[0])
    checks.check(not left, f"{what}: {left} were never written")


# --- ours, read by others ---


def check_edf(path, values, notes, what):
    with pyedflib.EdfReader(str(path)) as reader:
        read = reader.readSignal(0)
        step = (reader.getPhysicalMaximum(0) - reader.getPhysicalMinimum(0)) / 65535
        onset, duration, text = reader.readAnnotations()
        listed = [(float(o), None if float(d) < 0 else float(d), t) for o, d, t in zip(onset, duration, text)]
    near(values, read[: len(values)], step / 2, f"{what}, pyEDFlib")
    # pyEDFlib's readers tell no duration as a number below 0 or as 0.
    plain = [(o, t) for o, _, t in listed if t != "end"]
    checks.check(sorted(plain) == sorted((o, t) for o, _, t in notes), f"{what}, pyEDFlib: {plain}")

    read = edfio.read_edf(path)
    signal = read.signals[0]
    step = (signal.physical_max - signal.physical_min) / (signal.digital_max - signal.digital_min)
    near(values, signal.data[: len(values)], step / 2, f"{what}, edfio")
    listed = [(a.onset, a.duration, a.text) for a in read.annotations if a.text != "end"]
    same_notes(notes, listed, 1e-6, f"{what}, edfio")
    ends = [a.onset for a in read.annotations if a.text == "end"]
    checks.check(len(ends) == 1 and len(signal.data) >= len(values), f"{what}: the end is told at {ends}")


def check_wfdb(record, values, notes, rate_hz, what):
    read = wfdb.rdrecord(str(record))
    near(values, read.p_signal[:, 0], 0.5 / read.adc_gain[0], what)
    checks.check(read.fs == rate_hz, f"{what}: {read.fs} Hz")
    raw = wfdb.rdrecord(str(record), physical=False).d_signal[:, 0]
    head = wfdb.rdheader(str(record))
    checks.check((int(raw.astype(np.int64).sum()) - head.checksum[0]) % 65536 == 0, f"{what}: the sum of the samples")
    checks.check(raw[0] == head.init_value[0], f"{what}: the first sample")
    marks = wfdb.rdann(str(record), "atr")
    listed = []
    for sample, symbol, text in zip(marks.sample, marks.symbol, marks.aux_note):
        if symbol == "N":
            listed.append((sample / rate_hz, None, "beat"))
        for part in filter(None, text.rstrip("\0").split("; ")):
            word, _, length = part.partition(" length_s=")
            listed.append((sample / rate_hz, float(length) if length else None, word))
    # wfdb reads texts as Latin-1, one character a byte.
    listed = [(at, length, text.encode("latin-1", "ignore").decode("utf-8", "ignore")) for at, length, text in listed]
    same_notes(notes, listed, 1.01 / rate_hz, what)
    checks.check((np.diff(marks.sample) > 0).all() and marks.sample[-1] < read.sig_len, f"{what}: order of annotations")


rng = np.random.default_rng(7)
for rate_hz in (20, 250, 1000, 99.97):
    count = int(20 * rate_hz)
    t = np.arange(count) / rate_hz
    table = HERE / f"made-{rate_hz}.csv"
    for scale in (1e-3, 0.08, 9.0):
        values = scale * (np.sin(7 * t) + 0.1 * rng.standard_normal(count))
        write_table(table, rate_hz, values, NOTES)
        record = HERE / f"made_{str(rate_hz).replace('.', '_')}"
        dicrotic("convert", table, record.with_suffix(".edf"))
        dicrotic("convert", table, record.with_suffix(".hea"))
        # A table tells times: its reader takes the nearest rate with few digits.
        if rate_hz == 99.97:
            rate = wfdb.rdheader(str(record)).fs
        else:
            rate = rate_hz
        check_edf(record.with_suffix(".edf"), values, NOTES, f"EDF+ at {rate_hz} Hz, {scale}")
        check_wfdb(record, values, NOTES, rate, f"WFDB at {rate_hz} Hz, {scale}")

# What the recorder itself makes: in volts, every code as it is.
scenario = sorted((ROOT / "scenarios").glob("*.toml"))[0]
for name in ("strip.csv", "strip.edf", "strip.hea"):
    dicrotic("render", scenario, "--seed", "5", "--seconds", "12.5", "--out", HERE / name)
values, _ = read_table(HERE / "strip.csv")
with pyedflib.EdfReader(str(HERE / "strip.edf")) as reader:
    checks.check(reader.getPhysicalDimension(0) == "V", "the unit in EDF")
    near(values, reader.readSignal(0)[: len(values)], (reader.getPhysicalMaximum(0) - reader.getPhysicalMinimum(0)) / 65535 / 2, "the recorder, EDF")
read = wfdb.rdrecord(str(HERE / "strip"))
checks.check(read.units == ["V"], f"the unit in WFDB: {read.units}")
near(values, read.p_signal[:, 0], 0.5 / read.adc_gain[0], "the recorder, WFDB")

# --- theirs, read by us ---

rate_hz, count = 200, 3000
t = np.arange(count) / rate_hz
pulse = 40 * np.sin(2 * np.pi * 1.2 * t) ** 3 + rng.standard_normal(count)
other = 5 + np.cos(t)
marks = [(0.5, None, "one"), (3.25, 2.0, "a while"), (9.0, None, "naïve")]


def ours_of(path, *arguments):
    table = HERE / "back.csv"
    dicrotic("convert", path, table, *arguments)
    return read_table(table)


path = HERE / "theirs-pyedflib.edf"
with pyedflib.EdfWriter(str(path), 2, file_type=pyedflib.FILETYPE_EDFPLUS) as writer:
    for k, (label, low, high) in enumerate((("Other", 0, 10), ("Pleth", -60, 60))):
        writer.setSignalHeader(k, {"label": label, "dimension": "mV", "sample_frequency": rate_hz, "physical_min": low, "physical_max": high, "digital_min": -32768, "digital_max": 32767, "transducer": "", "prefilter": ""})
    writer.writeSamples([other, pulse])
    for at, length, text in marks:
        writer.writeAnnotation(at, -1 if length is None else length, text)
for column, expected, span in (("Other", other, 10), ("Pleth", pulse, 120)):
    values, notes = ours_of(path, "--column", column)
    near(expected * 1e-3, values, 1e-3 * span / 65535, f"by pyEDFlib: {column}")
    same_notes(marks, notes, 1e-4, f"by pyEDFlib: {column}")

path = HERE / "theirs-edfio.edf"
signals = [edfio.EdfSignal(pulse, rate_hz, label="Pleth", physical_dimension="mV", physical_range=(-60, 60))]
edfio.Edf(signals, annotations=[edfio.EdfAnnotation(at, length, text) for at, length, text in marks]).write(path)
values, notes = ours_of(path)
near(pulse * 1e-3, values, 1e-3 * 120 / 65535, "by edfio")
same_notes(marks, notes, 1e-6, "by edfio")



def pack(codes, form):
    """Samples of two signals side by side, in the formats that wfdb reads but does not write."""
    flat = codes.reshape(-1)
    if form == "61":
        return flat.astype(">i2").tobytes()
    if form == "160":
        return (flat + 32768).astype("<u2").tobytes()
    first, second = (flat[0::2] & 0xFFF), (flat[1::2] & 0xFFF)
    return np.column_stack([first & 0xFF, first >> 8 | (second >> 8) << 4, second & 0xFF]).astype(np.uint8).tobytes()


for form, gain in (("16", 500.0), ("80", 2.0), ("212", 30.0), ("61", 500.0), ("160", 500.0)):
    name = f"theirs_{form}"
    samples = np.column_stack([pulse, other])
    samples[100:120, 0] = np.nan
    if form in ("16", "80"):
        wfdb.wrsamp(name, fs=rate_hz, units=["mV", "mV"], sig_name=["Pleth", "Other"], p_signal=samples, fmt=[form, form], adc_gain=[gain, gain], baseline=[0, 0], write_dir=str(HERE))
    else:
        missing = -2048 if form == "212" else -32768
        codes = np.where(np.isnan(samples), missing, np.round(np.nan_to_num(samples) * gain)).astype(int)
        (HERE / f"{name}.dat").write_bytes(pack(codes, form))
        lines = [f"{name}.dat {form} {gain}(0)/mV 16 0 {codes[0, k]} {codes[:, k].sum() & 0xFFFF} 0 {title}" for k, title in enumerate(("Pleth", "Other"))]
        (HERE / f"{name}.hea").write_text("\n".join([f"{name} 2 {rate_hz} {count}", *lines, ""]))
    wfdb.wrann(name, "atr", np.array([100, 340, 700, 2999]), symbol=["N", "V", '"', "N"], aux_note=["", "", "pause", ""], fs=rate_hz, write_dir=str(HERE))
    read_by_wfdb = wfdb.rdrecord(str(HERE / name)).p_signal
    for k, column in enumerate(("Pleth", "Other")):
        values, notes = ours_of(HERE / f"{name}.hea", "--column", column)
        there = ~np.isnan(read_by_wfdb[:, k])
        # Both read the same codes.
        half = 0.0
        near(read_by_wfdb[there, k] * 1e-3, values[there], half, f"by wfdb, format {form}: {column}")
        expected = [(0.5, None, "beat"), (1.7, None, "beat"), (3.5, None, "pause"), (14.995, None, "beat")]
        expected += [(0.5, 0.1, "missing")] if k == 0 else []
        same_notes(expected, notes, 1e-6, f"by wfdb, format {form}: {column}")

checks.finish()
