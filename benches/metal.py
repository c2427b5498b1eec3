"""`dentwright sheet` against CalculiX on the same patch: seconds of processor and what is left, side by side.

    python3 benches/metal.py [FOLDER]

A clamped sheet of 200 × 200 × 0.7 mm under an even load on 20 × 20 mm: pressed by 1500 N, let go, pushed back by 500 N,
let go. CalculiX gets the advantage of a quarter of it (both planes of symmetry) in C3D20R solids, three across the
thickness, coarser away from the load; ours computes the whole. Needs `ccx` and a release build of the program.
"""
import json
import os
import re
import resource
import subprocess
import sys
import tempfile
from pathlib import Path

root = Path(__file__).resolve().parent.parent
program = Path(os.environ.get("CARGO_TARGET_DIR", root / "target")) / "release" / "dentwright"
folder = Path(sys.argv[1] if len(sys.argv) > 1 else tempfile.mkdtemp()).resolve()
decks = root / "crates" / "sheet" / "tests" / "calculix"

MOVE = """[[moves]]
kind = "{kind}"
tip = {{ shape = "rectangle", width_mm = 20, height_mm = 20 }}
bonded = true
force_n = {force}
"""
CASE = """[patch]
width_mm = 200
height_mm = 200
step_mm = 4
edges = "clamped"
[sheet]
thickness_mm = 0.7
e_mpa = 210000
nu = 0.3
hardening = { kind = "swift", k_mpa = 530, n = 0.2, yield_mpa = 200 }
""" + MOVE.format(kind="press", force=1500) + MOVE.format(kind="push", force=500)


def seconds(command):
    """Processor seconds of a command and its children."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(command, cwd=folder, check=True, stdout=subprocess.DEVNULL)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def centres(name):
    """Height of the sheet's centre after each step of a CalculiX run."""
    blocks = re.split(r"\n(?= (?:displacements|equivalent))", (folder / f"{name}.dat").read_text())
    return [float(b.strip().split("\n")[2].split()[3]) for b in blocks if "displacements" in b]


folder.mkdir(parents=True, exist_ok=True)
(folder / "sheet.toml").write_text(CASE)
ours = seconds([program, "sheet", "sheet.toml", "--out", "ours"])
moves = json.loads((folder / "ours" / "result.json").read_text())["moves"]
shape = "--sides 200,200 --thickness 0.7 --tip 20,20 --fine 2.5 --coarse 8 --rows 3 --symmetric xy"
subprocess.run([sys.executable, decks / "plate.py", "sheet", *shape.split(), "--moves", "press:1500,push:500"], cwd=folder,
               check=True)
theirs = seconds(["ccx", "sheet"])
known = centres("sheet")
heights = [h for m in moves for h in (m["at_tip_held_mm"], m["at_tip_left_mm"])]
for what, a, b in zip(("pressed", "left", "pushed back", "left again"), heights, known):
    print(f"{what:12} ours {a:8.4f} mm   CalculiX {b:8.4f} mm   difference {a - b:+.4f} mm")
print(f"processor: ours {ours:.1f} s, CalculiX on a quarter {theirs:.1f} s, ratio {theirs / ours:.1f}")
