# SPDX-License-Identifier: MIT
"""Prints a page to PDF and looks whether every table row and picture stayed whole on one sheet.

A copy of the page gets tiny marks at the start and the end of every cell and at two corners of every picture; they are
found again in the PDF with their page and place (pdftotext -bbox). Marks of one row on two pages: the row is cut.
Some marks of a row missing: it runs off the sheet.
"""

import pathlib
import re
import subprocess
import tempfile

import browser

FOOT = 51  # points at the end of a sheet, 18 mm, that hold the number of the page
LEAST_FILLED = 0.6  # of the height of every sheet but the last
LEAST_LETTER = 8.8  # points from top to bottom of a word set in 8 point letters, of a paper of one page
PAPERS = {"A4": (595, 842), "Letter": (612, 792)}  # points, ISO 216 and ANSI Y14.1 (from memory)

# Unfolds everything, sets the paper, and puts the marks: zq<kind><group>.<thing>.<part>zq
MARKER = """<style>@page {{ size: {paper}; }} .zq {{ font: 1px/1px monospace !important; }}</style><script>
for (const details of document.querySelectorAll('details')) details.open = true;
const mark = (text) => {{
    const span = document.createElement('span');
    span.className = 'zq';
    span.textContent = ` zq${{text}}zq `;
    return span;
}};
const groups = [...document.querySelectorAll('[id]')];
document.querySelectorAll('tbody tr').forEach((row, number) => {{
    const group = groups.indexOf(row.closest('[id]'));
    [...row.cells].forEach((cell, i) => {{
        cell.prepend(mark(`r${{group}}.${{number}}.${{i}}a`));
        cell.append(mark(`r${{group}}.${{number}}.${{i}}b`));
    }});
}});
const figures = [...document.querySelectorAll('figure')];
// A drawing in a cell stands between the marks of its row.
document.querySelectorAll('svg:not(.drawing)').forEach((svg, number) => {{
    const figure = figures.indexOf(svg.closest('figure'));
    const box = svg.viewBox.baseVal;
    for (const [part, x, y] of [['a', box.x + 1, box.y + 2], ['b', box.x + box.width / 2, box.y + box.height - 1]]) {{
        const text = document.createElementNS(svg.namespaceURI, 'text');
        text.setAttribute('x', x);
        text.setAttribute('y', y);
        text.setAttribute('style', 'font: 1px monospace');
        text.textContent = `zqp${{figure}}.${{number}}.${{part}}zq`;
        svg.append(text);
    }}
}});
</script></body>"""
MARK = re.compile(r"zq([rp])(-?\d+)\.(\d+)\.(\w+?)zq")
PAGE = re.compile(r'<page width="([\d.]+)" height="([\d.]+)">(.*?)</page>', re.S)
WORD = re.compile(r'<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)</word>')


def printed(path, paper, folder):
    """The words of the marked page on this paper: for each sheet its size and (x, x end, y, y end, word)."""
    text = pathlib.Path(path).read_text(encoding="utf-8")
    # The page forbids scripts to itself; the marked copy needs one.
    text = re.sub(r'<meta http-equiv="Content-Security-Policy"[^>]*>', "", text)
    copy, pdf = pathlib.Path(folder, "page.html"), pathlib.Path(folder, "page.pdf")
    copy.write_text(text.replace("</body>", MARKER.format(paper=paper)), encoding="utf-8")
    browser.print_page(copy, pdf)
    boxes = subprocess.run(["pdftotext", "-bbox", pdf, "-"], capture_output=True, text=True, check=True).stdout
    return [((float(width), float(height)), [(float(a), float(c), float(b), float(d), word) for a, b, c, d, word in
                                             WORD.findall(words)]) for width, height, words in PAGE.findall(boxes)]


def print_faults(path, paper):
    """Everything that print cuts, as lines, and the number of sheets."""
    with tempfile.TemporaryDirectory() as folder:
        sheets = printed(path, paper, folder)
    text = pathlib.Path(path).read_text(encoding="utf-8")
    faults, seen = [], {}
    for number, (size, words) in enumerate(sheets, 1):
        if any(abs(a - b) > 2 for a, b in zip(size, PAPERS[paper])):
            faults.append(f"sheet {number} is {size}, not {paper}")
        for left, right, top, bottom, word in words:
            if left < -1 or right > size[0] + 1 or top < -1 or bottom > size[1] + 1:
                faults.append(f'sheet {number}: "{MARK.sub("", word)}" runs off the paper')
            for kind, group, thing, part in MARK.findall(word):
                seen.setdefault((kind, int(group), int(thing)), {})[part] = (number, word)
    if "<figure" not in text:  # a picture that fits no more goes to the next sheet and leaves a blank
        for number, (size, words) in enumerate(sheets[:-1], 1):
            ends = max((bottom for _, _, _, bottom, _ in words if bottom < size[1] - FOOT), default=0) / size[1]
            if ends < LEAST_FILLED:
                faults.append(f"sheet {number} is blank from {100 * ends:.0f} % of its height down")
    rows = 0
    for (kind, _, thing), parts in sorted(seen.items()):
        pages = sorted({page for page, _ in parts.values()})
        what = f"row {thing + 1}" if kind == "r" else f"picture {thing + 1}"
        words = MARK.sub("", next(iter(parts.values()))[1])
        if len(pages) > 1:
            faults.append(f'{what} ("{words}") is cut between sheets {pages}')
        cells = {re.match(r"\d*", part).group() for part in parts}
        whole = {f"{cell}{end}" for cell in range(1 + max(map(int, cells))) for end in "ab"} if kind == "r" else {"a", "b"}
        if set(parts) != whole:
            faults.append(f'{what} ("{words}") on sheet {pages[0]} is not all on the paper')
        rows += kind == "r"
    # A figure may hold forms for screens and for paper, but one of them must be there.
    if '<body class="one-page"' in text and len(sheets) > 1:
        faults.append(f"a paper of one page is printed on {len(sheets)} sheets")
    if '<body class="one-page"' in text:
        small = {MARK.sub("", word) for _, words in sheets for _, _, top, bottom, word in words
                 if bottom - top < LEAST_LETTER} - {""}
        if small:
            faults.append(f"letters of less than 8 points in a paper of one page: {', '.join(sorted(small)[:5])}")
    if "<tbody" in text and rows == 0:
        faults.append("no row of a table was printed")
    for figure in range(text.count("<figure")):
        if not any(kind == "p" and group == figure for kind, group, _ in seen):
            faults.append(f"figure {figure + 1} was not printed")
    return faults, len(sheets), rows
