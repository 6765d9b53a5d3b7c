#!/usr/bin/env python3
"""Breaks each rule of check_house.py once, in a tree of its own, and sees that it is said; a tree that keeps
them all says nothing. Exit status 1 when a rule can be broken unnoticed.

usage: test_check_house.py
"""
import contextlib
import io
import os
import sys
import tempfile

from check_house import LONGEST, MOST_MEMBERS, main

SOUND = {
    "core/maths/mean.h": "#pragma once\n/// 3px, atof(\ndouble mean(double a, double b);\n",
    "core/maths/CMakeLists.txt": "fettle_library(maths)\n",
    "core/measure/unit.h": '#pragma once\n#include "core/maths/mean.h"\nclass Unit {\n public:\n  Unit();\n  int key;\n};\n',
    "ui/theme/palette.cpp": 'const QColor ink("#202020"); // 3px\n',
}

# What breaks a rule, and what is said of it.
BROKEN = [
    ("core/maths/up.h", '#include "core/measure/unit.h"\n', "which core/maths may not"),
    ("core/measure/unit.h", '#include "core/measure/other.h"\n', "circle: core/measure/other, core/measure/unit"),
    ("core/measure/unit.cpp", '#include "core/measure/other.h"\n', "circle: core/measure/other, core/measure/unit"),
    ("core/steps/belt/a.cpp", '#include "core/steps/bed/b.h"\n', "a part of another step"),
    ("core/steps/belt.cpp", '#include "core/steps/bed/b.h"\n', "a part of another step"),
    ("core/steps/belt/a.cpp", '#include "core/steps/bed.h"\n', "a part of another step"),
    ("core/maths/qt.h", "#include <QString>\n", "core includes Qt"),
    ("core/maths/CMakeLists.txt", "target_link_libraries(a Qt6::Core)\n", "core links Qt"),
    ("core/maths/talk.cpp", 'void f() { std::cerr << "no"; }\n', "talks to the user"),
    ("core/maths/read.cpp", "double f(const char* t) { return std::strtod(t, nullptr); }\n", "reads numbers"),
    ("ui/forms/read.cpp", "double f(QString t) { return t.toDouble(); }\n", "reads numbers"),
    ("core/maths/long.cpp", "//\n" * (LONGEST + 1), "lines; "),
    ("tests/core/test_long.cpp", "//\n" * (LONGEST + 1), "lines; "),
    ("core/maths/wide.h", "struct Wide {\n" + "  int a{};\n" * (MOST_MEMBERS + 1) + "};\n", "public members"),
    ("ui/forms/red.cpp", 'const QColor red("#ff0000");\n', "a colour literal"),
    ("ui/forms/blue.cpp", "const auto blue = Qt::darkBlue;\n", "a named colour"),
    ("ui/forms/type.cpp", "void f(QFont& font) { font.setPixelSize(12); }\n", "type in pixels"),
    ("ui/forms/sheet.cpp", 'const char* sheet = "border: 1px solid";\n', "pixels in a style sheet"),
    ("core/maths/CamelCase.h", "\n", "lower_snake_case"),
    ("core/elsewhere/a.h", "\n", "no known folder"),
]


def said_of(files):
    with tempfile.TemporaryDirectory() as top:
        for name, text in files.items():
            path = os.path.join(top, name)
            os.makedirs(os.path.dirname(path), exist_ok=True)
            with open(path, "w", encoding="utf-8") as file:
                file.write(text)
        said = io.StringIO()
        with contextlib.redirect_stdout(said):
            status = main(top)
        return status, said.getvalue()


def test():
    problems = []
    status, said = said_of(SOUND)
    if status != 0:
        problems.append("a sound tree: " + said)
    for name, text, expected in BROKEN:
        files = dict(SOUND, **{name: text})
        if expected.startswith("circle: "):
            files["core/measure/other.h"] = '#include "core/measure/unit.h"\n'
        status, said = said_of(files)
        if status != 1 or expected not in said or said.count("\n") != 1:
            problems.append(f"{name}: wanted only '{expected}', found: {said}")
    print("\n".join(problems) or f"{len(BROKEN)} broken rules were noticed")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(test())
