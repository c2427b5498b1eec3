//! Answers from outside: NIST's certified regression, scikit-learn, statsmodels, SciPy, ISO 4217.

use dentwright_price::{Regression, StudentT, decimals};
use serde::Deserialize;
use std::collections::BTreeMap;

#[derive(Deserialize)]
struct Reference {
    bayesian_ridge: BayesianRidge,
    least_squares: LeastSquares,
    student: Vec<[f64; 3]>,
}

#[derive(Deserialize)]
struct BayesianRidge {
    x: Vec<Vec<f64>>,
    y: Vec<f64>,
    new: Vec<Vec<f64>>,
    noise_precision: f64,
    prior_precision: f64,
    coefficients: Vec<f64>,
    covariance: Vec<Vec<f64>>,
    mean: Vec<f64>,
    doubt: Vec<f64>,
}

#[derive(Deserialize)]
struct LeastSquares {
    x: Vec<Vec<f64>>,
    y: Vec<f64>,
    coefficients: Vec<f64>,
    errors: Vec<f64>,
    noise: f64,
    low: Vec<f64>,
    high: Vec<f64>,
}

fn reference() -> Reference {
    serde_json::from_str(include_str!("../../../tests/reference/hours_reference.json")).unwrap()
}

/// A prior so wide that the data alone speak, and no weight on any noise: what least squares assumes. The
/// coefficients take as many degrees of freedom.
fn vague(mean: &[f64], widths: &[f64]) -> Regression {
    let nothing = Regression::new(mean.to_vec(), widths, 1.0, 1e-12);
    nothing.with_freedom(-(widths.len() as f64))
}

fn unit(size: usize, at: usize) -> Vec<f64> {
    (0..size).map(|place| f64::from(u8::from(place == at))).collect()
}

fn close(name: &str, ours: f64, theirs: f64, relative: f64) {
    assert!((ours - theirs).abs() <= relative * theirs.abs(), "{name}: {ours}, but {theirs}");
}

/// NIST Statistical Reference Datasets, Norris (linear regression, 36 observations): certified values.
#[test]
fn norris_as_nist_certifies_it() {
    const X: [f64; 36] = [
        0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5,
        11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2,
        669.1, 448.9, 0.5,
    ];
    const Y: [f64; 36] = [
        0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9,
        10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9,
        668.4, 449.2, 0.2,
    ];
    // The same line around x = 429, with "y is x, give or take a thousand" for a prior.
    let at = |x: f64| [1.0, x - 429.0];
    let mut fit = vague(&[429.0, 1.0], &[1e3, 1.0]);
    X.iter().zip(Y).for_each(|(x, y)| {
        let _ = fit.observe(&at(*x), y, 1.0);
    });
    let (b0, b1) = (fit.predict(&at(0.0), 0.0), fit.predict(&[0.0, 1.0], 0.0));
    close("B0", b0.location, -0.262_323_073_774_029, 1e-6);
    close("B1", b1.location, 1.002_116_818_020_45, 1e-8);
    close("deviation of B0", b0.scale, 0.232_818_234_301_152, 1e-6);
    close("deviation of B1", b1.scale, 0.429_796_848_199_937e-3, 1e-6);
    close("residual deviation", fit.noise_variance().sqrt(), 0.884_796_396_144_373, 1e-6);
    assert!((fit.freedom() - 34.0).abs() < 1e-6);
}

/// statsmodels on the stack loss data: coefficients, their errors, and the 80 % prediction intervals.
#[test]
fn stack_loss_as_statsmodels_answers() {
    let data = reference().least_squares;
    let size = data.coefficients.len();
    let mut fit = vague(&[0.0; 4], &[1e4, 1e2, 1e2, 1e2]);
    data.x.iter().zip(&data.y).for_each(|(x, y)| {
        let _ = fit.observe(x, *y, 1.0);
    });
    for at in 0..size {
        let ours = fit.predict(&unit(size, at), 0.0);
        close("coefficient", ours.location, data.coefficients[at], 1e-5);
        close("error", ours.scale, data.errors[at], 1e-5);
    }
    close("noise", fit.noise_variance().sqrt(), data.noise, 1e-5);
    for ((x, low), high) in data.x.iter().zip(&data.low).zip(&data.high) {
        let ours = fit.predict(x, 1.0);
        close("low", ours.quantile(0.1), *low, 1e-5);
        close("high", ours.quantile(0.9), *high, 1e-5);
    }
}

/// scikit-learn's BayesianRidge: the same posterior, given the precisions that it settled on.
#[test]
fn posterior_as_bayesian_ridge_answers() {
    let data = reference().bayesian_ridge;
    let size = data.coefficients.len();
    let (noise, width) = (data.noise_precision.powf(-0.5), data.prior_precision.powf(-0.5));
    let mut fit = Regression::new(vec![0.0; size], &vec![width; size], noise, 1e15);
    data.x.iter().zip(&data.y).for_each(|(x, y)| {
        let _ = fit.observe(x, *y, 1.0);
    });
    for (at, theirs) in data.coefficients.iter().enumerate() {
        close("coefficient", fit.mean()[at], *theirs, 1e-9);
        close("variance", fit.predict(&unit(size, at), 0.0).scale.powi(2), data.covariance[at][at], 1e-9);
    }
    for ((x, mean), doubt) in data.new.iter().zip(&data.mean).zip(&data.doubt) {
        let ours = fit.predict(x, 1.0);
        close("mean", ours.location, *mean, 1e-9);
        close("doubt", ours.scale, *doubt, 1e-9);
    }
}

#[test]
fn quantiles_as_scipy_answers() {
    for [freedom, share, theirs] in reference().student {
        let t = StudentT { location: 0.0, scale: 1.0, freedom };
        let ours = t.quantile(share);
        assert!((ours - theirs).abs() <= 1e-9 * (1.0 + theirs.abs()), "{freedom} {share}: {ours}, but {theirs}");
        assert!((t.below(theirs) - share).abs() < 1e-11, "{freedom} {share}");
    }
}

/// Minor units of every currency of the published list.
#[test]
fn minor_units_as_iso_4217_lists_them() {
    #[derive(Deserialize)]
    struct List {
        minor_units: BTreeMap<String, u32>,
    }
    let list: List = serde_json::from_str(include_str!("../../../tests/reference/currencies_reference.json")).unwrap();
    assert!(list.minor_units.len() > 150, "{}", list.minor_units.len());
    for (code, units) in list.minor_units {
        assert_eq!(decimals(&code), units, "{code}");
    }
}
