#!/usr/bin/env python3
"""Checks the schema of histories: it is the one the program makes, the demo and what the program exports keep
to it, broken ones do not.

usage: check_schema.py SOURCE_DIR FETTLE_BATCH     exit status 77: jsonschema is not installed, skipped
"""
import copy
import json
import os
import subprocess
import sys
import tempfile

try:
    import jsonschema
except ImportError:
    print("skipped: the Python package jsonschema is not installed")
    sys.exit(77)


def main(top, batch):
    with open(os.path.join(top, "resources/schema/history.schema.json"), encoding="utf-8") as file:
        schema = json.load(file)
    made = json.loads(subprocess.run([batch, "describe", "--history"], check=True, capture_output=True).stdout)
    if made != schema:
        print("the schema is not the one the program makes: fettle-batch describe --history > "
              "resources/schema/history.schema.json")
        return 1
    check = jsonschema.validators.validator_for(schema)
    check.check_schema(schema)
    validator = check(schema)
    demo_path = os.path.join(top, "demo-sessions/wagtail/wagtail.json")
    with open(demo_path, encoding="utf-8") as file:
        demo = json.load(file)
    with tempfile.TemporaryDirectory() as folder:
        machine, text = os.path.join(folder, "m.fettle"), os.path.join(folder, "m.json")
        subprocess.run([batch, "import", demo_path, machine], check=True)
        subprocess.run([batch, "export", machine, text], check=True)
        with open(text, encoding="utf-8") as file:
            exported = json.load(file)
    problems = [f"{name}: {list(e.path)}: {e.message[:200]}"
                for name, history in (("demo", demo), ("exported", exported))
                for e in validator.iter_errors(history)]
    for name, spoil in (
            ("no step", lambda h: h["sessions"][0]["runs"][0].pop("step")),
            ("a state that is none", lambda h: h["sessions"][0]["runs"][0].update(state="done")),
            ("another version", lambda h: h.update(fettle=2))):
        broken = copy.deepcopy(exported)
        spoil(broken)
        if validator.is_valid(broken):
            problems.append(f"{name}: accepted")
    print("\n".join(problems) or "the histories keep to their schema")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
