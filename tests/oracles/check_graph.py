# SPDX-License-Identifier: MIT
"""The graph of a route against networkx (Debian package python3-networkx), on random routes.

    check_graph.py PROBE [COUNT [FIRST SEED]]

PROBE is graph_probe.cpp. The vertices are found here once more from the rules: a substance is one vertex a step, and an
intermediate that a step is fed with is the vertex of the step that makes it. networkx then answers for reachability,
strongly connected components and their order; roles follow from who charges, makes and uses a vertex.
"""
import json
import random
import subprocess
import sys

import networkx


def random_route(seed):
    """Steps as dictionaries; every third route has reactions of one reactant only, where reaching is plain descent."""
    draw = random.Random(seed)
    steps, product = [], None
    products = draw.sample(range(30), draw.randint(1, 8))
    for number, makes in enumerate(products):
        pool = draw.sample(range(30), draw.randint(3, 8)) + [makes]
        charges = [(s, draw.random() < 0.2) for s in draw.sample(pool, draw.randint(1, len(pool) - 1))]
        # A step of this route feeds another, now and then an earlier one.
        for other in range(len(products)):
            if other != number and draw.random() < (0.4 if other < number else 0.1):
                charges.append((products[other], draw.random() < 0.1))
                pool.append(products[other])
        reactions = []
        for _ in range(draw.randint(0, 5)):
            parts = draw.sample(sorted(set(pool)), draw.randint(2, min(4, len(set(pool)))))
            uses = 1 if seed % 3 == 0 else draw.randint(1, len(parts) - 1)
            reactions.append((parts[:uses], parts[uses:]))
        steps.append({"product": makes, "charges": charges, "reactions": reactions})
        product = makes if product is None or draw.random() < 0.5 else product
    return {"product": product, "steps": steps}


def as_lines(route):
    yield f"product {route['product']}"
    for step in route["steps"]:
        yield f"step {step['product']}"
        for substance, bought in step["charges"]:
            yield f"charge {substance}{' bought' if bought else ''}"
        for uses, makes in step["reactions"]:
            yield "reaction " + " ".join([f"-{s}" for s in uses] + [f"+{s}" for s in makes])
    yield "end"


class Reading:
    """The graph of a route by networkx: vertices (step, substance) and ("r", step, number)."""

    def __init__(self, route):
        self.route = route
        self.makers = {step["product"]: number for number, step in enumerate(route["steps"])}
        self.feeds = [(self.makers[s], number) for number, step in enumerate(route["steps"])
                      for s, bought in step["charges"] if s in self.makers and not bought]
        self.fed = {(number, s) for number, step in enumerate(route["steps"])
                    for s, bought in step["charges"] if s in self.makers and not bought}
        self.graph, self.charged, self.supplied, self.isolated = networkx.DiGraph(), set(), set(), set()
        for number, step in enumerate(route["steps"]):
            for substance, bought in step["charges"]:
                vertex = self.vertex(number, substance)
                self.graph.add_node(vertex)
                fed = substance in self.makers and not bought
                (self.supplied if fed else self.charged).add(vertex)
            for place, (uses, makes) in enumerate(step["reactions"]):
                reaction = ("r", number, place)
                self.graph.add_node(reaction)
                self.graph.add_edges_from((self.vertex(number, s), reaction) for s in uses)
                self.graph.add_edges_from((reaction, self.vertex(number, s)) for s in makes)
            # What is isolated leaves the step under its own number, whatever the step is fed with.
            self.graph.add_node(self.vertex(number, step["product"]))
            self.isolated.add((number, step["product"]))
        self.reached = self.reach()

    def vertex(self, step, substance):
        return (self.makers[substance], substance) if (step, substance) in self.fed else (step, substance)

    def reach(self):
        """Vertices that can be there. A reaction waits for all that leads to it, a substance for one."""
        if all(len(uses) == 1 for step in self.route["steps"] for uses, _ in step["reactions"]):
            return self.charged.union(*(networkx.descendants(self.graph, v) for v in self.charged))
        reached, before = set(self.charged), None
        while reached != before:
            before = set(reached)
            for node in self.graph:
                ways = list(self.graph.predecessors(node))
                if ways and (all if node[0] == "r" else any)(w in before for w in ways):
                    reached.add(node)
        return reached

    def role(self, vertex):
        step, substance = vertex
        charged, fed = vertex in self.charged, vertex in self.supplied
        made, used = self.graph.in_degree(vertex) > 0, self.graph.out_degree(vertex) > 0
        isolated = self.route["steps"][step]["product"] == substance
        if isolated and substance == self.route["product"]:
            return "product"
        if isolated and (fed or not charged):
            return "intermediate"
        if charged:
            return "bought" if used else "never used by a reaction"
        if not made:
            return "not supplied"
        return "transient" if used else "by-product"


def faults(route, answer):
    reading = Reading(route)
    vertices = [(step, substance) for substance, step, *_ in answer["substances"]]
    reactions = [("r", step, number) for step, number, *_ in answer["reactions"]]
    if sorted(vertices) != sorted(v for v in reading.graph if v[0] != "r"):
        yield "other substance vertices"
        return
    edges = {(vertices[s], reactions[r]) if c < 0 else (reactions[r], vertices[s]) for s, r, c in answer["edges"]}
    if edges != set(reading.graph.edges) or len(answer["edges"]) != len(edges):
        yield "other edges"
        return
    loops = {}
    for vertex, (_, _, role, regenerated, reached, loop) in zip(vertices, answer["substances"]):
        if role != reading.role(vertex):
            yield f"{vertex} is {role}, expected {reading.role(vertex)}"
        if regenerated != (vertex in reading.charged and reading.graph.in_degree(vertex) > 0):
            yield f"{vertex}: regenerated is {regenerated}"
        if reached != (vertex in reading.reached):
            yield f"{vertex}: reached is {reached}"
        loops.setdefault(loop, set()).add(vertex)
    for node, (_, _, reached, loop) in zip(reactions, answer["reactions"]):
        if reached != (node in reading.reached):
            yield f"{node}: reached is {reached}"
        loops.setdefault(loop, set()).add(node)
    loops.pop(-1, None)
    strong = {frozenset(c) for c in networkx.strongly_connected_components(reading.graph) if len(c) > 1}
    if {frozenset(members) for members in loops.values()} != strong:
        yield f"loops {list(loops.values())}, expected {strong}"

    if sorted(map(tuple, answer["feeds"])) != sorted(reading.feeds):
        yield f"feeds {answer['feeds']}, expected {reading.feeds}"
    steps = networkx.DiGraph(reading.feeds)
    steps.add_nodes_from(range(len(route["steps"])))
    groups = [frozenset(group) for group in answer["groups"]]
    if set(groups) != {frozenset(c) for c in networkx.strongly_connected_components(steps)} or len(set(groups)) != len(groups):
        yield f"groups of steps {groups}"
        return
    place = {step: index for index, group in enumerate(groups) for step in group}
    for feeder, fed in reading.feeds:
        if place[feeder] < place[fed]:
            yield f"step {feeder} stands before step {fed}, which it feeds"


def main(probe, count="2000", first="0"):
    routes = [random_route(int(first) + i) for i in range(int(count))]
    lines = "\n".join(line for route in routes for line in as_lines(route))
    done = subprocess.run([probe], input=lines + "\n", capture_output=True, text=True, check=True)
    answers = [json.loads(line) for line in done.stdout.splitlines()]
    wrong = [f"route {int(first) + i}: {fault}" for i, (route, answer) in enumerate(zip(routes, answers)) for fault in faults(route, answer)]
    loops = sum(any(s[5] >= 0 for s in answer["substances"]) for answer in answers)
    circles = sum(any(len(group) > 1 for group in answer["groups"]) for answer in answers)
    unfed = sum(any(not r[2] for r in answer["reactions"]) for answer in answers)
    print("\n".join(wrong[:20]))
    print(f"{len(answers)} routes, {loops} with loops of reactions, {circles} with steps that feed each other, "
          f"{unfed} with reactions that nothing starts; {len(wrong)} faults")
    return 1 if wrong or len(answers) != len(routes) or min(loops, circles, unfed) < 20 else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
