//! Which of several channels is the finger pulse, by its name.

/// Parts of names of a pulse wave, as they stand in files, in small letters. The surer ones come first (common practice:
/// `PLETH` is what bedside monitors call it, `PPG` what wearables do).
const PULSE: [&str; 7] = ["pleth", "ppg", "finger", "pulse", "bvp", "puls", "spo2"];
/// Parts of names that look like a pulse wave's and are of something worked out from one.
const NOT: [&str; 4] = ["rate", "bpm", "transit", "freq"];

/// The number, from 0, of the channel that is the pulse by its name; `None` where no name says so.
pub fn pulse_of<'a>(names: impl Iterator<Item = &'a str> + Clone) -> Option<usize> {
    let is = |name: &str, part: &str| {
        let name = name.to_lowercase();
        name.contains(part) && !NOT.iter().any(|other| name.contains(other))
    };
    PULSE.iter().find_map(|part| names.clone().position(|name| is(name, part)))
}

#[cfg(test)]
mod tests {
    use super::pulse_of;

    #[test]
    fn the_pulse_is_known_by_its_name() {
        for (names, found) in [
            (&["II", "V", "PLETH", "RESP"][..], Some(2)),
            (&["ECG", "Finger pulse"], Some(1)),
            (&["Pulse rate", "PPG_IR"], Some(1)),
            (&["pulse", "pleth"], Some(1)),
            (&["SpO2 BPM", "II"], None),
            (&["a", "b"], None),
        ] {
            assert_eq!(pulse_of(names.iter().copied()), found, "{names:?}");
        }
    }
}
