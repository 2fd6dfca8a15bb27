//! A beat on a straight line, put to a run of points.

/// Spread of the heights of neighbouring beats, as a share (design default).
const HEIGHT_SD: f64 = 0.25;

/// A line between two of its points.
pub(super) fn between(line: &[f64], x: f64) -> f64 {
    let (i, part) = (x as usize, x - (x as usize) as f64);
    let next = line[(i + 1).min(line.len() - 1)];
    line[i] + part * (next - line[i])
}

/// A run as a straight line under a beat: level at the first point and rise in a point, the beat's height, and the mean
/// distance that is left. Weighted least squares with the usual height as one more measurement; points far off count less.
pub(super) fn fitted(run: &[f64], rise: &[f64], usual: f64) -> ((f64, f64), f64, f64) {
    let middle = 0.5 * (run.len() - 1) as f64;
    let points: Vec<[f64; 3]> = run
        .iter()
        .zip(rise)
        .enumerate()
        .filter(|(_, (v, _))| !v.is_nan())
        .map(|(i, (v, r))| [i as f64 / middle - 1.0, *r, *v])
        .collect();
    let count = (points.len() as f64).max(1.0);
    let mut found = [0.0, 0.0, usual];
    let mut off = 0.0;
    for round in 0..3 {
        let spread = if round == 0 { 0.05f64 } else { f64::max(off, 0.02) };
        let (mut m, mut v) = ([[0.0; 3]; 3], [0.0; 3]);
        for [x, r, y] in &points {
            let far = (y - found[0] - found[1] * x - found[2] * r) / (2.0 * spread);
            let weight = if round == 0 { 1.0 } else { 1.0 / (1.0 + far * far) };
            let (wx, wr) = (weight * x, weight * r);
            m[0][0] += weight;
            m[0][1] += wx;
            m[0][2] += wr;
            m[1][1] += wx * x;
            m[1][2] += wx * r;
            m[2][2] += wr * r;
            v[0] += weight * y;
            v[1] += wx * y;
            v[2] += wr * y;
        }
        // Ten points in a row tell little more than one.
        let prior = 10.0 * (1.5 * spread / HEIGHT_SD) * (1.5 * spread / HEIGHT_SD);
        m[2][2] += prior;
        v[2] += prior * usual;
        let Some(x) = solved(m, v) else { break };
        found = x;
        off = points.iter().map(|[x, r, y]| (y - found[0] - found[1] * x - found[2] * r).abs()).sum::<f64>()
            / count;
    }
    ((found[0] - found[1], found[1] / middle), found[2], off)
}

/// Three unknowns of a symmetric system of which the upper half is given.
fn solved(m: [[f64; 3]; 3], v: [f64; 3]) -> Option<[f64; 3]> {
    let [[a, b, c], [_, d, e], [_, _, f]] = m;
    let (i, j, k) = (d * f - e * e, c * e - b * f, b * e - c * d);
    let det = a * i + b * j + c * k;
    if det.abs() < 1e-12 {
        return None;
    }
    let (l, n, o) = (a * f - c * c, b * c - a * e, a * d - b * b);
    Some([
        (i * v[0] + j * v[1] + k * v[2]) / det,
        (j * v[0] + l * v[1] + n * v[2]) / det,
        (k * v[0] + n * v[1] + o * v[2]) / det,
    ])
}
