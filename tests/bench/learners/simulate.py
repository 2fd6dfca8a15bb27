"""10,000 learners of another model practice by the rule that stood before and by the learner model of the core.

    cargo build --release --example learners
    python3 tests/bench/learners/simulate.py [--population tuning|reported] [--learners N] [--out FOLDER]

Prints a table and writes `learners.svg`. It proves the policy, not that people learn.

The learners are made by knowledge tracing (Corbett & Anderson 1995, User Model User-Adapt Interact 4:253): a skill is known or
not, is learned with some chance at each opportunity, is guessed and slipped in. Added are forgetting by the day (as in Qiu
et al. 2011, EDM), a third state in which a misreading is held that makes a step wrong almost always, and faults that are known
by heart without the skill. The core knows none of this: it has one number with a variance for each trait.

The core's numbers were set on the population `tuning` alone; what is told is of `reported`, whose ranges are wider and whose
draws are others.
"""

import argparse
import json
import math
import multiprocessing
import os
import pathlib
import random
import subprocess

import figure

ROOT = pathlib.Path(__file__).resolve().parents[3]
DAY = 86_400_000.0
MEASURING = {"window", "counting", "arithmetic", "uncertainty"}
MISREAD = ("window", "counting", "arithmetic", "uncertainty")
SETS = ("no_recorder", "flat", "small", "cut", "fuzzy", "misshapen", "jumpy", "wandering", "crowded", "paper")
MOST_ATTEMPTS, MOST_SESSIONS = 160, 80
UNKNOWN, MISREADING, KNOWN = 0, 1, 2
# Guesses up to .3 and slips up to .1 are the bounds of the tutors of Corbett & Anderson 1995; the others are chosen about what is
# common in knowledge tracing (from memory): known at first .1 to .6, learned at a step .05 to .4.
POPULATIONS = {
    "tuning": dict(known=(0.10, 0.45), learned=(0.10, 0.30), guess=(0.10, 0.25), slip=(0.03, 0.09), forgot=(0.002, 0.02),
                   misread=0.25, heart=(0.3, 0.6), gaps=(1, 2, 3, 4), session=(2, 4), seed="tuning"),
    "reported": dict(known=(0.05, 0.60), learned=(0.05, 0.40), guess=(0.05, 0.30), slip=(0.01, 0.10), forgot=(0.0, 0.03),
                     misread=0.35, heart=(0.2, 0.7), gaps=(1, 2, 3, 5, 7), session=(1, 5), seed="reported"),
}


class Learner:
    """One student of the other model."""

    def __init__(self, number, population, skills):
        self.p = POPULATIONS[population]
        draw = random.Random(f"{self.p['seed']} {number}")
        self.able = draw.gauss(0, 1)

        def within(low_high, sign=0.0):
            # Who is able in one skill is more likely so in another.
            z = 0.6 * sign * self.able + math.sqrt(1 - (0.6 * sign) ** 2) * draw.gauss(0, 1)
            low, high = low_high
            return low + (high - low) * 0.5 * (1 + math.erf(z / math.sqrt(2)))

        self.traits = {}
        for name in (*skills, *SETS):
            known = draw.random() < within(self.p["known"], 1)
            misread = not known and name in MISREAD and draw.random() < self.p["misread"]
            self.traits[name] = {
                "state": KNOWN if known else MISREADING if misread else UNKNOWN,
                "learned": within(self.p["learned"], 1), "guess": within(self.p["guess"]), "slip": within(self.p["slip"]),
                "forgot": within(self.p["forgot"], -1), "days": 1,
            }
        self.heart = within(self.p["heart"])
        self.met = set()
        self.days = random.Random(f"{self.p['seed']} {number} days")
        self.at = 0.0

    def shows(self, name, draw, guess=None):
        """Whether a step comes out right, and whether a misreading explains it where not."""
        t = self.traits[name]
        if t["state"] == MISREADING:
            right = draw.random() < 0.03
            return right, not right and draw.random() < 0.85
        known = t["state"] == KNOWN
        right = draw.random() < (1 - t["slip"] if known else t["guess"] if guess is None else guess)
        return right, not right and draw.random() < (0.05 if known else 0.15)

    def learn(self, name, draw, share):
        t = self.traits[name]
        if t["state"] == UNKNOWN and draw.random() < share * t["learned"]:
            t["state"] = KNOWN
        elif t["state"] == MISREADING:
            drawn = draw.random()
            t["state"] = KNOWN if drawn < 0.6 * share * t["learned"] else UNKNOWN if drawn < 0.6 * share * t["learned"] + 0.1 else MISREADING

    def wait(self, days, draw):
        self.at += days * DAY
        for t in self.traits.values():
            if t["state"] == KNOWN and draw.random() < 1 - math.exp(-t["forgot"] * days / math.sqrt(t["days"])):
                t["state"] = UNKNOWN

    def attempt(self, bench, aid, seed, draw):
        """Does a bench; returns the record that the page would keep, and how each judged step went at first."""
        record = {"scenario": bench["id"], "seed": str(seed), "mode": aid, "passed": True, "at_ms": self.at, "skills": {}, "judged": [], "faults": []}
        outcomes = []
        if aid == "shown":
            for name in {s["skill"] for s in bench["judged"]}:
                self.learn(name, draw, 0.5)
            return record, outcomes
        steps = [s for s in bench["judged"] if aid == "alone" or s["skill"] in MEASURING]
        faults = bench["faults"] if aid == "alone" else []
        called = {f["skill"]: f for f in faults if f["skill"]}
        gone = {}
        for step in steps:
            name = step["skill"]
            fault = called.get(name) if step["code"] == "mended" else None
            by_heart = max(self.heart, self.traits[name]["guess"]) if fault and fault["id"] in self.met else None
            right, misread = self.shows(name, draw, by_heart)
            outcomes.append((name, right))
            if fault:
                gone[fault["id"]] = right
            if not right:
                record["judged"].append({"skill": name, "code": "wrong", "right": False, "told": False, "misread": misread})
            after = right
            if not right:
                state = self.traits[name]["state"]
                after = draw.random() < (0.3, 0.5, 0.9)[1 if state == UNKNOWN else 0 if state == MISREADING else 2]
            if after:
                record["judged"].append({"skill": name, "code": step["code"], "right": True, "told": not right, "misread": False})
            record["passed"] &= after
            record["skills"].setdefault(name, {"got": "pass"})
            if not right:
                record["skills"][name]["got"] = "fail"
        for fault in faults:
            name = fault["set"]
            told = {k: fault[k] for k in ("id", "set", "of", "skill")} | {"named": None, "gone": None, "tested": False}
            known = self.traits[name]["state"] == KNOWN
            told["tested"] = draw.random() < (0.85 if known else 0.35)
            by_heart = self.heart if fault["id"] in self.met else 1 / fault["of"]
            if fault["named"] is not None:
                told["named"], _ = self.shows(name, draw, by_heart)
                outcomes.append((name, told["named"]))
                record["passed"] &= told["named"]
            if fault["gone"] is not None:
                told["gone"] = gone.get(fault["id"], known)
                outcomes.append((name, told["gone"]))
            self.met.add(fault["id"])
            record["faults"].append(told)
        for name in {s["skill"] for s in bench["judged"]} | {f["set"] for f in bench["faults"]}:
            mine = aid == "alone" or name in MEASURING
            self.learn(name, draw, 1.0 if mine else 0.4)
            self.traits[name]["days"] += 1
        return record, outcomes


def cohort(job):
    """Learners of one policy, from `first` up to `last`."""
    policy, population, first, last = job
    core = subprocess.Popen([os.environ.get("LEARNERS_CORE", ROOT / "target/release/examples/learners")], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
    head = json.loads(core.stdout.readline())
    skills, benches = head["skills"], head["benches"]
    found = {"declared": 0, "false": 0, "attempts": [], "whole": [], "reached": 0, "each": [], "bins": [[0, 0.0, 0] for _ in range(10)], "by": {}, "sets": [0, 0], "got": {s: [] for s in skills}}
    for start in range(first, last, 40):
        going = []
        for number in range(start, min(start + 40, last)):
            learner = Learner(number, population, skills)
            going.append({"id": number, "learner": learner, "draw": random.Random(f"{number} {policy} {population}"), "record": None, "done": 0, "session": 0, "left": learner.days.randint(*learner.p["session"]), "true": {}, "was": set(), "sets": set()})
        while going:
            for one in going:
                record = one["record"]
                if policy == "rule" and record:
                    record = record | {"judged": [], "faults": []}  # it never looked at them
                core.stdin.write(json.dumps({"policy": policy, "id": one["id"], "now": one["learner"].at, "seed": one["draw"].getrandbits(32), "record": record}, separators=(",", ":")) + "\n")
            core.stdin.write("\n")
            core.stdin.flush()
            answers = [json.loads(core.stdout.readline()) for _ in going]
            still = [one for one, answer in zip(going, answers) if step(one, answer, skills, benches, found)]
            going = still
    core.stdin.close()
    core.wait()
    return policy, found


def step(one, answer, skills, benches, found):
    """Takes an answer; does the next attempt, or ends. Returns whether the learner goes on."""
    learner, draw = one["learner"], one["draw"]
    mastered = {s for s, is_ in zip(skills, answer["mastered"]) if is_}
    for skill in mastered - one["was"]:
        found["declared"] += 1
        wrong = learner.traits[skill]["state"] != KNOWN
        found["false"] += wrong
        by = found["by"].setdefault(skill, [0, 0])
        by[0] += 1
        by[1] += wrong
    one["was"] = mastered
    for name in set(answer.get("sets", [])) - one["sets"]:
        found["sets"][0] += 1
        found["sets"][1] += learner.traits[name]["state"] != KNOWN
    one["sets"] = set(answer.get("sets", []))
    for skill in mastered:
        if learner.traits[skill]["state"] == KNOWN:
            one["true"].setdefault(skill, one["done"])
    one["record"] = None
    if len(one["true"]) == len(skills) or one["done"] >= MOST_ATTEMPTS or one["session"] >= MOST_SESSIONS:
        found["reached"] += len(one["true"]) == len(skills)
        found["whole"].append(one["done"] if len(one["true"]) == len(skills) else MOST_ATTEMPTS)
        found["each"].append(sum(one["true"].get(s, MOST_ATTEMPTS) for s in skills) / len(skills))
        for s in skills:
            found["got"][s].append(one["true"].get(s, MOST_ATTEMPTS))
        return False
    if answer["next"] is None or one["left"] == 0:
        learner.wait(learner.days.choice(learner.p["gaps"]), draw)
        one["left"] = learner.days.randint(*learner.p["session"])
        one["session"] += 1
        return True
    one["left"] -= 1
    one["done"] += 1
    bench = benches[answer["next"]["bench"]]
    bench = bench | bench["drawn"][answer["next"]["drawn"]]
    record, outcomes = learner.attempt(bench, answer["next"]["aid"], 1000 * one["id"] + one["done"], draw)
    for (name, p), (same, right) in zip(answer.get("foreseen", []), outcomes, strict="foreseen" in answer):
        assert name == same, f"{name} was foreseen where {same} was judged"
        spot = found["bins"][min(9, int(10 * p))]
        spot[0] += 1
        spot[1] += p
        spot[2] += right
    one["record"] = record
    learner.at += 20 * 60_000.0
    return True


def gather(parts):
    whole = {}
    for policy, found in parts:
        kept = whole.setdefault(policy, {"declared": 0, "false": 0, "whole": [], "each": [], "reached": 0, "bins": [[0, 0.0, 0] for _ in range(10)], "by": {}, "sets": [0, 0], "got": {}})
        for key in ("declared", "false", "reached"):
            kept[key] += found[key]
        for key in ("whole", "each"):
            kept[key] += found[key]
        for key, (n, wrong) in found["by"].items():
            by = kept["by"].setdefault(key, [0, 0])
            by[0] += n
            by[1] += wrong
        for key, got in found["got"].items():
            kept["got"].setdefault(key, []).extend(got)
        kept["sets"] = [a + b for a, b in zip(kept["sets"], found["sets"])]
        for spot, more in zip(kept["bins"], found["bins"]):
            for k in range(3):
                spot[k] += more[k]
    return whole


def mean(values):
    return sum(values) / len(values)


def median(values):
    return sorted(values)[len(values) // 2]


def calibration(bins):
    """Expected calibration error: the mean distance of what was foreseen from what came, each bin by its weight."""
    total = sum(n for n, *_ in bins)
    return sum(abs(p - right) for n, p, right in bins if n) / total


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--population", choices=POPULATIONS, default="reported")
    parser.add_argument("--learners", type=int, default=10_000)
    parser.add_argument("--out", type=pathlib.Path, default=ROOT / "target/learners")
    parser.add_argument("--detail", action="store_true")
    parser.add_argument("--policies", nargs="+", default=["rule", "mixed", "learner"])
    asked = parser.parse_args()
    each = max(40, asked.learners // 8)
    jobs = [(policy, asked.population, first, min(first + each, asked.learners)) for policy in asked.policies for first in range(0, asked.learners, each)]
    with multiprocessing.Pool() as pool:
        found = gather(pool.imap_unordered(cohort, jobs))
    if "rule" not in found or "learner" not in found:
        parser.exit(0, f"{found}\n")
    rule, model = found["rule"], found["learner"]
    error = calibration(model["bins"])
    fewer = 1 - mean(model["whole"]) / mean(rule["whole"])
    shown = [found[policy] for policy in asked.policies]
    names = {"rule": "rule before", "mixed": "its mastery, the model's choice", "learner": "learner model"}
    print(f"{asked.learners} simulated learners, population \"{asked.population}\"; this proves the policy, not that people learn\n")
    print(f"| | {' | '.join(names[policy] for policy in asked.policies)} |\n|---|{'---|' * len(shown)}")

    def row(name, figure_of):
        print(f"| {name} | {' | '.join(figure_of(one) for one in shown)} |")

    def share(part, whole):
        return f"{100 * part / whole:.1f} %" if whole else "-"

    row("false mastery, of all masteries told", lambda one: share(one["false"], one["declared"]))
    row("the same, of the skill where it is most", lambda one: max((wrong / n, f"{100 * wrong / n:.1f} % ({skill})") for skill, (n, wrong) in one["by"].items())[1])
    row("the same, of sets of similar faults", lambda one: share(one["sets"][1], one["sets"][0]))
    row("attempts until all twelve skills are truly mastered, mean", lambda one: f"{mean(one['whole']):.1f}")
    row("the same, median", lambda one: f"{median(one['whole'])}")
    row(f"learners who reach it within {MOST_ATTEMPTS} attempts", lambda one: share(one["reached"], asked.learners))
    row("attempts until one skill is, mean over skills", lambda one: f"{mean(one['each']):.1f}")
    row("fewer attempts than by the rule", lambda one: share(mean(rule["whole"]) - mean(one["whole"]), mean(rule["whole"])))
    row("calibration error of what is foreseen", lambda one: f"{calibration(one['bins']):.3f}" if any(n for n, *_ in one["bins"]) else "-")
    print()
    false = [one["false"] / max(1, one["declared"]) for one in (rule, model)]
    print("| foreseen | steps | came right |\n|---|---|---|")
    for n, p, right in model["bins"]:
        if n:
            print(f"| {p / n:.2f} | {n} | {right / n:.2f} |")
    asked.out.mkdir(parents=True, exist_ok=True)
    told = f"{asked.learners} simulated learners; false mastery {100 * false[0]:.1f} % by the rule before, {100 * false[1]:.1f} % by the model. This proves the policy, not that people learn."
    (asked.out / "learners.svg").write_text(figure.draw(rule["whole"], model["whole"], model["bins"], MOST_ATTEMPTS, told))
    print(f"\nfigure: {asked.out / 'learners.svg'}")
    met = {"false mastery at most 5 %": false[1] <= 0.05, "a quarter fewer attempts": fewer >= 0.25, "calibration error at most .05": error <= 0.05}
    print("; ".join(f"{name}: {'yes' if is_met else 'NO'}" for name, is_met in met.items()))
    if asked.detail:
        for skill in model["got"]:
            r, m = rule["by"].get(skill, [0, 0]), model["by"].get(skill, [0, 0])
            print(f"{skill:12} rule {mean(rule['got'][skill]):6.1f} {100 * r[1] / max(1, r[0]):5.1f} %   model {mean(model['got'][skill]):6.1f} {100 * m[1] / max(1, m[0]):5.1f} %")
    if not all(met.values()):
        raise SystemExit(1)
