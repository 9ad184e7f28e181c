# SPDX-License-Identifier: MIT
"""Judges HTML reports as written, as shown by a browser, and as printed.

    check_pages.py written PAGE...   valid, self-contained, tables with headers, pictures with words
    check_pages.py shown PAGE...     loads nothing; at 390 and 1280 px no sideways scrolling, contrast at least 4.5:1
    check_pages.py printed PAGE...   on A4 and Letter no row of a table and no picture is cut
"""

import sys

import browser
import page_rules
import print_rules


def written(pages):
    return {page: page_rules.page_faults(page) for page in pages}


def shown(pages):
    results, attempts = browser.measured(pages)
    faults = {}
    for name, widths in results.items():
        faults[name] = []
        for width, found in widths.items():
            faults[name] += [f"at {width} px: {fault}" for fault in found["faults"]]
            if not found.get("count"):
                faults[name].append(f"at {width} px: no text was found")
                continue
            print(f'{name} at {width} px: {found["count"]} texts, contrast at least {found["lowest"]:.2f}:1, '
                  f'letters at least {found["smallest"]:.1f} px, {found["height"]} px long when unfolded')
    for name, attempt in attempts:
        faults.setdefault(name, []).append(f"the page tried to load or run something: {attempt}")
    return faults


def printed(pages):
    faults = {}
    for page in pages:
        faults[page] = []
        for paper in print_rules.PAPERS:
            found, sheets, rows = print_rules.print_faults(page, paper)
            faults[page] += [f"{paper}: {fault}" for fault in found]
            print(f"{page} on {paper}: {sheets} sheets, {rows} rows of tables")
    return faults


def main(arguments):
    kinds = {"written": written, "shown": shown, "printed": printed}
    if len(arguments) < 2 or arguments[0] not in kinds:
        print(__doc__)
        return 2
    faults = kinds[arguments[0]](arguments[1:])
    total = 0
    for page, lines in faults.items():
        total += len(lines)
        for line in lines[:40]:
            print(f"{page}: {line}")
        if len(lines) > 40:
            print(f"{page}: and {len(lines) - 40} more")
    print(f"{len(arguments) - 1} pages, {total} faults")
    return 1 if total else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
