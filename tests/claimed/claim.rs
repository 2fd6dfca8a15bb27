//! The form of a claim.

use super::shot::Seen;

/// A figure: what it is, and how it is worked out from what is seen.
#[derive(Clone, Copy)]
pub struct Figure(pub &'static str, pub fn(&Seen) -> f64);

/// The figure of a subject who cannot show a thing by nature, such as a second bump that is to vanish: it counts nowhere.
pub const NOT_HERE: f64 = f64::MIN;

/// How a figure must lie, bounds included.
#[derive(Clone, Copy, Debug)]
pub enum Bound {
    Under(f64),
    Over(f64),
    Within(f64, f64),
}

impl Bound {
    pub fn meets(self, v: f64) -> bool {
        match self {
            Self::Under(most) => v <= most,
            Self::Over(least) => v >= least,
            Self::Within(least, most) => (least..=most).contains(&v),
        }
    }

    /// How far a figure lies beyond the bound; negative within it. For the worst of many.
    pub fn beyond(self, v: f64) -> f64 {
        let far = match self {
            Self::Under(most) => v - most,
            Self::Over(least) => least - v,
            Self::Within(least, most) => (least - v).max(v - most),
        };
        if far.is_nan() { f64::INFINITY } else { far }
    }
}

/// What is done before the second look.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Does {
    /// Steps as in a scripted attempt; `"@range"` stands for a range that suits the subject's usual pulse, V.
    Steps(&'static [&'static str]),
    /// What mends the fault, as the catalogue has it. On another bench it is done all the same.
    Remedy,
    /// The same, and then these steps.
    RemedyAnd(&'static [&'static str]),
}

/// What is done and how long it is looked at. All times in milliseconds, so that runs can be told apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Course {
    /// Before the first look.
    pub settle_ms: u64,
    /// The first look: the last so many milliseconds before anything is done.
    pub look_ms: u64,
    /// What is done then.
    pub does: Does,
    /// Then it goes on for so long, and that much is the second look, of which the last twenty seconds are kept.
    pub then_ms: u64,
    /// The second look begins with what is done.
    pub throughout: bool,
    /// With a range that takes ten pulses, for what is taller than a screen that suits the pulse.
    pub wide: bool,
}

/// The bench on which a claim must fail.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Opposite {
    /// The one without a fault.
    None,
    /// The one with another.
    Fault(&'static str),
    /// The same where nothing is done; it runs on for as long.
    Undone,
}

/// One claim.
#[derive(Clone)]
pub struct Claim {
    /// The fault, by its name.
    pub fault: &'static str,
    /// The attribute of its message: `seen`, `test` or `remedy`.
    pub field: &'static str,
    /// The part of the text that it stands for.
    pub phrase: &'static str,
    pub figure: Figure,
    pub bound: Bound,
    /// The bound is to be missed, not met: what was seen is seen no longer.
    pub missed: bool,
    /// The figure is of the second look in the place of the first.
    pub after: bool,
    /// A remedy does not show in it.
    pub apart: bool,
    pub course: Course,
    /// The benches on which it must fail; where none is named, the one without a fault.
    pub opposites: Vec<Opposite>,
    /// Share of the measurements that must meet the bound: all, but where the text says "often".
    pub least_share: f64,
}

/// A claim about what is seen.
pub fn seen(fault: &'static str, phrase: &'static str, figure: Figure, bound: Bound) -> Claim {
    let course = Course {
        settle_ms: 8_000,
        look_ms: 12_000,
        does: Does::Steps(&[]),
        then_ms: 0,
        throughout: false,
        wide: false,
    };
    Claim {
        fault,
        field: "seen",
        phrase,
        figure,
        bound,
        missed: false,
        after: false,
        apart: false,
        course,
        opposites: Vec::new(),
        least_share: 1.0,
    }
}

/// A claim about a test: what is done, and what comes in the `then_s` seconds after it.
pub fn test(
    fault: &'static str,
    phrase: &'static str,
    steps: &'static [&'static str],
    then_s: f64,
    figure: Figure,
    bound: Bound,
) -> Claim {
    Claim { field: "test", ..seen(fault, phrase, figure, bound).doing(steps, then_s) }
}

/// A claim about the remedy: the figure of the last ten seconds once the catalogue's remedy is done.
pub fn remedy(fault: &'static str, phrase: &'static str, figure: Figure, bound: Bound) -> Claim {
    let claim = seen(fault, phrase, figure, bound);
    let course = Course { does: Does::Remedy, then_ms: 20_000, ..claim.course };
    Claim { field: "remedy", course, ..claim }
}

/// The same, with what the text adds to the catalogue's remedy.
pub fn remedy_by(
    fault: &'static str,
    phrase: &'static str,
    steps: &'static [&'static str],
    figure: Figure,
    bound: Bound,
) -> Claim {
    let claim = remedy(fault, phrase, figure, bound);
    Claim { course: Course { does: Does::RemedyAnd(steps), ..claim.course }, ..claim }
}

/// What every remedy claims of what is seen: once it is done, that is seen no more often than where there is no fault, and where
/// nothing is done it is.
pub fn gone(seen: &Claim) -> Claim {
    let then_ms = seen.course.look_ms.max(20_000);
    let course = Course { does: Does::Remedy, then_ms, ..seen.course };
    let opposites = vec![Opposite::Undone];
    Claim { field: "remedy", missed: true, after: true, course, opposites, least_share: 0.9, ..seen.clone() }
}

impl Claim {
    /// Whether a figure is as the claim says.
    pub fn meets(&self, v: f64) -> bool {
        self.bound.meets(v) != self.missed
    }

    /// How far a figure is from what the claim says; negative where it is as it says. For the worst of many.
    pub fn beyond(&self, v: f64) -> f64 {
        let far = self.bound.beyond(v);
        if self.missed && far.is_finite() { -far } else { far }
    }

    /// Looks for so many seconds first.
    pub fn watched(mut self, seconds: f64) -> Self {
        self.course.look_ms = (1000.0 * seconds) as u64;
        self
    }

    /// Does something and looks again.
    pub fn doing(mut self, steps: &'static [&'static str], then_s: f64) -> Self {
        self.course.does = Does::Steps(steps);
        self.course.then_ms = (1000.0 * then_s) as u64;
        self
    }

    /// Must miss the bound where another fault is. May be said of several.
    pub fn against(mut self, fault: &'static str) -> Self {
        self.opposites.push(Opposite::Fault(fault));
        self
    }

    /// Must miss the bound at the bench without a fault; said only where another opposite is named as well.
    pub fn against_none(mut self) -> Self {
        self.opposites.push(Opposite::None);
        self
    }

    /// Must miss the bound where nothing is done.
    pub fn undone(mut self) -> Self {
        self.opposites.push(Opposite::Undone);
        self
    }

    /// A remedy does not show in it: it is over by itself, or stays, or the heart alone brings it now and then.
    pub fn apart(mut self) -> Self {
        self.apart = true;
        self
    }

    /// From the start on, without letting it settle.
    pub fn fresh(mut self) -> Self {
        self.course.settle_ms = 0;
        self
    }

    /// Holds in so many of the measurements, for a text that says "often".
    pub fn often(mut self, least_share: f64) -> Self {
        self.least_share = least_share;
        self
    }

    /// The benches on which it must fail.
    pub fn opposite(&self) -> Vec<Opposite> {
        if self.opposites.is_empty() { vec![Opposite::None] } else { self.opposites.clone() }
    }

    /// The second look begins with what is done.
    pub fn throughout(mut self) -> Self {
        self.course.throughout = true;
        self
    }

    /// With a range that takes ten pulses.
    pub fn wide(mut self) -> Self {
        self.course.wide = true;
        self
    }

    /// The key of the message that it stands for.
    pub fn key(&self) -> String {
        format!("entry-{}.{}", self.fault, self.field)
    }
}
