"""The rule sets against a second transcription of the same published figures: every limit must agree both ways."""
import csv
import pathlib
import re
import sys
from fractions import Fraction

import yaml

sets, table = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])
words = ("min", "max", "above", "below")
quantities = set("""rise rise_variation rise_step run run_variation run_step two_rises_and_run nosing_projection
nosing_variation rake flight_rise risers open_riser open_riser_height clear_width headroom tread_slope drop guard_height guard_top_height
handrail_height
picket_opening under_rail_opening grip_diameter grip_perimeter grip_width grip_least
recess_start recess_depth recess_reach recess_held recess_end width_above_recess grip_height wall_clearance
handrail_projection extension_top extension_bottom_treads side_gap guard_opening_above handrail_sides""".split())
units = {"rake": "deg", "risers": "count", "handrail_sides": "count", "tread_slope": "slope", "extension_bottom_treads": "treads"}
# The fall from which each document asks for a guard.
falls = {"irc-2018": {"above": 30}, "irc-2021": {"above": 30}, "irc-2024": {"above": 30}, "ibc-2021": {"above": 30},
         "ibc-2021-dwelling": {"above": 30}, "ada-2010": None, "osha-1910": {"min": 48}, "nbc-9.8": {"above": 600},
         "ad-k-2013": {"above": 600}, "ncc-2022": {"min": 1000}, "nz-d1-f4": {"min": 1000}, "iso-14122-3": {"above": 500}}
faults = []


def value(text):
    return sum(Fraction(part) for part in str(text).split())


if {path.stem for path in sets.glob("*.yaml")} != set(falls):
    faults.append("a rule set is missing here or there")
in_yaml = {}
for name, fall in falls.items():
    text = (sets / f"{name}.yaml").read_text()
    if not text.isascii():
        faults.append(f"{name}: not plain ASCII")
    keys = [m.group(1) for m in re.finditer(r"^  (\S.*):$", text, re.M)]
    if len(keys) != len(set(keys)):
        faults.append(f"{name}: a rule name twice")
    data = yaml.load(text, yaml.BaseLoader)
    typed = yaml.safe_load(text)
    if list(data) != ["document", "edition", "place", "units", "rules"]:
        faults.append(f"{name}: head {list(data)}")
    for rule, body in data["rules"].items():
        place = f"{name}: {rule}"
        extra = set(body) - {"clause", "judges", *words, "where", "only_if", "source", "measured", "note"}
        if extra:
            faults.append(f"{place}: unknown {extra}")
        if not isinstance(typed["rules"][rule]["clause"], str):
            faults.append(f"{place}: clause would be read as a number")
        if body["judges"] not in quantities or body["source"] not in ("read", "government", "secondary", "memory", "derived"):
            faults.append(f"{place}: {body['judges']} {body['source']}")
        if body.get("where", "any") not in ("stair", "level", "any") or not body.get("measured"):
            faults.append(f"{place}: where or measured")
        for other, bounds in body.get("only_if", {}).items():
            if other not in quantities or set(bounds) - set(words):
                faults.append(f"{place}: only_if {other}")
            if other == "drop":
                first = {w: value(v) for w, v in bounds.items() if w in ("min", "above")}
                if first != (fall and {w: value(v) for w, v in fall.items()}) and rule != "high guard height":
                    faults.append(f"{place}: fall {bounds} is not {fall}")
        if not any(w in body for w in words):
            faults.append(f"{place}: no limit")
        for word in words:
            if word in body:
                unit = units.get(body["judges"], data["units"])
                in_yaml[name, rule, word] = (body["clause"], body["judges"], value(body[word]), unit, body["source"])

in_csv = {}
for row in csv.DictReader(table.open()):
    key = row["set"], row["rule"], row["word"]
    if key in in_csv:
        faults.append(f"{key}: twice in the table")
    in_csv[key] = (row["clause"], row["judges"], value(row["limit"]), row["unit"], row["source"])

for key in sorted(in_yaml.keys() | in_csv.keys()):
    if in_yaml.get(key) != in_csv.get(key):
        faults.append(f"{key}: rule set {in_yaml.get(key)}, the table {in_csv.get(key)}")
print(*faults, f"{len(in_yaml)} limits in rule sets, {len(in_csv)} in the table, {len(faults)} faults", sep="\n")
sys.exit(bool(faults))
