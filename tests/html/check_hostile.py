# SPDX-License-Identifier: MIT
"""Route files whose every text wants to be something else: markup, a formula of a spreadsheet, a terminal command.

    check_hostile.py PROGRAM FOLDER   infects two example routes, writes hostile.html and its kin into FOLDER

The page is then judged like every other page (check_pages.py); here the other formats are.
"""

import csv
import io
import json
import pathlib
import re
import subprocess
import sys

import page_rules

ROOT = pathlib.Path(__file__).resolve().parents[2]
ROUTES = ["routes/4-bromoacetanilide/A1.json", "routes/4-bromoacetanilide/A3.json"]

PAYLOADS = [
    '<script>alert("{}")</script>',
    '"><img src=x onerror=alert(1)>{}',
    "</title></style></svg></td><h1>{}",
    '=HYPERLINK("https://example.org","{}")',
    "+1+1 {}",
    "@SUM(A1:A9) {}",
    "-2+3 {}",
    "|a|b| `{}` **c** [d](https://example.org) # e",
    "\u001b[31m{}\u0007",
    "\u202e{}\u2066 &lt;b&gt; &#60;i&#62;",
    "a,b;\"c\"\t{}",
]
# Texts that only people read, and names of streams, which the file repeats.
FREE = {"title", "source", "note", "container"}
STREAMS = {"to", "rest", "gas"}


class Infection:
    """Gives each text the next payload, and the same text the same one, for streams are found by their names."""

    def __init__(self):
        self.given = {}

    def text(self, text):
        return self.given.setdefault(text, PAYLOADS[len(self.given) % len(PAYLOADS)].format(text))

    def value(self, value, key="", above=""):
        if isinstance(value, dict):
            return {name: self.value(one, name, key) for name, one in value.items() if name != "$schema"}
        if isinstance(value, list):
            return [self.value(one, key, above) for one in value]
        free = key in FREE | STREAMS | {"notes"} or (above, key) == ("streams", "name")
        return self.text(value) if free and isinstance(value, str) else value


def texts_of(value):
    if isinstance(value, dict):
        for one in value.values():
            yield from texts_of(one)
    elif isinstance(value, list):
        for one in value:
            yield from texts_of(one)
    elif isinstance(value, str):
        yield value


def is_number(text):
    try:
        float(text)
    except ValueError:
        return False
    return True


def csv_faults(text):
    for row in csv.reader(io.StringIO(text, newline="")):
        for cell in row:
            if re.match(r"[=+\-@\t\r]", cell) and not is_number(cell):
                yield f"csv: a spreadsheet would calculate {cell[:60]!r}"


def control_faults(kind, text):
    bad = re.search(r"[\x00-\x08\x0b-\x1f\x7f\u202a-\u202e\u2066-\u2069]", text)
    if bad:
        yield f"{kind}: holds the control character {bad.group()!r}"


def markdown_faults(text):
    outside_code = re.sub(r"^(```|~~~).*?^\1", "", text, flags=re.S | re.M)
    for mark in re.findall(r"(?<!\\)<(?:script|img|/title|h1)", outside_code):
        yield f"markdown: {mark} would be markup"
    for mark in re.findall(r"(?<!\\)\[d\](?<!\\)\(https", outside_code):
        yield f"markdown: {mark} would be a link"


def main(program, folder):
    folder = pathlib.Path(folder)
    folder.mkdir(parents=True, exist_ok=True)
    files, infection = [], Infection()
    for route in ROUTES:
        file = folder / pathlib.Path(route).name
        document = infection.value(json.loads((ROOT / route).read_text(encoding="utf-8")))
        file.write_text(json.dumps(document, ensure_ascii=False, indent=1), encoding="utf-8")
        files.append(str(file))
    written = {}
    for kind, ending in [("html", "html"), ("csv", "csv"), ("markdown", "md"), ("terminal", "txt"), ("json", "json")]:
        output = folder / f"hostile.{ending}"
        subprocess.run([program, "compare", *files, "--format", kind, "--output", output], check=True)
        # As bytes decoded by hand, for reading as text would hide a carriage return.
        written[kind] = output.read_bytes().decode("utf-8")
    faults = [*csv_faults(written["csv"]), *markdown_faults(written["markdown"])]
    for kind in ("html", "markdown", "terminal"):
        faults += control_faults(kind, written[kind])
    title = json.loads(pathlib.Path(files[0]).read_text(encoding="utf-8"))["title"]
    if title not in set(texts_of(json.loads(written["json"]))):
        faults.append("json: the title is not the one of the file")
    seen = page_rules.page_text(folder / "hostile.html")
    if title not in seen:
        faults.append(f"html: the title {title} cannot be read on the page")
    print("\n".join(faults))
    print(f"{len(PAYLOADS)} kinds of hostile text in {len(files)} routes, {len(faults)} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
