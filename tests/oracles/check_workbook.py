# SPDX-License-Identifier: MIT
"""A workbook that was changed and recalculated by LibreOffice gives what the program gives for the changed route.

    check_workbook.py PROGRAM

For some routes: makes the workbook, sets every framed cell to another value, lets LibreOffice recalculate it, makes the
same changes in the route file, and compares every live figure to 1e-9, and the stock sheet to the sum of the charges.
In a second workbook of the route only the class is changed: packs, order and costs are those of `stock` and `costs` for
that class; without prices the sums are blank. A workbook of class results has the spread that Python's statistics module finds after a mass is changed.
"""

import json
import pathlib
import statistics
import subprocess
import sys
import tempfile

import openpyxl

ROUTES = ["4-bromoacetanilide/A3", "4-bromoacetanilide/A4", "4-chloro-4-methoxychalcone/convergent", "adipic-acid/E2"]
FRAMED = "thin"
TOLERANCE = 1e-9
BLANK = (None, "")
FIRST = 4  # row where the data of a sheet start
NEEDS = FIRST + 3  # of the sheet of stock: students, sections and extra stand above
CLASS = {"--students": "37", "--sections": "2", "--extra": "25 %"}
RESULTS = ("4-bromoacetanilide/A3", "examples/class-results.csv")
RESULTS_FIRST = 14
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
    stock = sum(row[1] for row in book["Stock"].iter_rows(min_row=NEEDS, values_only=True) if row[1] is not None)
    if differs(stock, needed):
        faults.append(f"{name}: the stock sheet has {stock!r} g a run, the ledger {needed!r}")
    for row in book["Stock"].iter_rows(min_row=NEEDS, values_only=True):
        if row[1] is not None and differs(row[2], row[1] * 48 * 1.1):
            faults.append(f"{name}: {row[0]} for the class is {row[2]!r} g, {row[1]!r} g a run")
    for sheet, column in (("Order", 7), ("Costs", 5)):
        for row in book[sheet].iter_rows(min_row=FIRST, values_only=True):
            if row[column] not in BLANK:
                faults.append(f"{name}: {row[0]} costs {row[column]!r} without any price")
    return faults, live


def one_pack_each(folder):
    """The example prices with the first pack of each material, so that no other size becomes the cheaper one."""
    prices = json.loads(pathlib.Path("examples/prices.json").read_text(encoding="utf-8"))
    packs = {}
    for pack in prices["packs"]:
        packs.setdefault(pack["material"], pack)
    prices["packs"] = list(packs.values())
    file = folder / "prices.json"
    file.write_text(json.dumps(prices), encoding="utf-8")
    return file


def make_class_book(program, name, prices, folder):
    """Made for 24 students, set to another class."""
    file = folder / ("class-" + name.replace("/", "-") + ".xlsx")
    subprocess.run([program, "workbook", f"routes/{name}.json", "--prices", prices, "--output", file], check=True)
    book = openpyxl.load_workbook(file)
    for cell, value in zip(("B2", "B3", "B4"), (37, 2, 0.25)):
        book["Stock"][cell] = value
    book.save(file)
    return file


def asked(program, command, name, prices):
    call = [program, command, f"routes/{name}.json", "--prices", prices, "--format", "json"]
    for option, value in CLASS.items():
        call += [option, value]
    return json.loads(subprocess.run(call, text=True, capture_output=True, check=True).stdout)


def compare_class(program, name, prices, book):
    faults, compared = [], 0

    def hold(what, found, expected):
        nonlocal compared
        compared += 1
        if differs(found, expected):
            faults.append(f"{name}, class: {what} is {found!r} in the workbook, {expected!r} from the program")

    stock, costs = asked(program, "stock", name, prices), asked(program, "costs", name, prices)
    order = {row[0]: row for row in book["Order"].iter_rows(min_row=FIRST, values_only=True)}
    for line in stock["lines"]:
        if line["from_tap"]:
            continue
        row = order[line["material"]]
        hold(line["material"] + " to get", row[3], line["to_get_grams"])
        hold(line["material"] + " packs", row[6], sum(pack["count"] for pack in line["packs"]))
        if line["cost"] is not None:
            hold(line["material"] + " cost", row[7], line["cost"])
        elif row[7] not in BLANK:
            faults.append(f"{name}, class: {line['material']} costs {row[7]!r} without a price")
        hold(line["material"] + " left over", row[8], line["left_over_grams"])
    hold("the order", order["together"][7], stock["cost"])
    treatment = {row[0]: row for row in book["Treatment"].iter_rows(min_row=FIRST, values_only=True)}
    for need in stock["for_waste"]:
        hold(need["material"] + " for the waste", treatment[need["material"]][2], need["grams"])
    rows = {row[0]: row for row in book["Costs"].iter_rows(min_row=FIRST, values_only=True)}
    disposals = {name.removeprefix("disposal: "): row for name, row in rows.items() if name.startswith("disposal: ")}
    hold("disposal", sum(row[5] or 0 for row in disposals.values()), costs["disposal"])
    hold("containers", len(disposals), len(costs["disposal_by_container"]))
    for one in costs["disposal_by_container"]:
        row = disposals[one["container"]]
        hold(one["container"] + ", L", row[3], one["millilitres"] / 1000)
        if one["cost"] is not None:
            hold(one["container"] + " cost", row[5], one["cost"])
        elif row[5] not in BLANK:
            faults.append(f"{name}, class: {one['container']} costs {row[5]!r} without a price")
    hold("power", rows["electricity"][5], costs["power"])
    hold("water", rows["water for cooling and suction"][5], costs["water"])
    hold("spent", rows["spent when every pack is bought"][5], costs["spent"])
    hold("spent by a student", rows["for a student"][5], costs["spent"] / (37 * 2))
    return faults, compared


def make_results_book(program, folder):
    file = folder / "results.xlsx"
    subprocess.run([program, "results", f"routes/{RESULTS[0]}.json", RESULTS[1], "--output", file], check=True)
    book = openpyxl.load_workbook(file)
    sheet = book["Results"]
    sheet.cell(RESULTS_FIRST, 3).value *= 0.5
    yields = []
    for row in sheet.iter_rows(min_row=RESULTS_FIRST):
        if not is_framed(row[2]):
            break
        yields.append(100 * row[2].value / row[3].value)
    book.save(file)
    return file, yields


def compare_results(book, yields):
    found = {row[0]: row[2] for row in book["Results"].iter_rows(max_row=RESULTS_FIRST - 3, values_only=True)}
    quartiles = statistics.quantiles(yields, n=4, method="inclusive")
    expected = {"results counted": len(yields), "mean, %": statistics.mean(yields), "median, %": statistics.median(yields),
                "standard deviation, points": statistics.stdev(yields), "least, %": min(yields), "most, %": max(yields),
                "lower quartile, %": quartiles[0], "upper quartile, %": quartiles[2]}
    return [f"results: {name} is {found.get(name)!r} in the workbook, {value!r} by Python"
            for name, value in expected.items() if differs(found.get(name), value)]


def main(program):
    faults, cells, live, compared = [], 0, 0, 0
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
        prices = one_pack_each(folder)
        classes = {name: make_class_book(program, name, prices, folder) for name in ROUTES}
        results, yields = make_results_book(program, folder)
        out = recalculate([*changed, *classes.values(), results], folder)
        for name, file in classes.items():
            found, count = compare_class(program, name, prices, openpyxl.load_workbook(out / file.name, data_only=True))
            faults += found
            compared += count
        faults += compare_results(openpyxl.load_workbook(out / results.name, data_only=True), yields)
        for file, (name, route) in changed.items():
            said = subprocess.run([program, "compare", "-", "--format", "json"], input=json.dumps(route), text=True,
                                  capture_output=True, check=True).stdout
            book = openpyxl.load_workbook(out / file.name, data_only=True)
            found, count = compare(name, book, json.loads(said)["routes"][0])
            faults += found
            live += count
    print("\n".join(faults))
    print(f"{len(ROUTES)} workbooks, {cells} cells changed, {live} live figures, {compared} of classes and {len(yields)} "
          f"results compared, {len(faults)} faults")
    return 1 if faults or live < 80 or cells < 20 or compared < 80 or len(yields) < 8 else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
