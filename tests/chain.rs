//! The whole chain: the same numbers for the same scenario, seed and actions, whatever the blocks; saved and
//! restored it goes on alike; each thing done at the bench shows in the samples.

use dicrotic::bench::table::Part;
use dicrotic::bench::wiring::{End, Socket};
use dicrotic::bench::{Bench, Change};
use dicrotic::chain::{Chain, Config, Poke, Trouble};
use dicrotic::physiology::SubjectSpec;
use dicrotic::pickup::field::PowerLine;
use dicrotic::pickup::sensor::{Kind, Sensor, Shield};
use dicrotic::recorder::Settings;
use dicrotic::recorder::settings::Change as Set;

fn config() -> Config {
    Config {
        subject: SubjectSpec { pulse_mv: Some(40.0), ..SubjectSpec::default() },
        power_line: PowerLine::default(),
        sensor: Sensor { kind: Kind::Ceramic, shield: Shield::Damaged, ..Sensor::default() },
        trouble: Trouble { unrest: 0.4, plug_loose: 0.5, ..Trouble::default() },
        finds_recorder: true,
        bench: Bench::wired(),
        recorder: Settings {
            range_v: 0.1,
            notch_hz: Some(50.0),
            low_pass_hz: Some(30.0),
            ..Settings::default()
        },
    }
}

fn quiet() -> Config {
    Config {
        trouble: Trouble::default(),
        recorder: Settings { range_v: 0.1, ..Settings::default() },
        ..config()
    }
}

fn run(chain: &mut Chain, samples: usize) -> Vec<i16> {
    let mut out = Vec::new();
    chain.fill(samples, &mut out);
    assert_eq!(out.len(), samples);
    out
}

fn height(codes: &[i16]) -> f64 {
    let (low, high) = codes.iter().fold((i16::MAX, i16::MIN), |(l, h), c| (l.min(*c), h.max(*c)));
    f64::from(high) - f64::from(low)
}

#[test]
fn blocks_do_not_matter() {
    for rate_hz in [1000, 250, 49, 4000] {
        let mut settings = config();
        settings.recorder.rate_hz = rate_hz;
        settings.recorder.notch_hz = None;
        let whole = run(&mut Chain::new(settings.clone(), 7).unwrap(), 5000);
        let mut pieces = Vec::new();
        let mut chain = Chain::new(settings, 7).unwrap();
        for size in [1, 2, 3, 255, 256, 257, 1000].into_iter().cycle() {
            let left = 5000 - pieces.len();
            if left == 0 {
                break;
            }
            chain.fill(size.min(left), &mut pieces);
        }
        assert!(whole == pieces, "at {rate_hz} Hz");
    }
}

#[test]
fn the_seed_decides() {
    let of = |seed| run(&mut Chain::new(config(), seed).unwrap(), 20_000);
    assert!(of(1) == of(1));
    assert!(of(1) != of(2));
}

#[test]
fn saved_and_restored_it_goes_on_with_the_same_numbers() {
    for at in [0, 1, 777, 12_345] {
        let mut chain = Chain::new(config(), 3).unwrap();
        run(&mut chain, at);
        let saved = serde_json::to_string(&chain).unwrap();
        let mut restored: Chain = serde_json::from_str(&saved).unwrap();
        chain.poke(&Poke::TapSensor {});
        restored.poke(&Poke::TapSensor {});
        assert!(run(&mut chain, 20_000) == run(&mut restored, 20_000), "after {at} samples");
    }
}

#[test]
fn no_link_without_every_cable_and_the_switch() {
    let chain = |change: Change| {
        let mut chain = Chain::new(quiet(), 1).unwrap();
        assert!(chain.seen());
        chain.change_bench(&change).unwrap();
        chain.seen()
    };
    for end in [End::PowerRecorder, End::PowerWall, End::DataRecorder, End::DataComputer] {
        assert!(!chain(Change::Unplug { end }), "{end:?}");
    }
    assert!(!chain(Change::Switch { id: dicrotic::bench::wiring::Switch::Recorder, on: false }));
    assert!(!chain(Change::Switch { id: dicrotic::bench::wiring::Switch::PowerStrip, on: false }));
    assert!(!chain(Change::Plug { end: End::DataComputer, socket: Socket::PortCharge }));
    assert!(chain(Change::Plug { end: End::DataComputer, socket: Socket::Port2 }));
    assert!(chain(Change::Unplug { end: End::Sensor }));
}

#[test]
fn a_computer_that_does_not_look_by_itself_finds_the_unit_when_told() {
    let mut latched = quiet();
    latched.finds_recorder = false;
    latched.bench.change(&Change::Unplug { end: End::DataRecorder }).unwrap();
    let mut chain = Chain::new(latched, 1).unwrap();
    chain.change_bench(&Change::Plug { end: End::DataRecorder, socket: Socket::RecorderData }).unwrap();
    assert!(!chain.seen());
    chain.poke(&Poke::Rescan {});
    assert!(chain.seen());
}

#[test]
fn the_wrong_input_shows_hum_and_no_pulse_and_a_tap_is_silent() {
    let mut chain = Chain::new(quiet(), 1).unwrap();
    chain.change_recorder(&Set::Input { n: 2 }).unwrap();
    let before = height(&run(&mut chain, 3000));
    chain.poke(&Poke::TapSensor {});
    let after = height(&run(&mut chain, 3000));
    assert!((after / before - 1.0).abs() < 0.5, "{before} {after}");
    chain.change_bench(&Change::Plug { end: End::Sensor, socket: Socket::In2 }).unwrap();
    run(&mut chain, 3000);
    chain.poke(&Poke::TapSensor {});
    assert!(height(&run(&mut chain, 3000)) > 5.0 * after);
}

#[test]
fn dragging_the_charger_changes_the_samples() {
    let mut chain = Chain::new(quiet(), 1).unwrap();
    chain.change_bench(&Change::StrapOff {}).unwrap();
    chain.change_bench(&Change::Charger { plugged: true }).unwrap();
    run(&mut chain, 3000);
    let far = height(&run(&mut chain, 2000));
    chain.change_bench(&Change::Move { part: Part::Charger, x: 55.0, y: 62.0 }).unwrap();
    assert!(height(&run(&mut chain, 2000)) > 3.0 * far);
}

#[test]
fn asked_to_keep_still_the_hand_does() {
    let mut chain =
        Chain::new(Config { trouble: Trouble { unrest: 1.0, ..Trouble::default() }, ..quiet() }, 4).unwrap();
    chain.change_recorder(&Set::Range { v: 2.0 }).unwrap();
    let before = height(&run(&mut chain, 20_000));
    chain.poke(&Poke::AskStill {});
    run(&mut chain, 15_000);
    let after = height(&run(&mut chain, 20_000));
    assert!(after < 0.5 * before, "{before} -> {after}");
}

#[test]
fn hum_folds_down_to_one_hertz_at_49_samples_a_second() {
    // |f - round(f/fs) fs|: 50 Hz at 49 Hz is 1 Hz (sampling theorem). The open input carries hum alone.
    let mut settings = quiet();
    settings.bench.change(&Change::Unplug { end: End::Sensor }).unwrap();
    settings.recorder = Settings { rate_hz: 49, anti_alias: false, range_v: 0.1, ..Settings::default() };
    let codes = run(&mut Chain::new(settings, 2).unwrap(), 49 * 30);
    let mean = codes.iter().map(|c| f64::from(*c)).sum::<f64>() / codes.len() as f64;
    let rising = codes.windows(2).filter(|w| f64::from(w[0]) < mean && f64::from(w[1]) >= mean).count();
    assert!((28..=32).contains(&rising), "{rising} periods in 30 s");
}

#[test]
fn a_small_range_clips_and_filtering_does_not_mend_it() {
    let mut settings = quiet();
    settings.recorder = Settings { range_v: 0.01, average_ms: Some(100.0), ..Settings::default() };
    let codes = run(&mut Chain::new(settings, 1).unwrap(), 10_000);
    let top = codes.iter().filter(|c| **c >= 32_700).count();
    assert!(top > 200, "{top}");
}

#[test]
fn talk_and_sighs_can_be_heard_until_the_subject_is_asked_to_be_quiet() {
    use dicrotic::chain::Voice;
    use dicrotic::physiology::Manoeuvre;
    let mut chain = Chain::new(quiet(), 1).unwrap();
    assert_eq!(chain.voice(), Voice::Quiet);
    chain.start(Manoeuvre::Talk);
    assert_eq!(chain.voice(), Voice::Talking);
    chain.poke(&Poke::AskQuiet {});
    assert_eq!(chain.voice(), Voice::Quiet);
    let mut sighing = quiet();
    sighing.trouble.sighs = 1.0;
    let mut chain = Chain::new(sighing, 1).unwrap();
    assert_eq!(chain.voice(), Voice::Sighing);
    chain.poke(&Poke::AskQuiet {});
    assert_eq!(chain.voice(), Voice::Quiet);
}

#[test]
fn a_loose_plug_and_a_broken_cable_together_show_what_each_shows_alone() {
    // In series: each sample is that of the open input, whichever of the two opened it, or that of the closed one with the
    // charge that each of them left when it closed last.
    let of = |plug_loose, cable_break| {
        let mut settings = quiet();
        settings.trouble = Trouble { plug_loose, cable_break, ..Trouble::default() };
        // Wide enough for all charges at once.
        settings.recorder.range_v = 1.0;
        run(&mut Chain::new(settings, 6).unwrap(), 60_000)
    };
    let (whole, plug, wire, both) = (of(0.0, 0.0), of(1.0, 0.0), of(0.0, 1.0), of(1.0, 1.0));
    assert!(plug != wire && both != plug && both != wire, "both must have opened");
    for (k, code) in both.iter().enumerate() {
        let closed = i32::from(plug[k]) + i32::from(wire[k]) - i32::from(whole[k]);
        // Three codes are rounded.
        let charged = (i32::from(*code) - closed).abs() <= 2;
        let open = *code == plug[k] || *code == wire[k];
        assert!(charged || open, "sample {k}: {code}, {} or {} alone", plug[k], wire[k]);
    }
}
