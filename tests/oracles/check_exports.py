#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Exported questions are well-formed, hang together, and mark the right and the wrong answers as they should.

usage: check_exports.py PROGRAM

No schema file of QTI 2.1 is packaged by Debian, so the structure is checked by rules written down from the
specification (1EdTech QTI 2.1 information model and XML binding, 2012; remembered): order and attributes of the
elements, declared identifiers, and the response processing, which is carried out here. Moodle documents its XML by
example and publishes no schema; the elements that its documentation names are checked (remembered).
"""
import pathlib
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ElementTree

ROOT = pathlib.Path(__file__).resolve().parents[2]
ITEM = "{http://www.imsglobal.org/xsd/imsqti_v2p1}"
PACKAGE = "{http://www.imsglobal.org/xsd/imscp_v1p1}"
ORDER = ["responseDeclaration", "outcomeDeclaration", "itemBody", "responseProcessing", "modalFeedback"]


def run(program, *arguments):
    done = subprocess.run([program, "questions", *map(str, arguments)], capture_output=True, text=True)
    if done.returncode != 0:
        raise SystemExit(f"{arguments}: exit status {done.returncode}\n{done.stderr}")
    return done.stdout


def plain(element):
    return element.tag.rsplit("}", 1)[-1]


def value_of(node, response):
    if plain(node) == "variable":
        return response
    return float(node.text) if node.get("baseType") == "float" else node.text


def holds(condition, response):
    first, second = (value_of(child, response) for child in condition)
    if plain(condition) == "match":
        return first == second
    low, high = (float(part) / 100 for part in condition.get("tolerance").split())
    return first * (1 - low) <= second <= first * (1 + high)


def marked(item, response):
    """Score and name of the feedback that the item's own processing gives."""
    outcome = {"SCORE": 0.0, "FEEDBACK": None}
    for branch in item.find(f"{ITEM}responseProcessing/{ITEM}responseCondition"):
        if holds(branch[0], response):
            for rule in branch[1:]:
                outcome[rule.get("identifier")] = value_of(rule[0], response)
            break
    return outcome["SCORE"], outcome["FEEDBACK"]


def item_faults(item):
    faults = []
    names = [plain(child) for child in item]
    if [ORDER.index(name) for name in names] != sorted(ORDER.index(name) for name in names):
        faults.append("elements out of order")
    for name in ("identifier", "title", "adaptive", "timeDependent"):
        if not item.get(name):
            faults.append(f"attribute {name} is missing")
    response = item.find(f"{ITEM}responseDeclaration")
    numeric = response.get("baseType") == "float"
    correct = response.find(f"{ITEM}correctResponse/{ITEM}value").text
    interactions = item.find(f"{ITEM}itemBody").iter()
    interactions = [node for node in interactions if plain(node).endswith("Interaction")]
    if len(interactions) != 1 or interactions[0].get("responseIdentifier") != response.get("identifier"):
        faults.append("there is not one interaction for the response")
    choices = [node.get("identifier") for node in item.iter(f"{ITEM}simpleChoice")]
    if not numeric and (correct not in choices or len(set(choices)) != len(choices)):
        faults.append("the right choice is none of the choices, or two share an identifier")
    feedbacks = {node.get("identifier") for node in item.findall(f"{ITEM}modalFeedback")}
    declared = {node.get("identifier") for node in item.findall(f"{ITEM}outcomeDeclaration")}
    if {node.get("outcomeIdentifier") for node in item.findall(f"{ITEM}modalFeedback")} - declared:
        faults.append("feedback hangs on an outcome that nobody declared")
    if marked(item, float(correct) if numeric else correct) != (1.0, "right"):
        faults.append("the right answer does not score")
    answers = [node.text for node in item.find(f"{ITEM}responseProcessing").iter(f"{ITEM}baseValue")
               if node.get("baseType") == ("float" if numeric else "identifier")]
    for branch in item.find(f"{ITEM}responseProcessing/{ITEM}responseCondition"):
        value = next(node for node in branch[0] if plain(node) == "baseValue").text
        score, feedback = marked(item, float(value) if numeric else value)
        if value != correct and (score != 0.0 or feedback not in feedbacks or feedback == "right"):
            faults.append(f"{value} is wrong, but scores {score} with feedback {feedback}")
    if numeric:
        for factor, score in ((1.015, 1.0), (0.985, 1.0), (1.025, 0.0), (0.975, 0.0)):
            if marked(item, factor * float(correct))[0] != score:
                faults.append(f"{factor} times the answer does not score {score}")
    return faults + ([] if answers else ["nothing is compared"])


def qti_faults(program, route, version, folder):
    run(program, route, "--version", version, "--export", "qti", "--output", folder)
    manifest = ElementTree.parse(folder / "imsmanifest.xml").getroot()
    listed = {node.get("href") for node in manifest.iter(f"{PACKAGE}resource")}
    there = {path.name for path in folder.glob("*.xml")} - {"imsmanifest.xml"}
    faults = [] if listed == there and listed else [f"the manifest lists {listed}, and there are {there}"]
    identifiers = set()
    for name in sorted(there):
        item = ElementTree.parse(folder / name).getroot()
        if item.tag != f"{ITEM}assessmentItem":
            faults.append(f"{name} is no item")
            continue
        identifiers.add(item.get("identifier"))
        faults += [f"{name}: {fault}" for fault in item_faults(item)]
    if len(identifiers) != len(there):
        faults.append("two items share an identifier")
    return faults, len(there)


def moodle_faults(text):
    quiz = ElementTree.fromstring(text)
    faults = [] if quiz.tag == "quiz" else ["the root is no quiz"]
    questions = [node for node in quiz if node.get("type") != "category"]
    for node in questions:
        name = node.findtext("name/text")
        for path in ("name/text", "questiontext/text", "generalfeedback/text", "defaultgrade"):
            if not node.findtext(path):
                faults.append(f"{name}: {path} is missing")
        fractions = [float(answer.get("fraction")) for answer in node.findall("answer")]
        if fractions.count(100.0) != 1 or any(fraction not in (0.0, 100.0) for fraction in fractions):
            faults.append(f"{name}: there is not one right answer")
        if node.get("type") == "numerical":
            for answer in node.findall("answer"):
                if not 0 < float(answer.findtext("tolerance")) < abs(float(answer.findtext("text"))):
                    faults.append(f"{name}: a tolerance is none")
        elif node.get("type") != "multichoice" or node.findtext("single") != "true":
            faults.append(f"{name}: is neither a number nor a single choice")
    return faults, len(questions)


def planted(folder):
    """A fault of each kind must be found."""
    path = next(path for path in sorted(folder.glob("*.xml")) if "theoretical" in path.name or "percent" in path.name)
    text = path.read_text(encoding="utf-8")
    found = 0
    for old, new in (('tolerance="2 2"', 'tolerance="9 9"'), ('baseType="float">1<', 'baseType="float">0<'),
                     ('outcomeIdentifier="FEEDBACK"', 'outcomeIdentifier="NONE"'), ('adaptive="false" ', "")):
        broken = ElementTree.fromstring(text.replace(old, new))
        found += bool(item_faults(broken))
    return [] if found == 4 else [f"only {found} of 4 planted faults were found"]


def main(program):
    faults, items = [], 0
    with tempfile.TemporaryDirectory() as scratch:
        for path in sorted((ROOT / "routes").glob("*/*.json")):
            for version in (1, 2):
                folder = pathlib.Path(scratch, f"{path.parent.name}-{path.stem}-{version}")
                found, count = qti_faults(program, path, version, folder)
                more, moodle = moodle_faults(run(program, path, "--version", version, "--export", "moodle-xml"))
                items += count
                if moodle != count:
                    more.append(f"{count} items in one export, {moodle} in the other")
                faults += [f"{path.stem} version {version}: {fault}" for fault in found + more]
            if path.stem == "A3":
                faults += planted(folder)
    print("\n".join(faults + [f"{items} items checked in two formats, {len(faults)} faults"]))
    return 1 if faults or items < 100 else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
