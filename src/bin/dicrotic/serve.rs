//! A web server for one person on one machine. It listens on 127.0.0.1 only, knows only the page's own files, which
//! it holds in memory, and tells the browser to load from nowhere else.

use std::collections::BTreeMap;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::io::{self, Write};
use std::net::{Ipv4Addr, TcpListener};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use flate2::Compression;
use flate2::write::GzEncoder;

use crate::failure::{Failure, While};
use crate::http::{self, Answer, Head};
use crate::request::{accepts, file_name, has_tag, is_local_host, media_type};
use crate::site::{self, Files};
use crate::terminal;

/// The port that is tried first if none is asked for.
pub const DEFAULT_PORT: u16 = 7260;
/// How many ports after it are tried.
const MORE_PORTS: u16 = 40;
/// Sent with every answer. Inline scripts and styles, and everything from elsewhere, are refused by the browser.
const HEADERS: [(&str, &str); 6] = [
    (
        "Content-Security-Policy",
        // As in the page's own <meta>, which cannot say the last one; a browser test compares the two.
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'; connect-src 'self'; \
         worker-src 'self'; manifest-src 'self'; frame-src 'self'; base-uri 'none'; form-action 'none'; \
         frame-ancestors 'self'",
    ),
    // The camera for one's own pulse, in no page but this one; of what could listen, find out where one is or see the screen, nothing.
    (
        "Permissions-Policy",
        "camera=(self), microphone=(), geolocation=(), display-capture=(), usb=(), serial=(), midi=(), payment=()",
    ),
    ("X-Content-Type-Options", "nosniff"),
    ("Referrer-Policy", "no-referrer"),
    ("Cross-Origin-Resource-Policy", "same-origin"),
    ("Cache-Control", "no-cache"),
];

/// Builds the page where needed, prints its address and serves it until the process is ended.
pub fn run(root: &Path, port: Option<u16>) -> Result<(), Failure> {
    // A taken port is found out before the build, which may take a minute.
    let listener = listen(port)?;
    let address = listener.local_addr().while_doing(|| "asking for the server's address".into())?;
    // Packing takes a second; whoever is told the address shall not wait for it.
    let page = Page::new(root, site::build(root)?);
    // A closed output must not end the server.
    let mut out = io::stdout();
    let _ = writeln!(out, "Dicrotic is at http://{address}/  (Ctrl-C ends it)");
    let _ = out.flush();
    http::serve(&listener, Arc::new(move |head: &Head| page.answer(&Question::of(head))), refusal_of)
}

fn listen(port: Option<u16>) -> Result<TcpListener, Failure> {
    let bind = |port| TcpListener::bind((Ipv4Addr::LOCALHOST, port));
    if let Some(port) = port {
        return bind(port).map_err(|error| match error.kind() {
            io::ErrorKind::AddrInUse => Failure::new(format!(
                "port {port} is taken by another program; choose another with --port, or leave --port out"
            )),
            _ => Failure::new(format!("port {port} cannot be used: {error}")),
        });
    }
    let mut last = None;
    for port in DEFAULT_PORT..=DEFAULT_PORT + MORE_PORTS {
        match bind(port) {
            Ok(listener) => return Ok(listener),
            Err(error) => last = Some(error),
        }
    }
    let why = last.map(|error| error.to_string()).unwrap_or_default();
    Err(Failure::new(format!(
        "no free port from {DEFAULT_PORT} to {}: {why}. Choose one with --port",
        DEFAULT_PORT + MORE_PORTS
    )))
}

/// What of a request the answer depends on.
#[derive(Debug, Default)]
struct Question {
    is_read: bool,
    target: String,
    host: Option<String>,
    accept_encoding: String,
    if_none_match: String,
}

impl Question {
    fn of(head: &Head) -> Self {
        let mut hosts = head.values("Host");
        Self {
            is_read: head.method == "GET" || head.method == "HEAD",
            target: head.target.clone(),
            // Two Host headers are a trick; none of the two is believed.
            host: hosts.next().filter(|_| hosts.next().is_none()).map(String::from),
            accept_encoding: head.list("Accept-Encoding"),
            if_none_match: head.list("If-None-Match"),
        }
    }
}

/// An answer with the headers that every answer has.
fn answer(status: u16, headers: Vec<(&'static str, String)>, body: Vec<u8>) -> Answer {
    let mut all: Vec<_> = HEADERS.iter().map(|(name, value)| (*name, value.to_string())).collect();
    all.extend(headers);
    Answer { status, headers: all, body }
}

fn refusal(status: u16, why: &str) -> Answer {
    let kind = ("Content-Type", "text/plain; charset=utf-8".to_string());
    answer(status, vec![kind], format!("{why}\n").into_bytes())
}

/// The answer to what is not a request.
fn refusal_of(status: u16) -> Answer {
    refusal(status, "Not a request that this server knows.")
}

/// One file, ready to send.
struct Ready {
    plain: Vec<u8>,
    /// Packed, the smaller first; only where it is smaller than plain by a tenth.
    packed: Vec<Packed>,
    hash: u64,
}

impl Ready {
    fn new(plain: Vec<u8>) -> Self {
        let mut hasher = DefaultHasher::new();
        plain.hash(&mut hasher);
        let packed = [("br", brotli(&plain)), ("gzip", gzip(&plain))]
            .into_iter()
            .filter_map(|(coding, bytes)| Some(Packed { coding, bytes: bytes? }))
            .filter(|packed| packed.bytes.len() < plain.len() / 10 * 9)
            .collect();
        Self { plain, packed, hash: hasher.finish() }
    }
}

/// Bytes in one of the codings that browsers take.
struct Packed {
    coding: &'static str,
    bytes: Vec<u8>,
}

/// Brotli (RFC 7932) at a quality that packs a megabyte in about a second.
fn brotli(bytes: &[u8]) -> Option<Vec<u8>> {
    let mut encoder = brotli::CompressorWriter::new(Vec::new(), 4096, 9, 22);
    encoder.write_all(bytes).ok()?;
    Some(encoder.into_inner())
}

fn gzip(bytes: &[u8]) -> Option<Vec<u8>> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::default());
    encoder.write_all(bytes).ok()?;
    encoder.finish().ok()
}

/// The page's files, and the sources whose edits they follow.
struct Page {
    root: PathBuf,
    now: Mutex<Loaded>,
}

struct Loaded {
    state: site::State,
    files: BTreeMap<String, Arc<Ready>>,
}

impl Page {
    fn new(root: &Path, files: Files) -> Self {
        let files = files.into_iter().map(|(name, bytes)| (name, Arc::new(Ready::new(bytes)))).collect();
        let now = Mutex::new(Loaded { state: site::state(root), files });
        Self { root: root.to_path_buf(), now }
    }

    /// A reload of the page shows edits of `www/` and the scenarios; edits of the core need a restart.
    fn follow_edits(&self) {
        let mut now = self.now.lock().unwrap_or_else(PoisonError::into_inner);
        let state = site::state(&self.root);
        if state == now.state {
            return;
        }
        match site::hand_written(&self.root) {
            Ok(mut files) => {
                now.files.retain(|name, _| site::is_made(name));
                files.extend(now.files.iter().map(|(name, core)| (name.clone(), core.plain.clone())));
                site::add_version(&mut files);
                files.retain(|name, _| !site::is_made(name));
                now.files.extend(files.into_iter().map(|(name, bytes)| (name, Arc::new(Ready::new(bytes)))));
            }
            Err(failure) => terminal::say(&format!("{failure}; the page stays as it was")),
        }
        now.state = state;
    }

    fn answer(&self, question: &Question) -> Answer {
        if !question.host.as_deref().is_some_and(is_local_host) {
            return refusal(403, "This server answers only to 127.0.0.1, localhost and [::1].");
        }
        if !question.is_read {
            let mut refusal = refusal(405, "Only GET and HEAD.");
            refusal.headers.push(("Allow", "GET, HEAD".into()));
            return refusal;
        }
        let Some(name) = file_name(&question.target) else {
            return refusal(400, "Not a plain path.");
        };
        self.follow_edits();
        let file = {
            let now = self.now.lock().unwrap_or_else(PoisonError::into_inner);
            now.files.get(&name).map(Arc::clone)
        };
        let Some(file) = file else { return refusal(404, "No such file.") };
        let packed = file.packed.iter().find(|p| accepts(&question.accept_encoding, p.coding));
        let coding = packed.map_or("plain", |p| p.coding);
        let tag = format!("\"{:016x}-{coding}\"", file.hash);
        let mut headers = vec![("Content-Type", media_type(&name).to_string()), ("ETag", tag.clone())];
        if !file.packed.is_empty() {
            headers.push(("Vary", "Accept-Encoding".into()));
        }
        if has_tag(&question.if_none_match, &tag) {
            return answer(304, headers, Vec::new());
        }
        if let Some(packed) = packed {
            headers.push(("Content-Encoding", packed.coding.into()));
        }
        answer(200, headers, packed.map_or(&file.plain, |p| &p.bytes).clone())
    }
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use super::*;
    use crate::scratch::Scratch;

    fn page(name: &str) -> (Scratch, Page) {
        let folder = Scratch::new(name);
        folder.write("www/index.html", &"<p>Count the beats.</p>\n".repeat(50));
        folder.write("www/texts/en/page.ftl", "hello = Hello\n");
        folder.write("scenarios/a.toml", "id = \"a\"\nlevel = 1");
        let mut files = site::hand_written(folder.path()).unwrap();
        files.insert("wasm/dicrotic_bg.wasm".into(), b"\0asm".to_vec());
        let page = Page::new(folder.path(), files);
        (folder, page)
    }

    fn ask(target: &str) -> Question {
        Question {
            is_read: true,
            target: target.into(),
            host: Some("127.0.0.1:7260".into()),
            ..Question::default()
        }
    }

    fn header<'a>(answer: &'a Answer, name: &str) -> Option<&'a str> {
        answer.headers.iter().find(|(field, _)| *field == name).map(|(_, value)| value.as_str())
    }

    #[test]
    fn a_file_comes_with_its_type_and_plain_or_packed_as_asked() {
        let (_folder, page) = page("serve-plain");
        let plain = page.answer(&ask("/"));
        assert_eq!(plain.status, 200);
        assert_eq!(header(&plain, "Content-Type"), Some("text/html; charset=utf-8"));
        assert_eq!(header(&plain, "Content-Encoding"), None);
        let packed = page.answer(&Question { accept_encoding: "gzip".into(), ..ask("/") });
        assert_eq!(header(&packed, "Content-Encoding"), Some("gzip"));
        assert_ne!(header(&packed, "ETag"), header(&plain, "ETag"));
        let mut unpacked = Vec::new();
        flate2::read::GzDecoder::new(&packed.body[..]).read_to_end(&mut unpacked).unwrap();
        assert_eq!(unpacked, plain.body);
        let core = page.answer(&ask("/wasm/dicrotic_bg.wasm"));
        assert_eq!((core.status, header(&core, "Content-Type")), (200, Some("application/wasm")));
    }

    #[test]
    fn an_unchanged_file_is_not_sent_again() {
        let (_folder, page) = page("serve-tag");
        let tag = header(&page.answer(&ask("/")), "ETag").unwrap().to_string();
        let again = page.answer(&Question { if_none_match: tag.clone(), ..ask("/") });
        assert_eq!((again.status, again.body.len()), (304, 0));
        let packed = Question { if_none_match: tag, accept_encoding: "gzip".into(), ..ask("/") };
        assert_eq!(page.answer(&packed).status, 200);
    }

    #[test]
    fn an_edit_is_served_and_a_broken_edit_is_not() {
        let (folder, page) = page("serve-edit");
        folder.write("www/index.html", "<p>new</p>");
        assert_eq!(page.answer(&ask("/")).body, b"<p>new</p>");
        assert_eq!(page.answer(&ask("/wasm/dicrotic_bg.wasm")).status, 200);
        folder.write("scenarios/a.toml", "id = ");
        assert_eq!(page.answer(&ask("/scenarios/a.toml")).body, b"id = \"a\"\nlevel = 1");
    }

    #[test]
    fn what_is_not_a_plain_read_from_this_machine_is_refused() {
        let (_folder, page) = page("serve-refuse");
        assert_eq!(page.answer(&ask("/missing.js")).status, 404);
        assert_eq!(page.answer(&ask("/../Cargo.toml")).status, 400);
        assert_eq!(page.answer(&Question { is_read: false, ..ask("/") }).status, 405);
        for host in [None, Some("example.org".to_string())] {
            let answer = page.answer(&Question { host, ..ask("/") });
            assert_eq!(answer.status, 403);
            assert!(!answer.body.windows(5).any(|part| part == b"beats"));
        }
    }

    #[test]
    fn every_answer_carries_the_strict_policy() {
        for answer in [refusal(404, "No."), page("serve-policy").1.answer(&ask("/"))] {
            let policy = header(&answer, "Content-Security-Policy").expect("a policy");
            assert!(policy.starts_with("default-src 'none'; "), "{policy}");
            assert!(!policy.contains("unsafe-inline"), "{policy}");
            let allowed = header(&answer, "Permissions-Policy").expect("a policy of what the page may use");
            assert!(allowed.starts_with("camera=(self), microphone=(), geolocation=(), "), "{allowed}");
        }
    }

    #[test]
    fn a_taken_port_is_an_error_when_asked_for() {
        let taken = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).unwrap();
        let port = taken.local_addr().unwrap().port();
        let message = listen(Some(port)).unwrap_err().to_string();
        assert!(message.contains(&port.to_string()) && message.contains("taken"), "{message}");
    }

    #[test]
    fn without_a_port_two_servers_find_two() {
        let first = listen(None).unwrap().local_addr().unwrap();
        let holds = TcpListener::bind(first).unwrap();
        let second = listen(None).unwrap().local_addr().unwrap();
        assert!(first.ip().is_loopback() && second.ip().is_loopback());
        assert_ne!(holds.local_addr().unwrap().port(), second.port());
    }
}
