"""Answers of surfalize on a small texture, for the test of `surface`'s areal figures.

Run from this folder with surfalize 0.19.2 (PyPI, MIT): python3 areal.py
"""

import numpy as np
from surfalize import Surface

STEP_MM = 0.5
FIGURES = ("Sa", "Sq", "Sp", "Sv", "Sz", "Ssk", "Sku")

random = np.random.default_rng(5)
y, x = np.mgrid[0:48, 0:64] * STEP_MM
waves = 0.4 * np.sin(2 * np.pi * x / 4.1 + 0.3 * y) + 0.25 * np.sin(2 * np.pi * y / 2.7) ** 3
height_um = waves + 0.1 * random.normal(size=x.shape) + 0.02 * x - 0.05 * y + 3.0
height_mm = (height_um / 1e3).astype("<f4")
# surfalize counts heights and steps in µm.
surface = Surface(height_mm.astype(float) * 1e3, STEP_MM * 1e3, STEP_MM * 1e3).level()
answer = [getattr(surface, name)() for name in FIGURES] + [1e3 * surface.Sdq()]
height_mm.tofile("areal_height_48x64.f32")
np.array(answer, "<f8").tofile("areal_answer_1x8.f64")
print(dict(zip(FIGURES + ("Sdq_mrad",), answer)))
