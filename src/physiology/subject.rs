//! Who sits at the bench: what a scenario may say about the subject, and the person drawn from it.

use super::shape::Shape;
use super::touch::Touch;
use crate::math;
use crate::rng::Stream;
use serde::{Deserialize, Serialize};
use thiserror::Error;

/// How trained the subject is; sets resting rate, variability and recovery.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Fitness {
    /// Untrained.
    Low,
    /// Moderately active.
    Moderate,
    /// Trained for endurance.
    High,
}

/// Whom a subject is drawn from where nothing else is said.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum People {
    /// A first-year course: mostly 18 to 25 years, some up to 45.
    #[default]
    Students,
    /// Adults of 18 to 80 years.
    Everyone,
}

/// What a scenario may fix about the subject. Everything left out is drawn from the seed.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(default, deny_unknown_fields)]
pub struct SubjectSpec {
    /// Whom the subject is one of; sets the age if that is not given.
    pub people: People,
    /// Age, 6 to 90 years.
    pub age_years: Option<f64>,
    /// Mean heart rate at rest, 30 to 150 beats/min.
    pub rest_rate_bpm: Option<f64>,
    /// Training.
    pub fitness: Option<Fitness>,
    /// Breathing rate at rest, 4 to 40 /min.
    pub breaths_per_min: Option<f64>,
    /// Standard deviation of the beat intervals at rest, 0 to 200 ms.
    pub sdnn_ms: Option<f64>,
    /// Low- to high-frequency power of the beat intervals, 0.05 to 20.
    pub lf_hf: Option<f64>,
    /// Premature beats, 0 to 20 /min.
    pub premature_per_min: Option<f64>,
    /// Systolic pressure, 70 to 220 mmHg.
    pub systolic_mmhg: Option<f64>,
    /// Diastolic pressure, 40 to 130 mmHg and at least 15 below the systolic.
    pub diastolic_mmhg: Option<f64>,
    /// Temperature of the finger, 10 to 38 degrees Celsius.
    pub finger_temp_c: Option<f64>,
    /// Peak-to-peak output of the sensor at the best strap on a warm finger, 1 to 200 mV.
    pub pulse_mv: Option<f64>,
    /// Small involuntary movements, 0 (perfectly still) to 5; 1 is the middle one of people told to sit still.
    pub restlessness: Option<f64>,
    /// How far tissue and sensor smooth the pulse, standard deviation of the bell, 0 to 60 ms.
    pub smoothing_ms: Option<f64>,
    /// Corner under which strap and sensor let slow changes go, 0 (none) to 2 Hz.
    pub coupling_hz: Option<f64>,
    /// An exactly regular rhythm, for teaching.
    pub regular: bool,
}

/// A field of a scenario that cannot be.
#[derive(Clone, Debug, Error, PartialEq)]
#[error("{field} must be {expected}, found {found}")]
pub struct SpecError {
    /// Name of the field.
    pub field: &'static str,
    /// What would have been accepted.
    pub expected: &'static str,
    /// What came.
    pub found: f64,
}

/// Refuses `found` unless it lies between the limits, both included (so not-a-number is refused too).
pub(crate) fn within(
    field: &'static str,
    expected: &'static str,
    found: f64,
    low: f64,
    high: f64,
) -> Result<(), SpecError> {
    if (low..=high).contains(&found) { Ok(()) } else { Err(SpecError { field, expected, found }) }
}

impl SubjectSpec {
    /// Checks every given field against its range, and the two pressures against each other.
    pub fn check(&self) -> Result<(), SpecError> {
        let fields = [
            ("age_years", "a number of years from 6 to 90", self.age_years, 6.0, 90.0),
            ("rest_rate_bpm", "a rate from 30 to 150 beats/min", self.rest_rate_bpm, 30.0, 150.0),
            ("breaths_per_min", "a rate from 4 to 40 breaths/min", self.breaths_per_min, 4.0, 40.0),
            ("sdnn_ms", "a number of milliseconds from 0 to 200", self.sdnn_ms, 0.0, 200.0),
            ("lf_hf", "a ratio from 0.05 to 20", self.lf_hf, 0.05, 20.0),
            ("premature_per_min", "a number from 0 to 20 a minute", self.premature_per_min, 0.0, 20.0),
            ("systolic_mmhg", "a pressure from 70 to 220 mmHg", self.systolic_mmhg, 70.0, 220.0),
            ("diastolic_mmhg", "a pressure from 40 to 130 mmHg", self.diastolic_mmhg, 40.0, 130.0),
            ("finger_temp_c", "a temperature from 10 to 38 degrees C", self.finger_temp_c, 10.0, 38.0),
            ("pulse_mv", "a height from 1 to 200 mV", self.pulse_mv, 1.0, 200.0),
            ("restlessness", "a number from 0 to 5", self.restlessness, 0.0, 5.0),
            ("smoothing_ms", "a number of milliseconds from 0 to 60", self.smoothing_ms, 0.0, 60.0),
            ("coupling_hz", "a frequency from 0 to 2 Hz", self.coupling_hz, 0.0, 2.0),
        ];
        for (field, expected, found, low, high) in fields {
            if let Some(found) = found {
                within(field, expected, found, low, high)?;
            }
        }
        match (self.systolic_mmhg, self.diastolic_mmhg) {
            (Some(s), Some(d)) if d > s - 15.0 => Err(SpecError {
                field: "diastolic_mmhg",
                expected: "at least 15 mmHg below systolic_mmhg",
                found: d,
            }),
            _ => Ok(()),
        }
    }
}

/// A concrete subject. All fields are for quiet sitting rest.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Subject {
    /// Age, years.
    pub age_years: f64,
    /// Training.
    pub fitness: Fitness,
    /// Mean rate, beats/min.
    pub rest_rate_bpm: f64,
    /// Highest rate, beats/min.
    pub max_rate_bpm: f64,
    /// Breathing rate, /min.
    pub breaths_per_min: f64,
    /// Relative standard deviation of period and depth of breaths.
    pub breath_irregularity: f64,
    /// Standard deviation of the intervals, ms.
    pub sdnn_ms: f64,
    /// Ratio of low- to high-frequency power of the intervals.
    pub lf_hf: f64,
    /// Share of the white part in the variance of the intervals.
    pub white_share: f64,
    /// Share of the slow drift in the variance of the intervals.
    pub slow_share: f64,
    /// Premature beats, /min.
    pub premature_per_min: f64,
    /// Exactly regular rhythm.
    pub regular: bool,
    /// Systolic pressure, mmHg.
    pub systolic_mmhg: f64,
    /// Diastolic pressure, mmHg.
    pub diastolic_mmhg: f64,
    /// Temperature of the finger, degrees Celsius.
    pub finger_temp_c: f64,
    /// Peak-to-peak output of the sensor at the best strap on a warm finger, mV.
    pub pulse_mv: f64,
    /// Relative change of the beat's height between breathing in and out at rest.
    pub breath_on_height: f64,
    /// Peak-to-peak baseline of breathing at rest, in units of the pulse.
    pub breath_on_baseline: f64,
    /// How far each breath at rest moves the hand, peak to peak in units of the pulse: 0 where the arm is supported.
    pub breath_on_hand: f64,
    /// Standard deviation of the vasomotor baseline, in units of the pulse.
    pub vasomotor_baseline: f64,
    /// Relative standard deviation of the beat's height: slow part (vasomotion).
    pub height_slow_sd: f64,
    /// Relative standard deviation of the beat's height: from beat to beat.
    pub height_beat_sd: f64,
    /// Small involuntary movements: 0 perfectly still, 1 the middle one of people told to sit still.
    pub restlessness: f64,
    /// Arterial stiffness: 0 as in the middle one of 22 years, 1 as in the middle one of 72.
    pub stiffness: f64,
    /// Tone of the finger's small vessels, standard deviations from the middle one: positive constricted.
    pub tone: f64,
    /// Proportions of the wave.
    pub shape: Shape,
    /// What lies between the finger and the sensor's signal.
    pub touch: Touch,
}

impl Subject {
    /// Draws a subject. What `spec` gives is taken; a given field never shifts the draw of another.
    ///
    /// Spreads: resting rate by fitness 78/69/55 (Sci Rep 2021, s41598-021-83071-w, Table 2), for children after the
    /// ranges of MedlinePlus; highest rate 208 - 0.7 age (Tanaka 2001); SDNN about 50 ms in the middle years (Nunan
    /// 2010), falling with age; sensor height log-normal around 40 mV.
    pub fn draw(spec: &SubjectSpec, seed: u64) -> Self {
        let mut s = Stream::new(seed, "physiology.subject");
        // One draw after another in a fixed order, used or not.
        let age = drawn_age(spec.people, s.uniform());
        let fit = s.uniform();
        let n: [f64; 32] = std::array::from_fn(|_| s.normal().clamp(-2.5, 2.5));
        let age_years = spec.age_years.unwrap_or(age);
        let old = ((age_years - 22.0) / 50.0).clamp(-0.2, 1.2);
        let aged = old.clamp(0.0, 1.0);
        let fitness = spec.fitness.unwrap_or(if fit < 0.3 + 0.7 * aged {
            Fitness::Low
        } else if fit < 0.85 + 0.12 * aged {
            Fitness::Moderate
        } else {
            Fitness::High
        });
        let quicker = aged * (12.0 + 6.0 * n[31]);
        let rest_rate_bpm =
            spec.rest_rate_bpm.unwrap_or_else(|| rest_rate(age_years, fitness, n[0], quicker));
        // The older hold stiller. Whoever does not has a less steady grip as well, so that heights vary more too.
        let restless_log = 0.4 - 1.6 * aged;
        let unsettled = match spec.restlessness {
            Some(given) => (math::ln(given.max(1e-3)) - restless_log).clamp(-2.5, 2.5),
            None => n[14],
        };
        let young = math::exp(-0.024 * (age_years - 22.0));
        let trained = match fitness {
            Fitness::Low => 0.85,
            Fitness::Moderate => 1.0,
            Fitness::High => 1.3,
        };
        let sdnn_drawn = 66.0 * young * trained * math::exp(0.4 * n[1] + 0.2 * n[14]);
        let sdnn_ms = spec.sdnn_ms.unwrap_or(sdnn_drawn.min(120.0)).min(200.0);
        let systolic = 116.0 + 18.0 * old + 8.0 * n[2];
        let stiffness = (old + 0.28 * n[28]).clamp(-0.3, 1.5);
        let finger_temp_c = spec.finger_temp_c.unwrap_or((32.5 + 1.0 * n[7]).clamp(30.0, 35.0));
        let tone = (-0.5 * (finger_temp_c - 32.5) + 0.87 * n[29]).clamp(-2.5, 2.5);
        let systolic_mmhg = spec.systolic_mmhg.unwrap_or_else(|| match spec.diastolic_mmhg {
            Some(d) => systolic.max(d + 25.0),
            None => systolic,
        });
        let diastolic = (74.0 + 4.0 * old + 6.0 * n[3]).min(systolic_mmhg - 25.0);
        Self {
            age_years,
            fitness,
            rest_rate_bpm,
            max_rate_bpm: (208.0 - 0.7 * age_years).max(rest_rate_bpm + 10.0),
            breaths_per_min: spec.breaths_per_min.unwrap_or((14.5 + 2.2 * n[4]).clamp(9.0, 20.0)),
            breath_irregularity: (0.1 + 0.03 * n[5]).max(0.03),
            sdnn_ms,
            lf_hf: spec.lf_hf.unwrap_or(1.2 * math::exp(0.45 * n[6])),
            white_share: 0.08,
            slow_share: 0.2,
            premature_per_min: spec.premature_per_min.unwrap_or(0.0),
            regular: spec.regular,
            systolic_mmhg,
            diastolic_mmhg: spec.diastolic_mmhg.unwrap_or(diastolic),
            finger_temp_c,
            pulse_mv: spec.pulse_mv.unwrap_or((40.0 * math::exp(0.4 * n[8])).clamp(10.0, 100.0)),
            breath_on_height: 0.055 * math::exp(0.6 * n[9]),
            breath_on_baseline: 0.1 * math::exp(0.4 * n[10]),
            breath_on_hand: 0.0,
            vasomotor_baseline: 0.05 * math::exp(0.4 * n[11]),
            height_slow_sd: 0.15 * (1.0 - 0.5 * aged) * math::exp(0.6 * n[12] + 0.35 * unsettled),
            height_beat_sd: 0.025 * math::exp(0.5 * n[13] + 0.3 * unsettled),
            restlessness: spec.restlessness.unwrap_or(math::exp(restless_log + n[14]).min(2.6)),
            stiffness,
            tone,
            touch: Touch::default(),
            shape: draw_shape(stiffness, tone, &n[15..]),
        }
        .through(Touch::default())
    }

    /// The same subject, felt through `touch`.
    ///
    /// Reflections are weakened where the peak would not be the highest point any more. Up to 30 years by a quarter of the
    /// height, because a first-year course teaches that it is; later, when waves run together, by a tenth.
    pub fn through(self, touch: Touch) -> Self {
        let margin = (0.25 - 0.0075 * (self.age_years - 30.0)).clamp(0.1, 0.25);
        let flat = (1.5 + 0.6 * self.stiffness).clamp(1.5, 2.0);
        let shape = self.shape.with_one_summit(&touch, 60.0 / self.rest_rate_bpm, margin, flat);
        Self { touch, shape, ..self }
    }

    /// Mean arterial pressure, mmHg: diastolic plus a third of the pulse pressure (common practice).
    pub fn mean_pressure_mmhg(&self) -> f64 {
        self.diastolic_mmhg + (self.systolic_mmhg - self.diastolic_mmhg) / 3.0
    }

    /// Height of the pulse in a finger at this temperature, relative to a warm one.
    pub fn warmth(&self) -> f64 {
        warmth(self.finger_temp_c)
    }
}

/// Height of the pulse in a finger at `temp_c`, relative to a warm finger: a logistic fall around 27 degrees C, down
/// to a twentieth. A design value; that beats become undetectable in cold fingers is published (PMC5750340, fig. 9).
pub fn warmth(temp_c: f64) -> f64 {
    math::logistic((temp_c - 27.0) / 1.5).max(0.05)
}

/// Age of one of `people`, years; `u` uniform.
fn drawn_age(people: People, u: f64) -> f64 {
    match people {
        People::Students if u < 0.85 => 18.0 + 7.0 * u / 0.85,
        People::Students => 25.0 + 20.0 * (u - 0.85) / 0.15,
        People::Everyone => 18.0 + 62.0 * u,
    }
}

/// Resting rate of a subject of this age and training; `z` standard normal, `quicker` added: older people do not come
/// as rested to a recording, those at a bedside least (design default).
fn rest_rate(age_years: f64, fitness: Fitness, z: f64, quicker: f64) -> f64 {
    let (mean, sd) = match fitness {
        Fitness::Low => (78.0, 7.0),
        Fitness::Moderate => (69.0, 6.5),
        Fitness::High => (55.0, 5.0),
    };
    // Children beat faster: about 20 beats/min more at 8 years (middle of MedlinePlus's ranges), fading by 18.
    let child = 20.0 * ((18.0 - age_years) / 10.0).clamp(0.0, 1.2);
    (mean + child + quicker + 1.3 * sd * z).clamp(42.0, 100.0 + 1.5 * child)
}

/// Proportions of the wave; `old` is 0 at 22 years and 1 at 72, `n` standard normal draws.
///
/// Centres and spreads are those of a fit of this model to the median beats of some twenty people's finger recordings
/// (residual about 1 % of the height). The reflections are strong or weak together, and a strong dicrotic wave is
/// broad too, so they share a factor. With age the foot gets blunter and the late reflection stronger, so that the
/// indices of the second derivative go the way of Choi & Park 2022.
fn draw_shape(old: f64, tone: f64, n: &[f64]) -> Shape {
    let spread = |sd: f64, z: f64| math::exp(sd * z);
    let together = n[0];
    let late = n[1];
    let ejection = spread(0.08, n[2]);
    let tight = |share: f64| math::exp(share * tone);
    // The older differ more from each other: not everybody's arteries age alike.
    let wider = old.clamp(0.0, 1.0);
    Shape {
        arrival_s: 0.38,
        ejection_width_s: 0.0482 * ejection,
        fore: [0.38 * (1.0 - 0.3 * old), -0.054 * (1.0 + 0.09 * old) * ejection, 0.028 * ejection],
        late: [
            (0.66 + 0.22 * old) * spread(0.06, together) * spread(0.12, n[3]),
            (0.111 - 0.008 * old) * spread(0.07, late),
            0.066 * spread(0.07, late) * spread(0.06, n[4]),
        ],
        dicrotic: [
            (0.62 * math::exp(-old) * tight(0.2) * spread(0.1, together) * spread(0.1 + 0.35 * wider, n[5]))
                .min(0.75),
            (0.298 - 0.045 * old) * spread(0.05 + 0.07 * wider, n[6]),
            (0.108 + 0.01 * old) * spread(0.05, together) * spread(0.1, n[7]),
        ],
        last: [
            (0.48 * math::exp(-old) * tight(0.1) * spread(0.1, together) * spread(0.2 + 0.1 * wider, n[8]))
                .min(0.7),
            0.49 * spread(0.08, n[9]),
            0.15 * spread(0.14, n[10]),
        ],
        filling: (3.1 + 0.8 * old) * tight(0.1) * spread(-0.1, together) * spread(0.3 + 0.25 * wider, n[11]),
        run_off_s: (0.4 - 0.1 * old) * tight(0.12) * spread(0.15 + 0.12 * wider, n[12]),
    }
}
