//! The catalogue of faults: every one shows in its figure, stays under a vain remedy, goes under the right one.

use dicrotic::scenario::fault::{self, Fault};
use dicrotic::session::script::play;
use dicrotic::session::symptom::measure;
use dicrotic::session::{Session, symptom};
use serde_json::{Value, json};

/// A calm bench of known size; the fault's name follows.
fn bench(faults: &str) -> String {
    format!(
        "id = \"walk\"\nlevel = 1\ntitle = \"t\"\naim = \"a\"\nbrief = \"b\"\n\
         [subject]\nage_years = 24\nrest_rate_bpm = 68\npulse_mv = 40\nrestlessness = 0\nfinger_temp_c = 33\n\
         systolic_mmhg = 120\ndiastolic_mmhg = 78\npremature_per_min = 0\nsdnn_ms = 35\n\
         [recorder]\nrange_v = 0.05\n{faults}"
    )
}

fn with(fault: &Fault, severity: f64) -> String {
    bench(&format!("[[fault]]\nname = \"{}\"\nseverity = {severity}\n", fault.id))
}

fn steps(list: &[&str]) -> Vec<Value> {
    list.iter().map(|s| serde_json::from_str(s).unwrap()).collect()
}

fn wait(session: &mut Session, seconds: f64) {
    play(session, &[json!({"wait": seconds})]).unwrap();
}

const SEEDS: [u64; 2] = [3, 4];

#[test]
fn there_are_at_least_forty_faults_and_their_names_resolve() {
    let ids: Vec<&str> = fault::all().map(|f| f.id).collect();
    assert!(ids.len() >= 40, "{}", ids.len());
    let mut unique = ids.clone();
    unique.sort_unstable();
    unique.dedup();
    assert_eq!(unique.len(), ids.len());
    for fault in fault::all() {
        for other in fault.confused_with {
            assert!(ids.contains(other) && *other != fault.id, "{}: {other}", fault.id);
        }
        assert!(
            !fault.tests.is_empty() && !fault.remedy.is_empty() && !fault.vain.is_empty(),
            "{}",
            fault.id
        );
        let (low, high) = fault.severity;
        assert!((0.0..=1.0).contains(&low) && (low..=1.0).contains(&high), "{}", fault.id);
    }
}

#[test]
fn every_fault_shows_stays_under_a_vain_remedy_and_goes_under_the_right_one() {
    let mut wrong = Vec::new();
    for fault in fault::all() {
        for seed in SEEDS {
            for severity in [fault.severity.0, fault.severity.1] {
                let text = with(fault, severity);
                let mut session = Session::new(&text, seed).unwrap_or_else(|e| panic!("{}: {e}", fault.id));
                wait(&mut session, 20.0);
                let shown = measure(&session, fault.symptom);
                play(&mut session, &steps(fault.vain)).unwrap_or_else(|e| panic!("{} vain: {e}", fault.id));
                wait(&mut session, 20.0);
                let stays = measure(&session, fault.symptom);
                let mut mended = Session::new(&text, seed).unwrap();
                wait(&mut mended, 5.0);
                play(&mut mended, &steps(fault.remedy))
                    .unwrap_or_else(|e| panic!("{} remedy: {e}", fault.id));
                wait(&mut mended, 40.0);
                let gone = measure(&mended, fault.symptom);
                let good = shown > 1.0 && stays > 1.0 && (gone < 1.0) == fault.curable;
                if !good {
                    wrong.push(format!(
                        "{} (severity {severity}, seed {seed}): shown {shown:.2}, after a vain remedy {stays:.2}, after the right one {gone:.2}",
                        fault.id
                    ));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

#[test]
fn a_bench_without_faults_shows_none() {
    let mut wrong = Vec::new();
    for seed in SEEDS {
        let mut session = Session::new(&bench(""), seed).unwrap();
        wait(&mut session, 20.0);
        play(&mut session, &[json!({"do": "record"}), json!({"wait": 20}), json!({"do": "stop"})]).unwrap();
        for fault in fault::all() {
            let figure = measure(&session, fault.symptom);
            if figure >= 1.0 {
                wrong.push(format!("{} (seed {seed}): {figure:.2}", fault.id));
            }
            assert!(!symptom::cause_remains(&session, fault) || figure >= 1.0, "{}", fault.id);
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}
