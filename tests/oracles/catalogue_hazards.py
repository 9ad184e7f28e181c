# SPDX-License-Identifier: MIT
"""What a substance does: classes against statements, index numbers, sources, and the schemes that use them."""

# Statement of each class and category, Regulation (EC) No 1272/2008, Annex I (memory, well known).
STATEMENT = {
    ("Unst. Expl.", None): "H200", ("Flam. Gas", "1"): "H220", ("Flam. Gas", "2"): "H221", ("Press. Gas", None): "H280",
    ("Flam. Liq.", "1"): "H224", ("Flam. Liq.", "2"): "H225", ("Flam. Liq.", "3"): "H226", ("Flam. Sol.", "1"): "H228",
    ("Flam. Sol.", "2"): "H228", ("Pyr. Sol.", "1"): "H250", ("Self-heat.", "1"): "H251", ("Self-heat.", "2"): "H252", ("Water-react.", "1"): "H260",
    ("Water-react.", "2"): "H261", ("Water-react.", "3"): "H261", ("Ox. Gas", "1"): "H270", ("Ox. Liq.", "1"): "H271",
    ("Ox. Liq.", "2"): "H272", ("Ox. Liq.", "3"): "H272", ("Ox. Sol.", "1"): "H271", ("Ox. Sol.", "2"): "H272",
    ("Ox. Sol.", "3"): "H272", ("Met. Corr.", "1"): "H290", ("Skin Corr.", "1"): "H314", ("Skin Corr.", "1A"): "H314",
    ("Skin Corr.", "1B"): "H314", ("Skin Corr.", "1C"): "H314", ("Skin Irrit.", "2"): "H315", ("Eye Dam.", "1"): "H318",
    ("Eye Irrit.", "2"): "H319", ("Resp. Sens.", "1"): "H334", ("Resp. Sens.", "1A"): "H334", ("Resp. Sens.", "1B"): "H334",
    ("Skin Sens.", "1"): "H317", ("Skin Sens.", "1A"): "H317", ("Skin Sens.", "1B"): "H317", ("Muta.", "1A"): "H340",
    ("Muta.", "1B"): "H340", ("Muta.", "2"): "H341", ("Carc.", "1A"): "H350", ("Carc.", "1B"): "H350", ("Carc.", "2"): "H351",
    ("Repr.", "1A"): "H360", ("Repr.", "1B"): "H360", ("Repr.", "2"): "H361", ("Lact.", None): "H362",
    ("STOT SE", "1"): "H370", ("STOT SE", "2"): "H371", ("STOT RE", "1"): "H372", ("STOT RE", "2"): "H373",
    ("Asp. Tox.", "1"): "H304", ("Aquatic Acute", "1"): "H400", ("Aquatic Chronic", "1"): "H410",
    ("Aquatic Chronic", "2"): "H411", ("Aquatic Chronic", "3"): "H412", ("Aquatic Chronic", "4"): "H413", ("Ozone", "1"): "H420",
}
SEVERAL = {("Acute Tox.", "1"): ("H300", "H310", "H330"), ("Acute Tox.", "2"): ("H300", "H310", "H330"),
           ("Acute Tox.", "3"): ("H301", "H311", "H331"), ("Acute Tox.", "4"): ("H302", "H312", "H332"),
           ("STOT SE", "3"): ("H335", "H336")}
ODD_STATEMENT = {("magnesium", "H252"): "Annex VI prints H252 beside Self-heat. 1; the printed row is kept"}
ATE_ROUTE = {"H300": "oral", "H301": "oral", "H302": "oral", "H310": "dermal", "H311": "dermal", "H312": "dermal",
             "H330": "inhalation", "H331": "inhalation", "H332": "inhalation"}
# Upper ends of the acute toxicity categories, mg/kg, Annex I Table 3.1.1 (memory, well known).
ATE_LIMIT = {("oral", "1"): 5, ("oral", "2"): 50, ("oral", "3"): 300, ("oral", "4"): 2000,
             ("dermal", "1"): 50, ("dermal", "2"): 200, ("dermal", "3"): 1000, ("dermal", "4"): 2000}
NEEDS_SOURCE = ("cas", "formula", "molar_mass_g_per_mol", "smiles", "phase_at_25C", "density_g_per_mL", "melting_point_C",
                "decomposes_C", "boiling_point_C", "boiling_range_C", "flash_point_C", "free_bromine", "carried_bromine", "ghs", "euh",
                "supplier_additions", "oel", "gwp100", "odp")
BESIDE = ("name", "id", "synonyms")


def base(statement):
    """H360FD counts as H360: letters behind a statement do not change its class."""
    return statement[:4] if statement.startswith("H") else statement


def index_is_valid(index):
    """The last character of a CLP index number is the sum of place times digit, modulo 11, with X for 10."""
    digits = index.replace("-", "")
    rest = sum(place * int(digit) for place, digit in enumerate(digits[:-1], 1)) % 11
    return digits[-1] == ("X" if rest == 10 else str(rest))


def entries_of(substance):
    solution = substance.get("ghs_solution", {}).get("ghs", [])
    return substance.get("ghs", []) + solution + substance.get("supplier_additions", [])


def check_entry(report, name, entry, field=""):
    key, statement = (entry["class"], entry["category"]), entry["h"]
    allowed = SEVERAL.get(key, (STATEMENT.get(key),))
    if (name, statement) not in ODD_STATEMENT:
        report.check(base(statement) in allowed, "%s%s: %s %s with %s" % (name, field, entry["class"], entry["category"], statement))
    if "m_factor" in entry:
        report.check(statement in ("H400", "H410"), "%s: M-factor on %s" % (name, statement))
    if "ate" in entry:
        ate = entry["ate"]
        report.check(ATE_ROUTE.get(statement) == ate["route"], "%s: ATE of route %s on %s" % (name, ate["route"], statement))
        if ate["unit"] == "mg/kg bw":
            top = ATE_LIMIT[(ate["route"], entry["category"])]
            bottom = ATE_LIMIT.get((ate["route"], str(int(entry["category"]) - 1)), 0)
            report.check(bottom < ate["value"] <= top, "%s: ATE %s outside category %s" % (name, ate["value"], entry["category"]))
    for limit in entry.get("specific_limits", []):
        check_entry(report, name, limit, " specific limit")
        if limit["max_pct"] is not None:
            report.check(limit["min_pct"] < limit["max_pct"], "%s: empty concentration band" % name)


def check_substance(report, substance):
    name, sources = substance["id"], substance["sources"]
    for field in NEEDS_SOURCE:
        if field in substance:
            report.check(field in sources, "%s: %s has no source" % (name, field))
    for field in sources:
        report.check(field in NEEDS_SOURCE and field in substance, "%s: source for %s, which is not there" % (name, field))
    for place in (substance, substance.get("ghs_solution", {})):
        if "annex_vi" in place:
            index = place["annex_vi"]["index_no"]
            report.check(index_is_valid(index), "%s: index number %s fails its check digit" % (name, index))
            report.check(index in place["ghs_source"], "%s: ghs_source does not name index %s" % (name, index))
        elif "index no." in place.get("ghs_source", ""):
            index = place["ghs_source"].split("index no. ")[1].split()[0]
            report.check(index_is_valid(index), "%s: index number %s fails its check digit" % (name, index))
    if substance["ghs_status"].startswith("harmonised"):
        report.check("index no." in substance["ghs_source"], "%s: harmonised without an index number" % name)
    for part in ("ghs", "supplier_additions"):
        seen = [(entry["class"], entry["h"]) for entry in substance.get(part, [])]
        report.check(len(seen) == len(set(seen)), "%s: %s has an entry twice" % (name, part))
    for entry in entries_of(substance):
        check_entry(report, name, entry)
    limit = substance.get("oel", {})
    if limit.get("short_term", {}).get("unit") == limit.get("unit") and "short_term" in limit:
        report.check(limit["short_term"]["value"] > limit["value"], "%s: short-term limit below the day's limit" % name)


def check_banding(report, scheme, substances):
    """Every health statement of the catalogue meets exactly one row, or is named as unused."""
    order = {band["band"]: band for band in scheme["bands"]}
    for measure in ("particle_mg_m3", "gas_vapour_ppm"):
        uppers = [order[band][measure]["upper"] for band in "ABCDE"]
        uppers = [float("inf") if upper is None else upper for upper in uppers]
        report.check(uppers == sorted(uppers, reverse=True), "%s: edges of %s do not fall from A to E" % (scheme["id"], measure))
    seen = {(entry["h"], entry["category"]) for substance in substances for entry in entries_of(substance)}
    for statement, category in sorted(seen, key=str):
        rows = [row for row in scheme["rows"] if statement in row["statements"] and category in row.get("categories", [category])]
        unused = any(statement in part.get("statements", []) or
                     part.get("statements_from", "Z") <= base(statement) <= part.get("statements_to", "") for part in scheme["unused"])
        report.check(len(rows) + unused == 1, "%s: %s category %s meets %d rows" % (scheme["id"], statement, category, len(rows) + unused))
    for case in scheme.get("derived_checks", []):
        # categories are not part of the published statements: the mildest row of each statement is meant
        bands = [min(row["band"] for row in scheme["rows"] if statement in row["statements"]
                     and (statement not in ("H317", "H334") or "1" in row["categories"]))
                 for statement in case["statements"] if any(statement in row["statements"] for row in scheme["rows"])]
        report.check(max(bands) == case["band"], "%s: %s comes to band %s" % (scheme["id"], case["substance"], max(bands)))


def check_score(report, score, schemes, substances):
    for name in score["bandings"]:
        report.check(schemes.get(name, {}).get("kind") == "health banding", "hazard_score: %s is no health banding" % name)
    report.check(len({e["id"] for e in score["endpoints"]}) == len(score["endpoints"]) == 9, "hazard_score: nine endpoints expected")
    report.check(sum(place["scored"] for place in score["places"]) == 3, "hazard_score: three scored places expected")
    used = {}
    for endpoint in score["endpoints"]:
        codes = endpoint.get("serious", []) + endpoint.get("lower", []) + endpoint.get("statements", []) + \
            endpoint.get("no_limit", []) + [limit["statement"] for limit in endpoint.get("limits", [])]
        for code in codes:
            report.check(code not in used, "hazard_score: %s stands under %s and %s" % (code, used.get(code), endpoint["id"]))
            used[code] = endpoint["id"]
        if endpoint["kind"] == "acute dose":
            points = [endpoint["points_mg_per_kg"][category] for category in "1234"]
            limits = [ATE_LIMIT[(endpoint["id"], category)] for category in "1234"]
            report.check(points == sorted(points) and all(p <= l for p, l in zip(points, limits)),
                         "hazard_score: %s points do not lie in their categories" % endpoint["id"])
            report.check(endpoint["unassessed_mg_per_kg"] == points[0], "hazard_score: %s worst point" % endpoint["id"])
        if endpoint["kind"] == "aquatic limit":
            lowest = min(limit["g_per_m3"] for limit in endpoint["limits"])
            report.check(endpoint["unassessed_g_per_m3"] == lowest, "hazard_score: %s worst limit" % endpoint["id"])


def check(report, substances, schemes):
    for substance in substances:
        check_substance(report, substance)
    for name in ("niosh_2019_132", "hse_ilo"):
        check_banding(report, schemes[name], substances)
    check_score(report, schemes["hazard_score"], schemes, substances)
    columns = {}
    for row in schemes["trgs_600"]["rows"]:
        for statement in row["statements"]:
            for category in row.get("categories", ["any"]):
                key = (row["column"], statement, category)
                report.check(key not in columns, "trgs_600: %s %s stands at two levels" % (row["column"], statement))
                columns[key] = row["level"]
