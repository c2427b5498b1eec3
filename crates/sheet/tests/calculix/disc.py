"""Deck of a clamped disc or cap of CAX8R solids under an even load over its middle, for CalculiX 2.20.

    disc.py NAME --radius 60 --thickness 0.7 --loaded 10 --moves press:500,push:250 [--crown 1500] [--drive dead|follow]
            [--hardening elastic|iso|kin] [--rows 4]

Every move is loaded to its force and let go; `to:-5.4:-3.6` sets the mean travel of what is loaded instead, takes it back
to near where it stays, and lets go. `dead` keeps the load along the axis and on the undeformed area, `follow` is
a pressure that turns with the face. Prints nothing; results are read by read.py.
"""
import argparse
import math

p = argparse.ArgumentParser()
p.add_argument("name")
p.add_argument("--radius", type=float, required=True)
p.add_argument("--thickness", type=float, required=True)
p.add_argument("--loaded", type=float, required=True)
p.add_argument("--moves", required=True)
p.add_argument("--crown", type=float, default=0.0)
p.add_argument("--drive", default="dead")
p.add_argument("--hardening", default="iso")
p.add_argument("--rows", type=int, default=4)
p.add_argument("--across", type=int, default=20, help="elements under the load")
a = p.parse_args()

r = [a.loaded * i / a.across for i in range(a.across + 1)]
step = a.loaded / a.across
while r[-1] < a.radius - 1e-9:
    step = min(step * 1.1, 2.0)
    r.append(r[-1] + step)
scale = (a.radius - a.loaded) / (r[-1] - a.loaded)
r = r[: a.across + 1] + [a.loaded + (x - a.loaded) * scale for x in r[a.across + 1:]]
# finer again at the clamped rim
last = [r[-2] + (r[-1] - r[-2]) * s for s in (0.4, 0.7, 0.85, 1.0)]
r = r[:-1] + last
cells = len(r) - 1


def place(radius, up):
    if a.crown == 0:
        return radius, up
    turn = math.asin(radius / a.crown)
    return radius + up * math.sin(turn), a.crown * (math.cos(turn) - 1) + up * math.cos(turn)


nodes, index = {}, {}
for i in range(2 * cells + 1):
    radius = r[i // 2] if i % 2 == 0 else 0.5 * (r[i // 2] + r[i // 2 + 1])
    for j in range(2 * a.rows + 1):
        if i % 2 and j % 2:
            continue
        index[i, j] = len(nodes) + 1
        nodes[len(nodes) + 1] = place(radius, -a.thickness / 2 + a.thickness * j / (2 * a.rows))
elements = []
for i in range(cells):
    for j in range(a.rows):
        I, J = 2 * i, 2 * j
        elements.append([index[I, J], index[I + 2, J], index[I + 2, J + 2], index[I, J + 2], index[I + 1, J],
                         index[I + 2, J + 1], index[I + 1, J + 2], index[I, J + 1]])
ref = len(nodes) + 1
# share of an even load over the outer face that each of its nodes takes
share = {}
for i in range(a.across):
    for s, weight in ((-math.sqrt(0.6), 5 / 9), (0, 8 / 9), (math.sqrt(0.6), 5 / 9)):
        at = 0.5 * (r[i] + r[i + 1]) + 0.5 * (r[i + 1] - r[i]) * s
        for k, n in ((0, s * (s - 1) / 2), (1, 1 - s * s), (2, s * (s + 1) / 2)):
            node = index[2 * i + k, 2 * a.rows]
            share[node] = share.get(node, 0) + n * weight * at * (r[i + 1] - r[i]) / a.loaded ** 2
out = open(a.name + ".inp", "w")
w = out.write
w("*HEADING\ndisc under an even load over its middle\n*NODE,NSET=NALL\n")
for n, (x, y) in nodes.items():
    w(f"{n},{x:.9g},{y:.9g},0\n")
w(f"{ref},0,{10 * a.thickness},0\n")
w("*ELEMENT,TYPE=CAX8R,ELSET=SHEET\n")
for e, q in enumerate(elements):
    w(f"{e + 1}," + ",".join(map(str, q)) + "\n")
w("*ELSET,ELSET=TOP\n" + "\n".join(str(i * a.rows + a.rows) for i in range(a.across)) + "\n")
w("*NSET,NSET=EDGE\n" + "\n".join(str(index[2 * cells, j]) for j in range(2 * a.rows + 1)) + "\n")
w("*NSET,NSET=AXIS\n" + "\n".join(str(index[0, j]) for j in range(2 * a.rows + 1)) + "\n")
w("*NSET,NSET=MID\n" + "\n".join(str(index[2 * i, a.rows]) for i in range(cells + 1)) + "\n")
w("*MATERIAL,NAME=STEEL\n*ELASTIC\n210000,.3\n")
if a.hardening != "elastic":
    K, n, Y = 530.0, 0.2, 200.0
    w("*PLASTIC" + (",HARDENING=KINEMATIC" if a.hardening == "kin" else "") + "\n")
    for q in [0] + [1e-4 * 1.25**k for k in range(38)]:
        if q < 0.6:
            w(f"{K * ((Y / K) ** (1 / n) + q) ** n:.6f},{q:.8f}\n")
w("*SOLID SECTION,ELSET=SHEET,MATERIAL=STEEL\n*BOUNDARY\nEDGE,1,2\nAXIS,1,1\n")
if a.drive == "dead":
    terms = sorted(share.items(), key=lambda t: -t[1])
    w(f"*EQUATION\n{len(terms) + 1}\n")
    flat = [f"{n},2,{s:.9g}" for n, s in terms] + [f"{ref},1,-1."]
    for k in range(0, len(flat), 4):
        w(",".join(flat[k:k + 4]) + "\n")
    w(f"*BOUNDARY\n{ref},2,3\n")


def prints():
    w("*NODE PRINT,NSET=MID,FREQUENCY=1000\nU\n*EL PRINT,ELSET=SHEET,FREQUENCY=1000\nPEEQ\n")
    w("*NODE PRINT,NSET=EDGE,TOTALS=ONLY,FREQUENCY=1000\nRF\n*END STEP\n")


def to(level, first):
    w(f"*STEP,NLGEOM,INC=1000\n*STATIC\n{first},1.,1e-7,0.05\n*BOUNDARY\n{ref},1,1,{level:.9g}\n")
    prints()


def let_go():
    w("*STEP,NLGEOM,INC=1000\n*STATIC\n1.,1.,1e-7,1.\n*BOUNDARY,OP=NEW\nEDGE,1,2\nAXIS,1,1\n")
    w(f"{ref},2,3\n")
    prints()


def step(force, first):
    w(f"*STEP,NLGEOM,INC=1000\n*STATIC\n{first},1.,1e-7,0.05\n")
    if a.drive == "dead":
        w(f"*CLOAD\n{ref},1,{-force:.9g}\n")
    else:
        w(f"*DLOAD\nTOP,P3,{force / (math.pi * a.loaded**2):.9g}\n")
    prints()


for move in a.moves.split(","):
    kind, force, *back = move.split(":")
    if kind == "to":
        to(float(force), 0.02)
        to(float(back[0]), 0.05)
        let_go()
        continue
    sign = 1 if kind == "press" else -1
    step(sign * float(force), 0.02)
    step(sign * 1e-6, 0.05)
