"""The schema of scenario files against the published rules of JSON Schema (jsonschema, draft 2020-12) and against our own reader.

Every scenario of the project is valid by both. A file in which a field is unknown, or of another type, is refused by both, wherever that
field is.
"""

import copy
import json
import shutil
import subprocess
import tomllib

import jsonschema

from reference import HOST, ROOT, WORK, Checks, dicrotic

checks = Checks("schema")
HERE = WORK / "schema"
shutil.rmtree(HERE, ignore_errors=True)
HERE.mkdir(parents=True)


def schema_of(*more):
    path = HERE / "schema.json"
    dicrotic("schema", *more, "--out", path)
    schema = json.loads(path.read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema), schema


validator, schema = schema_of()
scenarios = sorted((ROOT / "scenarios").glob("*.toml"))
files = {path.name: tomllib.loads(path.read_text(encoding="utf-8")) for path in scenarios}
wrong = [(name, error.message) for name, value in files.items() for error in validator.iter_errors(value)]
checks.check(len(files) > 40 and not wrong, f"{len(files)} scenarios are valid by the schema: {wrong[:3]}")

# A scenario with something in every table.
FULL = {
    "id": "full", "level": 1, "title": "t", "aim": "a", "brief": "b", "help": "alone", "name_faults": True, "time_base_s": 10.0,
    "before": [{"wait": 1.0}],
    "power_line": {"hz": 50.0, "volts": 230.0},
    "subject": {"age_years": 30.0, "fitness": "low", "regular": True},
    "sensor": {"kind": "film", "shield": "good"},
    "bench": {
        "start": "wired", "lamp_on": True, "strap": {"on": True, "tightness": 0.5, "place": "pulp", "side": "to_skin"},
        "place": [{"part": "phone", "x": 10.0, "y": 10.0}], "plug": [{"end": "data_computer", "socket": "port2"}],
    },
    "trouble": {"unrest": 0.1},
    "recorder": {"range_v": 0.1, "input": 1, "bits": 16, "scale": 1.0, "shown": True},
    "task": {"kind": "given_window", "seconds": [15.0]},
    "pass": {"window_s": 15.0, "record_s": 15.0},
    "fault": [{"name": "charger_near", "severity": [0.5, 0.8]}],
    "misreading": [{"name": "x", "field": "count", "formula": "2*n_true", "tolerance": 0.5, "words": "w"}],
    "hint": [{"about": "count", "rung": "look", "words": "w"}],
    "assignment": {"key": "k", "seeds": "each", "attempts": 2, "opening": "o", "closing": "c", "worked": True, "password": "chalk and slate"},
}


def places(value, at=()):
    """Every table and every value in a file, by its path."""
    yield at, value
    inside = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, inner in inside:
        yield from places(inner, (*at, key))


def with_put(value, at, key, put):
    changed = copy.deepcopy(value)
    here = changed
    for step in at:
        here = here[step]
    here[key] = put
    return changed


def inline(value):
    """A value as TOML has it on one line."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{json.dumps(key)} = {inline(inner)}" for key, inner in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(inline, value)) + "]"
    return json.dumps(value)


def refused_by_us(values):
    """Which of these files our own reader refuses, in one run."""
    paths = [HERE / f"{k}.toml" for k in range(len(values))]
    for path, value in zip(paths, values):
        path.write_text("".join(f"{json.dumps(key)} = {inline(inner)}\n" for key, inner in value.items()), encoding="utf-8")
    # Not `dicrotic()`, which ends the script where a file is refused.
    done = subprocess.run([HOST, "check", *map(str, paths)], capture_output=True, text=True, check=False)
    return [f"{path}: valid" not in done.stdout for path in paths]


checks.check(validator.is_valid(FULL) and refused_by_us([FULL]) == [False], "a file with something in every table is valid by both")

made = []
for at, value in places(FULL):
    if at[:1] == ("before",):
        continue  # a step may be anything that a log may hold
    if isinstance(value, dict):
        made.append((f"{at} with a field more", with_put(FULL, at, "colour", 1)))
    if at and not isinstance(at[-1], int):
        other = "yes" if isinstance(value, (bool, int, float, dict, list)) else 7
        made.append((f"{at} of another type", with_put(FULL, at[:-1], at[-1], other)))
for key in schema["required"]:
    made.append((f"without {key}", {name: value for name, value in FULL.items() if name != key}))
ours = refused_by_us([value for _, value in made])
alone = [what for (what, value), refused in zip(made, ours) if not refused or validator.is_valid(value)]
checks.check(len(made) > 80 and not alone, f"{len(made)} files with an unknown, ill-typed or missing field are refused by both: {alone[:4]}")

course, _ = schema_of("--course")
COURSE = {"course": {"id": "c", "title": "t"}, "part": [{"scenario": "id = 1", "due": "2026-09-01"}]}
bad = [with_put(COURSE, (), "colour", 1), with_put(COURSE, ("part", 0), "due", 3), with_put(COURSE, ("course",), "id", 3), {"course": COURSE["course"]}]
checks.check(course.is_valid(COURSE) and not any(map(course.is_valid, bad)), "a course is valid by its schema, others are not")
checks.finish()
