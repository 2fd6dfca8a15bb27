//! The line that movement is looked for on: a hundred points a second, without hum.

/// Points a second that are looked at, where there are as many.
const GRID_HZ: f64 = 100.0;
/// So many times as far from the mean over a period of the power line as usual stands a spike.
const SHARP: f64 = 4.0;

/// A line on a coarser grid.
pub(super) struct Line {
    /// Points a second.
    pub hz: f64,
    /// The points.
    pub all: Vec<f64>,
    /// Not a number where values stand at an end of the range.
    pub sure: Vec<f64>,
}

impl Line {
    /// Means over a period of the power line, which takes its hum away; but a spike is left, which a mean would hide.
    pub fn new(values: &[f64], cut_off: &[bool], rate_hz: f64, power_line_hz: f64) -> Self {
        let by = ((rate_hz / GRID_HZ).round() as usize).max(1);
        let wide = ((rate_hz / power_line_hz).round() as usize).max(1);
        let n = values.len() / by;
        let mut made =
            Self { hz: rate_hz / by as f64, all: Vec::with_capacity(n), sure: Vec::with_capacity(n) };
        let mut off: Vec<f64> = Vec::with_capacity(n);
        for k in 0..n {
            let from = (k * by + by / 2).saturating_sub(wide / 2);
            let run = from..(from + wide).min(values.len());
            let mean = values[run.clone()].iter().sum::<f64>() / run.len() as f64;
            let own = values[k * by..(k + 1) * by].iter().map(|v| v - mean);
            off.push(own.fold(0.0, |x: f64, y| if y.abs() > x.abs() { y } else { x }));
            made.all.push(mean);
            made.sure.push(if cut_off[run].contains(&true) { f64::NAN } else { mean });
        }
        let usual = median(&mut off.iter().map(|v| v.abs()).collect::<Vec<f64>>()).unwrap_or(0.0);
        for (v, off) in made.all.iter_mut().zip(&off).filter(|(_, off)| off.abs() > SHARP * usual) {
            *v += off;
        }
        made
    }
}

/// A line less its own mean over `wide` points about each; points that are not numbers are left out.
pub(super) fn without_drift(line: &[f64], wide: usize) -> Vec<f64> {
    let mut sums = Vec::with_capacity(line.len() + 1);
    let (mut sum, mut count) = (0.0, 0.0);
    sums.push((sum, count));
    for v in line {
        if !v.is_nan() {
            sum += v;
            count += 1.0;
        }
        sums.push((sum, count));
    }
    let half = wide / 2;
    (0..line.len())
        .map(|k| {
            let (a, b) = (sums[k.saturating_sub(half)], sums[(k + half + 1).min(line.len())]);
            line[k] - (b.0 - a.0) / (b.1 - a.1)
        })
        .collect()
}

/// Upper median; `None` of nothing.
pub(super) fn median(x: &mut [f64]) -> Option<f64> {
    let middle = x.len() / 2;
    (!x.is_empty()).then(|| *x.select_nth_unstable_by(middle, f64::total_cmp).1)
}
