#!/usr/bin/env python3
"""Checks the house: which folder may include which, no circles, no Qt in core, small files, colours by
meaning, numbers read in one place. Prints what breaks a rule; exit status 1 then.

usage: check_house.py SOURCE_DIR
"""
import os
import re
import sys

# What each folder may include besides itself. Everything else is an upward or sideways arrow.
MAY_INCLUDE = {
    "core/maths": [],
    "core/measure": ["core/maths"],
    "core/steps": ["core/measure", "core/maths"],
    "core/steps/contract": ["core/measure", "core/maths"],
    "core/intake": ["core/measure", "core/maths"],
    "core/history": ["core/steps", "core/intake", "core/measure", "core/maths"],
    "core/store": ["core/history", "core/steps", "core/intake", "core/measure", "core/maths"],
    "core/report": ["core/history", "core/steps", "core/measure", "core/maths"],
    "ui/theme": [],
    "ui/charts": ["ui/theme", "core/"],
    "ui/forms": ["ui/theme", "core/"],
    "ui/editing": ["core/"],
    "ui/report": ["ui/charts", "ui/theme", "core/"],
    "ui/bench": ["ui/", "core/"],
    "app/batch": ["core/", "ui/report", "app/batch"],
    "app/desktop": ["core/", "ui/"],
}
LONGEST = 400


def sources(top):
    for folder in ("app", "core", "ui"):
        for path, _, names in os.walk(os.path.join(top, folder)):
            for name in sorted(names):
                if name.endswith((".h", ".cpp")):
                    yield os.path.relpath(os.path.join(path, name), top)


def folder_of(file):
    return max((f for f in MAY_INCLUDE if file.startswith(f + "/")), key=len, default=None)


def other_step(file, target):
    """A step's parts know the contract and their own step, never another step."""
    part = re.match(r"core/steps/([a-z_]+)/", file)
    if not part or part.group(1) == "contract" or not target.startswith("core/steps/"):
        return False
    own = "core/steps/" + part.group(1)
    return not target.startswith(("core/steps/contract/", own + "/", own + ".h"))


def cycles(includes):
    """Circles among headers."""
    done, found = set(), []

    def walk(unit, trail):
        if unit in trail:
            found.append(" -> ".join(trail[trail.index(unit):] + [unit]))
            return
        if unit in done:
            return
        for other in sorted(includes.get(unit, ())):
            walk(other, trail + [unit])
        done.add(unit)

    for unit in sorted(includes):
        walk(unit, [])
    return found


def main(top):
    problems, includes = [], {}
    for file in sources(top):
        with open(os.path.join(top, file), encoding="utf-8") as stream:
            text = stream.read()
        folder = folder_of(file)
        if folder is None:
            problems.append(f"{file}: belongs to no known folder of the house")
            continue
        lines = text.count("\n")
        if lines > LONGEST:
            problems.append(f"{file}: {lines} lines; {LONGEST} at most")
        for target in re.findall(r'#include "([^"]+)"', text):
            if not target.startswith(("core/", "ui/", "app/")):
                continue
            allowed = [folder + "/"] + [a if a.endswith("/") else a + "/" for a in MAY_INCLUDE[folder]]
            if not any(target.startswith(a) for a in allowed):
                problems.append(f"{file}: includes {target}, which {folder} may not")
            if other_step(file, target):
                problems.append(f"{file}: includes {target}, a part of another step")
            if file.endswith(".h"):
                includes.setdefault(file, set()).add(target)
        if file.startswith("core/") and re.search(r"#include <Q[A-Z]", text):
            problems.append(f"{file}: core includes Qt")
        if file.startswith("ui/") and not file.startswith("ui/theme/") and re.search(r"QColor\([\"0-9#]", text):
            problems.append(f"{file}: a colour literal outside ui/theme")
        if re.search(r"\b(atof|strtod|stod|stof)\(|\.toDouble\(", text):
            problems.append(f"{file}: reads numbers by itself; use core/measure/number_text.h")
    problems += ["circle: " + circle for circle in cycles(includes)]
    print("\n".join(problems) or "the house is in order")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
