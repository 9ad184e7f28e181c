# SPDX-License-Identifier: MIT
"""Proves that the runner of the golden cases finds what it must find, with a small program that plays along."""

import pathlib
import sys
import tempfile

import run_golden

# Says what it is told to say: say TEXT, fail TEXT, write FILE TEXT, read FILE, cat FILE LINES, remove FILE, echo (its input).
PLAYER = f"""#!{sys.executable}
import os, pathlib, sys
word, *rest = sys.argv[1:]
if word == "say": print(rest[0].replace("|", "\\n"))
if word == "fail": sys.exit(rest[0])
if word == "cat": print("".join(pathlib.Path(rest[0]).read_text().splitlines(keepends=True)[:int(rest[1])]), end="")
if word == "read": print(len(pathlib.Path(rest[0]).read_bytes()))
if word == "remove": os.remove(rest[0])
if word == "echo": print(sys.stdin.read(), end="")
if word == "variable": print(os.environ.get(rest[0], "none"))
if word == "write":
    try: pathlib.Path(rest[0]).write_text(rest[1] + "\\n")
    except OSError: sys.exit("cannot write " + rest[0])
"""

# Title, the case, and whether it holds.
CASES = [
    ("output as expected", "== command\nrouteweigh say hello\n== status 0\n== output\nhello\n", True),
    ("other output", "== command\nrouteweigh say hello\n== status 0\n== output\ngoodbye\n", False),
    ("output where none is expected", "== command\nrouteweigh say hello\n== status 0\n", False),
    ("no output where some is expected", "== command\nrouteweigh fail x\n== status 1\n== output\nhello\n== errors\nx\n",
     False),
    ("other status", "== command\nrouteweigh fail x\n== status 0\n== errors\nx\n", False),
    ("errors as expected", "== command\nrouteweigh fail x\n== status 1\n== errors\nx\n", True),
    ("other errors", "== command\nrouteweigh fail x\n== status 1\n== errors\ny\n", False),
    ("dots for some lines", "== command\nrouteweigh say 'a|b|c|d'\n== status 0\n== output\na\n...\nd\n", True),
    ("dots for no line", "== command\nrouteweigh say 'a|d'\n== status 0\n== output\na\n...\nd\n", True),
    ("dots in the middle and at the end", "== command\nrouteweigh say 'a|b|c|d|e'\n== status 0\n== output\n...\nc\n...\n", True),
    ("a line between dots that is not there", "== command\nrouteweigh say 'a|b|d'\n== status 0\n== output\na\n...\nc\n...\n", False),
    ("dots do not hide a wrong end", "== command\nrouteweigh say 'a|b|c'\n== status 0\n== output\na\n...\nd\n", False),
    ("an input file", "== file a.txt\nabc\n== command\nrouteweigh read a.txt\n== status 0\n== output\n4\n", True),
    ("bytes", "== bytes a.bin\nff fe 00\n== command\nrouteweigh read a.bin\n== status 0\n== output\n3\n", True),
    ("a text many times", "== repeat a.txt\n1000000\nabc\n== command\nrouteweigh read a.txt\n== status 0\n== output\n3000000\n",
     True),
    ("a base file changed", "== changed a.json from pour.json\n- \"id\": \"pour\",\n+ \"id\": \"p\",\n+ \"notes\": [],\n"
     "== command\nrouteweigh cat a.json 3\n== status 0\n== output\n{\n  \"id\": \"p\",\n  \"notes\": [],\n", True),
    ("output to a full device", "== command\nrouteweigh say hello > /dev/full\n== status 120\n== errors\n...\n", True),
    ("standard input", "== input\nfrom a pipe\n== command\nrouteweigh echo\n== status 0\n== output\nfrom a pipe\n", True),
    ("a variable", "== command\nCOLUMNS=60 routeweigh variable COLUMNS\n== status 0\n== output\n60\n", True),
    ("a line that looks like a section", "== command\nrouteweigh say '== x'\n== status 0\n== output\n=== x\n", True),
    ("a file is left", "== command\nrouteweigh write b.txt hello\n== status 0\n== left b.txt\nhello\n", True),
    ("a file is left that nobody expects", "== command\nrouteweigh write b.txt hello\n== status 0\n", False),
    ("a file is not left", "== command\nrouteweigh say hello\n== status 0\n== output\nhello\n== left b.txt\nhello\n", False),
    ("an input is lost", "== file a.txt\nabc\n== command\nrouteweigh remove a.txt\n== status 0\n", False),
    ("an input is overwritten", "== file a.txt\nabc\n== command\nrouteweigh write a.txt x\n== status 0\n", False),
    ("a read-only folder", "== folder out read-only\n== command\nrouteweigh write out/b.txt x\n== status 1\n"
     "== errors\ncannot write out/b.txt\n", True),
    ("a read-only file", "== file b.txt read-only\nold\n== command\nrouteweigh write b.txt x\n== status 1\n"
     "== errors\ncannot write b.txt\n", True),
]


def main():
    wrong = []
    with tempfile.TemporaryDirectory() as scratch:
        player = pathlib.Path(scratch, "routeweigh")
        player.write_text(PLAYER, encoding="utf-8")
        player.chmod(0o755)
        for title, text, holds in CASES:
            path = pathlib.Path(scratch, "case.txt")
            path.write_text(f"{title}\n{text}", encoding="utf-8")
            case = run_golden.Case.read(path)
            faults, found = run_golden.judge(str(player), case)
            if bool(faults) == holds:
                wrong.append(f"{title}: {faults}")
            # Rewritten, every case holds, and one that held before stays as it was.
            rewritten = found.keeping(case, run_golden.matches).text()
            if holds and rewritten != f"{title}\n{text}":
                wrong.append(f"{title}: rewritten without need as {rewritten!r}")
            path.write_text(rewritten, encoding="utf-8")
            lost = title in ("an input is lost",)
            if not lost and run_golden.judge(str(player), run_golden.Case.read(path))[0]:
                wrong.append(f"{title}: does not hold after the update: {rewritten!r}")
    print("\n".join(wrong))
    print(f"self-test: {len(CASES)} cases, {len(wrong)} judged wrongly")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
