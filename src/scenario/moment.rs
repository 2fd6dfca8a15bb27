//! A day or a moment as it stands in a course: `2026-09-08`, `2026-09-08T18:00`, with `Z` or `+02:00` behind it (RFC 3339). Without
//! that it is universal time.

/// The last second that is written with four digits of a year.
const LAST_S: u64 = 253_402_300_799;

/// Seconds since 1970; a day alone stands for its end where `end` says so. `None` for what is no such moment up to the year 9999.
pub fn seconds(text: &str, end: bool) -> Option<u64> {
    any_seconds(text, end).filter(|s| *s <= LAST_S)
}

fn any_seconds(text: &str, end: bool) -> Option<u64> {
    let (day, time) = match text.split_once(['T', ' ']) {
        Some((day, time)) => (day, Some(time)),
        None => (text, None),
    };
    let days = days_since_1970(day)?;
    let Some(time) = time else {
        return u64::try_from(86_400 * (days + i64::from(end))).ok();
    };
    let (clock, offset_s) = offset(time)?;
    let parts = numbers(clock, ':')?;
    let (hour, minute, second) = match parts[..] {
        [hour, minute] => (hour, minute, 0),
        [hour, minute, second] => (hour, minute, second),
        _ => return None,
    };
    if hour > 23 || minute > 59 || second > 59 {
        return None;
    }
    u64::try_from(86_400 * days + 3600 * hour + 60 * minute + second - offset_s).ok()
}

/// A time of day without the offset behind it, and that offset, s.
fn offset(time: &str) -> Option<(&str, i64)> {
    if let Some(clock) = time.strip_suffix(['Z', 'z']) {
        return Some((clock, 0));
    }
    let Some(at) = time.find(['+', '-']) else { return Some((time, 0)) };
    let (clock, offset) = time.split_at(at);
    let (sign, parts) = (if offset.starts_with('-') { -1 } else { 1 }, numbers(&offset[1..], ':')?);
    match parts[..] {
        [hours @ 0..=23, minutes @ 0..=59] => Some((clock, sign * (3600 * hours + 60 * minutes))),
        _ => None,
    }
}

/// Numbers of two digits, or a year of four.
fn numbers(text: &str, between: char) -> Option<Vec<i64>> {
    let number = |part: &str| {
        let digits = [2, 4].contains(&part.len()) && part.bytes().all(|b| b.is_ascii_digit());
        digits.then(|| part.parse().ok())?
    };
    text.split(between).map(number).collect()
}

/// Days from 1970 to a day of the Gregorian calendar, counted in eras of 400 years.
fn days_since_1970(day: &str) -> Option<i64> {
    let [year, month, day] = numbers(day, '-')?[..] else { return None };
    let leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    let longest = match month {
        2 => 28 + i64::from(leap),
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => return None,
    };
    if !(1970..=9999).contains(&year) || !(1..=longest).contains(&day) {
        return None;
    }
    // Years that begin in March end with the leap day.
    let (year, month) = if month > 2 { (year, month - 3) } else { (year - 1, month + 9) };
    let (era, of_era) = (year / 400, year % 400);
    let day_of_year = (153 * month + 2) / 5 + day - 1;
    Some(era * 146_097 + of_era * 365 + of_era / 4 - of_era / 100 + day_of_year - 719_468)
}

/// A moment as `2026-09-01T08:30:00Z`; nothing after the year 9999.
pub fn told(since_1970_s: u64) -> String {
    if since_1970_s > LAST_S {
        return String::new();
    }
    let (days, s) = (since_1970_s / 86_400, since_1970_s % 86_400);
    // Years that begin in March end with the leap day.
    let shifted = days + 719_468;
    let (era, day_of_era) = (shifted / 146_097, shifted % 146_097);
    let year_of_era = (day_of_era - day_of_era / 1460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let from_march = (5 * day_of_year + 2) / 153;
    let day = day_of_year - (153 * from_march + 2) / 5 + 1;
    let month = if from_march < 10 { from_march + 3 } else { from_march - 9 };
    let year = era * 400 + year_of_era + u64::from(month <= 2);
    format!("{year:04}-{month:02}-{day:02}T{:02}:{:02}:{:02}Z", s / 3600, s / 60 % 60, s % 60)
}
