"""The schema and the reader agree: the schema never refuses what the reader accepts, and it refuses every wrong key, type, sign and choice.

Every fixture job, and mutants of them with one change each, go through both.
"""
import copy
import json
import os
import pathlib
import random
import subprocess
import sys

import jsonschema
import yaml

program, fixtures = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2]).resolve()


class Text(yaml.SafeLoader):
    """Reads dates, yes and no, and keys that are numbers as the text that they are in a job."""

    def construct_mapping(self, node, deep=False):
        return {str(key): value for key, value in super().construct_mapping(node, deep).items()}


Text.yaml_implicit_resolvers = {
    first: [(tag, pattern) for tag, pattern in resolvers if "timestamp" not in tag and "bool" not in tag]
    for first, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}

schema = json.loads(subprocess.run([program, "schema"], capture_output=True, check=True).stdout)
jsonschema.Draft7Validator.check_schema(schema)
validator = jsonschema.Draft7Validator(schema)


def schema_takes(job):
    return validator.is_valid(job)


def reader_takes(job):
    """Whether keys and values pass; what the geometry says is not the schema's affair."""
    done = subprocess.run([program, "solve", "-", "--format", "json"], input=yaml.safe_dump(job, sort_keys=False).encode(), capture_output=True,
                          cwd=fixtures / "jobs")
    assert done.returncode in (0, 1, 2), done.stderr.decode()
    return done.returncode != 2, done.stderr.decode()


def places(value, path=()):
    yield path, value
    if isinstance(value, dict):
        for key, child in value.items():
            yield from places(child, path + (key,))
    elif isinstance(value, list):
        for index, child in enumerate(value):
            yield from places(child, path + (index,))


def put(job, path, value):
    job = copy.deepcopy(job)
    at = job
    for step in path[:-1]:
        at = at[step]
    if value is None:
        del at[path[-1]]
    else:
        at[path[-1]] = value
    return job


jobs = [yaml.load(path.read_text(), Text) for path in sorted((fixtures / "jobs").glob("*.yaml"))]
failed = []
for job in jobs:
    assert schema_takes(job), list(validator.iter_errors(job))[0]
    assert reader_takes(job)[0]

for name in ("twelve-mistakes",):
    assert not schema_takes(yaml.load((fixtures / "refused" / f"{name}.yaml").read_text(), Text)), name

draw = random.Random("schema mutants")
# Words that are wrong wherever they stand in a job that is right: the schema must refuse them too.
wrong_anywhere = [{"unheard": 1}, -1e9, True, "no length", "7 x 3", []]
tried = refused_by_both = 0
for _ in range(700):
    job = draw.choice(jobs)
    path, old = draw.choice([(path, value) for path, value in places(job) if path])
    kind = draw.randrange(5)
    if kind == 0:
        mutant = put(job, path, None)
    elif kind == 1:
        mutant = put(job, path, draw.choice(wrong_anywhere))
    elif kind == 2 and isinstance(old, dict):
        mutant = put(job, path + ("unheard",), 1)
    elif kind == 3 and isinstance(old, (int, float)) and not isinstance(old, bool):
        mutant = put(job, path, -old)
    else:
        mutant = put(job, path, draw.choice([12, 0.5, "7 3/4", "5' 2 3/8\"", "184 mm", "auto", "up", "last", "4x4", "7 in 11", "tread 2", "[1, 2]"]))
    tried += 1
    by_schema, (by_reader, why) = schema_takes(mutant), reader_takes(mutant)
    if by_reader and not by_schema:
        failed.append(f"the schema refuses what the reader accepts: {path} {old!r}: {list(validator.iter_errors(mutant))[0].message[:200]}")
    refused_by_both += not by_reader and not by_schema
    # A key left out or put in is the schema's affair, whatever the values are.
    wrong_keys = any(word in why for word in ("unknown key", "is missing", "is not described", "cannot be a map", "cannot be a list"))
    if kind in (0, 2) and wrong_keys and by_schema and not by_reader:
        failed.append(f"the reader refuses what the schema accepts: {path} {old!r}: {why[:300]}")

print(f"{tried} mutants, {refused_by_both} refused by both")
assert refused_by_both > 150
for line in failed:
    print("FAILED", line)
print(f"{len(failed)} failed")
sys.exit(1 if failed else 0)
