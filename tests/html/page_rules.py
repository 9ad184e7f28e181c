# SPDX-License-Identifier: MIT
"""Rules that a page must keep to as it is written: valid, self-contained, tables with headers, pictures with words.

Two independent readers judge validity: html5lib, which parses as the HTML standard says (WHATWG HTML, section 13.2)
and lists parse errors, and tidy, which knows where which element may stand.
"""

import re
import subprocess
import xml.etree.ElementTree

import html5lib

# What would load something when the page is opened. A link that one may follow loads nothing by itself.
LOADING = {
    "src": None, "srcset": None, "poster": None, "background": None, "data": None, "manifest": None,
    "href": {"link", "image", "use", "base", "script", "feimage"},
}
WITHIN_PAGE = re.compile(r"^(#|data:)")
CSS_LOAD = re.compile(r"@import|url\(\s*['\"]?(?!#|data:)", re.I)
ACTIVE = {"script", "iframe", "object", "embed", "form", "applet", "frame"}

# tidy 5.6 knows no SVG; html5lib parses it, and a picture is well-formed XML besides.
PICTURE = re.compile(r"<svg\b.*?</svg>", re.S)


def parse(text):
    parser = html5lib.HTMLParser(tree=html5lib.getTreeBuilder("etree"), namespaceHTMLElements=False)
    tree = parser.parse(text)
    return tree, [f"line {position[0]}: {code}" for position, code, _ in parser.errors]


def name_of(element):
    """The tag without its namespace, in lower case; empty for comments."""
    return element.tag.rsplit("}", 1)[-1].lower() if isinstance(element.tag, str) else ""


def attribute(element, name):
    for key, value in element.attrib.items():
        if key.rsplit("}", 1)[-1].lower() == name:
            return value
    return None


def words_of(element):
    return " ".join("".join(element.itertext()).split())


def tidy_faults(text):
    """What tidy says of the page, with every picture replaced by a word on as many lines."""
    page = PICTURE.sub(lambda match: "picture" + "\n" * match.group().count("\n"), text)
    done = subprocess.run(["tidy", "-quiet", "-errors", "-utf8", "--show-info", "no", "--drop-empty-elements", "no"],
                          input=page, capture_output=True, text=True, check=False)
    return [f"tidy: {line}" for line in done.stderr.split("\n") if re.match(r"line \d+", line)]


def xml_faults(text):
    for picture in PICTURE.findall(text):
        try:
            xml.etree.ElementTree.fromstring(picture)
        except xml.etree.ElementTree.ParseError as error:
            yield f"a picture is not well-formed: {error}"


def load_faults(element):
    name = name_of(element)
    if name in ACTIVE:
        yield f"<{name}> has no place in a report"
    for key, value in element.attrib.items():
        short = key.rsplit("}", 1)[-1].lower()
        if short.startswith("on"):
            yield f"<{name} {short}> would run a script"
        if re.match(r"\s*javascript:", value, re.I):
            yield f"<{name} {short}> would run a script"
        if short in LOADING and (LOADING[short] is None or name in LOADING[short]) and not WITHIN_PAGE.match(value):
            yield f'<{name} {short}="{value}"> would be loaded'
        if short == "style" and CSS_LOAD.search(value):
            yield f"<{name} style> would load something"
    if name == "style" and CSS_LOAD.search(element.text or ""):
        yield "<style> would load something"


def table_faults(table, hidden):
    heads = [cell for cell in table.iter() if name_of(cell) == "th"]
    first = words_of(table)[:60]
    if not heads:
        yield f'the table "{first}" has no headers'
    for cell in heads:
        if cell.get("scope") not in {"col", "row", "colgroup", "rowgroup"}:
            yield f'a header of the table "{first}" does not say whose it is (scope)'
            break
    if not any(name_of(cell) == "th" for part in table if name_of(part) == "thead" for cell in part.iter()):
        yield f'the table "{first}" has no row of headers'
    if not hidden and not any(name_of(part) == "caption" and words_of(part) for part in table) \
            and not table.get("aria-label") and not table.get("aria-labelledby"):
        yield f'the table "{first}" has no caption'
    widths = set()
    for row in table.iter():
        if name_of(row) == "tr":
            widths.add(sum(int(cell.get("colspan", 1)) for cell in row if name_of(cell) in {"td", "th"}))
    if len(widths) > 1:
        yield f'the rows of the table "{first}" have {sorted(widths)} cells'


def picture_faults(picture, ids):
    name = name_of(picture)
    if picture.get("aria-hidden") == "true":
        return
    if name == "img":
        if not picture.get("alt"):
            yield "an <img> has no text alternative"
        return
    said = picture.get("aria-label", "")
    for reference in (picture.get("aria-labelledby", "") + " " + picture.get("aria-describedby", "")).split():
        said += words_of(ids[reference]) if reference in ids else ""
    if picture.get("role") != "img" or len(said) < 10:
        yield f'a picture ("{words_of(picture)[:40]}") has no text alternative'


def page_faults(path):
    """Everything that is wrong with the page, as lines."""
    text = open(path, encoding="utf-8").read()
    tree, faults = parse(text)
    faults += tidy_faults(text)
    faults += xml_faults(text)
    if not text.startswith("<!DOCTYPE html>"):
        faults.append("the page does not start with <!DOCTYPE html>")
    elements = list(tree.iter())
    names = [name_of(element) for element in elements]
    ids = {}
    for element in elements:
        if element.get("id") is not None:
            if element.get("id") in ids:
                faults.append(f'the id "{element.get("id")}" stands twice')
            ids[element.get("id")] = element
    parents = {child: parent for parent in elements for child in parent}

    def hidden(element):
        while element is not None:
            if element.get("aria-hidden") == "true":
                return True
            element = parents.get(element)
        return False

    level = 1
    for element, name in zip(elements, names):
        faults += load_faults(element)
        if name == "table":
            faults += table_faults(element, hidden(element))
        if name in {"svg", "img"} and not hidden(element):
            faults += picture_faults(element, ids)
        if name == "a" and (attribute(element, "href") or "").startswith("#") and element.get("href")[1:] not in ids:
            faults.append(f'the link {element.get("href")} leads nowhere')
        for key in ("aria-labelledby", "aria-describedby"):
            faults += [f'{key}="{one}" leads nowhere' for one in element.get(key, "").split() if one not in ids]
        if re.fullmatch("h[1-6]", name):
            if int(name[1]) > level + 1:
                faults.append(f'the heading "{words_of(element)}" skips a level')
            level = int(name[1])
    html = next(element for element in elements if name_of(element) == "html")
    if not html.get("lang"):
        faults.append("the page does not say its language")
    if names.count("h1") != 1 or names.count("main") != 1 or names.count("title") < 1:
        faults.append("a page has one title, one <h1> and one <main>")
    if not any(element.get("name") == "viewport" for element in elements):
        faults.append("the page does not fit itself to a phone (viewport)")
    return faults


def page_text(path):
    """The words of the page as a reader sees them."""
    tree, _ = parse(open(path, encoding="utf-8").read())
    body = next(element for element in tree.iter() if name_of(element) == "body")
    return words_of(body)
