//! A way of making each test of the catalogue, as a hand at the page would: for scripts and for walks through all faults.

use super::attempt::Session;
use crate::bench::table::Part;
use crate::bench::wiring::{End, Switch};
use crate::deed::{Kind, Tell};
use crate::plain::json;
use serde_json::Value;

/// Steps of a drag.
const DRAG: u32 = 6;

/// The steps of a test, as the bench stands; none where there is no bench, or no way of doing it.
pub fn ways(tell: Tell, session: &Session) -> Vec<Value> {
    let Some(chain) = session.chain() else { return Vec::new() };
    let settings = chain.settings();
    let wiring = &chain.bench().wiring;
    let moved = |part: Part, x: f64, y: f64| json!({"do": "move", "part": part, "x": x, "y": y});
    let one = |v: Value| vec![v];
    match tell {
        Tell::Wiggle(end) => one(json!({"do": "wiggle", "end": end})),
        Tell::Look(at) => one(json!({"do": "look", "at": at})),
        Tell::Stretch => {
            vec![json!({"do": "time_base", "s": 1}), json!({"wait": 2.0}), json!({"do": "time_base", "s": 5})]
        }
        Tell::Plug(_) => one(json!({"do": "plug", "end": End::DataComputer, "socket": "port2"})),
        Tell::Switch(id) => {
            let on = match id {
                Switch::Recorder => wiring.recorder_on,
                Switch::PowerStrip => wiring.power_strip_on,
                Switch::Lamp => wiring.lamp_on,
            };
            one(json!({"do": "switch", "id": id, "on": !on}))
        }
        // A drag comes as many small moves.
        Tell::Cable => {
            let at = chain.bench().cable.handles[0];
            let on = |k: u32| f64::from(k) / f64::from(DRAG);
            let y = if (at.y - 70.0).abs() < 12.0 { 50.0 } else { 70.0 };
            (1..=DRAG)
                .map(|k| moved(Part::Cable1, at.x + on(k) * (44.0 - at.x), at.y + on(k) * (y - at.y)))
                .collect()
        }
        Tell::Moved(part) => {
            let at = chain.bench().table.at(part);
            (1..=DRAG).map(|k| moved(part, at.x, at.y + 3.0 * f64::from(k))).collect()
        }
        Tell::Does(kind) => match kind {
            Kind::Input => one(json!({"do": "input", "n": 3})),
            Kind::Shown => one(json!({"do": "shown", "on": true})),
            Kind::Show => one(json!({"do": "show", "mode": "live"})),
            Kind::Range => one(json!({"do": "range", "v": 1.0})),
            Kind::Rate => one(json!({"do": "rate", "hz": 200})),
            Kind::Invert => one(json!({"do": "invert", "on": !settings.inverted})),
            Kind::Buffered => one(json!({"do": "buffered", "on": !settings.buffered})),
            Kind::LowPass => one(json!({"do": "low_pass", "hz": 5.0})),
            Kind::HighPass => one(json!({"do": "high_pass", "hz": 0.5})),
            Kind::Notch => one(json!({"do": "notch", "hz": 50.0})),
            Kind::Bits => one(json!({"do": "bits", "n": 16})),
            Kind::Strap => one(json!({"do": "strap", "tightness": 0.6})),
            Kind::Manoeuvre => one(json!({"do": "manoeuvre", "what": "rest"})),
            Kind::Scale => one(json!({"do": "scale", "by": 10.0})),
            Kind::SensorPlace => one(json!({"do": "sensor_place", "place": "middle"})),
            Kind::HandHeight => one(json!({"do": "hand_height", "cm": -15})),
            Kind::Charger => one(json!({"do": "charger", "plugged": false})),
            Kind::OtherHand => one(json!({"do": "other_hand", "on": "case"})),
            Kind::Shade => one(json!({"do": "shade", "on": true})),
            Kind::OpenRecording => one(json!({"do": "open_recording", "recording": 0})),
            Kind::Scroll => one(json!({"do": "scroll", "start_s": 2.0})),
            Kind::Cursor => one(json!({"do": "cursor", "which": "a", "t": 2.0})),
            Kind::Answer => one(json!({"do": "answer", "field": "multiplier", "text": "5"})),
            other if other.row().fields.is_empty() => one(json!({"do": other.name()})),
            _ => Vec::new(),
        },
    }
}
