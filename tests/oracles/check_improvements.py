# SPDX-License-Identifier: MIT
"""What `improve` and `break-even` claim, worked out again by the independent reading of route files.

    check_improvements.py PROGRAM [ROUTE...]

Every change that `PROGRAM improve ROUTE --format json` lists is put into the route file here (JSON Pointer, RFC 6901, by a
few lines of its own), the file is read with twin.py, and its figure must be the one printed. So must the figure at the
yield that is said to eat the gain, at every pair of changes, and at every break-even. What is printed must fit
src/app/what_if.schema.json, and a route that what-if saves must fit routes/route.schema.json.
"""
import copy
import json
import os
import subprocess
import sys
import tempfile

import jsonschema

import twin

TOLERANCE = 1e-9
ROUTES = ["4-bromoacetanilide/A3", "4-bromoacetanilide/A7a", "adipic-acid/E1", "4-chloro-4-methoxychalcone/convergent",
          "5-5-diphenylhydantoin/D1b-D2c-D3a"]


def put(document, pointer, value):
    """Assigns one value (JSON text, "" takes the place out)."""
    *way, last = [token.replace("~1", "/").replace("~0", "~") for token in pointer.split("/")[1:]]
    for token in way:
        document = document[int(token)] if isinstance(document, list) else document[token]
    if isinstance(document, list):
        if value == "":
            del document[int(last)]
        elif last == "-":
            document.append(json.loads(value))
        else:
            document[int(last)] = json.loads(value)
    elif value == "":
        del document[last]
    else:
        document[last] = json.loads(value)


def with_changes(raw, changes):
    changed = copy.deepcopy(raw)
    for change in sorted(changes, key=lambda change: change["value"] == ""):
        put(changed, change["at"], change["value"])
    return changed


class Check:
    def __init__(self, program):
        self.program, self.faults, self.count = program, [], 0
        self.catalogue = twin.read_catalogue(os.path.join(twin.ROOT, "hazard-data"))
        with open(os.path.join(twin.ROOT, "src/app/what_if.schema.json"), encoding="utf-8") as file:
            self.schema = json.load(file)
        jsonschema.Draft202012Validator.check_schema(self.schema)

    def printed(self, *call):
        run = subprocess.run([self.program, *call, "--format", "json"], capture_output=True, text=True)
        if run.returncode != 0:
            raise SystemExit(f"{call}: exit status {run.returncode}\n{run.stderr}")
        document = json.loads(run.stdout)
        self.count += 1
        self.faults += [f"{call[0]} /{'/'.join(map(str, error.absolute_path))}: {error.message[:200]}"
                        for error in jsonschema.Draft202012Validator(self.schema).iter_errors(document)]
        return document

    def figure(self, raw, figure):
        return twin.route_figures(twin.read_route(raw, self.catalogue), self.catalogue)["figures"][figure]

    def equal(self, what, printed, expected):
        self.count += 1
        if abs(printed - expected) > TOLERANCE * max(abs(printed), abs(expected)):
            self.faults.append(f"{what}: {printed!r}, expected {expected!r}")

    def improvements(self, path, raw, figure):
        document = self.printed("improve", path, "--figure", figure)
        ranked = [entry for entry in document["improvements"] if entry["helps"]]
        if not ranked:
            self.faults.append(f"{path}: nothing improves {figure}")
        for entry in document["improvements"]:
            changed = with_changes(raw, entry["changes"])
            self.equal(f"{path}, {figure}: {entry['what']}", entry["after"], self.figure(changed, figure))
            isolated = changed["steps"][0]["isolated"]
            if entry["yield_at_par"] is not None and len(raw["steps"]) == 1 and "yield" in isolated:
                isolated["yield"] = f"{entry['yield_at_par']!r} %"
                self.equal(f"{path}, {figure}: {entry['what']}, gain eaten", entry["before"], self.figure(changed, figure))
        for pair in document["interactions"]:
            if pair["refused"]:
                continue
            first, second = ranked[pair["first"]], ranked[pair["second"]]
            changed = with_changes(raw, first["changes"] + second["changes"])
            self.equal(f"{path}, {figure}: {first['what']} and {second['what']}", pair["joint"] + document["value"],
                       self.figure(changed, figure))

    def break_evens(self, path, raw, baseline, figure):
        document = self.printed("break-even", path, baseline, "--figure", figure)
        for entry in document["inputs"]:
            for root in entry["roots"]:
                changed = copy.deepcopy(raw)
                put(changed, entry["pointer"], json.dumps(f"{root!r} {entry['unit']}"))
                self.equal(f"{path}, {figure}: break-even of {entry['name']}", self.figure(changed, figure),
                           document["target"])

    def saved(self, path):
        with open(os.path.join(twin.ROOT, "routes/route.schema.json"), encoding="utf-8") as file:
            schema = json.load(file)
        with tempfile.TemporaryDirectory() as folder:
            target = os.path.join(folder, "saved.json")
            document = self.printed("what-if", path, "--set", "yield=70 %", "--id", "saved", "--save", target)
            with open(target, encoding="utf-8") as file:
                saved = json.load(file)
        self.faults += [f"saved route: {error.message}" for error in jsonschema.Draft202012Validator(schema).iter_errors(saved)]
        if saved["parent"]["changes"] != [{"at": "/steps/0/isolated/yield", "before": "80 %", "after": "70 %"}]:
            self.faults.append(f"saved route: parentage {saved['parent']}")
        for figure in document["figures"]:
            expected = self.figure(saved, figure["id"])
            if expected is not None and figure["after"] is not None:
                self.equal(f"saved route: {figure['id']}", figure["after"], expected)


def main(arguments):
    check = Check(arguments[0])
    folder = os.path.join(twin.ROOT, "routes")
    for name in arguments[1:] or ROUTES:
        path = os.path.join(folder, name + ".json")
        with open(path, encoding="utf-8") as file:
            raw = json.load(file)
        for figure in ("process_mass_intensity", "hazard_score"):
            check.improvements(path, raw, figure)
    bromo = os.path.join(folder, "4-bromoacetanilide")
    with open(os.path.join(bromo, "A3.json"), encoding="utf-8") as file:
        raw = json.load(file)
    check.break_evens(os.path.join(bromo, "A3.json"), raw, os.path.join(bromo, "A1.json"), "process_mass_intensity")
    check.saved(os.path.join(bromo, "A3.json"))
    print("\n".join(check.faults + [f"{check.count} claims checked, {len(check.faults)} faults"]))
    return 1 if check.faults or check.count < 100 else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
