# SPDX-License-Identifier: MIT
"""Messages of problems start lower-case and end without a full stop, for they stand behind "file:line pointer: ".

    check_messages.py ROOT         judges the messages in ROOT/src and the expected errors of ROOT/tests/golden
    check_messages.py --self-test  proves that planted faults are found
"""

import pathlib
import re
import sys

# What a message is handed to. The message is the first text within the brackets, as a plain literal or as the
# pattern of fmt::format.
CALL = re.compile(
    r"(?:[.>](?:problem|warning|contradiction|error)|\b(?:QuantityError|FormulaError|EquationError|InputError|UsageError"
    r"|SchemeError|add_problem|add_warning|refuse|fail)|\bmessage\s*=|\.message\s*=|Severity::(?:error|warning)\s*,)"
    r"\s*(?:[({]\s*)?(?:fmt::format\s*\(\s*)?"
    r'(?P<text>"(?:\\.|[^"\\])*"(?:\s*"(?:\\.|[^"\\])*")*)'
)
LITERAL = re.compile(r'"((?:\\.|[^"\\])*)"')
# Names that a message may begin with although they are written with capitals.
PROPER = re.compile(r"(?:Infinity|True|False|GHS|JSON|CAS|UTF-8|SMILES|NaN|H\d|E-factor|PMI|Boost|CSV|HTML)\b")
COMMENT = re.compile(r"//[^\n]*")
# A problem as the program prints it: severity, an optional place, the message.
PRINTED = re.compile(r"^(?:error|warning): (?:[^\s:]+(?::\d+)?(?: /\S*)?: )?(?:warning: )?(?P<text>.+)$")


def fault_of(message):
    """What is wrong with a message, or None."""
    if not message.strip():
        return "is empty"
    if message[0].isupper() and not PROPER.match(message):
        return "starts with a capital"
    if re.search(r"(?<!\.)\.$|[!;:,]$", message.rstrip()):
        return "ends with a punctuation mark"
    if message != message.strip() or "\\n" in message:
        return "starts or ends with a space, or has a line break"
    return None


def messages(code):
    """Pairs of line number and message."""
    code = COMMENT.sub(lambda match: " " * len(match.group()) if '"' not in match.group() else match.group(), code)
    for match in CALL.finditer(code):
        yield code.count("\n", 0, match.start()) + 1, "".join(LITERAL.findall(match.group("text")))


def golden_messages(case):
    """Lines of the section of expected errors of a golden case, see tests/golden/run_golden.py."""
    inside = False
    for number, line in enumerate(case.split("\n"), 1):
        if line.startswith("== "):
            inside = line == "== errors"
        elif inside and PRINTED.match(line):
            yield number, PRINTED.match(line).group("text")


def judge(root):
    root = pathlib.Path(root)
    found, count = [], 0
    for file in sorted((root / "src").rglob("*.[ch]pp")):
        for number, message in messages(file.read_text(encoding="utf-8")):
            count += 1
            fault = fault_of(message)
            if fault:
                found.append(f'{file.relative_to(root)}:{number}: the message "{message}" {fault}')
    for file in sorted((root / "tests" / "golden").rglob("*.txt")):
        for number, message in golden_messages(file.read_text(encoding="utf-8")):
            count += 1
            fault = fault_of(message)
            if fault and fault != "ends with a punctuation mark" or message.endswith("."):
                found.append(f'{file.relative_to(root)}:{number}: the message "{message}" {fault}')
    return found, count


PLANTED = [
    ('field.problem("the amount is negative");', False),
    ('field.problem("The amount is negative");', True),
    ('field.problem("the amount is negative.");', True),
    ('field.problem(fmt::format("no {} here: {}", a, b));', False),
    ('field.problem(fmt::format(\n    "No {} here", a));', True),
    ('throw QuantityError(fmt::format("\\"{}\\" is no number", a));', False),
    ('throw FormulaError("a bracket is open."\n    , 3);', True),
    ('problem.message = "one thing "\n    "and another.";', True),
    ('found.add(Problem{Severity::error, "Wrong", place});', True),
    ('field.problem("GHS category is missing");', False),
    ('field.problem("and so on ...");', False),
]


def self_test():
    wrong = [code for code, faulty in PLANTED
             if (not (texts := list(messages(code)))) or bool(fault_of(texts[0][1])) != faulty]
    golden = list(golden_messages("A case.\n\n== errors\nerror: x.json:3 /a: Bad thing\n    {\n== output\nFine.\n"))
    if golden != [(4, "Bad thing")]:
        wrong.append("the errors of a golden case")
    print(f"self-test: {len(PLANTED) + 1 - len(wrong)} of {len(PLANTED) + 1} planted cases judged rightly")
    print("\n".join(wrong))
    return wrong


if __name__ == "__main__":
    if sys.argv[1:] == ["--self-test"]:
        sys.exit(1 if self_test() else 0)
    faults, total = judge(sys.argv[1])
    print("\n".join(faults))
    print(f"{total} messages read, {len(faults)} faulty")
    # A pattern that finds nothing any more proves nothing.
    sys.exit(1 if faults or total == 0 else 0)
