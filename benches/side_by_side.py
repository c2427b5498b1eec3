#!/usr/bin/env python3
"""`dentwright read` and the same chain in OpenCV + scikit-image + SciPy (peer/), run in turn on one capture.

Usage: python3 benches/side_by_side.py CAPTURE [--runs 5] [--program target/release/dentwright]

Prints median wall-clock seconds, processor seconds and peak memory of both whole processes, and two ratios: of the
whole processes, and without the peer's interpreter start and imports. Needs benches/peer/requirements.txt.
"""

import argparse
import json
import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from statistics import median

HERE = Path(__file__).resolve().parent


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("capture", type=Path)
    parser.add_argument("--runs", type=int, default=5)
    parser.add_argument("--program", type=Path, default=HERE.parent / "target/release/dentwright")
    parser.add_argument("--orders", choices=["region", "pixel"], default="region")
    a = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        ours = [str(a.program), "read", str(a.capture), "--out", f"{folder}/ours"]
        peer = [sys.executable, str(HERE / "peer/peer.py"), str(a.capture), "--out", f"{folder}/peer", "--orders", a.orders]
        runs = [(run(ours), run(peer)) for _ in range(a.runs)]
    report(a, [r[0] for r in runs], [r[1] for r in runs])


def run(command):
    """One process: wall seconds, processor seconds, peak megabytes, what it printed."""
    # Settings of this machine's OpenBLAS would slow the peer.
    environment = {k: v for k, v in os.environ.items() if not k.startswith("OPENBLAS")}
    since = time.perf_counter()
    child = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True, env=environment)
    printed = child.stdout.read()
    _, status, usage = os.wait4(child.pid, 0)
    wall = time.perf_counter() - since
    if status != 0:
        sys.exit(f"{command[0]} failed with status {status}")
    return dict(wall=wall, cpu=usage.ru_utime + usage.ru_stime, mb=usage.ru_maxrss / 1024, printed=printed)


def report(a, ours, peer):
    print(f"{a.capture.name}, {a.runs} runs each in turn, medians; {os.cpu_count()} cores, {machine()}")
    print(f"{'':12}{'wall s':>8}{'cpu s':>8}{'peak MB':>9}")
    for name, runs in (("dentwright", ours), ("peer", peer)):
        print(f"{name:12}{middle(runs, 'wall'):8.2f}{middle(runs, 'cpu'):8.2f}{middle(runs, 'mb'):9.0f}")
    said = [json.loads(r["printed"].splitlines()[-1]) for r in peer]
    stages = {k: median(s["stages_s"][k] for s in said) for k in said[0]["stages_s"]}
    print("peer stages s: " + ", ".join(f"{k} {v:.2f}" for k, v in stages.items()))
    work = median(s["work_s"] for s in said)
    print(f"ratio of whole processes {middle(peer, 'wall') / middle(ours, 'wall'):.1f}, "
          f"without the peer's start and imports {work / middle(ours, 'wall'):.1f}")


def middle(runs, key):
    return median(r[key] for r in runs)


def machine():
    lines = Path("/proc/cpuinfo").read_text().splitlines() if Path("/proc/cpuinfo").exists() else []
    names = [line.split(":", 1)[1].strip() for line in lines if line.startswith("model name")]
    return names[0] if names else os.uname().machine


main()
