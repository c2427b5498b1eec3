# From a disc's .dat to a table of what stays: one row a column of elements.
import re
import sys

import numpy as np

name = sys.argv[1]
E, NU = 210000.0, 0.3
blocks = {}
for b in re.split(r"\n(?= (?:displacements|stresses|equivalent))", open(name + ".dat").read()):
    m = re.match(r" (displacements|stresses|equivalent).*time\s+(\S+)", b.strip("\n"))
    if m and float(m.group(2)) == 2.0:
        blocks[m.group(1)] = np.array([[float(x) for x in l.split()] for l in b.strip().split("\n")[1:] if l.strip()])
nodes = {}
for l in open(name + ".inp"):
    if l.startswith("*ELEMENT"):
        break
    f = l.split(",")
    if len(f) == 4 and f[0].isdigit():
        nodes[int(f[0])] = float(f[1])
u = blocks["displacements"]
order = np.argsort([nodes[int(n)] for n in u[:, 0]])
u = u[order]
r = np.array([nodes[int(n)] for n in u[:, 0]])
x, z = r + u[:, 1], u[:, 2]
s = blocks["stresses"]
rows = 4
column = ((s[:, 0] - 1) // rows).astype(int)
print("r_mm,at_mm,left_mm,plastic_along,plastic_round,along_mpa,round_mpa")
for c in range(len(r) - 1):
    mine = s[column == c]
    sxx, syy, szz, sxy = (mine[:, k].mean() for k in (2, 3, 4, 5))
    dx, dz, dr = x[c + 1] - x[c], z[c + 1] - z[c], r[c + 1] - r[c]
    length = np.hypot(dx, dz)
    t = (dx / length, dz / length)
    along = sxx * t[0] ** 2 + syy * t[1] ** 2 + 2 * sxy * t[0] * t[1]
    total = (np.log(length / dr), np.log((x[c] + x[c + 1]) / (r[c] + r[c + 1])))
    elastic = ((along - NU * szz) / E, (szz - NU * along) / E)
    v = (0.5 * (r[c] + r[c + 1]), 0.5 * (x[c] + x[c + 1]), 0.5 * (z[c] + z[c + 1]))
    print("%.4f,%.5f,%.6f,%.6f,%.6f,%.3f,%.3f" % (*v, total[0] - elastic[0], total[1] - elastic[1], along, szz))
