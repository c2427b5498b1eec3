# A dent pressed and let go, for the state of a measured dent: a clamped disc of CAX8R solids. Prints the middle surface's movement and the stress of every integration point at the end.
import math
import sys

name = sys.argv[1]
E, NU = (210000.0, 0.3)


def swift(w, k, n, y, kinematic):
    w("*MATERIAL,NAME=STEEL\n*ELASTIC\n%g,%g\n*PLASTIC%s\n" % (E, NU, ",HARDENING=KINEMATIC" if kinematic else ""))
    e0 = (y / k) ** (1 / n)
    for p in [0] + [1e-4 * 1.25**i for i in range(38)]:
        if p < 0.6:
            w("%.6f,%.8f\n" % (k * (e0 + p) ** n, p))


def steps(w, top, pressure, first):
    for p, inc in [(pressure, first), (1e-6, 0.05)]:
        w("*STEP,NLGEOM,INC=400\n*STATIC\n%g,1.,1e-7,0.05\n*DLOAD\n%s,%.9g\n" % (inc, top, p))
        w("*NODE PRINT,NSET=MID,FREQUENCY=1000\nU\n*EL PRINT,ELSET=SHEET,FREQUENCY=1000\nS,PEEQ\n*END STEP\n")


def disc(a, t, c, force, kinematic):
    rows, n0 = 4, 20
    r = [c * i / n0 for i in range(n0 + 1)]
    d = c / n0
    while r[-1] < a - 1e-9:
        d = min(d * 1.1, 2.0)
        r.append(r[-1] + d)
    s = (a - c) / (r[-1] - c)
    r = r[: n0 + 1] + [c + (x - c) * s for x in r[n0 + 1 :]]
    nc = len(r) - 1
    f = open(name + ".inp", "w")
    w = f.write
    w("*HEADING\ndisc\n*NODE,NSET=NALL\n")
    idx = {}
    for i in range(2 * nc + 1):
        x = r[i // 2] if i % 2 == 0 else 0.5 * (r[i // 2] + r[i // 2 + 1])
        for j in range(2 * rows + 1):
            if i % 2 and j % 2:
                continue
            idx[i, j] = len(idx) + 1
            w("%d,%.9g,%.9g,0\n" % (idx[i, j], x, -t / 2 + t * j / (2 * rows)))
    w("*ELEMENT,TYPE=CAX8R,ELSET=SHEET\n")
    for i in range(nc):
        for j in range(rows):
            p = [(0, 0), (2, 0), (2, 2), (0, 2), (1, 0), (2, 1), (1, 2), (0, 1)]
            w("%d,%s\n" % (i * rows + j + 1, ",".join(str(idx[2 * i + u, 2 * j + v]) for u, v in p)))
    w("*ELSET,ELSET=TOP\n" + "\n".join(str(i * rows + rows) for i in range(n0)) + "\n")
    w("*NSET,NSET=EDGE\n" + "\n".join(str(idx[2 * nc, j]) for j in range(2 * rows + 1)) + "\n")
    w("*NSET,NSET=AXIS\n" + "\n".join(str(idx[0, j]) for j in range(2 * rows + 1)) + "\n")
    w("*NSET,NSET=MID\n" + "\n".join(str(idx[2 * i, rows]) for i in range(nc + 1)) + "\n")
    swift(w, 530.0, 0.2, 200.0, kinematic)
    w("*SOLID SECTION,ELSET=SHEET,MATERIAL=STEEL\n*BOUNDARY\nEDGE,1,2\nAXIS,1,1\n")
    steps(w, "TOP,P3", force / (math.pi * c * c), 0.01)


numbers = [float(v) for v in sys.argv[4:]]
disc(*numbers, sys.argv[3] == "kin")
