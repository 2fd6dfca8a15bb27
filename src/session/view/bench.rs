//! What stands on the table, as the page may see it. Everything here can be seen or heard at a bench.

use crate::bench::table::{DEPTH_CM, PARTS, Part, WIDTH_CM};
use crate::bench::wiring::{ENDS, SOCKETS, Socket};
use crate::chain::{Chain, Looks};
use crate::plain::json;
use crate::recorder::settings::{
    AVERAGE_MS, BITS, HIGH_PASS_HZ, INPUTS, LOW_PASS_HZ, NOTCH_HZ, RANGES_V, RATES_HZ, SCALES,
};
use crate::session::Session;
use crate::trace::frame::TIME_BASES_S;
use serde_json::Value;

/// The recorder's settings and what they can be set to.
pub(super) fn recorder(chain: &Chain) -> Value {
    let set = chain.settings();
    let notches: Vec<f64> = NOTCH_HZ.iter().copied().filter(|hz| 2.0 * hz < f64::from(set.rate_hz)).collect();
    json!({
        "input": set.input, "range_v": set.range_v, "bits": set.bits, "rate_hz": set.rate_hz,
        "zero_v": set.zero_v, "inverted": set.inverted, "high_pass_hz": set.high_pass_hz,
        "high_pass_order": set.high_pass_order, "low_pass_hz": set.low_pass_hz,
        "low_pass_order": set.low_pass_order, "notch_hz": set.notch_hz, "average_ms": set.average_ms,
        "anti_alias": set.anti_alias, "integral": set.integral, "buffered": set.buffered, "calibrator": set.calibrator,
        "shown": set.shown, "scale": set.scale,
        "choices": {
            "range_v": RANGES_V, "time_base_s": TIME_BASES_S, "rate_hz": RATES_HZ, "bits": BITS,
            "high_pass_hz": HIGH_PASS_HZ, "low_pass_hz": LOW_PASS_HZ, "notch_hz": notches,
            "average_ms": AVERAGE_MS, "input": INPUTS, "scale": SCALES,
        },
    })
}

/// The table: parts, sockets, plugs, strap, hand, cable.
pub(super) fn bench(chain: &Chain, session: &Session) -> Value {
    let bench = chain.bench();
    let parts: Vec<Value> = PARTS
        .iter()
        .map(|part| {
            let (at, (w, d)) = (bench.table.at(*part), part.footprint());
            json!({"id": part, "x": at.x, "y": at.y, "w": w, "d": d, "movable": true})
        })
        .collect();
    let sockets: Vec<Value> = SOCKETS
        .iter()
        .map(|socket| {
            let at = bench.socket_point(*socket);
            let charger = *socket == Socket::Outlet4 && bench.wiring.charger_plugged;
            let taken_by = if charger { json!("charger") } else { json!(bench.wiring.end_in(*socket)) };
            json!({
                "id": socket, "part": socket.place().0, "kind": socket.shape(), "x": at.x, "y": at.y,
                "taken_by": taken_by,
            })
        })
        .collect();
    let ends: Vec<Value> = ENDS
        .iter()
        .map(|end| {
            let at = bench.end_point(*end);
            json!({
                "id": end, "cable": end.cable(), "kind": end.shape(), "socket": bench.wiring.socket_of(*end),
                "x": at.x, "y": at.y,
            })
        })
        .collect();
    let strap = &bench.strap;
    let hand = bench.table.at(Part::Hand);
    let finger = bench.table.fingertip();
    let wiring = &bench.wiring;
    json!({
        "table": {"w": WIDTH_CM, "d": DEPTH_CM},
        "parts": parts,
        "sockets": sockets,
        "ends": ends,
        "switches": {"recorder": wiring.recorder_on, "power_strip": wiring.power_strip_on, "lamp": wiring.lamp_on},
        "lamps": {
            "recorder": wiring.recorder_powered(), "power_strip": wiring.power_strip_on,
            "charger": wiring.charger_plugged && wiring.power_strip_on, "lamp": wiring.lamp_on,
        },
        "charger_plugged": wiring.charger_plugged,
        "strap": {
            "on": strap.on, "tightness": strap.tightness, "place": strap.place, "side": strap.side,
            "feel": strap.feel(), "shaded": strap.shaded, "other_hand": strap.other_hand,
        },
        "hand": {
            "x": hand.x, "y": hand.y, "height_cm": strap.height_cm, "finger_x": finger.x, "finger_y": finger.y,
            "looks": match chain.looks() {
                Looks::Calm => "calm",
                Looks::Moving => "moving",
                Looks::Dusky => "dusky",
            },
        },
        "cable": {
            "points": bench.cable_path().map(|p| [p.x, p.y]), "slack_cm": bench.slack_cm(),
            "handles": bench.cable.handles.map(|p| [p.x, p.y]), "shield": chain.config().sensor.shield,
        },
        "voice": chain.voice(),
        "sleeve_tight": chain.sleeve_tight(), "thumb_holds": chain.thumb_holds(), "shaken": chain.table_shaken(),
        "plug_damp": chain.plug_damp(), "smeared": chain.smeared(), "other_program": chain.port_busy(),
        "said": session.run.said,
    })
}
