# SPDX-License-Identifier: MIT
"""How long the plain-Python reading of the same route files takes for one evaluation, in one process.

    time_twin.py ROUTE... > twin.json

An evaluation starts from files that are read and parsed: extents, streams, every figure. Median of repeated runs.
"""

import json
import pathlib
import statistics
import sys
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "tests" / "oracles"))
import twin  # noqa: E402  (found through the path above)

REPEATS = 7


def evaluate(route, catalogue):
    for step in route.steps:
        twin.work_step(step, catalogue)
    return twin.route_figures(route, catalogue)


def main(arguments):
    catalogue = twin.read_catalogue(str(ROOT / "hazard-data"))
    seconds = {}
    for path in twin.files_of(arguments):
        route = twin.read_route(json.loads(pathlib.Path(path).read_text(encoding="utf-8")), catalogue)
        runs = []
        for _ in range(REPEATS):
            start = time.perf_counter()
            evaluate(route, catalogue)
            runs.append(time.perf_counter() - start)
        seconds[route.id] = statistics.median(runs)
    json.dump(seconds, sys.stdout, indent=1)


if __name__ == "__main__":
    main(sys.argv[1:])
