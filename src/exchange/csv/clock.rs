//! Time stamps: what unit they are in, and clock times and dates as seconds.

/// The unit of a column of plain numbers that tell the time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum TimeUnit {
    /// Seconds.
    Seconds,
    /// Milliseconds.
    Milliseconds,
    /// Microseconds.
    Microseconds,
    /// Minutes.
    Minutes,
    /// Hours.
    Hours,
}

impl TimeUnit {
    /// Seconds of a time in this unit. Small units divide, so that 1 ms is exactly `1 / 1000`.
    pub fn seconds(self, time: f64) -> f64 {
        match self {
            Self::Seconds => time,
            Self::Milliseconds => time / 1e3,
            Self::Microseconds => time / 1e6,
            Self::Minutes => time * 60.0,
            Self::Hours => time * 3600.0,
        }
    }

    /// Told from the median step between stamps. Rates are 10 Hz to 10 kHz, so a step is .0001 to .1 s, .1 to 100 ms
    /// or 100 to 100 000 us: the three do not overlap, and no other knowledge is needed.
    pub fn from_step(step: f64) -> Self {
        if step <= 0.1 {
            Self::Seconds
        } else if step <= 100.0 {
            Self::Milliseconds
        } else {
            Self::Microseconds
        }
    }

    /// Told from a column's name, as in `t_ms`, `time (s)`, `Time[us]`.
    pub fn from_title(title: &str) -> Option<Self> {
        words(title).find_map(|w| match w {
            "s" | "sec" | "secs" | "second" | "seconds" => Some(Self::Seconds),
            "ms" | "msec" | "millis" | "milliseconds" => Some(Self::Milliseconds),
            "us" | "µs" | "μs" | "micros" | "microseconds" => Some(Self::Microseconds),
            "min" | "mins" | "minute" | "minutes" => Some(Self::Minutes),
            "h" | "hr" | "hrs" | "hour" | "hours" => Some(Self::Hours),
            _ => None,
        })
    }
}

/// Lower-cased words of a title cannot be borrowed, so titles come in lower case already.
fn words(title: &str) -> impl Iterator<Item = &str> {
    title.split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty())
}

/// Whether a (lower-case) title is that of a time column.
pub(super) fn is_time_title(title: &str) -> bool {
    let known = |w| {
        matches!(
            w,
            "time" | "t" | "timer" | "timestamp" | "timestamps" | "datetime" | "clock" | "elapsed" | "date"
        )
    };
    words(title).next().is_some_and(known)
        // `min` alone may be a minimum, and `h` anything.
        || (TimeUnit::from_title(title).is_some_and(|unit| !matches!(unit, TimeUnit::Minutes | TimeUnit::Hours))
            && words(title).count() == 1)
        || words(title).last().is_some_and(|w| matches!(w, "time" | "timestamp"))
}

/// Whether a (lower-case) title is that of a running number, which is neither time nor a value.
pub(super) fn is_index_title(title: &str) -> bool {
    matches!(
        words(title).collect::<Vec<_>>()[..],
        ["index" | "sample" | "samples" | "frame" | "row" | "no" | "nr"]
    )
}

/// Seconds told by `hh:mm:ss[.fff]` or `yyyy-mm-dd[T ]hh:mm:ss[.fff]` with an optional `Z` or `+hh:mm`, which is
/// left out of account as all stamps of a file are taken to be in one zone. With a date, seconds since 1970-01-01.
pub(super) fn clock_seconds(text: &str) -> Option<f64> {
    let (day, clock) = match text.split_once(['T', ' ']) {
        Some((date, clock)) => (days_since_1970(date)?, clock.trim()),
        None => (0, text),
    };
    let clock = clock.trim_end_matches(['Z', 'z']);
    let clock = clock.split_once('+').map_or(clock, |(c, _)| c);
    // A minus can only be that of the zone.
    let clock = clock.split_once('-').map_or(clock, |(c, _)| c);
    let mut part = clock.split(':');
    let (h, m, s) = (part.next()?, part.next()?, part.next()?);
    if part.next().is_some() || !(1..=2).contains(&h.len()) || m.len() != 2 {
        return None;
    }
    let whole = |text: &str, below: u32| text.parse::<u32>().ok().filter(|v| *v < below);
    let seconds =
        super::cells::number(s, true).filter(|v| (0.0..61.0).contains(v) && !s.starts_with(['-', '+']))?;
    let minutes = day * 1440 + i64::from(whole(h, 24)?) * 60 + i64::from(whole(m, 60)?);
    Some(minutes as f64 * 60.0 + seconds)
}

/// Days from 1970-01-01 to `yyyy-mm-dd` (or with slashes) in the Gregorian calendar.
fn days_since_1970(date: &str) -> Option<i64> {
    let mut part = date.split(['-', '/']).map(|p| p.parse::<i64>().ok());
    let (y, m, d) = (part.next()??, part.next()??, part.next()??);
    if part.next().is_some() || !(1..=9999).contains(&y) || !(1..=12).contains(&m) || !(1..=31).contains(&d) {
        return None;
    }
    // Count years from March, so that the leap day is a year's last; 153 days are each five months from March.
    let (year, month) = if m > 2 { (y, m - 3) } else { (y - 1, m + 9) };
    let to_month = (153 * month + 2) / 5;
    Some(year * 365 + year / 4 - year / 100 + year / 400 + to_month + d - 1 - 719_468)
}
