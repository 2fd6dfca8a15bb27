//! Whether a fault shows, stays under what is tried in vain and goes under its remedy, and whether what the bench knows of its
//! cause agrees.

use super::attempt::Session;
use super::script::play;
use super::symptom::measure;
use crate::plain::json;
use crate::scenario::fault::{Fault, Symptom};
use serde_json::Value;
use std::fmt;

/// Watched before the first look, s: a few breaths, some losses of a bad port.
const WATCHED_S: f64 = 20.0;
/// From one look to the next, s.
const AGAIN_S: f64 = 10.0;
/// After a remedy, s: what comes back or wears off does so meanwhile.
const AFTER_S: f64 = 40.0;

/// The figure of a fault at three times: above 1 it shows.
#[derive(Clone, Copy, Debug)]
pub struct Walk {
    /// As it is found.
    pub shown: f64,
    /// After a vain remedy.
    pub stays: f64,
    /// After the right one.
    pub gone: f64,
    /// Whether what the bench knows of the cause agrees each time.
    pub known: bool,
}

impl Walk {
    /// Walks a fault on benches that are begun with it. What comes and goes shows to whoever looks again: the figure before and
    /// after the vain remedy is the greatest of so many `looks`.
    pub fn of(
        begin: &dyn Fn() -> Result<Session, String>,
        fault: &Fault,
        looks: u32,
    ) -> Result<Self, String> {
        let wait = |session: &mut Session, seconds: f64| play(session, &[json!({"wait": seconds})]);
        let told = |what: &str, e: String| format!("{what}: {e}");
        // What wears off by itself was at work at one of the looks.
        let watch = |session: &mut Session| -> Result<(f64, bool), String> {
            wait(session, WATCHED_S)?;
            let mut seen = (measure(session, fault.symptom), session.is_at_work(fault));
            for _ in 1..looks {
                wait(session, AGAIN_S)?;
                seen.0 = seen.0.max(measure(session, fault.symptom));
                seen.1 |= session.is_at_work(fault);
            }
            Ok(seen)
        };
        let mut session = begin()?;
        let (shown, mut known) = watch(&mut session)?;
        play(&mut session, &steps(fault.vain)).map_err(|e| told("vain", e))?;
        let (stays, still_known) = watch(&mut session)?;
        known &= still_known;
        let mut mended = begin()?;
        wait(&mut mended, 5.0)?;
        play(&mut mended, &steps(fault.remedy)).map_err(|e| told("remedy", e))?;
        wait(&mut mended, AFTER_S)?;
        let gone = measure(&mended, fault.symptom);
        known &= mended.is_at_work(fault) != fault.curable;
        Ok(Self { shown, stays, gone, known })
    }

    /// Whether it shows, stays and goes as its entry says.
    pub fn good(&self, fault: &Fault) -> bool {
        self.shown > 1.0 && self.stays > 1.0 && (self.gone < 1.0) == fault.curable && self.known
    }
}

impl fmt::Display for Walk {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { shown, stays, gone, known } = self;
        write!(
            f,
            "shown {shown:.2}, after a vain remedy {stays:.2}, after the right one {gone:.2}; the cause is known: {known}"
        )
    }
}

/// Steps as they stand in the catalogue.
pub fn steps(list: &[&str]) -> Vec<Value> {
    list.iter().filter_map(|step| crate::plain::value(step).ok()).collect()
}

/// Whether the figure of a fault is above 1 now.
pub fn shows(session: &Session, symptom: Symptom) -> bool {
    measure(session, symptom) > 1.0
}
