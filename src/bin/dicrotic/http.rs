//! As much of HTTP/1.1 as serving files to the person's own browser takes (RFC 9112): requests without a body, kept
//! connections, a thread for each connection. Browsers open connections ahead of need and leave them silent, so no
//! connection may ever wait for another one.

use std::io::{self, ErrorKind, Read, Write};
use std::net::{Shutdown, TcpListener, TcpStream};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

use crate::terminal;

/// The longest request line and headers together, in bytes.
const LONGEST_HEAD: usize = 16 * 1024;
/// How long a connection may take to send a request's head, or stay silent before the next one.
const PATIENCE: Duration = Duration::from_secs(60);
/// How long to wait where no connection can be taken.
const PAUSE: Duration = Duration::from_millis(50);
/// Connections beyond this are closed at once: a browser opens six.
const MOST_CONNECTIONS: usize = 200;

/// What came before a request's body.
#[derive(Debug, Default, PartialEq)]
pub struct Head {
    /// The method, as sent.
    pub method: String,
    /// The request target, as sent.
    pub target: String,
    is_http_1_0: bool,
    headers: Vec<(String, String)>,
}

impl Head {
    /// All values of a header, whose name is compared without regard to case.
    pub fn values<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a str> {
        self.headers
            .iter()
            .filter(move |(field, _)| field.eq_ignore_ascii_case(name))
            .map(|(_, value)| &**value)
    }

    /// The values of a list header as one list.
    pub fn list(&self, name: &str) -> String {
        self.values(name).collect::<Vec<_>>().join(", ")
    }

    fn has_body(&self) -> bool {
        self.values("Transfer-Encoding").next().is_some() || self.values("Content-Length").any(|n| n != "0")
    }

    fn ends_connection(&self) -> bool {
        let close = self.list("Connection").split(',').any(|word| word.trim().eq_ignore_ascii_case("close"));
        close || self.is_http_1_0 || self.has_body()
    }
}

/// An answer before it is put on the wire.
#[derive(Debug, PartialEq)]
pub struct Answer {
    /// The status code.
    pub status: u16,
    /// All headers but `Date`, `Content-Length` and `Connection`.
    pub headers: Vec<(&'static str, String)>,
    /// The body; `HEAD` gets only its length.
    pub body: Vec<u8>,
}

/// Reads a head from the start of `bytes`: `None` if it is not complete, else the head and its length; the status
/// code of the refusal if it breaks the rules.
fn parse(bytes: &[u8]) -> Result<Option<(Head, usize)>, u16> {
    let Some(end) = bytes.windows(4).position(|four| four == b"\r\n\r\n") else {
        return if bytes.len() > LONGEST_HEAD { Err(431) } else { Ok(None) };
    };
    if end > LONGEST_HEAD {
        return Err(431);
    }
    // Header values may hold any byte above the control characters; what is not ASCII is compared with nothing here.
    let text = String::from_utf8_lossy(&bytes[..end]);
    if text.contains(|c: char| c.is_ascii_control() && !"\r\n\t".contains(c)) {
        return Err(400);
    }
    let mut lines = text.split("\r\n");
    let mut words = lines.next().unwrap_or("").split(' ');
    let (Some(method), Some(target), Some(version), None) =
        (words.next(), words.next(), words.next(), words.next())
    else {
        return Err(400);
    };
    let is_http_1_0 = match version {
        "HTTP/1.1" => false,
        "HTTP/1.0" => true,
        _ => return Err(505),
    };
    let token = |text: &str| {
        !text.is_empty() && text.bytes().all(|b| b.is_ascii_alphanumeric() || b"!#$%&'*+-.^_`|~".contains(&b))
    };
    if !token(method) || target.is_empty() {
        return Err(400);
    }
    let mut headers = Vec::new();
    for line in lines {
        let (name, value) = line.split_once(':').ok_or(400u16)?;
        if !token(name) || value.contains(['\r', '\n']) {
            return Err(400);
        }
        headers.push((name.to_string(), value.trim_matches([' ', '\t']).to_string()));
    }
    Ok(Some((Head { method: method.into(), target: target.into(), is_http_1_0, headers }, end + 4)))
}

/// Accepts connections until the process is ended. `answer` must be quick; it runs in many threads at once. `refuse`
/// gives the answer to what is not a request, by status code.
pub fn serve<A>(listener: &TcpListener, answer: Arc<A>, refuse: fn(u16) -> Answer) -> !
where
    A: Fn(&Head) -> Answer + Send + Sync + 'static,
{
    let open = Arc::new(AtomicUsize::new(0));
    let mut told = false;
    loop {
        let stream = match listener.accept() {
            Ok((stream, _)) => stream,
            // These are about the one connection.
            Err(error) if matches!(error.kind(), ErrorKind::ConnectionAborted | ErrorKind::Interrupted) => {
                continue;
            }
            // No file handles or no memory are left for now. Connections end, and then there are some again.
            Err(error) => {
                if !told {
                    terminal::say(&format!("no new connection can be taken for now: {error}"));
                }
                told = true;
                std::thread::sleep(PAUSE);
                continue;
            }
        };
        told = false;
        if open.fetch_add(1, Ordering::Relaxed) >= MOST_CONNECTIONS {
            open.fetch_sub(1, Ordering::Relaxed);
            continue;
        }
        let (answer, counter) = (Arc::clone(&answer), Arc::clone(&open));
        let thread = std::thread::Builder::new().spawn(move || {
            // The other side may go away at any time; nobody is left to tell.
            let _ = converse(stream, &*answer, refuse);
            counter.fetch_sub(1, Ordering::Relaxed);
        });
        if thread.is_err() {
            open.fetch_sub(1, Ordering::Relaxed);
        }
    }
}

fn converse(
    mut stream: TcpStream,
    answer: &dyn Fn(&Head) -> Answer,
    refuse: fn(u16) -> Answer,
) -> io::Result<()> {
    stream.set_nodelay(true)?;
    stream.set_write_timeout(Some(PATIENCE))?;
    let mut waiting = Vec::new();
    loop {
        let deadline = Instant::now() + PATIENCE;
        let head = loop {
            match parse(&waiting) {
                Ok(Some((head, length))) => {
                    waiting.drain(..length);
                    break Ok(head);
                }
                Ok(None) => {}
                Err(status) => break Err(status),
            }
            let left = deadline.saturating_duration_since(Instant::now());
            if left.is_zero() {
                return Ok(());
            }
            stream.set_read_timeout(Some(left))?;
            let mut part = [0; 4096];
            match stream.read(&mut part)? {
                0 => return Ok(()),
                count => waiting.extend_from_slice(&part[..count]),
            }
        };
        let (message, last) = match &head {
            Ok(head) => {
                let last = head.ends_connection();
                (wire(&answer(head), head.method != "HEAD", last), last)
            }
            Err(status) => (wire(&refuse(*status), true, true), true),
        };
        stream.write_all(&message)?;
        if last {
            return hang_up(stream);
        }
    }
}

/// Closing while unread bytes are on their way makes the system discard what was sent; so they are read first.
fn hang_up(mut stream: TcpStream) -> io::Result<()> {
    stream.shutdown(Shutdown::Write)?;
    stream.set_read_timeout(Some(Duration::from_secs(1)))?;
    let mut part = [0; 4096];
    for _ in 0..64 {
        if stream.read(&mut part)? == 0 {
            break;
        }
    }
    Ok(())
}

fn wire(answer: &Answer, with_body: bool, last: bool) -> Vec<u8> {
    let mut text =
        format!("HTTP/1.1 {} {}\r\nDate: {}\r\n", answer.status, reason(answer.status), date_now());
    for (name, value) in &answer.headers {
        text += &format!("{name}: {value}\r\n");
    }
    // 304 must not have a length that differs from the file's (RFC 9110, 8.6); it has none.
    if answer.status != 304 {
        text += &format!("Content-Length: {}\r\n", answer.body.len());
    }
    text += if last { "Connection: close\r\n\r\n" } else { "\r\n" };
    let mut bytes = text.into_bytes();
    if with_body && answer.status != 304 {
        bytes.extend_from_slice(&answer.body);
    }
    bytes
}

fn reason(status: u16) -> &'static str {
    match status {
        200 => "OK",
        304 => "Not Modified",
        400 => "Bad Request",
        403 => "Forbidden",
        404 => "Not Found",
        405 => "Method Not Allowed",
        431 => "Request Header Fields Too Large",
        505 => "HTTP Version Not Supported",
        _ => "",
    }
}

fn date_now() -> String {
    date(SystemTime::now().duration_since(UNIX_EPOCH).map_or(0, |past| past.as_secs()))
}

/// The date of RFC 9110, 5.6.7, for seconds since 1970.
fn date(seconds: u64) -> String {
    const WEEKDAYS: [&str; 7] = ["Thu", "Fri", "Sat", "Sun", "Mon", "Tue", "Wed"];
    const MONTHS: [&str; 12] =
        ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
    let (days, second) = (seconds / 86_400, seconds % 86_400);
    let mut year = 1970;
    let mut day = days;
    let is_leap =
        |year: u64| year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    while day >= 365 + u64::from(is_leap(year)) {
        day -= 365 + u64::from(is_leap(year));
        year += 1;
    }
    let lengths = [31, 28 + u64::from(is_leap(year)), 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    let mut month = 0;
    while day >= lengths[month] {
        day -= lengths[month];
        month += 1;
    }
    format!(
        "{}, {:02} {} {year} {:02}:{:02}:{:02} GMT",
        WEEKDAYS[(days % 7) as usize],
        day + 1,
        MONTHS[month],
        second / 3600,
        second / 60 % 60,
        second % 60
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_head_is_read_when_it_is_complete() {
        let bytes = b"GET /a?b HTTP/1.1\r\nHost: localhost\r\nX-A:\t1 \r\nx-a: 2\r\n\r\nGET";
        for cut in 0..bytes.len() - 3 {
            assert_eq!(parse(&bytes[..cut]), Ok(None), "{cut}");
        }
        let (head, length) = parse(bytes).unwrap().unwrap();
        assert_eq!(length, bytes.len() - 3);
        assert_eq!((head.method.as_str(), head.target.as_str()), ("GET", "/a?b"));
        assert_eq!(head.list("X-A"), "1, 2");
        assert!(!head.ends_connection());
    }

    #[test]
    fn what_breaks_the_rules_is_refused() {
        for (text, status) in [
            ("GET /\r\n\r\n", 400),
            ("GET  / HTTP/1.1\r\n\r\n", 400),
            ("GET / HTTP/1.1 x\r\n\r\n", 400),
            ("\r\n\r\n", 400),
            ("GET / HTTP/2.0\r\n\r\n", 505),
            ("G(T / HTTP/1.1\r\n\r\n", 400),
            ("GET /\0 HTTP/1.1\r\n\r\n", 400),
            ("GET / HTTP/1.1\r\nHost\r\n\r\n", 400),
            ("GET / HTTP/1.1\r\nHost : x\r\n\r\n", 400),
            ("GET / HTTP/1.1\r\nA: b\r\n folded: c\r\n\r\n", 400),
            ("GET / HTTP/1.1\r\nA: b\nHost: c\r\n\r\n", 400),
        ] {
            assert_eq!(parse(text.as_bytes()), Err(status), "{text:?}");
        }
        let long = format!("GET /{} HTTP/1.1\r\n\r\n", "a".repeat(LONGEST_HEAD));
        assert_eq!(parse(long.as_bytes()), Err(431));
        assert_eq!(parse(&[b'a'; LONGEST_HEAD + 1]), Err(431));
    }

    #[test]
    fn a_connection_is_kept_unless_told_otherwise_or_a_body_follows() {
        let ends = |headers: &str| {
            let text = format!("POST / HTTP/1.1\r\n{headers}\r\n");
            parse(text.as_bytes()).unwrap().unwrap().0.ends_connection()
        };
        assert!(!ends("Connection: keep-alive\r\n"));
        assert!(!ends("Content-Length: 0\r\n"));
        assert!(ends("Connection: x, Close\r\n"));
        assert!(ends("Content-Length: 5\r\n"));
        assert!(ends("Transfer-Encoding: chunked\r\n"));
        assert!(parse(b"GET / HTTP/1.0\r\n\r\n").unwrap().unwrap().0.ends_connection());
    }

    #[test]
    fn bodies_are_left_out_where_they_must_be() {
        let answer =
            |status| Answer { status, headers: vec![("ETag", "\"a\"".into())], body: b"body".to_vec() };
        let text = |status, with_body| String::from_utf8(wire(&answer(status), with_body, false)).unwrap();
        assert!(text(200, true).ends_with("Content-Length: 4\r\n\r\nbody"));
        assert!(text(200, false).ends_with("Content-Length: 4\r\n\r\n"));
        assert!(text(304, true).ends_with("ETag: \"a\"\r\n\r\n"));
    }

    /// The first is RFC 9110's own example; the leap day is from a calendar.
    #[test]
    fn dates_are_right() {
        assert_eq!(date(784_111_777), "Sun, 06 Nov 1994 08:49:37 GMT");
        assert_eq!(date(0), "Thu, 01 Jan 1970 00:00:00 GMT");
        assert_eq!(date(951_782_400), "Tue, 29 Feb 2000 00:00:00 GMT");
        assert_eq!(date(951_868_800), "Wed, 01 Mar 2000 00:00:00 GMT");
    }
}
