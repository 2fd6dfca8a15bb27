//! Mirrors `src/strip/charts`: what the charts show, read off the SVG that they draw and the PNG they make.

mod pulses;

use dicrotic::measure::detect::detect;
use dicrotic::recording::Recording;
use dicrotic::trace::axes::Theme;
use dicrotic::trace::charts::beat::{self, Beat};
use dicrotic::trace::charts::file::{self, Drawn};
use dicrotic::trace::charts::lines::{Line, Source, folded};
use dicrotic::trace::charts::rate::{self, Rate};
use dicrotic::trace::charts::spectrum::{self, Spectrum};
use dicrotic::trace::charts::trace::Trace;
use dicrotic::trace::charts::{ChartError, Heading, Look};
use dicrotic::trace::frame::Frame;
use plotters::coord::Shift;
use plotters::prelude::*;
use pulses::{NOTCH, add_noise, add_sine, pulse, regular, rhythm};

/// Words unlike any the crate could have by itself: every one on a chart must be one of these.
const HEADING: Heading = Heading { title: "Titel", note: "Notiz" };
const RATE: rate::Words =
    rate::Words {
        heading: HEADING, unit: "Schläge/min", mean: "Mittel {v}", irregular: "{v} unregelmäßig"
    };
const SPECTRUM: spectrum::Words = spectrum::Words {
    heading: HEADING,
    height: "Höhe",
    pulse: "Puls {v}",
    harmonic: "{v}-fach",
    power_line: "Netz {v}",
    folded: "Netz {v} bei {seen}",
};
const BEAT: beat::Words = beat::Words {
    heading: HEADING,
    foot: "Fuß",
    peak: "Gipfel {v}",
    notch: "Kerbe {v}",
    second: "zweite Welle {v}",
    shoulder: "Schulter {v}",
    spread: "{v} Schläge",
};

enum Chart<'a> {
    Trace(Trace<'a>),
    Rate(Rate),
    Spectrum(Spectrum),
    Beat(Beat),
}

impl Drawn for Chart<'_> {
    fn draw<B: DrawingBackend>(&self, area: &DrawingArea<B, Shift>, look: &Look) -> Result<(), ChartError> {
        match self {
            Chart::Trace(strip) => strip.draw(area, look, &HEADING),
            Chart::Rate(rate) => rate.draw(area, look, &RATE),
            Chart::Spectrum(spectrum) => spectrum.draw(area, look, &SPECTRUM),
            Chart::Beat(beat) => beat.draw(area, look, &BEAT),
        }
    }
}

/// The SVG of a chart, one device pixel a CSS pixel.
fn svg(chart: &Chart, look: &Look, size: (u32, u32)) -> String {
    let mut text = String::new();
    {
        let area = SVGBackend::with_string(&mut text, size).into_drawing_area();
        chart.draw(&area, look).unwrap();
        area.present().unwrap();
    }
    text
}

/// The texts of an SVG with the left end of each tag's attributes: (text, tag).
fn texts(svg: &str) -> Vec<(String, String)> {
    svg.split("<text ")
        .skip(1)
        .map(|rest| {
            let (tag, rest) = rest.split_once(">\n").unwrap();
            (rest.split_once("\n</text>").unwrap().0.to_string(), tag.to_string())
        })
        .collect()
}

fn has(svg: &str, words: &str) -> bool {
    texts(svg).iter().any(|(text, _)| text == words)
}

/// The points of all lines of a colour.
fn lines(svg: &str, colour: RGBColor) -> Vec<Vec<(f64, f64)>> {
    let stroke = format!("stroke=\"#{:02X}{:02X}{:02X}\"", colour.0, colour.1, colour.2);
    let number = |text: &str| text.parse::<f64>().unwrap();
    svg.split("<polyline ")
        .skip(1)
        .map(|rest| rest.split_once("/>").unwrap().0)
        .filter(|tag| tag.contains(&stroke))
        .map(|tag| {
            let points = tag.split_once("points=\"").unwrap().1.split_once('"').unwrap().0;
            points
                .split_whitespace()
                .map(|p| p.split_once(',').unwrap())
                .map(|(x, y)| (number(x), number(y)))
                .collect()
        })
        .collect()
}

/// A pulse of 72 beats/min at 30 mV.
fn volts(rate_hz: f64, seconds: f64) -> Vec<f64> {
    let (mut x, _) = regular(72.0, &NOTCH, rate_hz, seconds);
    x.iter_mut().for_each(|v| *v *= 0.03);
    x
}

fn power_line(spectrum: &Spectrum, order: u32) -> Line {
    *spectrum.lines().iter().find(|l| l.source == Source::PowerLine && l.order == order).unwrap()
}

#[test]
fn the_strip_keeps_a_single_spike() {
    for at in [0, 12_345, 29_999, 59_999] {
        let mut values = vec![0.0; 60_000];
        values[at] = 1.0;
        let recording = Recording::of_values(1000.0, &values);
        let strip = Trace::of(&recording, 0.0, 60.0, Some((-2.0, 2.0)), false).unwrap();
        let text = svg(&Chart::Trace(strip), &Look::dark(), (700, 300));
        let trace = lines(&text, Look::dark().theme.ink).concat();
        let top = trace.iter().copied().min_by(|a, b| a.1.total_cmp(&b.1)).unwrap();
        // The plot lies 34 px lower than without a heading, and 1 V three quarters up in it.
        let frame = Frame::new(700.0, 300.0, 1.0);
        let height = frame.height - 34.0;
        assert!((top.1 - (frame.top + 34.0 + 0.25 * height)).abs() <= 1.0, "spike at sample {at}: {top:?}");
        let x = frame.left + frame.width * at as f64 / 60_000.0;
        assert!((top.0 - x).abs() <= 1.5, "spike at sample {at}: {top:?}, expected near {x}");
    }
}

#[test]
fn the_strip_has_seconds_and_volts_and_is_filled_by_the_trace() {
    let recording = Recording::of_values(1000.0, &volts(1000.0, 20.0));
    let strip = Trace::of(&recording, 5.0, 15.0, None, false).unwrap();
    let text = svg(&Chart::Trace(strip), &Look::dark(), (1000, 400));
    assert!(has(&text, "15 s") && has(&text, "6") && !has(&text, "4"), "{:?}", texts(&text));
    assert!(texts(&text).iter().any(|(t, _)| t.ends_with(" mV")), "{:?}", texts(&text));
    assert!(has(&text, "Titel") && has(&text, "Notiz"));
    let trace = lines(&text, Look::dark().theme.ink).concat();
    let (top, floor) = trace.iter().fold((f64::MAX, 0.0_f64), |(t, f), p| (t.min(p.1), f.max(p.1)));
    let plot = Frame::new(1000.0, 400.0, 1.0).height - 34.0;
    assert!(((floor - top) / plot - 0.9).abs() < 0.01, "{top} to {floor} of {plot}");

    // Another start on the axis, and no unit where it is not known.
    let strip = Trace::of(&recording, 0.0, 10.0, None, true).unwrap().starting_at(100.0);
    let text = svg(&Chart::Trace(strip), &Look::dark(), (1000, 400));
    assert!(has(&text, "110 s"), "{:?}", texts(&text));
    assert!(!text.contains("mV"), "{:?}", texts(&text));
}

#[test]
fn what_makes_no_strip_is_refused() {
    let empty = Recording::new(1000.0);
    assert!(matches!(Trace::of(&empty, 0.0, 10.0, None, false), Err(ChartError::NoSamples { .. })));
    let some = Recording::of_values(100.0, &[0.0; 100]);
    for (from, to) in [(5.0, 5.0), (2.0, 1.0), (f64::NAN, 1.0), (0.0, f64::INFINITY), (-1e308, 1e308)] {
        let found = Trace::of(&some, from, to, None, false);
        assert!(matches!(found, Err(ChartError::Backward { .. })), "{from} to {to}: {found:?}");
    }
    assert!(matches!(Trace::of(&some, 3.0, 4.0, None, false), Err(ChartError::NoSamples { .. })));
    // A flat line is a trace all the same, in the middle.
    let flat = Trace::of(&some, 0.0, 1.0, None, false).unwrap();
    assert_eq!(flat.values().0, -flat.values().1);
}

#[test]
fn the_mean_rate_is_intervals_over_time() {
    // Intervals of 750 and 850 ms in turn: 75 beats/min (HR = 60 n / dt, arithmetic).
    let mut beats = vec![0.5];
    for k in 0..40 {
        beats.push(beats[k] + if k % 2 == 0 { 0.75 } else { 0.85 });
    }
    let rate = Rate::of(&beats, 0.0, 33.0).unwrap();
    assert!((rate.mean_bpm() - 75.0).abs() < 1e-9, "{}", rate.mean_bpm());
    assert_eq!(rate.intervals().len(), 40);
    let text = svg(&Chart::Rate(rate), &Look::dark(), (900, 400));
    assert!(has(&text, "Mittel 75.0") && has(&text, "Schläge/min"), "{:?}", texts(&text));
    // Steps at 60/0.75 = 80 and 60/0.85 = 70.6 beats/min lie above and below the mean's dashes.
    let heights = |colour: RGBColor| -> Vec<f64> {
        let level = lines(&text, colour).into_iter().filter(|l| l.len() == 2 && l[0].1 == l[1].1);
        level.map(|l| l[0].1).collect()
    };
    let mean = heights(Look::dark().theme.accent).into_iter().fold(0.0, f64::max);
    let steps = heights(Look::dark().theme.ink);
    let above = steps.iter().filter(|y| **y < mean).count();
    assert_eq!((above, steps.len()), (20, 40), "mean at {mean}, steps {steps:?}");
}

#[test]
fn the_rate_of_a_recording_is_that_of_its_beats() {
    let starts = rhythm(66.0, 0.04, 40.0);
    let x = pulse(&starts, &vec![1.0; starts.len()], &NOTCH, 250.0, 40.0);
    let rate = Rate::of(&detect(&x, 250.0), 0.0, 40.0).unwrap();
    let inside: Vec<f64> = starts.into_iter().filter(|t| (0.0..39.0).contains(t)).collect();
    let truth = 60.0 * (inside.len() - 1) as f64 / (inside[inside.len() - 1] - inside[0]);
    assert!((rate.mean_bpm() - truth).abs() < 0.5, "{} for {truth}", rate.mean_bpm());
}

#[test]
fn an_early_beat_is_marked_and_counted() {
    let mut beats: Vec<f64> = (0..30).map(|k| 0.8 * f64::from(k)).collect();
    beats[15] -= 0.3;
    let rate = Rate::of(&beats, 0.0, 24.0).unwrap();
    let text = svg(&Chart::Rate(rate), &Look::light(), (900, 400));
    assert!(has(&text, "2 unregelmäßig"), "{:?}", texts(&text));
    // A stretch without it does not speak of it.
    let text = svg(&Chart::Rate(Rate::of(&beats, 0.0, 10.0).unwrap()), &Look::light(), (900, 400));
    assert!(!texts(&text).iter().any(|(t, _)| t.contains("unregelmäßig")));
}

#[test]
fn what_makes_no_rate_is_refused() {
    assert_eq!(Rate::of(&[], 0.0, 10.0), Err(ChartError::TooFewBeats { needed: 3, found: 0 }));
    assert_eq!(Rate::of(&[1.0, 2.0, 30.0], 0.0, 10.0), Err(ChartError::TooFewBeats { needed: 3, found: 2 }));
    assert_eq!(Rate::of(&[1.0, 2.0, 2.0, 3.0], 0.0, 10.0), Err(ChartError::NotRising { beat: 3 }));
    assert_eq!(Rate::of(&[1.0, f64::NAN, 2.0], 0.0, 10.0), Err(ChartError::NotRising { beat: 2 }));
    assert!(matches!(Rate::of(&[1.0, 2.0, 3.0], 3.0, 1.0), Err(ChartError::Backward { .. })));
}

#[test]
fn power_line_are_named_where_they_are_and_as_high_as_they_are() {
    let mut x = volts(1000.0, 30.0);
    add_noise(&mut x, 1e-5, 1);
    let clean = Spectrum::of(&x, 1000.0, Some(50.0), false).unwrap();
    assert!(!power_line(&clean, 1).stands_out, "{:?}", power_line(&clean, 1));
    add_sine(&mut x, 1000.0, 50.0, 0.02);
    add_sine(&mut x, 1000.0, 150.0, 0.002);
    let spectrum = Spectrum::of(&x, 1000.0, Some(50.0), false).unwrap();
    for (order, hz, pp) in [(1, 50.0, 0.02), (3, 150.0, 0.002)] {
        let line = power_line(&spectrum, order);
        assert!(line.stands_out && !line.is_folded() && line.seen_hz == hz, "{line:?}");
        // Between two bins a Hann window loses up to 1.42 dB, 15 % (Harris 1978, Proc. IEEE 66:51, Table I).
        assert!((0.84..1.02).contains(&(line.pp / pp)), "{line:?}");
    }
    let text = svg(&Chart::Spectrum(spectrum), &Look::dark(), (1000, 500));
    for name in ["Netz 50", "Netz 100", "Netz 150", "Höhe", "100 Hz", "1 mV"] {
        assert!(has(&text, name), "{name}: {:?}", texts(&text));
    }
    // What stands out is in amber, what is only named is not.
    let amber = |name: &str| texts(&text).iter().any(|(t, tag)| t == name && tag.contains("#EAA640"));
    assert!(amber("Netz 50") && !amber("Netz 100"), "{:?}", texts(&text));
}

#[test]
fn slow_sampling_folds_the_power_line() {
    // Alias |f - round(f / fs) fs| (arithmetic): 50 Hz at 49 Hz shows at 1 Hz, at 40 Hz at 10 Hz; 60 at 59 at 1.
    for (hz, rate_hz, seen) in
        [(50.0, 49.0, 1.0), (50.0, 40.0, 10.0), (60.0, 59.0, 1.0), (50.0, 1000.0, 50.0)]
    {
        assert_eq!(folded(hz, rate_hz), seen, "{hz} Hz at {rate_hz} Hz");
    }
    // The samples themselves agree: a real 50 Hz sine taken at 40 Hz stands at 10 Hz.
    let mut x = volts(40.0, 30.0);
    add_sine(&mut x, 40.0, 50.0, 0.02);
    let spectrum = Spectrum::of(&x, 40.0, Some(50.0), false).unwrap();
    let line = power_line(&spectrum, 1);
    assert!(line.stands_out && line.is_folded() && line.seen_hz == 10.0, "{line:?}");
    assert!((0.84..1.02).contains(&(line.pp / 0.02)), "{line:?}");
    assert!(spectrum.pp_at(10.0) > 20.0 * spectrum.pp_at(15.0));
    let text = svg(&Chart::Spectrum(spectrum), &Look::dark(), (1000, 500));
    assert!(has(&text, "Netz 50 bei 10"), "{:?}", texts(&text));

    // Folded among the pulse's lines, it is named, but cannot be told from them unless it is the highest.
    let mut x = volts(49.0, 30.0);
    let weak = Spectrum::of(&x, 49.0, Some(50.0), false).unwrap();
    assert!(
        power_line(&weak, 1).is_folded() && !power_line(&weak, 1).stands_out,
        "{:?}",
        power_line(&weak, 1)
    );
    add_sine(&mut x, 49.0, 100.0, 0.1);
    let strong = Spectrum::of(&x, 49.0, Some(50.0), false).unwrap();
    assert!(power_line(&strong, 2).stands_out, "{:?}", power_line(&strong, 2));
    let text = svg(&Chart::Spectrum(weak), &Look::dark(), (1000, 500));
    assert!(has(&text, "Netz 50 bei 1"), "{:?}", texts(&text));

    // What is folded to nothing is named at the edge.
    let x = volts(50.0, 30.0);
    let spectrum = Spectrum::of(&x, 50.0, Some(50.0), false).unwrap();
    let text = svg(&Chart::Spectrum(spectrum), &Look::dark(), (1000, 500));
    assert!(has(&text, "\u{2190} Netz 50 bei 0"), "{:?}", texts(&text));
}

#[test]
fn the_pulse_and_its_harmonics_are_named() {
    let spectrum = Spectrum::of(&volts(1000.0, 30.0), 1000.0, None, false).unwrap();
    let pulse: Vec<&Line> = spectrum.lines().iter().filter(|l| l.source == Source::Pulse).collect();
    // 72 beats/min are 1.2 Hz.
    assert!((pulse[0].true_hz - 1.2).abs() < 0.02, "{pulse:?}");
    for line in &pulse[..3] {
        let expected = 1.2 * f64::from(line.order);
        assert!(line.stands_out && (line.seen_hz - expected).abs() < 0.1, "{line:?}");
    }
    assert!(spectrum.lines().iter().all(|l| l.source == Source::Pulse), "power_line named though not known");
    let text = svg(&Chart::Spectrum(spectrum), &Look::dark(), (1000, 500));
    assert!(texts(&text).iter().any(|(t, _)| t.starts_with("Puls 1.2")), "{:?}", texts(&text));
    assert!(has(&text, "2-fach") && has(&text, "3-fach"), "{:?}", texts(&text));

    // Noise has no pulse.
    let mut noise = vec![0.0; 20_000];
    add_noise(&mut noise, 1.0, 5);
    let spectrum = Spectrum::of(&noise, 1000.0, Some(50.0), true).unwrap();
    assert!(
        spectrum.lines().iter().all(|l| l.source == Source::PowerLine && !l.stands_out),
        "{:?}",
        spectrum.lines()
    );
    let text = svg(&Chart::Spectrum(spectrum), &Look::dark(), (1000, 500));
    assert!(
        !texts(&text).iter().any(|(t, _)| t.starts_with("Puls") || t.ends_with('V')),
        "{:?}",
        texts(&text)
    );
}

#[test]
fn what_makes_no_spectrum_is_refused() {
    let of = |values: &[f64], rate_hz| Spectrum::of(values, rate_hz, Some(50.0), false);
    assert_eq!(of(&[], 1000.0), Err(ChartError::TooShort { needed_s: 4.0, found_s: 0.0 }));
    assert_eq!(of(&[1.0; 3999], 1000.0), Err(ChartError::TooShort { needed_s: 4.0, found_s: 3.999 }));
    assert_eq!(of(&[1.0; 8000], 1000.0), Err(ChartError::Flat));
    assert_eq!(of(&[f64::NAN; 8000], 1000.0), Err(ChartError::Flat));
    for rate_hz in [0.0, -1.0, 7.9, f64::NAN, f64::INFINITY] {
        assert!(matches!(of(&[1.0; 8000], rate_hz), Err(ChartError::RateTooLow { .. })), "{rate_hz}");
    }
    let huge: Vec<f64> = (0..8000).map(|k| if k % 2 == 0 { 1e300 } else { -1e300 }).collect();
    assert_eq!(of(&huge, 1000.0), Err(ChartError::NoNumbers));
}

#[test]
fn the_beat_has_its_landmarks() {
    let x = volts(500.0, 40.0);
    let beat = Beat::of(&x, 500.0, &detect(&x, 500.0), false).unwrap();
    let marks = beat.mean().landmarks;
    let ms = |t: f64| (1000.0 * t).round();
    let (notch, second) = (marks.notch_s.unwrap(), marks.second_s.unwrap());
    let text = svg(&Chart::Beat(beat.clone()), &Look::dark(), (900, 500));
    let expected = [
        "Fuß".to_string(),
        format!("Gipfel {}", ms(marks.peak_s)),
        format!("Kerbe {}", ms(notch)),
        format!("zweite Welle {}", ms(second)),
        format!("{} Schläge", beat.mean().beats),
    ];
    for name in expected {
        assert!(has(&text, &name), "{name}: {:?}", texts(&text));
    }
    // Four dots on the curve, each with its rim.
    assert_eq!(text.matches("<circle ").count(), 8);
}

#[test]
fn a_shoulder_is_no_second_bump() {
    // A second wave so low and wide that the falling limb only bends (from memory, no source).
    let shoulder = [[1.0, -1.65, 0.6], [0.25, 0.0, 0.9]];
    let (x, _) = regular(72.0, &shoulder, 500.0, 40.0);
    let beat = Beat::of(&x, 500.0, &detect(&x, 500.0), true).unwrap();
    assert!(beat.mean().landmarks.second_s.is_none());
    let text = svg(&Chart::Beat(beat), &Look::dark(), (900, 500));
    let named = |start: &str| texts(&text).iter().any(|(t, _)| t.starts_with(start));
    assert!(named("Schulter ") && !named("Kerbe") && !named("zweite"), "{:?}", texts(&text));
}

#[test]
fn the_band_is_as_wide_as_the_beats_differ() {
    let starts = rhythm(72.0, 0.0, 60.0);
    let spread = |heights: &[f64]| {
        let x = pulse(&starts, heights, &NOTCH, 500.0, 60.0);
        let beat = Beat::of(&x, 500.0, &detect(&x, 500.0), true).unwrap();
        let peak = (beat.mean().landmarks.peak_s * beat.mean().rate_hz).round() as usize;
        let inside = beat
            .band()
            .iter()
            .zip(&beat.mean().values)
            .filter(|(band, v)| band.is_some_and(|(low, high)| low - 0.01 <= **v && **v <= high + 0.01));
        let share = inside.count() as f64 / beat.mean().values.len() as f64;
        assert!(share > 0.9, "the mean lies in the band for {share} of its length");
        let (low, high) = beat.band()[peak].unwrap();
        high - low
    };
    let alike = spread(&vec![1.0; starts.len()]);
    assert!(alike < 0.01, "beats that are all alike: {alike}");
    // Heights from .8 to 1.2, evenly: eight tenths of them span .32.
    let heights: Vec<f64> = (0..starts.len()).map(|k| 0.8 + 0.4 * ((k * 7) % 11) as f64 / 10.0).collect();
    let differing = spread(&heights);
    assert!((differing - 0.32).abs() < 0.06, "{differing}");
}

#[test]
fn what_makes_no_beat_is_refused() {
    let x = volts(500.0, 10.0);
    assert_eq!(
        Beat::of(&x, 500.0, &[1.0, 2.0, 3.0], false),
        Err(ChartError::TooFewBeats { needed: 4, found: 3 })
    );
    assert_eq!(Beat::of(&[], 500.0, &[], false), Err(ChartError::TooFewBeats { needed: 4, found: 0 }));
    assert_eq!(Beat::of(&x, 500.0, &[1.0, 3.0, 2.0, 4.0], false), Err(ChartError::NotRising { beat: 3 }));
    assert_eq!(Beat::of(&x, 500.0, &[1.0, f64::NAN], false), Err(ChartError::NotRising { beat: 2 }));
    assert!(matches!(Beat::of(&x, 5.0, &[1.0], false), Err(ChartError::RateTooLow { .. })));
    // Beats that lie outside of the record have no mean.
    assert_eq!(Beat::of(&x, 500.0, &[50.0, 51.0, 52.0, 53.0], false), Err(ChartError::Unlike { found: 4 }));
}

/// The four charts of the same recording.
fn all(recording: &Recording) -> Vec<Chart<'_>> {
    let (x, rate_hz) = (recording.values(0, recording.len()), recording.rate_hz());
    let (beats, seconds) = (detect(&x, rate_hz), recording.duration_s());
    vec![
        Chart::Trace(Trace::of(recording, 0.0, seconds, None, false).unwrap()),
        Chart::Rate(Rate::of(&beats, 0.0, seconds).unwrap()),
        Chart::Spectrum(Spectrum::of(&x, rate_hz, Some(60.0), false).unwrap()),
        Chart::Beat(Beat::of(&x, rate_hz, &beats, false).unwrap()),
    ]
}

#[test]
fn png_files_have_their_size_and_colours() {
    let recording = Recording::of_values(250.0, &volts(250.0, 20.0));
    for look in [Look::dark(), Look::light()] {
        for chart in all(&recording) {
            let bytes = file::png(&chart, &look, (640, 360)).unwrap();
            let picture = tiny_skia::Pixmap::decode_png(&bytes).unwrap();
            assert_eq!((picture.width(), picture.height()), (640, 360));
            let count = |colour: RGBColor| {
                let same = |p: &&tiny_skia::PremultipliedColorU8| {
                    (p.red(), p.green(), p.blue()) == (colour.0, colour.1, colour.2)
                };
                picture.pixels().iter().filter(same).count()
            };
            let theme = &look.theme;
            let (sheet, ground, ink) = (count(look.sheet.unwrap()), count(theme.ground), count(theme.ink));
            assert!(sheet > 20_000 && ground > 40_000 && ink > 100, "{sheet}, {ground}, {ink}");
            assert!(picture.pixels().iter().all(|p| p.alpha() == 255), "a see-through pixel");
        }
    }
}

#[test]
fn letters_of_a_png_are_drawn() {
    let recording = Recording::of_values(250.0, &volts(250.0, 20.0));
    let strip = Chart::Trace(Trace::of(&recording, 0.0, 20.0, None, false).unwrap());
    let picture =
        tiny_skia::Pixmap::decode_png(&file::png(&strip, &Look::dark(), (640, 360)).unwrap()).unwrap();
    // The title's letters in the left half above the plot, the note's in the right one, and nothing between them.
    let sheet = Look::dark().sheet.unwrap();
    let drawn = |from: u32, to: u32| {
        let at = |x: u32, y: u32| picture.pixel(x, y).unwrap();
        let other = |x: u32, y: u32| (at(x, y).red(), at(x, y).green()) != (sheet.0, sheet.1);
        (from..to).flat_map(|x| (0..48).map(move |y| (x, y))).filter(|(x, y)| other(*x, *y)).count()
    };
    assert!(drawn(70, 160) > 100, "title: {} pixels", drawn(70, 160));
    assert!(drawn(560, 640) > 100, "note: {} pixels", drawn(560, 640));
    assert_eq!(drawn(200, 500), 0);
}

#[test]
fn svg_files_have_their_size_and_are_whole() {
    let recording = Recording::of_values(250.0, &volts(250.0, 20.0));
    for chart in all(&recording) {
        let text = file::svg(&chart, &Look::light(), (640, 360)).unwrap();
        assert!(text.starts_with("<svg width=\"640\" height=\"360\" "), "{}", &text[..120]);
        assert!(text.contains("viewBox=\"0 0 2560 1440\"") && text.trim_end().ends_with("</svg>"));
        // Notes are in serif italic, numbers upright.
        let tag = |words: &str| texts(&text).into_iter().find(|(t, _)| t == words).unwrap().1;
        assert!(tag("Titel").contains("italic") && tag("Titel").contains("serif"));
    }
}

#[test]
fn sheets_that_are_too_small_or_too_large_are_refused() {
    let recording = Recording::of_values(250.0, &volts(250.0, 20.0));
    for chart in all(&recording) {
        for size in [(1, 1), (100, 1000), (1000, 100)] {
            assert!(
                matches!(file::png(&chart, &Look::dark(), size), Err(ChartError::TooSmall { .. })),
                "{size:?}"
            );
            assert!(
                matches!(file::svg(&chart, &Look::dark(), size), Err(ChartError::TooSmall { .. })),
                "{size:?}"
            );
        }
        for size in [(8001, 400), (400, u32::MAX)] {
            assert!(
                matches!(file::png(&chart, &Look::dark(), size), Err(ChartError::TooLarge { .. })),
                "{size:?}"
            );
        }
        for dpr in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            let look = Look::dark().at(dpr);
            assert!(
                matches!(file::svg(&chart, &look, (640, 360)), Err(ChartError::TooSmall { .. })),
                "{dpr}"
            );
        }
    }
}

#[test]
fn odd_samples_give_a_chart_or_an_error() {
    let spiky: Vec<f64> = (0..5000).map(|k| if k % 613 == 0 { 1e30 } else { 0.0 }).collect();
    let mut holes = volts(250.0, 20.0);
    holes.iter_mut().step_by(7).for_each(|v| *v = f64::NAN);
    let samples = [
        vec![],
        vec![1.0],
        vec![f64::NAN; 3000],
        vec![f64::INFINITY; 3000],
        [f64::MAX, f64::MIN].repeat(1500),
        [f64::MIN_POSITIVE, 0.0].repeat(1500),
        spiky,
        holes,
    ];
    let mut drawn = 0;
    for x in samples {
        let recording = Recording::of_values(250.0, &x);
        let beats = detect(&x, 250.0);
        let charts = [
            Trace::of(&recording, 0.0, 20.0, None, false).map(Chart::Trace),
            Rate::of(&beats, 0.0, 20.0).map(Chart::Rate),
            Spectrum::of(&x, 250.0, Some(50.0), true).map(Chart::Spectrum),
            Beat::of(&x, 250.0, &beats, true).map(Chart::Beat),
        ];
        for chart in charts.into_iter().flatten() {
            assert!(svg(&chart, &Look::dark(), (640, 360)).contains("</svg>"));
            assert!(file::png(&chart, &Look::dark(), (640, 360)).is_ok());
            drawn += 1;
        }
    }
    // The last has all four; a trace there is of all that is numbers.
    assert!(drawn >= 8, "{drawn}");
}

#[test]
fn the_looks_differ_and_errors_tell_their_numbers() {
    let distance = |a: RGBColor, b: RGBColor| a.0.abs_diff(b.0) as u32 + a.1.abs_diff(b.1) as u32;
    for Theme { ground, ink, accent, axis, .. } in [Look::dark().theme, Look::light().theme] {
        for colour in [ink, accent, axis] {
            assert!(distance(ground, colour) > 150, "{colour:?} on {ground:?}");
        }
    }
    assert!(distance(Look::dark().theme.ground, Look::light().theme.ground) > 400);
    let error = ChartError::TooShort { needed_s: 4.0, found_s: 1.5 };
    assert_eq!(error.to_string(), "expected at least 4 s of samples, found 1.5 s");
    let told = serde_json::to_value(&error).unwrap();
    assert_eq!(told["code"], "too_short");
    assert_eq!(told["args"]["needed_s"], 4.0);
}
