# SPDX-License-Identifier: MIT
"""The binders of the example course and of single routes: complete, the same each time, and --check sees what is out of
date.

    check_binder.py PROGRAM

Also: no file of somebody's own is lost, the pages for students hold no theoretical yield that the key prints, and every link of the contents leads to a file.
"""

import pathlib
import re
import subprocess
import sys
import tempfile

COURSE = "examples/course.json"
EXPERIMENTS = 6
PAGES = 11  # of an experiment
ROUTE = "routes/4-bromoacetanilide/A3.json"
CLASS = ("--students", "12", "--sections", "2", "--extra", "10 %", "--session", "180 min", "--prices",
         "examples/prices.json", "--rules", "EU")


def binder(program, folder, *more, source=COURSE):
    run = subprocess.run([program, "binder", source, "--into", folder, *more], capture_output=True, text=True)
    return run.returncode, run.stdout


def contents(folder):
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def check_route(program, course, expect):
    """The papers of a route for the class of the course are those that the course has of it, name and week apart."""
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch) / "A3"
        expect(binder(program, folder, *CLASS, source=ROUTE)[0] == 0, "the binder of a route is not written")
        pages = contents(folder)
        expect(len(pages) == PAGES + 2, f"{len(pages)} files in the binder of a route")
        links = re.findall(r'href="([^"#][^"]*)"', pages["index.html"].decode())
        expect(sorted(links) == sorted(set(pages) - {"index.html", "binder-files.txt"}),
               "the contents of a route name other files than there are")
        for name in ("bench-sheet.html", "bench-sheet-key.html", "talk-card.html", "stock.html", "waste.html",
                     "hazards.html", "costs.html"):
            expect(pages[name] == course["week-05-a3/" + name], f"{name} of the route is not that of the course")
        expect(b"two sections of 12 students" in pages["index.html"], "the contents do not name the class")
        expect(b"week" not in pages["index.html"].lower(), "the contents of a route name a week")
        expect(binder(program, folder, *CLASS, "--check", source=ROUTE)[0] == 0, "a new binder of a route is out of date")
        expect(binder(program, folder, "--check", source=ROUTE)[0] == 4, "the binder of another class is up to date")
    expect(binder(program, folder, "--students", "3")[0] == 2, "a course takes the students of a call")
    expect(binder(program, folder, source="examples/prices.json")[0] == 1, "a price list has a binder")


def check_foreign(program, expect):
    """A file that is not the binder's own is neither written over nor removed; folders that it empties are."""
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch) / "full"
        folder.mkdir()
        theirs = folder / "talk-card.html"
        theirs.write_text("mine", encoding="utf-8")
        run = subprocess.run([program, "binder", ROUTE, "--into", folder], capture_output=True, text=True)
        expect(run.returncode != 0 and str(theirs) in run.stderr, "a file of somebody's own is not named")
        expect(contents(folder) == {"talk-card.html": b"mine"}, "something was written beside a foreign file")
        theirs.unlink()
        expect(binder(program, folder)[0] == 0, "the binder of the course is not written")
        kept = folder / "week-05-a3" / "my-notes.txt"
        kept.write_text("mine", encoding="utf-8")
        expect(binder(program, folder, source=ROUTE)[0] == 0, "the binder of a route does not follow that of a course")
        expect([path for path in folder.iterdir() if path.is_dir()] == [kept.parent], "emptied folders are left")
        expect(list(kept.parent.iterdir()) == [kept], "the folder with a file of somebody's own is not as it should be")


def main(program):
    faults = []

    def expect(holds, what):
        if not holds:
            faults.append(what)

    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch) / "binder"
        expect(binder(program, folder, "--check")[0] == 4, "a folder that is not there is up to date")
        expect(binder(program, folder)[0] == 0, "the binder is not written")
        first = contents(folder)
        expect(len(first) == EXPERIMENTS * PAGES + 3, f"{len(first)} files")
        expect(binder(program, folder, "--check")[0] == 0, "a new binder is out of date")
        times = {path: path.stat().st_mtime_ns for path in folder.rglob("*.html")}
        victim = folder / "term.html"
        victim.write_text("old", encoding="utf-8")
        own = folder / "my-notes.txt"
        own.write_text("mine", encoding="utf-8")
        expect(binder(program, folder, "--check")[0] == 4, "an old page is not seen")
        expect(victim.read_text(encoding="utf-8") == "old", "--check wrote something")
        expect(" 1 written" in binder(program, folder)[1], "more than what changed was written")
        expect(own.read_text(encoding="utf-8") == "mine", "a file of one's own was touched")
        own.unlink()
        expect(contents(folder) == first, "the same course gives another binder")
        expect(all(path == victim or path.stat().st_mtime_ns == time for path, time in times.items()),
               "a page that did not change was written anew")
        links = re.findall(r'href="([^"#][^"]*)"', first["index.html"].decode())
        expect(len(links) == EXPERIMENTS * PAGES + 1 and all(link in first for link in links), "a link leads nowhere")
        for name, page in first.items():
            if not name.endswith("bench-sheet-key.html"):
                continue
            # That of the last step: what an earlier one gives is weighed out for the next, which is no secret.
            theories = re.findall(r"= ([0-9.]+) g</li>", page.decode())
            expect(theories, f"{name} works out no theoretical yield")
            if not theories:
                continue
            theory = theories[-1]
            for sheet in ("bench-sheet.html", "talk-card.html"):
                student = first[name.replace("bench-sheet-key.html", sheet)].decode()
                expect(theory + " g" not in student and theory + "\u00a0g" not in student,
                       f"{sheet} beside {name} holds the theoretical yield {theory} g")
        check_route(program, first, expect)
    check_foreign(program, expect)
    print("\n".join(faults + [f"{len(faults)} faults"]))
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
