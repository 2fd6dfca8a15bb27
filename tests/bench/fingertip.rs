//! One's own pulse with people left out in turn: `cargo bench --bench fingertip -- FOLDER`, where FOLDER holds
//! `subjectN_left.csv` and `subjectN_right.csv` (`t_s,red,green,blue`) and `subjectN_rate.csv` (`t_s,bpm`, pulse meters on
//! other fingers; Hoffman et al. 2022, npj Digital Medicine, s41746-022-00665-y).
//!
//! For each person the bounds are chosen anew on all others, from those of the house and from ones looser and tighter
//! together and one by one: the most windows of ten seconds told of which at most 1 % are off by more than 5/min, on the
//! recordings as they are and with noise as large as the pulse. Then the person who was left out is scored within them.
//! Prints and asserts nothing.

use std::path::{Path, PathBuf};
use std::{env, fs};

use dicrotic::exchange::csv::colors;
use dicrotic::fingertip::reading::windows_with;
use dicrotic::fingertip::{Bounds, Reading, Series};
use dicrotic::rng::Stream;

/// Length of a window, in seconds.
const WINDOW_S: f64 = 10.0;
/// Off by more than this counts as far, in beats a minute.
const FAR_BPM: f64 = 5.0;
/// Delays of the meters that are tried, in seconds.
const DELAYS_S: std::ops::RangeInclusive<i32> = -15..=15;

/// One hand, as it is and with noise, and what meters said meanwhile.
struct Hand {
    subject: String,
    name: String,
    made: [Series; 2],
    meter: Vec<(f64, f64)>,
    delay_s: f64,
}

/// What windows came to.
#[derive(Clone, Copy, Default)]
struct Sum {
    windows: usize,
    told: usize,
    far: usize,
    off_bpm: f64,
}

impl Sum {
    fn plus(self, other: Self) -> Self {
        Self {
            windows: self.windows + other.windows,
            told: self.told + other.told,
            far: self.far + other.far,
            off_bpm: self.off_bpm + other.off_bpm,
        }
    }

    fn told_share(self) -> f64 {
        self.told as f64 / self.windows.max(1) as f64
    }

    fn far_share(self) -> f64 {
        self.far as f64 / self.told.max(1) as f64
    }
}

fn main() {
    // Cargo adds `--bench` of its own.
    let Some(folder) = env::args().skip(1).find(|a| !a.starts_with("--")) else {
        println!("fingertip: name a folder of recordings");
        return;
    };
    let hands = hands(Path::new(&folder));
    if hands.is_empty() {
        println!("fingertip: no recordings at {folder}: nothing was scored");
        std::process::exit(2);
    }
    let tried = tried();
    let within = |hand: &Hand, bounds: &Bounds| {
        hand.made.each_ref().map(|s| score(&windows_with(s, WINDOW_S, bounds), &hand.meter, hand.delay_s))
    };
    let scores: Vec<Vec<[Sum; 2]>> =
        hands.iter().map(|hand| tried.iter().map(|b| within(hand, b)).collect()).collect();
    println!(
        "{:18}{:>16}{:>9}{:>10}{:>8}   {:>9}{:>10}{:>8}   bounds chosen without this person",
        "left out", "", "told %", "mean off", "off>5 %", "told %", "mean off", "off>5 %"
    );
    let mut subjects: Vec<&str> = hands.iter().map(|h| h.subject.as_str()).collect();
    subjects.dedup();
    let mut all = [Sum::default(); 2];
    for subject in subjects {
        let others = |k: usize| {
            let of = hands.iter().zip(&scores).filter(|(hand, _)| hand.subject != subject);
            of.map(|(_, s)| s[k][0].plus(s[k][1])).fold(Sum::default(), Sum::plus)
        };
        let chosen = (0..tried.len())
            .filter(|k| others(*k).far_share() <= 0.01)
            .max_by(|a, b| others(*a).told.cmp(&others(*b).told).then(b.cmp(a)))
            .unwrap_or(0);
        for (hand, scores) in hands.iter().zip(&scores).filter(|(hand, _)| hand.subject == subject) {
            row(&hand.name, scores[chosen], &format!("{:?}", tried[chosen]));
            all = [all[0].plus(scores[chosen][0]), all[1].plus(scores[chosen][1])];
        }
    }
    row("all left out", all, "as they are; with noise as large as the pulse");
    let house =
        scores.iter().fold([Sum::default(); 2], |sum, s| [sum[0].plus(s[0][0]), sum[1].plus(s[0][1])]);
    row("the house's bounds", house, "");
}

fn row(name: &str, [plain, noisy]: [Sum; 2], more: &str) {
    let part = |s: Sum| {
        let mean = s.off_bpm / s.told.max(1) as f64;
        format!("{:9.1}{mean:10.2}{:8.2}", 100.0 * s.told_share(), 100.0 * s.far_share())
    };
    println!(
        "{name:18}{:>16}{}   {}   {more}",
        format!("{} windows", plain.windows),
        part(plain),
        part(noisy)
    );
}

/// The house's bounds first, then others.
fn tried() -> Vec<Bounds> {
    let house = Bounds::default();
    let mut all = vec![house];
    for scale in [0.6, 0.8, 1.2, 1.5] {
        let looser = |v: f64| v * scale;
        all.push(Bounds { repeat: looser(house.repeat), ..house });
        all.push(Bounds { likeness: looser(house.likeness), noise: looser(house.noise), ..house });
        all.push(Bounds { variation: house.variation / scale, ..house });
        all.push(Bounds { agreement: house.agreement / scale, ..house });
        all.push(Bounds { steepness: looser(house.steepness), ..house });
        all.push(Bounds { unequal: looser(house.unequal), ..house });
        all.push(Bounds { alike: 1.0 - (1.0 - house.alike) / scale, ..house });
        all.push(Bounds {
            repeat: looser(house.repeat),
            likeness: looser(house.likeness),
            noise: looser(house.noise),
            variation: house.variation / scale,
            ..house
        });
    }
    all
}

fn hands(folder: &Path) -> Vec<Hand> {
    let Ok(entries) = fs::read_dir(folder) else { return Vec::new() };
    let mut files: Vec<PathBuf> = entries.filter_map(|e| e.ok().map(|e| e.path())).collect();
    files.sort();
    files.iter().filter_map(|path| hand(path)).collect()
}

fn hand(path: &Path) -> Option<Hand> {
    let name = path.file_stem()?.to_str()?.to_string();
    let subject = name.strip_suffix("_left").or(name.strip_suffix("_right"))?.to_string();
    let series = colors::read(&name, &fs::read_to_string(path).ok()?).expect("a table of colors");
    let rates = fs::read_to_string(path.with_file_name(format!("{subject}_rate.csv"))).ok()?;
    let meter: Vec<(f64, f64)> = rates
        .lines()
        .filter_map(|line| {
            let mut cells = line.split(',').map(|c| c.trim().parse::<f64>().ok());
            Some((cells.next()??, cells.next()??))
        })
        .collect();
    // Camera and meters were started by hand, and meters average: one delay a recording, the one with the least error.
    let read = windows_with(&series, WINDOW_S, &Bounds::default());
    let off = |delay: i32| score(&read, &meter, f64::from(delay)).off_bpm;
    let delay_s = DELAYS_S.min_by(|a, b| off(*a).total_cmp(&off(*b))).map_or(0.0, f64::from);
    let noisy = noisy(&series, &name);
    Some(Hand { subject, name, made: [series, noisy], meter, delay_s })
}

/// The same with white noise in each color, as large as its pulse: the standard deviation of frames about the mean of
/// their second.
fn noisy(series: &Series, name: &str) -> Series {
    let (frames, mut random) = (series.frames(), Stream::new(1, name));
    let mut sizes = [0.0; 3];
    for second in frames.chunks(30) {
        for (k, size) in sizes.iter_mut().enumerate() {
            let mean = second.iter().map(|f| f.colors[k]).sum::<f64>() / second.len() as f64;
            let spread = second.iter().map(|f| (f.colors[k] - mean) * (f.colors[k] - mean)).sum::<f64>();
            *size += spread.sqrt() / (second.len() as f64).sqrt() * second.len() as f64 / frames.len() as f64;
        }
    }
    let mut made = Series::default();
    for frame in frames {
        let mut colors = frame.colors;
        colors
            .iter_mut()
            .zip(sizes)
            .for_each(|(c, size)| *c = (*c + size * random.normal()).clamp(0.0, 255.0));
        made.push(frame.t_s, colors);
    }
    made
}

/// Windows against the meter's mean over each, a delay later.
fn score(read: &[Reading], meter: &[(f64, f64)], delay_s: f64) -> Sum {
    let mut sum = Sum { windows: read.len(), ..Sum::default() };
    for window in read {
        let Ok(bpm) = window.rate else { continue };
        sum.told += 1;
        let inside = |t: f64| (window.from_s + delay_s..window.to_s + delay_s).contains(&t);
        let told: Vec<f64> = meter.iter().filter(|(t, _)| inside(*t)).map(|(_, bpm)| *bpm).collect();
        // Where the meter says nothing, nothing is known.
        if !told.is_empty() {
            let off = (bpm - told.iter().sum::<f64>() / told.len() as f64).abs();
            sum.off_bpm += off;
            sum.far += usize::from(off > FAR_BPM);
        }
    }
    sum
}
