//! What the server lets in: which hosts and which paths. Pure functions of the request's text.

/// Whether the `Host` header names this machine. Another name means that a page elsewhere had its own name resolve
/// to this machine, to read from here (DNS rebinding).
pub fn is_local_host(host: &str) -> bool {
    let (name, port) = if let Some(rest) = host.strip_prefix('[') {
        let Some((address, rest)) = rest.split_once(']') else { return false };
        if address != "::1" {
            return false;
        }
        ("[::1]", rest)
    } else {
        let end = host.find(':').unwrap_or(host.len());
        (&host[..end], &host[end..])
    };
    let name_is_local = name == "[::1]" || name == "127.0.0.1" || name.eq_ignore_ascii_case("localhost");
    let port_is_plain = match port.strip_prefix(':') {
        Some(digits) => digits.bytes().all(|b| b.is_ascii_digit()) && digits.parse::<u16>().is_ok(),
        None => port.is_empty(),
    };
    name_is_local && port_is_plain
}

/// The page's file that a request target asks for, or `None` if the target is not a plain absolute path.
///
/// The page's files have plain names (see `site`), so every escape, `..`, `\`, and control character is refused
/// rather than interpreted.
pub fn file_name(target: &str) -> Option<String> {
    let path = target.split('?').next().unwrap_or(target);
    let path = path.strip_prefix('/')?;
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"-_./".contains(&byte);
    if !path.bytes().all(plain) {
        return None;
    }
    let (folder, last) = path.rsplit_once('/').map_or(("", path), |(folder, last)| (folder, last));
    let dotted = |part: &str| part.starts_with('.');
    if dotted(last) || (!folder.is_empty() && folder.split('/').any(|part| part.is_empty() || dotted(part))) {
        return None;
    }
    if path.starts_with('/') {
        return None;
    }
    Some(if last.is_empty() { format!("{path}index.html") } else { path.into() })
}

/// Whether an `Accept-Encoding` header takes a coding (RFC 9110, 12.5.3).
pub fn accepts(header: &str, wanted_coding: &str) -> bool {
    let mut any = false;
    for item in header.split(',') {
        let mut parts = item.split(';').map(str::trim);
        let coding = parts.next().unwrap_or("");
        let wanted = parts.all(|part| {
            let weight = part.strip_prefix("q=").or(part.strip_prefix("Q="));
            weight.is_none_or(|q| q.trim().parse::<f64>().is_ok_and(|q| q > 0.0))
        });
        if coding.eq_ignore_ascii_case(wanted_coding) {
            return wanted;
        }
        any |= coding == "*" && wanted;
    }
    any
}

/// Whether an `If-None-Match` header holds `tag` (weak comparison, RFC 9110, 13.1.2).
pub fn has_tag(header: &str, tag: &str) -> bool {
    header.split(',').map(str::trim).any(|item| item == "*" || item.strip_prefix("W/").unwrap_or(item) == tag)
}

/// The media type by the file's ending.
pub fn media_type(name: &str) -> &'static str {
    match name.rsplit_once('.').map_or("", |(_, ending)| ending) {
        "html" => "text/html; charset=utf-8",
        "js" | "mjs" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        // A browser compiles while it downloads only with this type.
        "wasm" => "application/wasm",
        "toml" => "application/toml",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "jpg" | "jpeg" => "image/jpeg",
        "webp" => "image/webp",
        "ico" => "image/x-icon",
        "woff2" => "font/woff2",
        "csv" => "text/csv; charset=utf-8",
        "txt" | "md" => "text/plain; charset=utf-8",
        "zip" => "application/zip",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_this_machines_names_are_hosts() {
        for host in ["127.0.0.1", "127.0.0.1:7200", "localhost", "LocalHost:1", "[::1]", "[::1]:65535"] {
            assert!(is_local_host(host), "{host}");
        }
        for host in [
            "",
            "example.org",
            "example.org:7200",
            "127.0.0.1.example.org",
            "localhost.example.org",
            "127.0.0.2",
            "0.0.0.0",
            "[::2]",
            "[::1",
            "::1",
            "[::1]x",
            "localhost:",
            "localhost:x",
            "localhost:70000",
            "localhost:80:80",
            "user@localhost",
            " localhost",
        ] {
            assert!(!is_local_host(host), "{host:?}");
        }
    }

    #[test]
    fn plain_paths_name_files() {
        for (target, name) in [
            ("/", "index.html"),
            ("/?seed=1", "index.html"),
            ("/?next=../../x", "index.html"),
            ("/index.html", "index.html"),
            ("/js/main.js", "js/main.js"),
            ("/help/", "help/index.html"),
            ("/wasm/dicrotic_bg.wasm?v=1", "wasm/dicrotic_bg.wasm"),
        ] {
            assert_eq!(file_name(target).as_deref(), Some(name), "{target}");
        }
    }

    #[test]
    fn path_tricks_are_refused() {
        for target in [
            "",
            "index.html",
            "*",
            "http://127.0.0.1/index.html",
            "//etc/passwd",
            "/js//main.js",
            "/../Cargo.toml",
            "/js/../../Cargo.toml",
            "/js/..",
            "/.",
            "/./index.html",
            "/.git/config",
            "/js/.hidden",
            "/%2e%2e/Cargo.toml",
            "/%2E%2E%2FCargo.toml",
            "/js%2fmain.js",
            "/..\\Cargo.toml",
            "/js\\main.js",
            "/C:/x",
            "/index.html\0.png",
            "/index.html%00.png",
            "/index .html",
            "/ä",
        ] {
            assert_eq!(file_name(target), None, "{target:?}");
        }
    }

    #[test]
    fn gzip_is_sent_only_to_those_who_take_it() {
        for header in ["gzip", "gzip, deflate, br", "br;q=1.0, gzip;q=0.8", "GZIP", "*", "identity, *;q=0.5"]
        {
            assert!(accepts(header, "gzip"), "{header}");
        }
        for header in ["", "br", "gzip;q=0", "gzip;q=0.0, *", "*;q=0", "gzipped", "gzip;q=x"] {
            assert!(!accepts(header, "gzip"), "{header}");
        }
    }

    #[test]
    fn tags_are_compared_weakly() {
        assert!(has_tag("\"a\"", "\"a\""));
        assert!(has_tag("\"b\", W/\"a\"", "\"a\""));
        assert!(has_tag("*", "\"a\""));
        assert!(!has_tag("\"b\"", "\"a\""));
        assert!(!has_tag("a", "\"a\""));
    }

    #[test]
    fn media_types_are_those_a_browser_insists_on() {
        assert_eq!(media_type("wasm/dicrotic_bg.wasm"), "application/wasm");
        assert_eq!(media_type("js/a.b.js"), "text/javascript; charset=utf-8");
        assert_eq!(media_type("index.html"), "text/html; charset=utf-8");
        assert_eq!(media_type("app.webmanifest"), "application/manifest+json");
        assert_eq!(media_type("noending"), "application/octet-stream");
        assert_eq!(media_type("x.unheard"), "application/octet-stream");
    }
}
