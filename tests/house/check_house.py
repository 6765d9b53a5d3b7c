#!/usr/bin/env python3
"""Checks the house: which folder may include which, no circles of headers and sources, no Qt and no printing
in core, small files and classes, colours and sizes by meaning, numbers read in one place. Prints what breaks a
rule; exit status 1 then. test_check_house.py breaks each rule once.

usage: check_house.py SOURCE_DIR
"""
import os
import re
import sys

# What each folder may include besides itself. Everything else is an upward or sideways arrow.
MAY_INCLUDE = {
    "core/maths": [],
    "core/measure": ["core/maths"],
    "core/fields": ["core/measure", "core/maths"],
    "core/steps": ["core/fields", "core/measure", "core/maths"],
    "core/steps/contract": ["core/fields", "core/measure", "core/maths"],
    "core/intake": ["core/measure", "core/maths"],
    "core/history": ["core/steps", "core/fields", "core/intake", "core/measure", "core/maths"],
    "core/store": ["core/history", "core/steps", "core/fields", "core/intake", "core/measure", "core/maths"],
    "core/report": ["core/history", "core/steps", "core/fields", "core/measure", "core/maths"],
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
MOST_MEMBERS = 30

# Style sheets that measure in pixels outside ui/theme, and why. No file may join them without a reason.
PIXELS = {
    "ui/report/report_html.cpp": "a page for browsers, where lines are a pixel",
    "ui/bench/step_page.cpp": "frames of one state, made when it is known",
    "ui/bench/findings_panel.cpp": "frames of one state, made when it is known",
    "ui/bench/main_window.cpp": "frames of one state, made when it is known",
}
# Named colours outside ui/theme, and why.
NAMED_COLOURS = {"ui/charts/surface_image.cpp": "what stands on a colour of heights is black or white by its lightness"}

NUMBER_PARSER = r"\b(ato[fil]+|strto[a-z]+|sto(d|f|ld)|sscanf|from_chars)\(|\.to(Double|Float)\("
NAMED_COLOUR = r"\bQt::(black|white|red|green|blue|cyan|magenta|yellow|gray|(dark|light)[A-Z]\w+)\b"


def sources(top, folders=("app", "core", "ui")):
    for folder in folders:
        for path, _, names in os.walk(os.path.join(top, folder)):
            for name in sorted(names):
                if name.endswith((".h", ".cpp")):
                    yield os.path.relpath(os.path.join(path, name), top)


def folder_of(file):
    return max((f for f in MAY_INCLUDE if file.startswith(f + "/")), key=len, default=None)


def other_step(file, target):
    """A step knows its own parts and its parts know it and the contract; neither knows the parts of another step."""
    own = re.match(r"core/steps/(\w+)(/|\.)", file)
    other = re.match(r"core/steps/(\w+)(/|\.)", target)
    if not own or not other or "contract" in (own.group(1), other.group(1)) or own.group(1) == other.group(1):
        return False
    return own.group(2) == "/" or other.group(2) == "/"  # the catalogue knows every step, not its parts


def unit_of(file):
    """A header and its source are one thing."""
    return os.path.splitext(file)[0]


def circles(includes):
    """Sets of units that all come back to each other (Tarjan 1972); each as a sorted list."""
    number, lowest, open_units, found = {}, {}, [], []

    def walk(unit):
        number[unit] = lowest[unit] = len(number)
        open_units.append(unit)
        for other in sorted(includes.get(unit, ())):
            if other not in number:
                walk(other)
                lowest[unit] = min(lowest[unit], lowest[other])
            elif other in open_units:
                lowest[unit] = min(lowest[unit], number[other])
        if lowest[unit] == number[unit]:
            at = open_units.index(unit)
            if len(open_units) - at > 1:
                found.append(sorted(open_units[at:]))
            del open_units[at:]

    for unit in sorted(includes):
        if unit not in number:
            walk(unit)
    return found


def uncommented(text):
    return re.sub(r"//[^\n]*|/\*.*?\*/", "", text, flags=re.S)


def without_strings(text):
    text = re.sub(r'R"\(.*?\)"', '""', text, flags=re.S)
    return re.sub(r'"(?:\\.|[^"\\\n])*"', '""', text)


def public_members(code):
    """Each class with the number of its public members, constructors and destructor not counted."""
    for head in re.finditer(r"\b(class|struct)\s+(\w+)(?:\s+final)?\s*(?::[^;{()]*)?\{", code):
        name, public, count, depth, words = head.group(2), head.group(1) == "struct", 0, 1, ""
        uncounted = re.compile(r"\s*(using|friend|static_assert|Q_[A-Z]+)\b|[^(]*(?<![\w:])~?" + name + r"\s*\(")
        for sign in code[head.end():]:
            if depth == 1 and sign in ";{":
                count += public and bool(words.strip()) and not uncounted.match(words)
                words = ""
            elif depth == 1:
                words += sign
                label = re.search(r"\b(public|private|protected|signals)(\s+slots)?\s*:$", words)
                if label:
                    public, words = label.group(1) in ("public", "signals"), ""
            depth += {"{": 1, "}": -1}.get(sign, 0)
            if sign == "}":
                words = ""
            if depth == 0:
                break
        yield name, count


def style_problems(file, text):
    """What a file must keep to by itself, whatever the others are. `text` has no comments."""
    code = without_strings(text)
    for name, count in public_members(code):
        if count > MOST_MEMBERS:
            yield f"class {name} has {count} public members; {MOST_MEMBERS} at most"
    if re.search(NUMBER_PARSER, code):
        yield "reads numbers by itself; use core/measure/number_text.h"
    if file.startswith("core/") and re.search(r"#include <Q[A-Z]", text):
        yield "core includes Qt"
    if file.startswith("core/") and re.search(r"\bstd::c(out|err|log)\b|\bf?printf\(|\bf?puts\(", code):
        yield "core talks to the user by itself"
    if not file.startswith("ui/theme/"):
        if re.search(r"\bQColor(\s+\w+)?\([\"0-9#]|\bqRgba?\([0-9]", text):
            yield "a colour literal outside ui/theme"
        if file not in NAMED_COLOURS and re.search(NAMED_COLOUR, code):
            yield "a named colour outside ui/theme"
        if re.search(r"setPixelSize\(|font(-size)?:[^;}\"]*\dpx", text):
            yield "type in pixels; sizes are points of ui/theme"
        if file not in PIXELS and re.search(r"\d(px)\b", text):
            yield "pixels in a style sheet outside ui/theme"


def main(top):
    problems, includes = [], {}
    for file in sources(top, ("app", "core", "ui", "tests", "demo-sessions")):
        if not re.fullmatch(r"[a-z0-9_]+\.(h|cpp)", os.path.basename(file)):
            problems.append(f"{file}: file names are lower_snake_case")
        with open(os.path.join(top, file), encoding="utf-8") as stream:
            lines = stream.read().count("\n")
        if lines > LONGEST:
            problems.append(f"{file}: {lines} lines; {LONGEST} at most")
    for path, _, names in os.walk(os.path.join(top, "core")):
        for name in (n for n in names if n == "CMakeLists.txt"):
            with open(os.path.join(path, name), encoding="utf-8") as stream:
                if "Qt6" in stream.read():
                    problems.append(f"{os.path.relpath(os.path.join(path, name), top)}: core links Qt")
    for file in sources(top):
        with open(os.path.join(top, file), encoding="utf-8") as stream:
            text = stream.read()
        folder = folder_of(file)
        if folder is None:
            problems.append(f"{file}: belongs to no known folder of the house")
            continue
        for target in re.findall(r'#include "([^"]+)"', text):
            if not target.startswith(("core/", "ui/", "app/")):
                continue
            allowed = [folder + "/"] + [a if a.endswith("/") else a + "/" for a in MAY_INCLUDE[folder]]
            if not any(target.startswith(a) for a in allowed):
                problems.append(f"{file}: includes {target}, which {folder} may not")
            if other_step(file, target):
                problems.append(f"{file}: includes {target}, a part of another step")
            unit, other = unit_of(file), unit_of(target)
            if unit != other:
                includes.setdefault(unit, set()).add(other)
        problems += [f"{file}: {problem}" for problem in style_problems(file, uncommented(text))]
    problems += ["circle: " + ", ".join(circle) for circle in circles(includes)]
    print("\n".join(problems) or "the house is in order")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
