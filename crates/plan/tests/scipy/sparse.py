"""Amounts with bounds and a price on each, by SciPy: writes sparse.json beside this file."""

import json
import pathlib

import numpy as np
from scipy.optimize import lsq_linear, minimize, nnls

rng = np.random.default_rng(7)
cases = []
for rows, columns in [(40, 12), (60, 20), (25, 25)]:
    places, centres = np.linspace(0, 10, rows), rng.uniform(0, 10, columns)
    a = np.exp(-((places[:, None] - centres) ** 2)) + 0.3 * rng.normal(size=(rows, columns))
    b = a @ np.maximum(rng.normal(size=columns), 0) + 0.3 * rng.normal(size=rows)
    most = rng.uniform(0.3, 1.5, columns)
    price = 0.4
    bounded = lsq_linear(a, b, (0, most), method="bvls", tol=1e-14).x
    unbounded = nnls(a, b)[0]
    cost = lambda x: 0.5 * np.sum((a @ x - b) ** 2) + price * np.sum(x)
    slope = lambda x: a.T @ (a @ x - b) + price
    options = {"maxiter": 100000, "maxfun": 1000000, "ftol": 1e-16, "gtol": 1e-11}
    priced = minimize(cost, 0.1 * most, jac=slope, method="L-BFGS-B", bounds=[(0, m) for m in most], options=options).x
    cases.append({"a": a.tolist(), "b": b.tolist(), "most": most.tolist(), "price": price,
                  "bounded": bounded.tolist(), "unbounded": unbounded.tolist(), "priced": priced.tolist()})
pathlib.Path(__file__).with_name("sparse.json").write_text(json.dumps(cases))
