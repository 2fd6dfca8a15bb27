//! What is the matter with a running chain, cause by cause. For the assessment and the catalogue of faults: the student sees
//! what it does to the trace.

use super::{Chain, TAUT_CM};
use crate::bench::Bench;
use crate::bench::wiring::End;
use crate::pickup::sensor::Kind;
use crate::pickup::thumb::Thumb;

impl Chain {
    /// Whether power and data have a way from recorder to computer.
    pub fn link_path(&self) -> bool {
        self.bench.wiring.recorder_powered() && self.bench.wiring.data_path() && !self.port_busy()
    }

    /// Whether the computer has found the recorder, be the link open at the moment or not.
    pub fn found(&self) -> bool {
        self.seen
    }

    /// Whether the computer's port in use loses the recorder now and then.
    pub fn port_fails(&self) -> bool {
        self.gaps.fails_at(self.bench.wiring.socket_of(End::DataComputer))
    }

    /// Whether another program keeps the recorder.
    pub fn port_busy(&self) -> bool {
        self.config.trouble.busy > 0.0
    }

    /// Whether a leak at the plug drains the sensor; a light sensor's amplifier does not mind.
    pub fn leaks(&self) -> bool {
        self.damp.leaks() && !self.config.sensor.drives_cable()
    }

    /// Whether the sensor's plug looks damp.
    pub fn plug_damp(&self) -> bool {
        self.damp.leaks()
    }

    /// Whether something on a light sensor's sensing side keeps light away.
    pub fn smeared(&self) -> bool {
        self.config.trouble.smear > 0.0 && self.config.sensor.kind == Kind::Optical
    }

    /// One step of the converter, V.
    pub fn step_v(&self) -> f64 {
        let set = self.settings();
        2.0 * set.range_v / f64::from(1_u32 << set.bits)
    }

    /// Whether a sleeve presses the forearm.
    pub fn sleeve_tight(&self) -> bool {
        self.sleeve.is_tight()
    }

    /// Whether a helper's thumb is on the sensor.
    pub fn thumb_holds(&self) -> bool {
        self.thumb.as_ref().is_some_and(Thumb::holds)
    }

    /// Whether the helper's pulse is in the trace.
    pub fn thumb_felt(&self) -> bool {
        self.thumb_holds() && self.config.sensor.kind != Kind::Optical
    }

    /// Whether somebody shakes the table.
    pub fn table_shaken(&self) -> bool {
        self.shaken.goes_on()
    }

    /// Whether the hand feels how the table is shaken.
    pub fn shaking_felt(&self) -> bool {
        self.shaken.is_felt()
    }

    /// The wave of the computer's fan over the best pulse, peak to peak.
    pub fn fan_share(&self) -> f64 {
        self.fan.size() * self.fan_reach
    }

    /// Heart rate over the last fifteen beats, over the resting rate; 1 where there are fewer than five.
    pub fn rate_over_rest(&self) -> f64 {
        let beats = self.body.beats();
        let last = &beats[beats.len().saturating_sub(16)..];
        match (last.first(), last.last()) {
            (Some(first), Some(end)) if last.len() >= 5 => {
                let per_min = 60.0 * (last.len() - 1) as f64 / (end.peak_s - first.peak_s);
                per_min / self.body.subject().rest_rate_bpm
            }
            _ => 1.0,
        }
    }

    /// Whether the sensor's plug is not pushed home.
    pub fn plug_loose(&self) -> bool {
        self.plug.looseness() > 0.0
    }

    /// Whether a wire inside the sensor's cable is broken.
    pub fn cable_broken(&self) -> bool {
        self.config.trouble.cable_break > 0.0
    }

    /// How far the resting level lies from the middle of the screen, V, whatever the range.
    pub fn off_center_v(&self) -> f64 {
        let settings = self.recorder.settings();
        let sign = if settings.inverted { -1.0 } else { 1.0 };
        (sign * self.offset_v + settings.zero_v).abs()
    }

    /// Whether the strap slips.
    pub fn slips(&self) -> bool {
        self.contact.slips()
    }

    /// Whether the sensor's cable tugs at the sensor.
    pub fn cable_taut(&self) -> bool {
        self.bench.strap.on && self.bench.slack_cm() < TAUT_CM
    }

    /// Whether the hand moves.
    pub fn moves(&self) -> bool {
        self.motion.unrest() > 0.1
    }

    /// Whether a foot or a finger taps.
    pub fn taps(&self) -> bool {
        self.tremor.taps()
    }

    /// How strongly the hand trembles, 0 to 1.
    pub fn tremor(&self) -> f64 {
        self.config.trouble.tremor
    }

    /// Temperature of the finger now, degrees C.
    pub fn finger_temp_c(&self) -> f64 {
        self.body.finger_temp_c()
    }

    /// Spikes of the phone over the best pulse, peak to peak.
    pub fn phone_share(&self) -> f64 {
        self.phone_v / self.pulse_v
    }

    /// Flicker of the lamp in units of the best pulse.
    pub fn flicker(&self) -> f64 {
        self.flicker
    }

    /// Hum at the sensor over the best pulse, both peak to peak, as it would be at another bench.
    pub fn hum_share_at(&self, bench: &Bench) -> f64 {
        2.0 * self.hum_on(bench).total_v() / self.pulse_v
    }

    /// Hum at the sensor over the best pulse, both peak to peak, before any filter.
    pub fn hum_share(&self) -> f64 {
        2.0 * self.hum.total_v() / self.pulse_v
    }
}
