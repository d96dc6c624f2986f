"""What the program does when the world fails it: full disks, closed pipes, files that cannot be read. And: the same job gives the same bytes."""
import os
import pathlib
import resource
import subprocess
import sys
import tempfile

program, fixtures = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2]).resolve()
job = str(fixtures / "jobs" / "uneven-steps.yaml")
failures = []


def check(what, condition):
    print(("ok      " if condition else "FAILED  ") + what)
    if not condition:
        failures.append(what)


def run(*words, **more):
    more.setdefault("capture_output", True)
    return subprocess.run([program, *words], timeout=60, **more)


whole = run("solve", job)
check("a job that solves exits with 0 and says nothing on standard error", whole.returncode == 0 and not whole.stderr and whole.stdout)

with open("/dev/full", "wb") as full:
    done = subprocess.run([program, "solve", job], stdout=full, stderr=subprocess.PIPE)
check("a full disk behind standard output is an error", done.returncode == 3 and b"could not be written" in done.stderr)

done = subprocess.run(["sh", "-c", f'"{program}" solve "{job}" >&-'], capture_output=True)
check("a closed standard output is an error", done.returncode == 3)

reader, writer = os.pipe()
os.close(reader)
done = subprocess.run([program, "solve", job], stdout=writer, stderr=subprocess.PIPE)
os.close(writer)
check("a reader that has left is no error, and nothing is said", done.returncode == 0 and not done.stderr)

with tempfile.TemporaryDirectory() as folder:
    target = os.path.join(folder, "sheet.txt")
    done = run("solve", job, "-o", target)
    check("a file is written as standard output would be", done.returncode == 0 and pathlib.Path(target).read_bytes() == whole.stdout and not done.stdout)
    os.chmod(target, 0o640)
    run("solve", job, "--format", "json", "-o", target)
    check("an old file's permissions are kept", os.stat(target).st_mode & 0o777 == 0o640)

    old = pathlib.Path(target).read_bytes()
    done = run("solve", job, "-o", target, preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100)))
    check("a disk that is full keeps the old file and is an error", done.returncode == 3 and pathlib.Path(target).read_bytes() == old)
    check("and leaves no scrap behind", os.listdir(folder) == ["sheet.txt"])

    broken = os.path.join(folder, "broken.yaml")
    pathlib.Path(broken).write_text("units: in\n")
    done = run("solve", broken, "-o", target)
    check("a refused job keeps the old file", done.returncode == 2 and pathlib.Path(target).read_bytes() == old and not done.stdout)

    link = os.path.join(folder, "link.txt")
    os.symlink("sheet.txt", link)
    run("solve", job, "-o", link)
    check("a link is kept, and the file behind it written", os.path.islink(link) and pathlib.Path(target).read_bytes() == whole.stdout)
    check("a folder is no file to write to", run("solve", job, "-o", folder).returncode == 3)
    check("a folder is no file to read", run("solve", folder).returncode == 3)
    check("nor is what is not there", run("solve", os.path.join(folder, "none.yaml")).returncode == 3)

text = pathlib.Path(job).read_bytes()
check("standard input is read for -", run("solve", "-", input=text).stdout == whole.stdout)
check("a byte order mark and carriage returns change nothing",
      run("solve", "-", input=b"\xef\xbb\xbf" + text.replace(b"\n", b"\r\n")).stdout == whole.stdout)
check("no colour is printed into a pipe", b"\033" not in whole.stdout + run("solve", broken).stderr)

for path in sorted((fixtures / "jobs").glob("*.yaml")):
    for form in ("table", "csv", "json"):
        usual = run("solve", str(path), "--format", form).stdout
        bare = dict(os.environ, GLIBC_TUNABLES="glibc.cpu.hwcaps=-FMA,-AVX2,-AVX2_Usable,-FMA_Usable", LC_ALL="tr_TR.UTF-8", TZ="Asia/Tokyo")
        again = run("solve", str(path), "--format", form, env=bare, cwd="/").stdout
        check(f"{path.name} as {form}: the same bytes without fused multiply-add, in another locale and folder", usual and usual == again)

print(f"{len(failures)} failed")
sys.exit(1 if failures else 0)
