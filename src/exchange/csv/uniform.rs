//! From stamps as they come to samples at one rate.

use super::clock::TimeUnit;
use super::{CsvError, MAX_RATE_HZ, MAX_SAMPLES, MIN_RATE_HZ, Raw, Recorded};
use crate::exchange::MOST_NOTES;

/// A stretch without values that is longer than so many usual steps is told: of a pulse sampled at 10 to 30 Hz, as phones
/// do, it hides a part of a beat (design default).
const GAP_STEPS: f64 = 5.0;
/// Most steps that an uneven table may have for each of its lines.
const MOST_GAPS: f64 = 10.0;

/// Brings a table to a uniform rate.
pub(super) fn uniform(
    name: &str,
    raw: Raw,
    rate_hz: Option<f64>,
    missing: usize,
) -> Result<Recorded, CsvError> {
    let Raw { channel, channels, of, times, mut values, unit, lines, time_column } = raw;
    let mut out = Recorded {
        name: name.to_string(),
        channel,
        channels,
        unit: of,
        rate_hz: 0.0,
        start_s: 0.0,
        values: Vec::new(),
        uneven: false,
        longest_step_s: 0.0,
        missing,
        repeated: 0,
        gaps: Vec::new(),
    };
    let in_range = |found_hz: f64| {
        let (low_hz, high_hz) = (MIN_RATE_HZ, MAX_RATE_HZ);
        if (low_hz..=high_hz).contains(&found_hz) {
            return Ok(found_hz);
        }
        Err(CsvError::CsvRateRange { file: name.to_string(), low_hz, high_hz, found_hz })
    };
    if times.is_empty() {
        out.rate_hz = in_range(rate_hz.unwrap_or(f64::NAN))?;
        out.longest_step_s = 1.0 / out.rate_hz;
        let at: Vec<f64> = (0..values.len()).map(|i| i as f64 / out.rate_hz).collect();
        out.gaps = gaps(&at, &values, 1.0 / out.rate_hz);
        fill(&mut values, |i| i as f64);
        out.values = values;
        return Ok(out);
    }
    let mut steps: Vec<f64> = times.windows(2).map(|w| w[1] - w[0]).filter(|s| *s > 0.0).collect();
    if steps.is_empty() {
        let (previous_s, found_s) = (times[0], times[1]);
        let (line, column) = (lines[1] as usize, time_column + 1);
        return Err(CsvError::CsvTimeOrder { file: name.to_string(), line, column, previous_s, found_s });
    }
    let middle = steps.len() / 2;
    let (_, median, _) = steps.select_nth_unstable_by(middle, f64::total_cmp);
    let unit = unit.unwrap_or_else(|| TimeUnit::from_step(*median));
    let median_s = unit.seconds(*median);
    // Keep the first of lines with the same stamp; refuse stamps that go back or stand still for long.
    let (mut t, mut v): (Vec<f64>, Vec<f64>) =
        (Vec::with_capacity(times.len()), Vec::with_capacity(times.len()));
    for i in 0..times.len() {
        let time = unit.seconds(times[i]);
        let still = t.last() == Some(&time);
        if t.last().is_some_and(|last| time < *last) || (still && out.repeated * 10 > times.len()) {
            let (line, column, previous_s) = (lines[i] as usize, time_column + 1, t[t.len() - 1]);
            let file = name.to_string();
            return Err(CsvError::CsvTimeOrder { file, line, column, previous_s, found_s: time });
        }
        if still {
            out.repeated += 1;
            continue;
        }
        t.push(time);
        v.push(values[i]);
    }
    out.gaps = gaps(&t, &v, median_s);
    fill(&mut v, |i| t[i]);
    let (start, span) = (t[0], t[t.len() - 1] - t[0]);
    let mean_s = span / (t.len() - 1) as f64;
    out.start_s = start;
    out.longest_step_s = t.windows(2).fold(0.0, |m: f64, w| m.max(w[1] - w[0]));
    // Even: no stamp is further from its place on the grid than stamps of 1 ms resolution may be, or 5 % of a step.
    let slack = (0.05 * mean_s).max(0.000_6);
    out.uneven = t.iter().enumerate().any(|(i, at)| (at - start - i as f64 * mean_s).abs() > slack);
    if out.uneven {
        // Twice the usual rate, so that straight lines between stamps lose little of what lies between the new ones.
        in_range(1.0 / median_s)?;
        out.rate_hz = (2.0 / median_s).ceil().min(MAX_RATE_HZ);
        let count = (span * out.rate_hz).floor() + 1.0;
        if count > MAX_SAMPLES as f64 {
            let (low, high, found) = (2, MAX_SAMPLES, count.min(1e15) as usize);
            return Err(CsvError::CsvLength { file: name.to_string(), low, high, found });
        }
        // One in ten of the lines must be there. A pause of the recorder is no part of a recording.
        if span > MOST_GAPS * median_s * t.len() as f64 {
            let (gap_s, usual_s) = (out.longest_step_s, median_s);
            return Err(CsvError::CsvGap { file: name.to_string(), gap_s, usual_s });
        }
        let mut j = 0;
        out.values = (0..count as usize)
            .map(|i| {
                let at = start + i as f64 / out.rate_hz;
                while j + 2 < t.len() && t[j + 1] <= at {
                    j += 1;
                }
                let part = ((at - t[j]) / (t[j + 1] - t[j])).clamp(0.0, 1.0);
                v[j] + part * (v[j + 1] - v[j])
            })
            .collect();
        return Ok(out);
    }
    let found = 1.0 / mean_s;
    // Stamps have a last digit: a whole number of hertz within 2 % of a sample at the far end is what was meant.
    let whole = found.round();
    let last = (t.len() - 1) as f64;
    out.rate_hz = in_range(if (last - whole * span).abs() < 0.02 { whole } else { found })?;
    out.values = v;
    Ok(out)
}

/// The stretches without values that are longer than [`GAP_STEPS`]: their beginning from the first stamp and their length, s.
fn gaps(at: &[f64], values: &[f64], usual_s: f64) -> Vec<(f64, f64)> {
    let mut gaps = Vec::new();
    let mut last = 0;
    for (k, value) in values.iter().enumerate() {
        if value.is_nan() {
            continue;
        }
        if at[k] - at[last] > GAP_STEPS * usual_s && gaps.len() < MOST_NOTES {
            gaps.push((at[last] - at[0], at[k] - at[last]));
        }
        last = k;
    }
    if at[at.len() - 1] - at[last] > GAP_STEPS * usual_s {
        gaps.push((at[last] - at[0], at[at.len() - 1] - at[last]));
    }
    gaps
}

/// Fills missing values linearly in time; at the ends repeats the nearest.
fn fill(values: &mut [f64], at: impl Fn(usize) -> f64) {
    let mut last: Option<usize> = None;
    let mut i = 0;
    while i < values.len() {
        if !values[i].is_nan() {
            last = Some(i);
            i += 1;
            continue;
        }
        let next = (i..values.len()).find(|k| !values[*k].is_nan());
        let end = next.unwrap_or(values.len());
        for k in i..end {
            values[k] = match (last, next) {
                (Some(a), Some(b)) => values[a] + (at(k) - at(a)) / (at(b) - at(a)) * (values[b] - values[a]),
                (Some(a), None) => values[a],
                (None, Some(b)) => values[b],
                (None, None) => 0.0,
            };
        }
        i = end;
    }
}
