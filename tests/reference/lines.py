"""The README's recipes for grading on more than one machine, as they stand there: what two worker processes of Dask make of a
class's lines, and what GNU parallel makes of them, is byte for byte what one run makes."""

import os
import re
import subprocess
import sys

from reference import HOST, ROOT, WORK, Checks

RESULTS = 110  # of the class of 300: each is replayed three times here
checks = Checks("lines")
work = WORK / "lines"
handed = work / "in"
handed.mkdir(parents=True, exist_ok=True)
for old in handed.iterdir():
    old.unlink()

# The class as the program's own tests make it, with everything that goes wrong in one.
subprocess.run(
    ["cargo", "test", "--locked", "--quiet", "--test", "class_lines", "three_hundred_results_are_written", "--", "--exact"],
    cwd=ROOT, env={**os.environ, "DICROTIC_CLASS_300": str(handed)}, check=True, capture_output=True,
)
# A result is one line without its line ends, which stand between values only. Among them is what is none.
lines = []
for n, path in enumerate(sorted(handed.iterdir())[:RESULTS]):
    lines.append(path.read_text(encoding="utf-8", errors="replace").replace("\r", " ").replace("\n", " "))
    lines.append(["", "nothing here", '{"format": "a cake"}', "{", "D3.AAAA", "a, b\u2028c"][n % 6])
(work / "results.txt").write_bytes("".join(line + "\n" for line in lines).encode())
assignment = handed.parent / "assignment.toml"


def block(kind, mark):
    """The fenced text of a kind in the README that holds a mark."""
    found = [text for text in re.findall(rf"```{kind}\n(.*?)```", (ROOT / "README.md").read_text(), re.S) if mark in text]
    checks.check(len(found) == 1, f"README.md has {len(found)} recipes of {kind} with {mark}")
    return found[0]


def run(command, **more):
    """A command in the work folder, with the program at hand; its standard output."""
    there = {**os.environ, "PATH": f"{HOST.parent}{os.pathsep}{os.environ['PATH']}"}
    done = subprocess.run(command, cwd=work, env=there, capture_output=True, check=False, timeout=120, **more)
    checks.check(done.returncode == 0, f"{command}: {done.stderr.decode(errors='replace')[-2000:]}")
    return done.stdout


with open(work / "results.txt", "rb") as given:
    whole = run(["dicrotic", "grade", "--lines", "--set", assignment], stdin=given)
answers = whole.split(b"\n")
checks.check(len(answers) == len(lines) + 1 > 200, f"{len(answers) - 1} answers to {len(lines)} lines")
checks.check(sum(b'"error":' in one for one in answers) >= RESULTS, "what is no result has no error")
checks.check(sum(b'"verified":"yes"' in one for one in answers) >= 80, "hardly any result is verified")

(work / "grade.py").write_text(block("python", "dask"))
(work / "answers.txt").unlink(missing_ok=True)
run([sys.executable, "grade.py", assignment, "results.txt", "answers.txt"])
checks.check((work / "answers.txt").read_bytes() == whole, "two processes give other bytes than one")

(work / "set.toml").write_bytes(assignment.read_bytes())
(work / "answers.txt").unlink()
run(["bash", "-euo", "pipefail", "-c", block("sh", "parallel")])
checks.check((work / "answers.txt").read_bytes() == whole, "GNU parallel gives other bytes than one run")
checks.finish()
