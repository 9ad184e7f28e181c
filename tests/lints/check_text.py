# SPDX-License-Identifier: MIT
"""What no file of the project may say, and how long a source file may be.

    check_text.py ROOT         judges every file below ROOT except build folders
    check_text.py --self-test  proves that a planted fault of each kind is found
"""

import pathlib
import re
import sys
import tempfile

LONGEST_SOURCE = 350  # lines; what is longer does more than one thing
LONGEST_TEST = 600  # a test file is a list of cases, and is read one case at a time
SOURCES = {".cpp", ".hpp", ".py", ".sh", ".js", ".mjs"}
LICENCE = "SPDX-License-Identifier: MIT"
SKIPPED_FOLDERS = {".git", "build", "__pycache__"}

EVERYWHERE = [
    (r"(?<![\w.])/(?:work|root|home/\w+|tmp/rw|Users/\w+)(?:/|\b)", "a path of one machine"),
    (r"\.\./shared\b", "a folder outside the project"),
    (r"\b(?:TODO|FIXME|XXX|HACK)\b", "a note to oneself; do it, or write down what does not work"),
    (r"\b(?:pypi\.org|registry\.npmjs\.org|deb\.debian\.org|crates\.io|proxy\.golang\.org|files\.pythonhosted\.org)\b",
     "a package registry by its address"),
    (r"(?i)\b(?:AI|coding|sub-?) ?agents?\b|\bsubagents?\b|\btranscripts?\b|\b(?:chat|user|working) sessions?\b"
     r"|\blanguage models?\b|\bissue (?:#|no|\d)", "how the project was written, which tells a reader nothing"),
]
# Reports, and the answers of the program in the golden cases, are read by people who work with their hands on
# what is named there. Nothing is ever called safe.
IN_ANSWERS = [
    (r"(?i)\bsafe(?:r|st)?\b|\bharmless\b|\bnon-?toxic\b|\brisk-free\b",
     "a promise that no figure can keep"),
]
IN_REPORTS = [
    (r"\b(?:nan|inf|-nan|NaN)\b(?![\"'])", "a number that is none"),
]
# These files state the rules or record outside texts, and so hold the words.
EXCEPT = {"tests/lints/check_text.py"}


def files_of(root):
    for file in sorted(root.rglob("*")):
        parts = file.relative_to(root).parts
        if file.is_file() and not any(part in SKIPPED_FOLDERS or part.startswith("build-") for part in parts):
            yield file, "/".join(parts)


def judge_text(path, text):
    report, golden = path.startswith("reports/"), path.startswith("tests/golden/cases/")
    answer = report
    for number, line in enumerate(text.split("\n"), 1):
        if golden and line.startswith("== "):
            answer = line.startswith(("== output", "== errors", "== left"))
        for pattern, why in EVERYWHERE + IN_ANSWERS * answer + IN_REPORTS * report:
            match = re.search(pattern, line)
            if match:
                yield f'{path}:{number}: "{match.group()}" is {why}'


def judge_source(path, text):
    lines = text.rstrip("\n").split("\n")
    longest = LONGEST_TEST if path.startswith("tests/") else LONGEST_SOURCE
    if len(lines) > longest:
        yield f"{path}: {len(lines)} lines, at most {longest}"
    first = lines[1] if lines[0].startswith("#!") and len(lines) > 1 else lines[0]
    if LICENCE not in first:
        yield f'{path}: the first line does not say "{LICENCE}"'


def is_source(path, text):
    return pathlib.PurePath(path).suffix in SOURCES or text.startswith("#!")


def judge(root):
    found, count = [], 0
    for file, path in files_of(pathlib.Path(root)):
        if path in EXCEPT:
            continue
        count += 1
        raw = file.read_bytes()
        try:
            text = raw.decode("utf-8")
        except UnicodeDecodeError:
            if not path.startswith("tests/"):
                found.append(f"{path}: is not UTF-8")
            continue
        found += judge_text(path, text)
        if is_source(path, text):
            found += judge_source(path, text)
    return found, count


PLANTED = [
    ("README.md", "see /home/anna/routeweigh", True),
    ("README.md", "a route at home/work balance", False),
    ("src/a/x.cpp", f"// {LICENCE}\n// TODO later", True),
    ("src/a/x.cpp", f"// {LICENCE}\nint x;\n", False),
    ("src/a/x.cpp", "int x;\n", True),
    ("src/a/x.cpp", f"// {LICENCE}\n" + "int x;\n" * LONGEST_SOURCE, True),
    ("scripts/run", f"#!/bin/sh\n# {LICENCE}\ntrue\n", False),
    ("scripts/run", "#!/bin/sh\ntrue\n", True),
    ("reports/a.md", "the greener route is safer", True),
    ("reports/a.md", "read the safety data sheet; an unsafe word is no promise", False),
    ("reports/a.txt", "E-factor nan g/g", True),
    ("tests/golden/cases/good/a.txt", "== output\nthe filtrate is harmless", True),
    ("tests/golden/cases/good/a.txt", "== output\nno conflict found by this method; safety office", False),
    ("tests/golden/cases/good/a.txt", "a cell made harmless\n== output\n'=1+1", False),
    ("tests/html/a.txt", "a name that says safe", False),
    ("docs/a.md", "see issue 12", True),
    ("docs/a.md", "a drying agent; the issue of water; the laboratory session", False),
    ("docs/a.md", "../shared/notes", True),
]


def self_test():
    failures = 0
    for path, text, wrong in PLANTED:
        with tempfile.TemporaryDirectory() as root:
            file = pathlib.Path(root, path)
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_text(text, encoding="utf-8")
            if bool(judge(root)[0]) != wrong:
                failures += 1
                print(f"self-test: {path}: {text[:60]!r} {'not found' if wrong else 'wrongly found'}")
    print(f"self-test: {len(PLANTED) - failures} of {len(PLANTED)} planted cases judged rightly")
    return failures


if __name__ == "__main__":
    if sys.argv[1:] == ["--self-test"]:
        sys.exit(1 if self_test() else 0)
    faults, total = judge(sys.argv[1])
    print("\n".join(faults))
    print(f"{total} files read, {len(faults)} faults")
    sys.exit(1 if faults or total == 0 else 0)
