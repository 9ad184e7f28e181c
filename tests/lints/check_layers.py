# SPDX-License-Identifier: MIT
"""Who may include whom in src/, and which files may use which outside library.

    check_layers.py ROOT         judges the sources below ROOT/src
    check_layers.py --self-test  proves that a planted violation of each rule is found
"""

import pathlib
import re
import sys
import tempfile

# The table of layers: a folder of src/ and the folders whose headers it may include, beside its own. The links
# of the CMake target of the same name must keep to it, too.
MAY_INCLUDE = {
    "base": "",
    "input": "base",
    "chemistry": "base input",
    "route": "base input chemistry",
    "assess": "base input chemistry route",
    "compare": "base chemistry route assess",
    "writing": "base",
    "documents": "base chemistry route assess compare writing",
    "app": "base input chemistry route assess compare writing documents",
    "cli": "app base documents writing",
}

# Layers that see only part of another: of `writing`, documents know the blocks but no writer, and the
# command line knows the list of writers but no block, and how a text is made harmless.
ONLY_THESE = {
    ("documents", "writing"): {"blocks.hpp", "chart.hpp", "machine_tree.hpp", "workbook.hpp"},
    ("cli", "writing"): {"writer.hpp", "writer_list.hpp", "escape.hpp", "workbook.hpp"},
}

# Outside headers that only some files may include: (what, files, why). The patterns of files are matched against
# the path below src/.
RESTRICTED = [
    (r"nlohmann/json_fwd\.hpp", r"input/.*", "JSON is read in input/ only"),
    (r"nlohmann/(?!json_fwd).*", r"input/.*\.cpp|input/document_state\.hpp",
     "the whole of nlohmann costs 1.4 s a file"),
    (r"boost/graph/.*|boost/pending/.*", r"route/.*\.cpp", "Boost.Graph costs 2.4 s a file"),
    (r"CLI/.*", r"cli/.*", "only the command line parses options"),
    (r"xlsxwriter.*", r"cli/xlsx_(file|library)\.[ch]pp", "it writes files"),
    (r"iostream|print|syncstream|fmt/ostream\.h", r"cli/.*", "the library prints nothing"),
    (r"fstream|filesystem|dirent\.h|fcntl\.h|unistd\.h|sys/.*", r"cli/.*", "the library opens no file"),
]
# Headers that belong to a few source files and may not spread further.
PRIVATE = {"input/document_state.hpp": r"input/.*\.cpp"}
MOST_GRAPH_FILES = 2  # of route/ that include Boost.Graph

# What no file below cli may say, because the library prints nothing and reads no environment.
FORBIDDEN_CALLS = re.compile(
    r"\bstd::(cout|cerr|clog|cin|getenv|printf|puts|fputs|fopen|remove|rename|system|exit)\b"
    r"|\b(fmt::print|getenv|printf|fprintf|puts|fopen)\s*\("
)

INCLUDE = re.compile(r'^\s*#\s*include\s*(?:"([^"]+)"|<([^>]+)>)')
LINKS = re.compile(r"routeweigh_module\((\w+)(.*?)\)", re.S)


def without_comments_and_texts(code):
    """The same lines without comments and string contents, so that prose is not taken for code."""
    pattern = re.compile(r'//[^\n]*|/\*.*?\*/|"(?:\\.|[^"\\\n])*"', re.S)
    return pattern.sub(lambda match: "\n" * match.group().count("\n") if match.group()[0] == "/" else '""', code)


def judge_include(layer, path, quoted, angled):
    """Why this include may not stand in the file, or None."""
    if quoted is not None:
        if quoted in PRIVATE and not re.fullmatch(PRIVATE[quoted], path):
            return f'"{quoted}" is private to {PRIVATE[quoted]}'
        other, _, header = quoted.partition("/")
        if other not in MAY_INCLUDE:
            return f'"{quoted}" does not start with the folder of a layer'
        if other == layer:
            return None
        if other not in MAY_INCLUDE[layer].split():
            return f'{layer} may not include "{quoted}"; it may include: {MAY_INCLUDE[layer] or "no other layer"}'
        visible = ONLY_THESE.get((layer, other))
        if visible is not None and header not in visible:
            return f'of {other}, {layer} may include only {", ".join(sorted(visible))}, not "{quoted}"'
        return None
    for what, files, why in RESTRICTED:
        if re.fullmatch(what, angled) and not re.fullmatch(files, path):
            return f"<{angled}> may not be included here: {why}"
    return None


def judge(root):
    """All violations below root/src, as lines of text."""
    source = pathlib.Path(root) / "src"
    found = []
    graph_files = []
    for file in sorted(source.rglob("*")):
        if file.suffix not in {".cpp", ".hpp", ".h", ".in"}:
            continue
        path = file.relative_to(source).as_posix()
        layer = path.split("/")[0]
        if layer not in MAY_INCLUDE:
            found.append(f"src/{path}: no layer of the table")
            continue
        code = file.read_text(encoding="utf-8")
        for number, line in enumerate(code.split("\n"), 1):
            include = INCLUDE.match(line)
            if not include:
                continue
            fault = judge_include(layer, path, *include.groups())
            if fault:
                found.append(f"src/{path}:{number}: {fault}")
            if layer == "route" and include.group(2) and include.group(2).startswith("boost/graph/"):
                graph_files.append(path)
        if layer != "cli":
            for number, line in enumerate(without_comments_and_texts(code).split("\n"), 1):
                call = FORBIDDEN_CALLS.search(line)
                if call:
                    found.append(f"src/{path}:{number}: {call.group().strip()} below cli")
    if len(set(graph_files)) > MOST_GRAPH_FILES:
        found.append(f"Boost.Graph stands in more than {MOST_GRAPH_FILES} files of route: {sorted(set(graph_files))}")
    for file in sorted(source.glob("*/CMakeLists.txt")):
        for name, rest in LINKS.findall(file.read_text(encoding="utf-8")):
            for link in re.findall(r"routeweigh::(\w+)", rest):
                if link not in MAY_INCLUDE.get(name, "").split():
                    found.append(f"src/{file.parent.name}/CMakeLists.txt: {name} may not link {link}")
    return found


# Each a file, a line of code, and whether a violation must be found.
PLANTED = [
    ("chemistry/x.cpp", '#include "route/route.hpp"', True),
    ("chemistry/x.cpp", '#include "base/text.hpp"', False),
    ("base/x.hpp", '#include "input/field.hpp"', True),
    ("writing/x.cpp", '#include "chemistry/formula.hpp"', True),
    ("documents/x.cpp", '#include "writing/html_writer.hpp"', True),
    ("documents/x.cpp", '#include "writing/blocks.hpp"', False),
    ("cli/x.cpp", '#include "route/route.hpp"', True),
    ("input/x.hpp", "#include <nlohmann/json.hpp>", True),
    ("input/x.cpp", "#include <nlohmann/json.hpp>", False),
    ("input/x.hpp", "#include <nlohmann/json_fwd.hpp>", False),
    ("input/x.hpp", '#include "input/document_state.hpp"', True),
    ("input/x.cpp", '#include "input/document_state.hpp"', False),
    ("route/x.hpp", "#include <boost/graph/adjacency_list.hpp>", True),
    ("route/x.cpp", "#include <boost/graph/adjacency_list.hpp>", False),
    ("app/x.cpp", "#include <CLI/CLI.hpp>", True),
    ("app/x.cpp", "#include <iostream>", True),
    ("route/x.cpp", "#include <fstream>", True),
    ("cli/x.cpp", "#include <fstream>", False),
    ("assess/x.cpp", 'auto x = std::getenv("X");', True),
    ("assess/x.cpp", 'fmt::print("x");', True),
    ("assess/x.cpp", "// fmt::print( would be wrong here", False),
    ("assess/CMakeLists.txt", "routeweigh_module(assess SOURCES a.cpp LINKS routeweigh::compare)", True),
    ("assess/CMakeLists.txt", "routeweigh_module(assess SOURCES a.cpp LINKS routeweigh::route)", False),
    ("helpers/x.cpp", "int x;", True),
]


def self_test():
    failures = 0
    for path, line, wrong in PLANTED:
        with tempfile.TemporaryDirectory() as root:
            file = pathlib.Path(root, "src", path)
            file.parent.mkdir(parents=True)
            file.write_text(line + "\n", encoding="utf-8")
            if bool(judge(root)) != wrong:
                failures += 1
                print(f"self-test: {path}: {line}: {'not found' if wrong else 'wrongly found'}")
    print(f"self-test: {len(PLANTED) - failures} of {len(PLANTED)} planted cases judged rightly")
    return failures


if __name__ == "__main__":
    if sys.argv[1:] == ["--self-test"]:
        sys.exit(1 if self_test() else 0)
    violations = judge(sys.argv[1])
    print("\n".join(violations) if violations else "every include keeps to the table of layers")
    sys.exit(1 if violations else 0)
