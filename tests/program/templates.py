"""Holds the full-size templates against the JSON results: well-formed, every end once, true to scale, the same twice."""
import json
import pathlib
import subprocess
import sys
import xml.etree.ElementTree as xml

SVG = "{http://www.w3.org/2000/svg}"
MILLIMETRES = {"in": 25.4, "mm": 1.0}


def printed(program, *words):
    done = subprocess.run([program, *words], capture_output=True, timeout=60)
    assert done.returncode == 0, done.stderr.decode()
    return done.stdout.decode()


def drawn_faces(group):
    faces = {}
    for line in group.iter(SVG + "polyline"):
        points = [tuple(float(number) for number in point.split(",")) for point in line.get("points").split()]
        faces[line.get("data-face")] = points
    return faces


def check_end(group, name, member, end, scale):
    label = next(group.iter(SVG + "text")).text
    assert label == f"{name}, {member['name']}, {end} end", label
    drawn = drawn_faces(group)
    base = next(float(line.get("y1")) for line in group.iter(SVG + "line") if line.get("stroke-dasharray"))
    # Seen from outside with the end up, the right face lies to the right of the top at a to end, the left at a from end.
    order = ["top", "right", "bottom", "left"] if end == "to" else ["top", "left", "bottom", "right"]
    assert list(drawn) == order, list(drawn)
    for face in member[end + "_end"]["cope"]["outline"]:
        across = sorted(x for x, _ in drawn[face["face"]])
        width = member["width"] if face["face"] in ("top", "bottom") else member["depth"]
        assert abs(across[-1] - across[0] - width * scale) < 2e-4
        middle = (across[0] + across[-1]) / 2
        for (x, y), point in zip(drawn[face["face"]], face["points"]):
            assert abs(base - y - point["along"] * scale) < 2e-4, (name, end, face["face"])
            assert abs(abs(x - middle) - abs(point["across"]) * scale) < 2e-4
    # Each face goes on where its neighbour ends, and the last meets the first: one arris, one height.
    ends = [sorted((drawn[face][0], drawn[face][-1])) for face in order]
    for left, right in zip(ends, ends[1:] + ends[:1]):
        assert abs(left[1][1] - right[0][1]) < 2e-4, (name, end)
    # The arris between two neighbours is that of both their names.
    arris = member[end + "_end"]["cope"]
    first = "top_right" if end == "to" else "top_left"
    assert abs(base - ends[0][1][1] - arris[first] * scale) < 2e-4


def check_round_end(group, name, piece, end, scale):
    label = next(group.iter(SVG + "text")).text
    assert label == f"{name}, {piece['name']}, {end} end", label
    drawn = drawn_faces(group)
    assert list(drawn) == ["round"]
    base = next(float(line.get("y1")) for line in group.iter(SVG + "line") if line.get("stroke-dasharray") == "3 1")
    outline = piece[end + "_outline"]
    girth = outline[-1]["around"] - outline[0]["around"]
    assert abs(girth - 3.141592653589793 * piece["width"]) < 1e-9
    across = [x for x, _ in drawn["round"]]
    middle = (min(across) + max(across)) / 2
    # Seen from outside with the end up, what is to the left of the top lies to its left at a to end.
    way = -1 if end == "to" else 1
    for (x, y), point in zip(drawn["round"], outline, strict=True):
        assert abs(base - y - point["along"] * scale) < 2e-4, (name, end)
        assert abs(x - middle - way * point["around"] * scale) < 2e-4, (name, end)
    assert outline[0]["along"] == outline[-1]["along"]


def page_and_results(program, job):
    text = printed(program, "template", job)
    assert text == printed(program, "template", job)
    assert "<script" not in text
    page, results = xml.fromstring(text), json.loads(printed(program, "solve", job, "--format", "json"))
    assert page.get("width").endswith("mm") and page.get("height").endswith("mm")
    assert page.get("viewBox") == f"0 0 {page.get('width')[:-2]} {page.get('height')[:-2]}"  # one unit is a millimetre
    return [group for group in page.iter(SVG + "g") if group.get("id")], results


def main():
    program, fixtures = sys.argv[1], pathlib.Path(sys.argv[2])
    groups, results = page_and_results(program, str(fixtures / "jobs" / "cedar-boardwalk.yaml"))
    scale = MILLIMETRES[results["units"]]
    coped = [(name, member, end) for name, section in results["sections"].items() for member in section["members"]
             for end in ("from", "to") if "cope" in member[end + "_end"]]
    assert len(groups) == len(coped) == 9, (len(groups), len(coped))
    for group, (name, member, end) in zip(groups, coped):
        check_end(group, name, member, end, scale)
    wrapped = 0
    for job in ("rowan-weir", "tern-slip"):
        groups, results = page_and_results(program, str(fixtures / "jobs" / (job + ".yaml")))
        ends = [(name, piece, end) for name, rail in results["handrails"].items() for piece in rail["pieces"]
                for end in ("from", "to") if end + "_outline" in piece]
        assert len(groups) == len(ends), (len(groups), len(ends))
        for group, (name, piece, end) in zip(groups, ends):
            check_round_end(group, name, piece, end, MILLIMETRES[results["units"]])
        wrapped += len(ends)
    assert wrapped == 8, wrapped
    print(f"{len(coped)} copes and {wrapped} round ends are true to scale")


if __name__ == "__main__":
    main()
