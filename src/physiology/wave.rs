//! What a beat sends to the finger.
//!
//! Every beat launches a few bell-shaped bumps (ejection, reflections, the dicrotic wave), and all bumps of all
//! beats are added: superposition, so nothing jumps where one beat ends and the next begins. The ejection bumps also
//! fill an elastic reservoir that runs off exponentially (windkessel, Frank 1899), which gives the long diastolic
//! decay.
//!
//! A bump on an even grid of samples obeys `g *= h; h *= c` exactly, so there is no exponential per sample.

use crate::math;
use serde::{Deserialize, Serialize};

/// A bump is followed from this many widths before its centre to as many after: there it is below 1e-6 of its height.
const REACH: f64 = 5.3;

/// A bell-shaped bump in time.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Bump {
    /// Height.
    pub height: f64,
    /// Time of the centre, s.
    pub centre_s: f64,
    /// Standard deviation, s.
    pub width_s: f64,
    /// Share of it that flows into the reservoir.
    pub filling: f64,
}

/// A bump on the sample grid.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
struct Running {
    bump: Bump,
    /// Samples until it begins, then samples until it ends.
    wait: u64,
    left: u64,
    g: f64,
    h: f64,
    c: f64,
}

impl Running {
    /// On a grid whose next sample is at `now_s`, `step_s` apart.
    fn new(bump: Bump, now_s: f64, step_s: f64) -> Self {
        let begin = ((bump.centre_s - REACH * bump.width_s - now_s) / step_s).ceil().max(0.0);
        let end = ((bump.centre_s + REACH * bump.width_s - now_s) / step_s).ceil().max(begin);
        let v = 1.0 / (bump.width_s * bump.width_s);
        let x = now_s + begin * step_s - bump.centre_s;
        Self {
            bump,
            wait: begin as u64,
            left: (end - begin) as u64,
            g: bump.height * math::exp(-0.5 * v * x * x),
            h: math::exp(-0.5 * v * step_s * (2.0 * x + step_s)),
            c: math::exp(-v * step_s * step_s),
        }
    }

    /// Adds the next `out.len()` samples to `out`, and what flows into the reservoir to `flow`.
    fn add(&mut self, out: &mut [f64], flow: &mut [f64]) {
        let skip = self.wait.min(out.len() as u64) as usize;
        self.wait -= skip as u64;
        let run = (self.left.min((out.len() - skip) as u64)) as usize;
        self.left -= run as u64;
        let (out, flow) = (&mut out[skip..skip + run], &mut flow[skip..skip + run]);
        let filling = self.bump.filling;
        if filling == 0.0 {
            for o in out {
                *o += self.next();
            }
        } else {
            for (o, f) in out.iter_mut().zip(flow) {
                let g = self.next();
                *o += g;
                *f += filling * g;
            }
        }
    }

    /// Whether it goes on through all of the next `n` samples.
    fn is_on_for(&self, n: usize) -> bool {
        self.wait == 0 && self.left >= n as u64
    }

    #[inline(always)]
    fn next(&mut self) -> f64 {
        let g = self.g;
        self.g *= self.h;
        self.h *= self.c;
        g
    }
}

/// Adds two bumps that both go on through the block, the first before the second. Each sample of a bump waits for the one
/// before it, so that two at once take little longer than one.
fn add_both(a: &mut Running, b: &mut Running, out: &mut [f64], flow: &mut [f64]) {
    a.left -= out.len() as u64;
    b.left -= out.len() as u64;
    // On copies, which stay in registers.
    let (mut x, mut y) = (a.clone(), b.clone());
    let (from_a, from_b) = (x.bump.filling, y.bump.filling);
    if from_a == 0.0 && from_b == 0.0 {
        for o in out {
            *o = *o + x.next() + y.next();
        }
    } else {
        for (o, f) in out.iter_mut().zip(flow) {
            let (g, k) = (x.next(), y.next());
            *o = *o + g + k;
            *f = *f + from_a * g + from_b * k;
        }
    }
    (*a, *b) = (x, y);
}

/// Largest block that [`Wave::fill`] works on at once.
pub const CHUNK: usize = 128;

/// The sum of all bumps under way, and the reservoir.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Wave {
    running: Vec<Running>,
    step_s: f64,
    run_off_s: f64,
    keep: f64,
    gain: f64,
    level: f64,
    flow: f64,
    /// Angular corner of the coupling, 1/s, what it keeps and gains a step, its slow level and the sample before.
    coupling_per_s: f64,
    couple_keep: f64,
    couple_gain: f64,
    slow: f64,
    plain: f64,
}

/// Where the wave of a beat is highest, and what is before and after.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Peak {
    /// Time of the maximum, s.
    pub time_s: f64,
    /// Time of the lowest point before it, s.
    pub foot_s: f64,
    /// Height above the lowest point before it.
    pub rise: f64,
    /// A maximum within the stretch searched, not at its edge.
    pub inside: bool,
    /// The second bump, where there is a notch.
    pub second: Option<Second>,
}

/// A notch and the bump after it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Second {
    /// Time of the notch, s.
    pub notch_s: f64,
    /// Time of the bump's top, s.
    pub top_s: f64,
    /// Height of the bump's top over the foot, in units of the peak's; above 1 the bump tops the peak.
    pub height: f64,
}

/// Between which times a beat is looked for, s.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Search {
    /// From here on the foot is looked for,
    pub foot_s: f64,
    /// from here on the peak,
    pub from_s: f64,
    /// up to here;
    pub to_s: f64,
    /// up to here the second bump.
    pub second_s: f64,
}

impl Wave {
    /// An empty wave with a reservoir of time constant `run_off_s`, on a grid of `step_s`.
    pub fn new(run_off_s: f64, step_s: f64) -> Self {
        Self::coupled(run_off_s, 0.0, step_s)
    }

    /// The same behind a first-order high-pass of angular corner `coupling_per_s`; 0 for none.
    pub fn coupled(run_off_s: f64, coupling_per_s: f64, step_s: f64) -> Self {
        let mut wave = Self {
            running: Vec::new(),
            step_s,
            run_off_s,
            keep: 0.0,
            gain: 0.0,
            level: 0.0,
            flow: 0.0,
            coupling_per_s,
            couple_keep: 0.0,
            couple_gain: 0.0,
            slow: 0.0,
            plain: 0.0,
        };
        wave.set_step(step_s, 0.0);
        wave
    }

    /// Changes the grid; the next sample is at `now_s`.
    pub fn set_step(&mut self, step_s: f64, now_s: f64) {
        self.step_s = step_s;
        self.keep = math::exp(-step_s / self.run_off_s);
        // Trapezium rule for the inflow. The level is per second of inflow, so that heights do not depend on the rate.
        self.gain = 0.5 * step_s;
        self.couple_keep = math::exp(-self.coupling_per_s * step_s);
        self.couple_gain = 0.5 * self.coupling_per_s * step_s;
        for r in &mut self.running {
            *r = Running::new(r.bump, now_s, step_s);
        }
        self.running.retain(|r| r.left > 0);
    }

    /// Adds a bump; the next sample is at `now_s`.
    pub fn launch(&mut self, bump: Bump, now_s: f64) {
        self.running.push(Running::new(bump, now_s, self.step_s));
    }

    /// The next samples; at most [`CHUNK`].
    pub fn fill(&mut self, out: &mut [f64]) {
        let mut scratch = [0.0; CHUNK];
        let flow = &mut scratch[..out.len()];
        out.fill(0.0);
        let mut at = 0;
        while at < self.running.len() {
            at += match &mut self.running[at..] {
                [a, b, ..] if a.is_on_for(out.len()) && b.is_on_for(out.len()) => {
                    add_both(a, b, out, flow);
                    2
                }
                [a, ..] => {
                    a.add(out, flow);
                    1
                }
                [] => break,
            };
        }
        let (mut level, mut before) = (self.level, self.flow);
        let (mut slow, mut plain) = (self.slow, self.plain);
        // Reservoir and coupling both wait for their own last sample; in one loop they wait together.
        for (o, f) in out.iter_mut().zip(flow.iter()) {
            level = self.keep * level + self.gain * (self.keep * before + f);
            before = *f;
            let x = *o + level;
            slow = self.couple_keep * slow + self.couple_gain * (self.couple_keep * plain + x);
            plain = x;
            *o = x - slow;
        }
        (self.level, self.flow) = (level, before);
        (self.slow, self.plain) = (slow, plain);
        self.running.retain(|r| r.left > 0);
    }

    /// Runs a copy ahead, at a coarse step, from `now_s` (time of the next sample) and finds the highest point in the
    /// time searched, the foot before it, and notch and second bump after it, each refined by a parabola through the
    /// three values about it. The bumps are exact at the coarse grid, so the times are good to a small part of a
    /// millisecond.
    pub fn look_ahead(&self, now_s: f64, search: Search) -> Peak {
        const COARSE_S: f64 = 0.004;
        let mut copy = self.clone();
        // The reservoir's level belongs to the sample before; the coarse grid must start from there.
        let start_s = now_s - self.step_s + COARSE_S;
        copy.set_step(COARSE_S, start_s);
        let steps = |t: f64| (t - start_s) / COARSE_S;
        let last = steps(search.second_s).ceil().clamp(2.0, 500.0) as usize + 1;
        let n = (steps(search.to_s).ceil().max(2.0) as usize + 1).min(last);
        let first = steps(search.from_s).floor().clamp(0.0, (n - 2) as f64) as usize;
        let mut y = vec![0.0; last];
        for part in y.chunks_mut(CHUNK) {
            copy.fill(part);
        }
        let mut best = first;
        for k in first..n {
            if y[k] > y[best] {
                best = k;
            }
        }
        if best + 1 == n {
            // The wave goes on rising where the search ends: a second bump tops the peak, which is a summit before.
            let summits = (first + 1..n - 1).filter(|k| y[*k] > y[k - 1] && y[*k] >= y[k + 1]);
            best = summits.max_by(|a, b| y[*a].total_cmp(&y[*b])).unwrap_or(best);
        }
        let at_s = |k: usize| start_s + (k as f64 + top_of(&y, k)) * COARSE_S;
        let searched = steps(search.foot_s).floor().clamp(0.0, first as f64) as usize;
        // The earliest of the lowest samples.
        let foot = (searched..=best).min_by(|a, b| y[*a].total_cmp(&y[*b])).unwrap_or(best);
        let turns = |from: usize, up: bool| {
            (from..last - 1).find(|k| if up { y[k + 1] < y[*k] } else { y[k + 1] > y[*k] })
        };
        let second = turns(best, false).and_then(|notch| Some((notch, turns(notch + 1, true)?)));
        Peak {
            time_s: at_s(best),
            foot_s: at_s(foot),
            rise: y[best] - y[foot],
            inside: best > first && best + 1 < n,
            second: second.map(|(notch, top)| Second {
                notch_s: at_s(notch),
                top_s: at_s(top),
                height: (y[top] - y[foot]) / (y[best] - y[foot]),
            }),
        }
    }
}

/// Where between its neighbours the extreme at `k` lies, in steps from it: -0.5 to 0.5.
fn top_of(y: &[f64], k: usize) -> f64 {
    if k == 0 || k + 1 >= y.len() {
        return 0.0;
    }
    let (a, b, c) = (y[k - 1], y[k], y[k + 1]);
    let bend = a - 2.0 * b + c;
    if bend == 0.0 { 0.0 } else { (0.5 * (a - c) / bend).clamp(-0.5, 0.5) }
}
