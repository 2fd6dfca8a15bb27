"""Effects of a study against scipy and ordinary least squares by numpy: Hedges' g with the interval of the noncentral t distribution,
Student's t interval, and the difference adjusted for the first test.

The tables are made here; `dicrotic study effect` reads them as it reads those that `study table` writes.
"""

import json
import shutil

import numpy as np
from scipy import optimize, special, stats

from reference import WORK, Checks, dicrotic

checks = Checks("study")
HERE = WORK / "study"
shutil.rmtree(HERE, ignore_errors=True)
HERE.mkdir(parents=True)


def table(path, first, second, arm):
    lines = [f"{k + 1},{'with' if a else 'without'},{x:.2f},{y:.2f}," for k, (x, y, a) in enumerate(zip(first, second, arm))]
    path.write_text("person,arm,first,second,later\n" + "\n".join(lines) + "\n", encoding="utf-8")


def alike(ours, theirs, what):
    close = np.allclose([ours["value"], ours["low"], ours["high"]], theirs, rtol=1e-7, atol=1e-7)
    checks.check(close, f"{what}: {ours} and {theirs}")


def hedges(a, b):
    df = len(a) + len(b) - 2
    spread = np.sqrt(((len(a) - 1) * a.var(ddof=1) + (len(b) - 1) * b.var(ddof=1)) / df)
    root = np.sqrt(1 / len(a) + 1 / len(b))
    d = (a.mean() - b.mean()) / spread
    unbiased = np.exp(special.gammaln(df / 2) - special.gammaln((df - 1) / 2)) / np.sqrt(df / 2)
    ends = [optimize.brentq(lambda ncp: stats.nct.cdf(d / root, df, ncp) - p, d / root - 12, d / root + 12, xtol=1e-12) * root for p in (0.975, 0.025)]
    return [unbiased * d, *ends]


def adjusted(first, second, arm):
    columns = np.column_stack([np.ones_like(first), first, arm])
    found = np.linalg.solve(columns.T @ columns, columns.T @ second)
    df = len(first) - 3
    rest = second - columns @ found
    error = np.sqrt(rest @ rest / df * np.linalg.inv(columns.T @ columns)[2, 2])
    half = stats.t.ppf(0.975, df) * error
    return [found[2], found[2] - half, found[2] + half]


draws = np.random.default_rng(11)
for people, others, added in [(2, 3, 5.0), (5, 5, 0.0), (8, 15, 10.0), (15, 15, -6.0), (40, 38, 3.0), (200, 190, 1.0), (12, 12, 45.0)]:
    arm = np.array([1.0] * people + [0.0] * others)
    first = np.clip(draws.normal(45, 12, len(arm)), 0, 100).round(2)
    second = np.clip(first + 4 + added * arm + draws.normal(0, 8, len(arm)), 0, 100).round(2)
    path = HERE / f"{people}-{others}.csv"
    table(path, first, second, arm)
    told = json.loads(dicrotic("study", "effect", path, "--least", 2, "--json"))["second"]
    a, b = [(second - first)[arm == value] for value in (1, 0)]
    what = f"{people} and {others} people, {added}"
    alike(told["g"], hedges(a, b), f"Hedges' g, {what}")
    t = stats.ttest_ind(a, b).confidence_interval(0.95)
    alike(told["difference"], [a.mean() - b.mean(), t.low, t.high], f"difference of gains, {what}")
    alike(told["adjusted"], adjusted(first, second, arm), f"adjusted difference, {what}")
    gain = told["gain"][0]
    checks.check(np.isclose(gain["mean"], a.mean()) and np.isclose(gain["sd"], a.std(ddof=1)), f"mean and spread, {what}")

checks.finish()
