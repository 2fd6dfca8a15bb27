//! Student's t and the noncentral t distribution, as far as intervals need them.

use crate::math;

/// Share of a search's bracket that is halved so often is below the last bit.
const HALVINGS: usize = 100;
/// Most terms of a series; it has ended long before.
const MOST_TERMS: usize = 5000;
/// Beyond this the first term of the noncentral series is too small for a number.
pub const MOST_DELTA: f64 = 37.0;

/// The regularised incomplete beta function `I_x(a, b)` by its continued fraction (NIST Digital Library of Mathematical Functions,
/// 8.17.22), evaluated by the modified method of Lentz.
pub fn incomplete_beta(x: f64, a: f64, b: f64) -> f64 {
    if x <= 0.0 {
        return 0.0;
    }
    if x >= 1.0 {
        return 1.0;
    }
    // The fraction converges fast below the mean; above it the other tail is worked out (8.17.4).
    if x > (a + 1.0) / (a + b + 2.0) {
        return 1.0 - incomplete_beta(1.0 - x, b, a);
    }
    let tiny = 1e-300;
    let held = |v: f64| if v.abs() < tiny { tiny } else { v };
    let term = |m: usize| {
        let k = (m / 2) as f64;
        if m.is_multiple_of(2) {
            k * (b - k) * x / ((a + 2.0 * k - 1.0) * (a + 2.0 * k))
        } else {
            -(a + k) * (a + b + k) * x / ((a + 2.0 * k) * (a + 2.0 * k + 1.0))
        }
    };
    let (mut value, mut c, mut d) = (1.0, 1.0, 0.0);
    for m in 1..MOST_TERMS {
        d = 1.0 / held(1.0 + term(m) * d);
        c = held(1.0 + term(m) / c);
        value *= c * d;
        if (c * d - 1.0).abs() < 1e-15 {
            break;
        }
    }
    beta_power(x, a, b) / (a * value)
}

/// `x^a (1 - x)^b / B(a, b)`.
fn beta_power(x: f64, a: f64, b: f64) -> f64 {
    let ln_beta = math::ln_gamma(a) + math::ln_gamma(b) - math::ln_gamma(a + b);
    math::exp(a * math::ln(x) + b * math::ln(1.0 - x) - ln_beta)
}

/// Share of Student's t distribution with `df` degrees of freedom below `t`.
pub fn t_below(t: f64, df: f64) -> f64 {
    // Near the middle a tail would be what is left of one.
    if t.abs() < 1.0 {
        let half = 0.5 * incomplete_beta(t * t / (df + t * t), 0.5, 0.5 * df);
        return if t > 0.0 { 0.5 + half } else { 0.5 - half };
    }
    let tail = 0.5 * incomplete_beta(df / (df + t * t), 0.5 * df, 0.5);
    if t > 0.0 { 1.0 - tail } else { tail }
}

/// Where a share `p` of Student's t distribution lies below, by halving.
pub fn t_quantile(p: f64, df: f64) -> f64 {
    let mut high = 1.0;
    while t_below(high, df) < p.max(1.0 - p) && high < 1e12 {
        high *= 2.0;
    }
    halved(-high, high, |t| t_below(t, df) < p)
}

/// Share of the normal distribution below `z`.
fn normal_below(z: f64) -> f64 {
    0.5 * math::erfc(-z / core::f64::consts::SQRT_2)
}

/// Share of the noncentral t distribution with `df` degrees of freedom and noncentrality `delta` below `t`: the series of Lenth
/// (1989, Applied Statistics 38, algorithm AS 243), with the incomplete betas of later terms from those before (DLMF 8.17.20).
pub fn noncentral_t_below(t: f64, df: f64, delta: f64) -> f64 {
    if t < 0.0 {
        return 1.0 - noncentral_t_below(-t, df, -delta);
    }
    let x = t * t / (df + t * t);
    let half = 0.5 * delta * delta;
    let mut sum = normal_below(-delta);
    if x > 0.0 {
        let b = 0.5 * df;
        // Weights of the terms, and the incomplete betas with 1/2 and 1 in the place of a, each with what it loses next.
        let mut p = 0.5 * math::exp(-half);
        let mut q = delta / core::f64::consts::SQRT_2 * 0.5 * math::exp(-half) / (0.5 * math::PI.sqrt());
        let (mut odd, mut even) = (incomplete_beta(x, 0.5, b), incomplete_beta(x, 1.0, b));
        let (mut odd_next, mut even_next) = (beta_power(x, 0.5, b) / 0.5, beta_power(x, 1.0, b));
        for j in 0..MOST_TERMS {
            let k = j as f64;
            sum += p * odd + q * even;
            if k > half && p * odd + (q * even).abs() < 1e-16 {
                break;
            }
            odd -= odd_next;
            even -= even_next;
            odd_next *= x * (k + 0.5 + b) / (k + 1.5);
            even_next *= x * (k + 1.0 + b) / (k + 2.0);
            p *= half / (k + 1.0);
            q *= half / (k + 1.5);
        }
    }
    sum.clamp(0.0, 1.0)
}

/// The noncentrality with which a share `p` of the distribution lies below `t`; none where it is beyond what can be worked out.
pub fn noncentrality(t: f64, df: f64, p: f64) -> Option<f64> {
    // The more noncentral, the less lies below t.
    let above = |delta: f64| noncentral_t_below(t, df, delta) > p;
    let (low, high) = (-MOST_DELTA, MOST_DELTA);
    (above(low) && !above(high)).then(|| halved(low, high, above))
}

/// Where `below` ends to hold between two places.
fn halved(mut low: f64, mut high: f64, below: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if middle <= low || middle >= high {
            break;
        }
        if below(middle) { low = middle } else { high = middle }
    }
    0.5 * (low + high)
}
