"""Every key that the JSON of any fixture job has stands on the page of the results: result_keys.py PROGRAM FIXTURES."""

import json
import pathlib
import re
import subprocess
import sys

NAMED = {"stairs", "posts", "sections", "handrails"}
# Rows of the verdicts: the page describes them among the checks.
VERDICTS = ("checks[]", "not_judged[]", "not_applied[]")


def keys_of(value, path, found):
    if isinstance(value, dict):
        for key, inner in value.items():
            at = f"{path}.NAME" if path in NAMED else f"{path}.{key}" if path else key
            if path not in NAMED and at not in NAMED and not at.startswith(VERDICTS):
                found.add(at + ("[]" if is_group_list(inner) else ""))
            keys_of(inner, at, found)
    elif is_group_list(value):
        for inner in value:
            keys_of(inner, path + "[]", found)


def is_group_list(value):
    return isinstance(value, list) and any(isinstance(inner, dict) for inner in value)


def main(program, fixtures):
    page = subprocess.run([program, "results"], capture_output=True, text=True, check=True).stdout
    told = set(re.findall(r"^\| `([^`]+)`", page, re.MULTILINE))
    jobs = sorted((pathlib.Path(fixtures) / "jobs").glob("*.yaml"))
    if len(jobs) < 20 or len(told) < 200:
        sys.exit(f"only {len(jobs)} jobs and {len(told)} keys were found")
    missing = {}
    for job in jobs:
        run = subprocess.run([program, "solve", job, "--format", "json"], capture_output=True, text=True)
        if not run.stdout:
            continue
        found = set()
        keys_of(json.loads(run.stdout), "", found)
        for key in found - told:
            missing.setdefault(key, job.name)
    for key, job in sorted(missing.items()):
        print(f"{key} (in the results of {job}) does not stand on the page")
    sys.exit(1 if missing else 0)


main(*sys.argv[1:])
