# SPDX-License-Identifier: MIT
"""One golden case as a text file: reading it, laying out its inputs, and writing it back."""

import dataclasses
import pathlib
import re

SECTION = re.compile(r"^== (\S+)(?: (.*))?$")
BASE = pathlib.Path(__file__).parent / "base"
ROOT = pathlib.Path(__file__).resolve().parents[2]


def section(text):
    """A text as a section holds it: empty, or ending in one line break."""
    text = text.rstrip("\n")
    return text + "\n" if text else ""


class CaseError(Exception):
    """The case itself is written wrongly."""


def base_text(name):
    """A file of base/, or of the repository."""
    path = ROOT / name if (ROOT / name).exists() else BASE / name
    return path.read_text(encoding="utf-8")


def changed(text, change):
    """The text with lines "- old" replaced by the lines "+ new" that follow them; old lines stand there once."""
    lines = text.split("\n")
    for block in re.findall(r"(?:^- .*\n)+(?:^\+ .*\n)*", change, flags=re.M):
        old = [line[2:].strip() for line in block.split("\n") if line.startswith("- ")]
        new = [line[2:] for line in block.split("\n") if line.startswith("+ ")]
        found = [at for at in range(len(lines)) if [line.strip() for line in lines[at:at + len(old)]] == old]
        if len(found) != 1:
            raise CaseError(f"these lines stand {len(found)} times in the file to be changed: {old}")
        indent = re.match(r" *", lines[found[0]]).group()
        lines[found[0]:found[0] + len(old)] = [indent + line for line in new]
    if change.strip() and "\n".join(lines) == text:
        raise CaseError(f"nothing is changed by: {change}")
    return "\n".join(lines)


@dataclasses.dataclass
class Input:
    """A file or folder that stands there before the command runs."""

    name: str
    kind: str  # file, changed, bytes, repeat, folder
    content: str = ""

    def raw(self):
        if self.kind == "file":
            return self.content.encode("utf-8")
        if self.kind == "changed":
            base, _, change = self.content.partition("\n")
            return changed(base_text(base), change).encode("utf-8")
        if self.kind == "bytes":
            return bytes.fromhex(self.content)
        # "repeat": first line the number, second line the text that is repeated, then what follows once.
        count, text, *rest = self.content.split("\n")
        return (text * int(count) + "\n".join(rest)).encode("utf-8")


@dataclasses.dataclass
class Case:
    path: str
    about: str
    inputs: list
    stdin: bytes
    command: str
    status: int
    output: str
    errors: str
    left: dict
    read_only: list

    @staticmethod
    def read(path):
        text = pathlib.Path(path).read_text(encoding="utf-8")
        head, sections = [], []
        for line in text.split("\n"):
            match = SECTION.match(line)
            if match:
                sections.append((match.group(1), match.group(2) or "", []))
            elif sections:
                # A line of content that begins with "==" is written with one more "=".
                sections[-1][2].append(line[1:] if line.startswith("===") else line)
            else:
                head.append(line)
        case = Case(str(path), "\n".join(head).strip(), [], b"", "", 0, "", "", {}, [])
        for kind, argument, lines in sections:
            case.take(kind, argument, "\n".join(lines))
        if not case.about or not case.command:
            raise CaseError(f"{path}: a case says in its first lines what it shows, and has a section == command")
        return case

    def take(self, kind, argument, content):
        content = section(content)
        if kind in ("file", "changed", "bytes", "repeat", "folder"):
            name, _, option = argument.partition(" ")
            if option.startswith("from "):
                content, option = f"{option[5:]}\n{content}", ""
            if option == "read-only":
                self.read_only.append(name)
            self.inputs.append(Input(name, kind, content))
        elif kind == "input":
            self.stdin = (base_text(argument[5:]) if argument.startswith("from ") else content).encode("utf-8")
        elif kind == "command":
            self.command = " ".join(content.replace("\\\n", " ").split("\n")).strip()
        elif kind == "status":
            self.status = int(argument)
        elif kind == "output":
            self.output = content
        elif kind == "errors":
            self.errors = content
        elif kind == "left":
            self.left[argument] = content
        else:
            raise CaseError(f'{self.path}: no section "== {kind}"')

    def input_names(self):
        return [one.name for one in self.inputs]

    def input_bytes(self, name):
        for one in self.inputs:
            if one.name == name and one.kind != "folder":
                return one.raw()
        return None

    def write_inputs(self, folder):
        for one in self.inputs:
            path = folder / one.name
            path.parent.mkdir(parents=True, exist_ok=True)
            if one.kind == "folder":
                path.mkdir(exist_ok=True)
            else:
                path.write_bytes(one.raw())
        for name in self.read_only:
            (folder / name).chmod(0o555 if (folder / name).is_dir() else 0o444)

    def unlock(self, folder):
        for name in self.read_only:
            if (folder / name).exists():
                (folder / name).chmod(0o755)

    def with_results(self, status, output, errors, left):
        return dataclasses.replace(self, status=status, output=output, errors=errors, left=left)

    def keeping(self, old, matches):
        """This case, but with the wording of an older one wherever that still matches."""
        def chosen(was, now):
            return was if matches(was, now) else now
        left = {name: chosen(old.left[name], text) if name in old.left else text for name, text in self.left.items()}
        return dataclasses.replace(self, output=chosen(old.output, self.output),
                                   errors=chosen(old.errors, self.errors), left=left)

    def text(self):
        """The case as its file: what comes before the command as it was written, then what is expected."""
        kept = []
        for line in pathlib.Path(self.path).read_text(encoding="utf-8").split("\n"):
            match = SECTION.match(line)
            if match:
                inside_kept = match.group(1) not in ("status", "output", "errors", "left")
            elif not kept:
                inside_kept = True
            if inside_kept:
                kept.append(line)
        written = "\n".join(kept).rstrip("\n") + f"\n== status {self.status}\n"
        for title, content in [("output", self.output), ("errors", self.errors),
                               *((f"left {name}", text) for name, text in sorted(self.left.items()))]:
            if content or title.startswith("left"):
                escaped = "\n".join("=" + line if line.startswith("==") else line for line in content.split("\n"))
                written += f"== {title}\n{escaped}"
        return written
