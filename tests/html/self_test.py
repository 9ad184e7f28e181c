# SPDX-License-Identifier: MIT
"""Proves that each rule about pages finds a planted fault, and finds none in a page that is right."""

import pathlib
import sys
import tempfile

import browser
import page_rules
import print_rules

ROW = "<tr><th scope='row'>water</th><td>{}</td></tr>"
GOOD = """<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width">
<title>A page</title><style>
body { color: #222; background: #fff; font: 16px sans-serif; margin: 1rem; } tr { break-inside: avoid; }
td { width: 12rem; } .scroll { overflow-x: auto; }
</style></head><body><main><h1>A page</h1><h2>Parts</h2>
<figure id="f"><svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 40" width="200" height="40" role="img"
aria-label="a dark bar with its name"><rect x="0" y="0" width="200" height="40" fill="#123"/>
<text x="4" y="20" font-size="12" fill="#fff">bar</text></svg><figcaption>A bar</figcaption></figure>
<div class="scroll" id="t"><table><caption>Amounts</caption><thead><tr><th scope="col">what</th><th scope="col">text</th></tr>
</thead><tbody>ROWS</tbody></table></div><p>See the <a href="#t">table</a>.</p></main></body></html>
""".replace("ROWS", ROW.format("words and words " * 40) * 30)

FIGURE = GOOD[GOOD.index("<figure"):GOOD.index("</figure>") + len("</figure>")]

# What to change, by which check it must be found.
WRITTEN = [
    ("an open element", "<p>See", "<p><b>See"),
    ("an element where it may not stand", "<caption>Amounts</caption>", "<caption>Amounts</caption><div>x</div>"),
    ("no language", ' lang="en"', ""),
    ("an id twice", '<figure id="f">', '<figure id="t">'),
    ("a link to nowhere", 'href="#t"', 'href="#u"'),
    ("a script", "</main>", "<script>alert(1)</script></main>"),
    ("an event", "<p>See", "<p onclick='x()'>See"),
    ("a picture from elsewhere", "<p>See", "<p><img alt='a' src='https://example.org/a.png'>See"),
    ("a style from elsewhere", "body { ", "body { background: url(https://example.org/a.png); "),
    ("a style sheet from elsewhere", "<title>", "<link rel='stylesheet' href='a.css'><title>"),
    ("a table without a row of headers", "<th scope=\"col\">what</th><th scope=\"col\">text</th>", "<td>a</td><td>b</td>"),
    ("a header without scope", '<th scope="col">what', "<th>what"),
    ("a table without caption", "<caption>Amounts</caption>", ""),
    ("rows of unequal length", "</tbody>", "<tr><td>1</td></tr></tbody>"),
    ("a picture without words", 'aria-label="a dark bar with its name"', ""),
    ("a picture that is no XML", 'height="40" fill', "height=40 fill"),
    ("a heading too deep", "<figure", "<h4>Deep</h4><figure"),
]
SHOWN = [
    ("faint text", "color: #222", "color: #888"),
    ("faint text in a picture", 'fill="#123"', 'fill="#bbb"'),
    ("half transparent text", "body {", "p { opacity: 0.4 } body {"),
    ("text on a gradient", "body {", "p { background: linear-gradient(#fff, #000) } body {"),
    ("a page that scrolls sideways", "<p>See", "<p style='width: 600px'>See"),
    ("tiny text", "body {", "p { font-size: 5px } body {"),
    ("labels on each other", "</svg>", '<text x="6" y="22" font-size="12" fill="#fff">beer</text></svg>'),
    ("a label outside its picture", 'x="4" y="20"', 'x="190" y="20"'),
    ("a picture from elsewhere", "<p>See", "<p><img alt='a' src='https://example.org/a.png'>See"),
    ("a script", "</main>", "<script>document.title = 'x'</script></main>"),
    ("an event that runs at once", "<p>See", "<p><img src='data:,' alt='a' onerror='document.title = 1'>See"),
]
PRINTED = [
    ("a paper of one page on several sheets", "<body>", '<body class="one-page">'),
    ("rows that may break", "tr { break-inside: avoid; }", ""),
    ("a sheet that is left blank", FIGURE, "<style>tr:nth-child(2) { break-after: page; }</style>"),
    ("a table wider than the sheet", "td { width: 12rem; }", "td { min-width: 70rem; }"),
    ("a picture that is not printed", "body {", "@media print { svg { display: none } } body {"),
]


def planted(changes, folder):
    """One page for each change: its title and file; the change must have taken hold."""
    for number, (title, old, new) in enumerate(changes):
        if old not in GOOD:
            raise ValueError(f"{title}: nothing to change")
        page = pathlib.Path(folder, f"{number}.html")
        page.write_text(GOOD.replace(old, new, 1), encoding="utf-8")
        yield title, page


def main():
    wrong = []
    with tempfile.TemporaryDirectory() as folder:
        good = pathlib.Path(folder, "good.html")
        good.write_text(GOOD, encoding="utf-8")
        wrong += [f"good page: {fault}" for fault in page_rules.page_faults(good)]
        for title, page in planted(WRITTEN, folder):
            if not page_rules.page_faults(page):
                wrong.append(f"as written: {title} was not found")

        pages = list(planted(SHOWN, folder))
        results, attempts = browser.measured([good, *(page for _, page in pages)])
        tried = {name for name, _ in attempts}
        for title, page in [("good page", good), *pages]:
            found = [fault for width in results[page.name].values() for fault in width["faults"]]
            if bool(found or page.name in tried) == (page == good):
                wrong.append(f"as shown: {title}: {found or 'was not found'}")

        wrong += [f"good page: {fault}" for fault in print_rules.print_faults(good, "A4")[0]]
        for title, page in planted(PRINTED, folder):
            if not print_rules.print_faults(page, "A4")[0]:
                wrong.append(f"as printed: {title} was not found")
        # Small letters count only where a paper is to fit one sheet, so this page has to fit it.
        short = GOOD.replace(ROW.format("words and words " * 40) * 30, ROW.format("a few words") * 3)
        for size, is_right in (("16px", True), ("9px", False)):
            page = pathlib.Path(folder, f"one-page-{size}.html")
            page.write_text(short.replace("<body>", '<body class="one-page">').replace("16px sans", f"{size} sans")
                            .replace("<figure", "<!--").replace("</figure>", "-->"), encoding="utf-8")
            if bool(print_rules.print_faults(page, "A4")[0]) == is_right:
                wrong.append(f"as printed: a paper of one page with letters of {size} was judged wrongly")
    total = 1 + len(WRITTEN) + len(SHOWN) + len(PRINTED)
    print("\n".join(wrong))
    print(f"self-test: {total} planted faults, {len(wrong)} judged wrongly")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
