#!/usr/bin/env python3
"""Checks that the code shown in DEVELOPERS.md is the code that the tests compile: every code block under a
line that names a file holds that file. Exit status 1 when one differs.

usage: check_example.py SOURCE_DIR
"""
import os
import re
import sys


def main(top):
    with open(os.path.join(top, "DEVELOPERS.md"), encoding="utf-8") as stream:
        shown = re.findall(r"^`([\w/]+\.(?:h|cpp))`\n```cpp\n(.*?)\n```$", stream.read(), flags=re.M | re.S)
    problems = [] if shown else ["DEVELOPERS.md shows no file"]
    for name, code in shown:
        with open(os.path.join(top, name), encoding="utf-8") as stream:
            if stream.read().rstrip() != code.rstrip():
                problems.append(f"{name} differs from what DEVELOPERS.md shows")
    print("\n".join(problems) or f"{len(shown)} files are shown as they are")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
