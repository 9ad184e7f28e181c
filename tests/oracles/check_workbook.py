# SPDX-License-Identifier: MIT
"""A workbook that was changed and recalculated by LibreOffice gives what the program gives for the changed route.

    check_workbook.py PROGRAM

For some routes: makes the workbook, sets every framed cell to another value, lets LibreOffice recalculate it, makes the
same changes in the route file, and compares every live figure to 1e-9, and the stock sheet to the sum of the charges.
"""

import json
import pathlib
import subprocess
import sys
import tempfile

import openpyxl

ROUTES = ["4-bromoacetanilide/A3", "4-bromoacetanilide/A4", "4-chloro-4-methoxychalcone/convergent", "adipic-acid/E2"]
FRAMED = "thin"
TOLERANCE = 1e-9
FIRST = 4  # row where the data of a sheet start
# Formulas are always computed anew when a file is opened, whoever wrote it.
SETTINGS = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""


def is_framed(cell):
    return cell.border.left.style == FRAMED


def charges_of(route):
    return [charge for step in route["steps"] for stage in step["stages"] for charge in stage.get("charges", [])]


def change(book, route):
    """Sets every framed cell anew, and the route file to the same. Returns how many cells were changed."""
    changed = 0
    charges = iter(charges_of(route))
    for row in book["Amounts"].iter_rows(min_row=FIRST):
        if isinstance(row[4].value, str):
            continue  # a further substance of the same charge
        charge = next(charges)
        if is_framed(row[4]):
            row[4].value *= 1.0 + 0.1 * (changed % 5 + 1)
            charge["amount"] = f"{row[4].value!r} g"
            changed += 1
    for row, step in zip(book["Steps"].iter_rows(min_row=FIRST), route["steps"]):
        if is_framed(row[3]):
            row[3].value *= 0.9
            step["isolated"]["yield"] = f"{100 * row[3].value!r} %"
            changed += 1
        elif is_framed(row[4]):
            row[4].value *= 0.9
            step["isolated"]["mass"] = f"{row[4].value!r} g"
            changed += 1
    book["Stock"]["B2"] = 48
    return changed


def recalculate(files, folder):
    profile = folder / "profile"
    (profile / "user").mkdir(parents=True)
    (profile / "user" / "registrymodifications.xcu").write_text(SETTINGS)
    out = folder / "out"
    subprocess.run(["soffice", f"-env:UserInstallation=file://{profile}", "--headless", "--convert-to", "xlsx", "--outdir",
                    out, *files], check=True, capture_output=True, timeout=300)
    return out


def differs(found, expected):
    return not isinstance(found, (int, float)) or abs(found - expected) > TOLERANCE * max(abs(expected), 1e-3)


def compare(name, book, printed):
    faults, live = [], 0
    figures = {figure["id"]: figure["value"] for figure in printed["figures"]}
    for row in book["Figures"].iter_rows(min_row=FIRST, values_only=True):
        if row[4] == "live":
            live += 1
            if differs(row[2], figures[row[1]]):
                faults.append(f"{name}: {row[1]} is {row[2]!r} in the workbook, {figures[row[1]]!r} from the program")
    needed = sum(entry["grams"] for entry in printed["ledger"] if entry["side"] == "in")
    stock = sum(row[1] for row in book["Stock"].iter_rows(min_row=FIRST + 2, values_only=True) if row[1] is not None)
    if differs(stock, needed):
        faults.append(f"{name}: the stock sheet has {stock!r} g a run, the ledger {needed!r}")
    for row in book["Stock"].iter_rows(min_row=FIRST + 2, values_only=True):
        if row[1] is not None and differs(row[2], row[1] * 48 * 1.1):
            faults.append(f"{name}: {row[0]} for the class is {row[2]!r} g, {row[1]!r} g a run")
    return faults, live


def main(program):
    faults, cells, live = [], 0, 0
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(scratch)
        changed = {}
        for name in ROUTES:
            file = folder / (name.replace("/", "-") + ".xlsx")
            subprocess.run([program, "workbook", f"routes/{name}.json", "--output", file], check=True)
            book = openpyxl.load_workbook(file)
            route = json.loads(pathlib.Path(f"routes/{name}.json").read_text(encoding="utf-8"))
            cells += change(book, route)
            book.save(file)
            changed[file] = (name, route)
        out = recalculate(list(changed), folder)
        for file, (name, route) in changed.items():
            said = subprocess.run([program, "compare", "-", "--format", "json"], input=json.dumps(route), text=True,
                                  capture_output=True, check=True).stdout
            book = openpyxl.load_workbook(out / file.name, data_only=True)
            found, count = compare(name, book, json.loads(said)["routes"][0])
            faults += found
            live += count
    print("\n".join(faults))
    print(f"{len(ROUTES)} workbooks, {cells} cells changed, {live} live figures compared, {len(faults)} faults")
    return 1 if faults or live < 80 or cells < 20 else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
