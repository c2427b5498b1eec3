"""Height over the middle of the tip, extremes and peak plastic strain after each step of NAME.dat; NAME.places for plates."""
import os
import re
import sys

for name in sys.argv[1:]:
    places = {}
    if os.path.exists(name + ".places"):
        places = {int(n): (float(x), float(y)) for n, x, y in (l.split() for l in open(name + ".places"))}
    for b in re.split(r"\n(?= (?:displacements|equivalent|total force|forces))", open(name + ".dat").read()):
        t = re.search(r"time\s+(\S+)", b)
        rows = [l.split() for l in b.strip().split("\n")[2:] if l.strip()]
        if "displacements" in b:
            col = 3 if places else 2
            u = sorted((float(r[col]), int(r[0])) for r in rows)
            say = lambda v: f"{v[0]:.5f} at {places.get(v[1], v[1])}"
            print(name, "t", float(t[1]), "first", rows[0][col], "lowest", say(u[0]), "highest", say(u[-1]))
        elif "equivalent" in b:
            print("   peak plastic strain", max(float(r[2]) for r in rows))
        elif "total force" in b:
            print("   edge", rows[-1])
