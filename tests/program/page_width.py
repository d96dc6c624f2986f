"""No page that the program prints for people is wider than 80 columns: every job of fixtures/jobs solved and checked, and
the lists of rules."""
import os
import pathlib
import subprocess
import sys

program, fixtures = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2])
commands = [["rules"]]
for job in sorted((fixtures / "jobs").glob("*.yaml")):
    commands += [[word, str(job.relative_to(fixtures))] for word in ("solve", "check")]
    commands += [["check", str(job.relative_to(fixtures)), "--rules", "irc-2021,nbc-9.8", *more] for more in ([], ["--ranges"])]
pages = wide = 0
for command in commands:
    done = subprocess.run([program, *command], capture_output=True, cwd=fixtures, env=dict(os.environ, NO_COLOR="1"), timeout=60)
    lines = done.stdout.decode().splitlines()
    pages += bool(lines)
    for line in lines:
        if len(line) > 80:
            wide += 1
            print(len(line), *command, ":", line)
print(f"{pages} pages of {len(commands)} commands, {wide} lines too wide")
sys.exit(wide > 0 or pages < len(commands) / 2)
