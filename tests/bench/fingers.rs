//! Folders of simulated fingers, to be compared with recordings of people: `cargo bench --bench fingers -- FOLDER`
//! writes `FOLDER/ceramic`, `FOLDER/film` and `FOLDER/optical`, each with 50 adults of every age (one population, one
//! subject a file, 70 s at 200 Hz, `t_s,value`), at a clean bench that nobody touches. `SEED` as a second argument
//! begins with another seed.

use std::fmt::Write;
use std::path::Path;
use std::{env, fs};

use dicrotic::bench::Bench;
use dicrotic::chain::{Chain, Config, Trouble};
use dicrotic::physiology::{People, SubjectSpec};
use dicrotic::pickup::field::PowerLine;
use dicrotic::pickup::sensor::{Kind, Sensor};
use dicrotic::recorder::Settings;
use dicrotic::recorder::converter::code_v;

const SUBJECTS: u64 = 50;
const RATE_HZ: u32 = 200;
const SECONDS: usize = 70;

fn main() {
    // Cargo adds `--bench` of its own.
    let asked: Vec<String> = env::args().skip(1).filter(|a| !a.starts_with("--")).collect();
    let Some(folder) = asked.first() else {
        // A run of all benches names none.
        println!("fingers: name a folder to write to");
        return;
    };
    let first: u64 = asked.get(1).map_or(1, |s| s.parse().expect("a seed is a whole number"));
    for (sensor, (name, kind)) in
        (0..).zip([("ceramic", Kind::Ceramic), ("film", Kind::Film), ("optical", Kind::Optical)])
    {
        let folder = Path::new(folder).join(name);
        fs::create_dir_all(&folder).expect("the folder can be made");
        for k in 0..SUBJECTS {
            let config = Config {
                // The optical sensor's amplifier gives ten times as much.
                recorder: Settings {
                    range_v: if kind == Kind::Optical { 5.0 } else { 0.5 },
                    rate_hz: RATE_HZ,
                    ..Settings::default()
                },
                subject: SubjectSpec { people: People::Everyone, ..SubjectSpec::default() },
                power_line: PowerLine::default(),
                sensor: Sensor { kind, ..Sensor::default() },
                trouble: Trouble::default(),
                finds_recorder: true,
                bench: Bench::wired(),
            };
            let mut chain = Chain::new(config, first + 1000 * sensor + k).expect("the settings can be had");
            let mut codes = Vec::new();
            chain.fill(SECONDS * RATE_HZ as usize, &mut codes);
            let step_v = code_v(chain.settings().range_v);
            let mut text = String::from("t_s,value\n");
            for (n, code) in codes.iter().enumerate() {
                let t_s = n as f64 / f64::from(RATE_HZ);
                writeln!(text, "{t_s:.3},{:.7}", f64::from(*code) * step_v).expect("text grows");
            }
            fs::write(folder.join(format!("{k:02}.csv")), text).expect("the file can be written");
        }
    }
}
