# SPDX-License-Identifier: MIT
"""What stands in a bottle: components, fractions, molarity, names; and the list of benign inputs."""


def check_material(report, material, substances):
    name = material["id"]
    components = {component["id"]: component["mass_fraction"] for component in material["components"]}
    report.check(len(components) == len(material["components"]), "%s: a component stands twice" % name)
    total = sum(component["mass_fraction"] for component in material["components"])
    report.check(abs(total - 1) < 1e-9, "%s: mass fractions sum to %.6f" % (name, total))
    for component in components:
        report.check(component in substances, "%s: no substance %s" % (name, component))
    for carrier in material.get("carrier", []):
        report.check(carrier in components, "%s: carrier %s is not a component" % (name, carrier))
        report.check(carrier != "water", "%s: water needs no carrier entry" % name)
    for field, source in (("components", "composition"), ("density_g_per_mL", "density_g_per_mL"), ("carrier", "carrier")):
        report.check((field in material) == (source in material["sources"]), "%s: source of %s" % (name, field))
    if "molarity_mol_per_L" in material:
        first = material["components"][0]
        molarity = 1000 * material["density_g_per_mL"] * first["mass_fraction"] / substances[first["id"]]["molar_mass_g_per_mol"]
        report.check(abs(molarity / material["molarity_mol_per_L"] - 1) < 0.005, "%s: works out at %.4f mol/L" % (name, molarity))
    if all(component in substances and "density_g_per_mL" in substances[component] for component in components) \
            and len(components) > 1 and "density_g_per_mL" in material:
        # Catches a slipped digit: mixtures keep near the ideal volume, though strong salt solutions contract by up to a fifth.
        volume = sum(fraction / substances[component]["density_g_per_mL"] for component, fraction in components.items())
        report.check(0.85 < material["density_g_per_mL"] * volume < 1.2, "%s: density far from that of its components" % name)


def check(report, substances, materials, benign):
    by_id = {substance["id"]: substance for substance in substances}
    words = {}
    for substance in substances:
        for word in [substance["name"]] + substance["synonyms"]:
            words[" ".join(word.lower().split())] = "the substance " + substance["id"]
    ids = set()
    for material in materials:
        report.check(material["id"] not in ids, "%s: id given twice" % material["id"])
        report.check(material["id"] not in by_id, "%s: also the id of a substance" % material["id"])
        ids.add(material["id"])
        for word in [material["name"]] + material["synonyms"]:
            folded = " ".join(word.lower().split())
            report.check(folded not in words, "%s: \"%s\" also names %s" % (material["id"], word, words.get(folded)))
            words[folded] = material["id"]
        check_material(report, material, by_id)
    for name in benign["substances"]:
        if report.check(name in by_id, "benign: no substance %s" % name):
            report.check(by_id[name]["ghs_status"] == "not-classified", "benign: %s is classified" % name)
