"""Runs the golden cases of fixtures/program: a command, its exit status and what it prints, word for word.

A case is plain text:

    # What it shows.
    $ rakewright solve refused/misspelt.yaml
    stdin:                     (may be left out; until the next heading)
    status: 2
    stdout:
    stderr:

Cases run in fixtures/. `--rewrite` renews what is expected: read the difference before you commit it.
"""
import difflib
import os
import pathlib
import shlex
import subprocess
import sys


def parts_of(text):
    comment, command, stdin, blocks, heading = [], None, "", {}, None
    for line in text.splitlines(keepends=True):
        if heading is None and line.startswith("#"):
            comment.append(line)
        elif command is None and line.startswith("$ "):
            command = line[2:].strip()
        elif line.rstrip() in ("stdin:", "stdout:", "stderr:"):
            heading = line.strip()[:-1]
            blocks[heading] = ""
        elif line.startswith("status: ") and heading in (None, "stdin"):
            blocks["status"] = line.split()[1]
            heading = None
        elif heading:
            blocks[heading] += line
    return "".join(comment), command, blocks


def run(program, command, stdin, folder):
    words = shlex.split(command)
    assert words[0] == "rakewright", command
    environment = dict(os.environ, NO_COLOR="1")
    done = subprocess.run([program] + words[1:], input=stdin.encode(), capture_output=True, cwd=folder, env=environment, timeout=60)
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def main():
    program, fixtures = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2])
    rewrite = "--rewrite" in sys.argv
    cases = sorted((fixtures / "program").glob("*.case"))
    assert cases, "no cases found"
    failed = 0
    for case in cases:
        before = case.read_text()
        comment, command, blocks = parts_of(before)
        status, out, err = run(program, command, blocks.get("stdin", ""), fixtures)
        stdin = "stdin:\n" + blocks["stdin"] if "stdin" in blocks else ""
        after = f"{comment}$ {command}\n{stdin}status: {status}\nstdout:\n{out}stderr:\n{err}"
        if after == before:
            continue
        if rewrite:
            case.write_text(after)
            print("rewritten:", case.name)
            continue
        failed += 1
        sys.stdout.writelines(difflib.unified_diff(before.splitlines(True), after.splitlines(True), case.name, "seen"))
    print(f"{len(cases) - failed} passed, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
