"""Makes resources/map/outline.json from the file countries-10m.json of the npm package world-atlas 2.0.2.

    npm pack world-atlas@2.0.2 && tar -xzf world-atlas-2.0.2.tgz
    python3 ui/map/make_outline.py package/countries-10m.json resources/map/outline.json

Keeps western Europe: land as closed rings, borders between countries as lines. Britain and Ireland stay as fine as the
source has them, the rest is simplified (Douglas and Peucker 1973). resources/docs/outline.md says what the result is good for.
"""

import hashlib
import json
import sys

SOURCE_SHA256 = "3bc6f1d367a9bcec479841bae0e76092f512838411d0cef124e92eec4db45f79"
BOX = (-12.0, 35.0, 20.0, 62.0)  # west, south, east, north
FINE = (-11.0, 49.0, 2.0, 61.5)  # Britain and Ireland
COARSE_DEGREES = 0.02
SMALLEST_SQUARE_DEGREES = 0.003  # islands outside FINE below this are left out
UNITS = 10000  # to a degree


def decoded(topology):
    (sx, sy), (tx, ty) = topology["transform"]["scale"], topology["transform"]["translate"]
    arcs = []
    for arc in topology["arcs"]:
        x = y = 0
        points = []
        for dx, dy in arc:
            x, y = x + dx, y + dy
            points.append((x * sx + tx, y * sy + ty))
        arcs.append(points)
    return arcs


def joined(arcs, numbers):
    """One ring of a polygon; an arc's number is inverted where the ring runs against it."""
    ring = []
    for number in numbers:
        points = arcs[number] if number >= 0 else arcs[~number][::-1]
        ring.extend(points if not ring else points[1:])
    return ring


def rings(topology, arcs):
    for geometry in topology["objects"]["land"]["geometries"]:
        polygons = geometry["arcs"] if geometry["type"] == "MultiPolygon" else [geometry["arcs"]]
        for polygon in polygons:
            for numbers in polygon:
                yield joined(arcs, numbers)


def borders(topology, arcs):
    """Arcs that two countries share."""
    used = {}

    def count(part, country):
        if isinstance(part, int):
            used.setdefault(part if part >= 0 else ~part, set()).add(country)
        else:
            for inner in part:
                count(inner, country)

    for number, geometry in enumerate(topology["objects"]["countries"]["geometries"]):
        count(geometry.get("arcs", []), number)
    return [arcs[arc] for arc, countries in sorted(used.items()) if len(countries) > 1]


def clip(ring):
    """Sutherland and Hodgman 1974: against one side of the box after the other."""
    west, south, east, north = BOX
    sides = [(0, west, 1), (0, east, -1), (1, south, 1), (1, north, -1)]
    for axis, at, sign in sides:
        def inside(p):
            return sign * (p[axis] - at) >= 0
        out = []
        for here, there in zip(ring, ring[1:] + ring[:1]):
            if inside(here):
                out.append(here)
            if inside(here) != inside(there):
                part = (at - here[axis]) / (there[axis] - here[axis])
                cut = [here[i] + part * (there[i] - here[i]) for i in (0, 1)]
                cut[axis] = at
                out.append(tuple(cut))
        ring = out
    return ring


def in_box(point, box):
    return box[0] <= point[0] <= box[2] and box[1] <= point[1] <= box[3]


def pieces(line):
    """The parts of a line whose points lie in the box."""
    piece = []
    for point in line:
        if in_box(point, BOX):
            piece.append(point)
        elif piece:
            yield piece
            piece = []
    if piece:
        yield piece


def simplified(line):
    """Leaves points out that lie nearer than COARSE_DEGREES to the line without them, but none inside FINE."""
    keep = [in_box(p, FINE) for p in line]
    keep[0] = keep[-1] = True
    fixed = [i for i, kept in enumerate(keep) if kept]
    stack = list(zip(fixed, fixed[1:]))
    while stack:
        first, last = stack.pop()
        (ax, ay), (bx, by) = line[first], line[last]
        length = ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5
        far, at = 0.0, None
        for i in range(first + 1, last):
            x, y = line[i]
            away = (abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length if length > 0
                    else ((x - ax) ** 2 + (y - ay) ** 2) ** 0.5)
            if away > far:
                far, at = away, i
        if far > COARSE_DEGREES:
            keep[at] = True
            stack += [(first, at), (at, last)]
    return [p for p, kept in zip(line, keep) if kept]


def area(ring):
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, ring[1:] + ring[:1]))) / 2


def encoded(line):
    """West to east and south to north in units, each after the first as the step from the one before; no step of none."""
    numbers, x, y = [], 0, 0
    for degrees in line:
        step = (round(degrees[0] * UNITS) - x, round(degrees[1] * UNITS) - y)
        if numbers and step == (0, 0):
            continue
        numbers += step
        x, y = x + step[0], y + step[1]
    return numbers


def main():
    raw = open(sys.argv[1], "rb").read()
    if hashlib.sha256(raw).hexdigest() != SOURCE_SHA256:
        sys.exit("this is not the file countries-10m.json of world-atlas 2.0.2")
    topology = json.loads(raw)
    arcs = decoded(topology)
    land = []
    for ring in rings(topology, arcs):
        ring = clip(ring[:-1])
        if len(ring) < 3 or (area(ring) < SMALLEST_SQUARE_DEGREES and not any(in_box(p, FINE) for p in ring)):
            continue
        numbers = encoded(simplified(ring + ring[:1])[:-1])
        if len(numbers) >= 6:
            land.append(numbers)
    lines = [encoded(simplified(piece)) for border in borders(topology, arcs) for piece in pieces(border) if len(piece) > 1]
    lines = [numbers for numbers in lines if len(numbers) >= 4]
    with open(sys.argv[2], "w", encoding="ascii") as out:
        out.write('{"box":%s,"units":%d,\n"land":[\n' % (json.dumps(BOX), UNITS))
        out.write(",\n".join(json.dumps(n, separators=(",", ":")) for n in sorted(land, key=len, reverse=True)))
        out.write('],\n"borders":[\n')
        out.write(",\n".join(json.dumps(n, separators=(",", ":")) for n in lines))
        out.write("]}\n")
    print(len(land), "rings,", sum(map(len, land)) // 2, "points;", len(lines), "borders,", sum(map(len, lines)) // 2, "points")


if __name__ == "__main__":
    main()
