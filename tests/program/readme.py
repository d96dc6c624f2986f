"""The README and the pages that the program prints of itself are true: the excerpt is what it prints, the job solves."""
import json
import pathlib
import re
import subprocess
import sys

program, root = sys.argv[1], pathlib.Path(sys.argv[2])
readme = (root / "README.md").read_text()
sheet = subprocess.run([program, "solve", str(root / "fixtures/jobs/fennel-wharf.yaml")], capture_output=True, check=True).stdout.decode()
blocks = re.findall(r"^```(\w*)\n(.*?)^```$", readme, re.S | re.M)
excerpts = [text for language, text in blocks if not language]
assert excerpts, "the README shows no excerpt"
check = subprocess.run([program, "check", str(root / "fixtures/jobs/old-quay.yaml")], capture_output=True)
assert check.returncode == 1, check.stderr.decode()
sheet += check.stdout.decode()
for excerpt in excerpts:
    for part in re.split(r"^ *\.\.\.\n", excerpt, flags=re.M):
        assert part in sheet, f"in no sheet:\n{part}"
job = next(text for language, text in blocks if language == "yaml")
done = subprocess.run([program, "solve", "-"], input=job.encode(), capture_output=True)
assert done.returncode == 0, done.stderr.decode()
assert (root / "cli/example.yaml").read_bytes() == (root / "fixtures/jobs/fennel-wharf.yaml").read_bytes()
for command, page in (("keys", "job-file.md"), ("results", "results.md"), ("rules --keys", "rules.md")):
    printed = subprocess.run([program, *command.split()], capture_output=True, check=True).stdout
    assert printed == (root / "docs" / page).read_bytes(), f"docs/{page} is not what `rakewright {command}` prints"
documented = set(re.findall(r"^\| `([^`]+)` \|", (root / "docs/results.md").read_text(), re.M))


def undocumented(value, path):
    """Every key under a value that the page of the results does not name; the job's own names stand as NAME."""
    if isinstance(value, list):
        return [key for entry in value for key in undocumented(entry, path + "[]")] if path + "[]" in documented else []
    if not isinstance(value, dict):
        return []
    missing = []
    for key, inner in value.items():
        below = f"{path}.{key}" if path else key
        if path + ".NAME" in documented:
            below = path + ".NAME"
        elif not {below, below + "[]", below + ".NAME"} & documented:
            missing.append(below)
        missing += undocumented(inner, below)
    return missing


unnamed = {}
for job_file in sorted((root / "fixtures/jobs").glob("*.yaml")):
    for words in (["solve"], ["check"], ["check", "--ranges"]):
        run = subprocess.run([program, words[0], str(job_file), *words[1:], "--format", "json"], capture_output=True)
        if run.returncode > 1:
            continue  # it names no rules
        unnamed.update(dict.fromkeys(undocumented(json.loads(run.stdout), ""), job_file.name))
assert not unnamed, f"docs/results.md does not name these keys, printed of these jobs: {unnamed}"
print("the README and the docs are true")
