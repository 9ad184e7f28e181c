# SPDX-License-Identifier: MIT
"""Runs golden cases: files in, a command, and what it must print, all in one text file that a chemist can read.

    run_golden.py PROGRAM CASE...           runs the cases; 1 if one of them fails
    run_golden.py --update PROGRAM CASE...  rewrites what the cases expect; look at the difference before you keep it

README.md beside this file shows how a case is written.
"""

import difflib
import os
import pathlib
import re
import shlex
import shutil
import subprocess
import sys
import tempfile

from golden_case import Case, CaseError, section

ROOT = pathlib.Path(__file__).resolve().parents[2]
SECONDS = 60  # a case that runs longer has failed
# A sanitizer that finds something must not look like one of the program's own exit statuses.
ENVIRONMENT = {
    "PATH": os.environ.get("PATH", ""),
    "LANG": "C.UTF-8",
    "ASAN_OPTIONS": "exitcode=99:detect_stack_use_after_return=1",
    "UBSAN_OPTIONS": "print_stacktrace=1",
}


def run(program, case, folder):
    """Runs the command of the case in the folder: exit status, output, errors."""
    words = shlex.split(case.command)
    environment = dict(ENVIRONMENT)
    while words and re.fullmatch(r"[A-Z_]+=.*", words[0]):
        name, _, value = words.pop(0).partition("=")
        environment[name] = value
    if not words or words[0] != "routeweigh":
        raise CaseError(f'{case.path}: the command starts with "routeweigh"')
    standard_output = subprocess.PIPE
    if words[-2:-1] == [">"]:
        standard_output = open(folder / words[-1], "wb")
        words = words[:-2]
    command = [program, *words[1:]]
    if case.read_only and os.geteuid() == 0:
        # Root may write anywhere, a reader of our reports may not: give that right up.
        command = ["setpriv", "--bounding-set=-dac_override,-dac_read_search", "--", *command]
    done = subprocess.run(command, cwd=folder, env=environment, input=case.stdin, stdout=standard_output,
                          stderr=subprocess.PIPE, timeout=SECONDS, check=False)
    return done.returncode, readable(done.stdout or b""), readable(done.stderr)


def readable(raw):
    """The text as a section of a case holds it: line breaks are plain, those at the end count as one."""
    return section(raw.decode("utf-8", errors="backslashreplace").replace("\r\n", "\n"))


def matches(expected, actual):
    """Whether the text is the expected one, in which a line "..." stands for any number of lines."""
    parts = [[]]
    for line in expected.split("\n"):
        if line == "...":
            parts.append([])
        else:
            parts[-1].append(line)
    lines = actual.split("\n")
    if len(parts) == 1:
        return lines == parts[0]
    first, *middle, last = parts
    if lines[: len(first)] != first or (last and lines[-len(last):] != last) or len(lines) < len(first) + len(last):
        return False
    at, end = len(first), len(lines) - len(last)
    for part in middle:
        while at + len(part) <= end and lines[at:at + len(part)] != part:
            at += 1
        if at + len(part) > end:
            return False
        at += len(part)
    return True


def compare(name, expected, actual):
    """An empty list, or the difference as lines."""
    if matches(expected, actual):
        return []
    return [f"  {name} differs:"] + ["    " + line for line in difflib.unified_diff(
        expected.split("\n"), actual.split("\n"), "expected", "found", lineterm="")]


def left_behind(case, folder):
    """Files of the folder after the run that are neither untouched inputs nor expected: name and content."""
    found = {}
    for file in sorted(folder.rglob("*")):
        name = file.relative_to(folder).as_posix()
        if file.is_symlink() or file.is_dir() or name.split("/")[0] == "routes":
            continue
        raw = file.read_bytes()
        if case.input_bytes(name) != raw:
            found[name] = readable(raw)
    return found


def judge(program, case):
    """Runs a case: the faults as lines, and the case as it would be with what was found."""
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch)
        try:
            case.write_inputs(folder)
            if (ROOT / "routes").is_dir() and not (folder / "routes").exists():
                (folder / "routes").symlink_to(ROOT / "routes")
            try:
                status, output, errors = run(program, case, folder)
            except subprocess.TimeoutExpired:
                return [f"  runs longer than {SECONDS} s"], case
            case.unlock(folder)
            left = left_behind(case, folder)
            missing = [name for name in case.input_names() if not (folder / name).exists()]
        finally:
            case.unlock(folder)
    faults = [f"  exit status {status}, expected {case.status}"] if status != case.status else []
    faults += compare("output", case.output, output) + compare("errors", case.errors, errors)
    faults += [f"  the input {name} is gone" for name in missing]
    for name in sorted(set(left) | set(case.left)):
        if name not in left:
            faults.append(f"  {name} was not written")
        elif name not in case.left:
            faults.append(f"  {name} was {'changed' if case.input_bytes(name) is not None else 'left behind'}")
        else:
            faults += compare(name, case.left[name], left[name])
    found = case.with_results(status, output, errors, left)
    return faults, found


def main(arguments):
    update = "--update" in arguments
    arguments = [argument for argument in arguments if argument != "--update"]
    if len(arguments) < 2:
        print(__doc__)
        return 2
    program = shutil.which(arguments[0]) or arguments[0]
    failed = 0
    for path in arguments[1:]:
        case = Case.read(path)
        faults, found = judge(os.path.abspath(program), case)
        if faults and update:
            # What still matches with its "..." stays as it was written.
            pathlib.Path(path).write_text(found.keeping(case, matches).text(), encoding="utf-8")
            print(f"updated {path}")
        elif faults:
            failed += 1
            print(f"{path}: {case.about}\n  $ {case.command}")
            print("\n".join(faults))
    print(f"{len(arguments) - 1 - failed} of {len(arguments) - 1} cases as expected")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
