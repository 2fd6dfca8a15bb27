//! How many results of ten minutes a core grades in a minute: 1,000 of them are written to a folder and graded by the
//! program itself, as an instructor does it.

#[path = "../students/mod.rs"]
mod students;

use std::process::Command;
use std::time::Instant;

use dicrotic::exchange::handin::result;
use dicrotic::session::compact::About;

const RESULTS: usize = 1000;
/// So many different attempts are made; each is handed in by several students.
const DIFFERENT: usize = 20;

fn main() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("grade");
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).expect("a folder for the results");
    let mut bytes = 0;
    for k in 0..DIFFERENT {
        let session = students::diligent(k as u64 + 1);
        for n in (k..RESULTS).step_by(DIFFERENT) {
            let about = About { student: format!("student {n}"), tries: 1, ..About::default() };
            let text = result::write(&session, &about).expect("a result");
            bytes += text.len();
            std::fs::write(folder.join(format!("{n:04}{}", result::EXTENSION)), text).expect("written");
        }
    }
    println!("{RESULTS} results of 600 s and {} kB each", bytes / RESULTS / 1000);
    let out = folder.with_extension("csv");
    for threads in ["1", "0"] {
        let began = Instant::now();
        let status = Command::new(env!("CARGO_BIN_EXE_dicrotic"))
            .args(["grade".as_ref(), folder.as_os_str(), "--out".as_ref(), out.as_os_str()])
            .env("RAYON_NUM_THREADS", threads)
            .status()
            .expect("the program runs");
        let took = began.elapsed().as_secs_f64();
        let rows = std::fs::read_to_string(&out)
            .expect("a table")
            .lines()
            .skip(1)
            .filter(|l| l.contains(",yes,"))
            .count();
        assert!(status.success() && rows == RESULTS, "{rows} rows verified");
        let cores = if threads == "1" {
            "one core".into()
        } else {
            format!("all {} cores", std::thread::available_parallelism().map_or(1, usize::from))
        };
        println!(
            "grading {RESULTS} results of ten minutes, {cores}\t{took:.1} s, {:.0} a minute",
            60.0 * RESULTS as f64 / took
        );
    }
}
