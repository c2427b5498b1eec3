"""Thin plate splines of SciPy 1.17 (RBFInterpolator, Virtanen et al. 2020) through doubted heights.

Writes thin_plate_pins_60x4.f64 (x, y, z, sigma, all mm) and thin_plate_answer_40x3.f64 (x, y, z). The smoothing of a pin is
(sigma * unit / tau)^2 with unit = 10 mm and tau = 0.2 mm, as crates/surface/src/thin_plate.rs weighs it.
"""

from pathlib import Path

import numpy as np
from scipy.interpolate import RBFInterpolator

HERE = Path(__file__).parent
UNIT_MM, TAU_MM = 10.0, 0.2

rng = np.random.default_rng(11)
around = np.linspace(0.0, 2.0 * np.pi, 56, endpoint=False)
radius = rng.uniform(9.0, 13.0, around.size)
places = np.r_[np.c_[radius * np.cos(around) + 3.0, 0.8 * radius * np.sin(around) - 2.0], rng.uniform(-5.0, 5.0, (4, 2))]
heights = -1.4 * np.exp(-((places[:, 0] - 2.0) ** 2 + (places[:, 1] + 1.0) ** 2) / 70.0) + 0.01 * places[:, 0]
sigma = np.r_[np.full(around.size, 0.002), rng.uniform(0.01, 0.05, 4)]
asked = rng.uniform(-8.0, 8.0, (40, 2))
spline = RBFInterpolator(places, heights, kernel="thin_plate_spline", smoothing=(sigma * UNIT_MM / TAU_MM) ** 2)
np.c_[places, heights, sigma].astype("<f8").tofile(HERE / "thin_plate_pins_60x4.f64")
np.c_[asked, spline(asked)].astype("<f8").tofile(HERE / "thin_plate_answer_40x3.f64")
