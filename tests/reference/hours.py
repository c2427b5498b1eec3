"""Answers of scikit-learn, statsmodels and SciPy on small data, for the tests of `price`.

Run from this folder: python3 hours.py; versions are written into hours_reference.json.
"""

import json

import numpy as np
import scipy
import sklearn
import statsmodels
import statsmodels.api as sm
from scipy import stats
from sklearn.linear_model import BayesianRidge
from statsmodels.datasets import stackloss


def bayesian_ridge(random):
    """Its posterior, given the precisions that it settled on: coef_, sigma_, and predictions with their doubt."""
    x = random.normal(size=(40, 5)).round(4)
    y = (x @ [0.5, 0.8, -0.4, 0.0, 0.3] + random.normal(0, 0.35, 40)).round(4)
    new = random.normal(size=(6, 5)).round(4)
    model = BayesianRidge(fit_intercept=False).fit(x, y)
    mean, doubt = model.predict(new, return_std=True)
    return {
        "x": x.tolist(), "y": y.tolist(), "new": new.tolist(),
        "noise_precision": model.alpha_, "prior_precision": model.lambda_,
        "coefficients": model.coef_.tolist(), "covariance": model.sigma_.tolist(),
        "mean": mean.tolist(), "doubt": doubt.tolist(),
    }


def least_squares():
    """Stack loss (Brownlee 1965): coefficients, standard errors, 80 % prediction intervals of its own rows."""
    data = stackloss.load()
    x = sm.add_constant(data.exog.to_numpy())
    fit = sm.OLS(data.endog.to_numpy(), x).fit()
    frame = fit.get_prediction(x[:6]).summary_frame(alpha=0.2)
    return {
        "x": x.tolist(), "y": data.endog.tolist(),
        "coefficients": fit.params.tolist(), "errors": fit.bse.tolist(), "noise": float(np.sqrt(fit.scale)),
        "low": frame["obs_ci_lower"].tolist(), "high": frame["obs_ci_upper"].tolist(),
    }


def student():
    freedoms, shares = [1.0, 2.5, 10.0, 40.0, 1000.0, 1e6], [0.01, 0.1, 0.5, 0.75, 0.9, 0.995]
    return [[f, p, float(stats.t.ppf(p, f))] for f in freedoms for p in shares]


answers = {
    "versions": {m.__name__: m.__version__ for m in (np, scipy, sklearn, statsmodels)},
    "bayesian_ridge": bayesian_ridge(np.random.default_rng(5)),
    "least_squares": least_squares(),
    "student": student(),
}
with open("hours_reference.json", "w") as file:
    json.dump(answers, file, indent=None, separators=(",", ":"))
    file.write("\n")
