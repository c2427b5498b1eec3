"""Deck of a clamped rectangle of C3D20R solids under an even load on a rectangle, for CalculiX 2.20.

    plate.py NAME --sides 80,60 --thickness 0.7 --tip 16,6 --at 12,-8 --moves press:400,push:200 [--symmetric xy]
             [--crown 1500,0] [--hardening elastic|iso|kin] [--rows 2] [--fine 1.5] [--coarse 5]

The load keeps along z and to the undeformed area. `--symmetric xy`: a quarter, `y`: a half, the tip in the middle of what is cut.
Crowned outward.
"""
import argparse
import math

p = argparse.ArgumentParser()
p.add_argument("name")
for key in ("sides", "tip", "moves"):
    p.add_argument("--" + key, required=True)
p.add_argument("--at", default="0,0")
p.add_argument("--crown", default="0,0")
p.add_argument("--thickness", type=float, required=True)
p.add_argument("--symmetric", default="", help="x, y or xy: sides on which the patch is cut in half")
p.add_argument("--hardening", default="iso")
p.add_argument("--rows", type=int, default=2)
p.add_argument("--fine", type=float, default=1.5)
p.add_argument("--coarse", type=float, default=5.0)
p.add_argument("--edges", default="clamped")
a = p.parse_args()
pair = lambda text: [float(v) for v in text.split(",")]
sides, tip, at, crown = pair(a.sides), pair(a.tip), pair(a.at), pair(a.crown)


def stretch(start, end, first, last):
    """Places from start to end: elements of `first` growing to `coarse`, down to `last` at the end."""
    length, sizes = end - start, []
    forward = lambda s: min(a.coarse, first + 0.25 * s, last + 0.25 * (length - s))
    s = 0.0
    while s < length - 1e-9:
        sizes.append(forward(s + 0.5 * forward(s)))
        s += sizes[-1]
    places = [0.0]
    for size in sizes:
        places.append(places[-1] + size * length / s)
    return [start + q for q in places]


def breaks(side, width, middle, half):
    low, high = middle - width / 2, middle + width / 2
    n = max(2, math.ceil(width / a.fine))
    inner = [low + width * i / n for i in range(n + 1)]
    right = stretch(high, side / 2, a.fine, 1.5 * a.fine)
    if half:
        n = max(2, math.ceil(width / 2 / a.fine))
        return [high * i / n for i in range(n + 1)] + right[1:]
    left = [-q for q in stretch(-low, side / 2, a.fine, 1.5 * a.fine)]
    return left[::-1][:-1] + inner + right[1:]


bx = breaks(sides[0], tip[0], at[0], "x" in a.symmetric)
by = breaks(sides[1], tip[1], at[1], "y" in a.symmetric)
nx, ny, nz = len(bx) - 1, len(by) - 1, a.rows
fall = lambda R, s: 0.0 if R == 0 else math.copysign(math.sqrt(R * R - s * s) - abs(R), -R) if R > 0 else abs(R) - math.sqrt(R * R - s * s)
slope = lambda R, s: 0.0 if R == 0 else -math.copysign(s / math.sqrt(R * R - s * s), R)


def place(x, y, up):
    sx, sy = slope(crown[0], x), slope(crown[1], y)
    size = math.sqrt(1 + sx * sx + sy * sy)
    return x - up * sx / size, y - up * sy / size, fall(crown[0], x) + fall(crown[1], y) + up / size


def mid(b, i):
    return b[i // 2] if i % 2 == 0 else 0.5 * (b[i // 2] + b[i // 2 + 1])


index, nodes = {}, []
for i in range(2 * nx + 1):
    for j in range(2 * ny + 1):
        for k in range(2 * nz + 1):
            if i % 2 + j % 2 + k % 2 <= 1:
                nodes.append(place(mid(bx, i), mid(by, j), a.thickness * (k / (2 * nz) - 0.5)))
                index[i, j, k] = len(nodes)
corner = [(0, 0, 0), (2, 0, 0), (2, 2, 0), (0, 2, 0), (0, 0, 2), (2, 0, 2), (2, 2, 2), (0, 2, 2),
          (1, 0, 0), (2, 1, 0), (1, 2, 0), (0, 1, 0), (1, 0, 2), (2, 1, 2), (1, 2, 2), (0, 1, 2),
          (0, 0, 1), (2, 0, 1), (2, 2, 1), (0, 2, 1)]
elements = [[index[2 * i + u, 2 * j + v, 2 * k + q] for u, v, q in corner]
            for i in range(nx) for j in range(ny) for k in range(nz)]
share = {}
inside = lambda b, n, c, width: b[n] > c - width / 2 - 1e-9 and b[n + 1] < c + width / 2 + 1e-9
for i in range(nx):
    for j in range(ny):
        if inside(bx, i, at[0], tip[0]) and inside(by, j, at[1], tip[1]):
            area = (bx[i + 1] - bx[i]) * (by[j + 1] - by[j])
            for u, v in ((0, 0), (2, 0), (2, 2), (0, 2), (1, 0), (2, 1), (1, 2), (0, 1)):
                node = index[2 * i + u, 2 * j + v, 2 * nz]
                share[node] = share.get(node, 0) + area * (-1 / 12 if (u + v) % 2 == 0 else 1 / 3)
total = sum(share.values())
ref = len(nodes) + 1
out = open(a.name + ".inp", "w")
w = out.write
w("*HEADING\nrectangle under an even load\n*NODE,NSET=NALL\n")
for n, q in enumerate(nodes):
    w(f"{n + 1},{q[0]:.9g},{q[1]:.9g},{q[2]:.9g}\n")
w(f"{ref},0,0,10\n*ELEMENT,TYPE=C3D20R,ELSET=SHEET\n")
for e, q in enumerate(elements):
    w(f"{e + 1}," + ",".join(map(str, q[:10])) + ",\n" + ",".join(map(str, q[10:])) + "\n")
sets = {"MID": [n for (i, j, k), n in index.items() if k == nz and i % 2 == 0 and j % 2 == 0]}
sets["RIGHT"] = [n for (i, j, k), n in index.items() if i == 2 * nx]
sets["TOP"] = [n for (i, j, k), n in index.items() if j == 2 * ny]
sets["LEFT"] = [n for (i, j, k), n in index.items() if i == 0]
sets["BOTTOM"] = [n for (i, j, k), n in index.items() if j == 0]
for name, members in sets.items():
    w(f"*NSET,NSET={name}\n" + "\n".join(map(str, members)) + "\n")
w("*MATERIAL,NAME=STEEL\n*ELASTIC\n210000,.3\n")
if a.hardening != "elastic":
    K, n, Y = 530.0, 0.2, 200.0
    w("*PLASTIC" + (",HARDENING=KINEMATIC" if a.hardening == "kin" else "") + "\n")
    for q in [0] + [1e-4 * 1.25**k for k in range(38)]:
        if q < 0.6:
            w(f"{K * ((Y / K) ** (1 / n) + q) ** n:.6f},{q:.8f}\n")
w("*SOLID SECTION,ELSET=SHEET,MATERIAL=STEEL\n*BOUNDARY\nRIGHT,1,3\nTOP,1,3\n")
w("LEFT,1,1\n" if "x" in a.symmetric else "LEFT,1,3\n")
w("BOTTOM,2,2\n" if "y" in a.symmetric else "BOTTOM,1,3\n")
terms = sorted(share.items(), key=lambda t: -t[1])
w(f"*EQUATION\n{len(terms) + 1}\n")
flat = [f"{n},3,{s / total:.9g}" for n, s in terms] + [f"{ref},1,-1."]
for k in range(0, len(flat), 4):
    w(",".join(flat[k:k + 4]) + "\n")
w(f"*BOUNDARY\n{ref},2,3\n")


def step(force, first):
    w(f"*STEP,NLGEOM,INC=1000\n*STATIC\n{first},1.,1e-7,0.1\n*CLOAD\n{ref},1,{force / 2 ** len(a.symmetric):.9g}\n")
    w("*NODE PRINT,NSET=MID,FREQUENCY=1000\nU\n*EL PRINT,ELSET=SHEET,FREQUENCY=1000\nPEEQ\n*END STEP\n")


for move in a.moves.split(","):
    kind, force = move.split(":")
    sign = -1 if kind == "press" else 1
    step(sign * float(force), 0.02)
    step(sign * 1e-6, 0.1)
# where the middle's nodes stand, for reading
with open(a.name + ".places", "w") as f:
    for (i, j, k), n in index.items():
        if k == nz and i % 2 == 0 and j % 2 == 0:
            f.write(f"{n} {mid(bx, i):.6f} {mid(by, j):.6f}\n")
print(nx, "x", ny, "x", nz, "elements,", len(nodes), "nodes")
