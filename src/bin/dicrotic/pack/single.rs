//! All of the page in one HTML file that opens from a folder. There an external module never runs and nothing can be fetched:
//! so each module stands as a `data:` address in an import map, under a name of its own; the style sheets with their
//! pictures stand in the page; and what the page would fetch is handed to it from the page. The policy of the page names
//! the hashes of what stands in it, and allows nothing else.

use std::collections::BTreeMap;
use std::io::Write;

use dicrotic::session::compact::base64 as url_base64;
use flate2::Compression;
use flate2::write::GzEncoder;
use sha2::{Digest, Sha256};

use crate::failure::{Failure, While};
use crate::site::Files;

/// What the modules' names begin with in the import map.
const PREFIX: &str = "dicrotic/";

/// The page as one file.
pub fn page(files: &Files) -> Result<Vec<u8>, Failure> {
    let text = |name: &str| {
        let bytes = files.get(name).ok_or_else(|| Failure::new(format!("the page has no {name}")))?;
        String::from_utf8(bytes.clone()).while_doing(|| format!("reading {name}"))
    };
    let mut head = String::new();
    let (mut scripts, mut styles) = (Vec::new(), Vec::new());
    let html = text("index.html")?;
    let mut out = String::with_capacity(4 << 20);
    for line in html.lines() {
        let tag = line.trim();
        let address = |name: &str| attribute(tag, name).unwrap_or_default();
        if tag.starts_with("<link rel=\"stylesheet\"") {
            let name = address("href");
            let css = style(files, &name, &text(&name)?)?;
            styles.push(hash(&css));
            head += &format!("<style>{css}</style>\n");
        } else if tag.starts_with("<link rel=\"icon\"") {
            let icon = data_address(files, &address("href"))?;
            head += &format!("<link rel=\"icon\" href=\"{icon}\">\n");
        } else if tag.starts_with("<script type=\"module\" src=") {
            let fetched = fetched(files)?;
            let map = serde_json::json!({"imports": modules(files)?}).to_string();
            let start = format!("import \"{PREFIX}{}\";", address("src"));
            for (kind, body) in [("", &fetched), (" type=\"importmap\"", &map), (" type=\"module\"", &start)]
            {
                // What ends a script may not stand in one.
                let body = body.replace("</", "<\\/");
                scripts.push(hash(&body));
                head += &format!("<script{kind}>{body}</script>\n");
            }
        } else if !(tag.starts_with("<link rel=")
            || tag.starts_with("<script type=\"module\" async ") // asks early for what stands in this page
            || tag.contains("http-equiv=\"Content-Security-Policy\""))
        {
            if tag == "</head>" {
                let policy = format!(
                    "default-src 'none'; script-src {} data: 'wasm-unsafe-eval'; style-src {}; img-src data:; \
                     connect-src 'none'; base-uri 'none'; form-action 'none'",
                    scripts.join(" "),
                    styles.join(" ")
                );
                out += &format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\n{head}");
            }
            out += line;
            out.push('\n');
        }
    }
    if scripts.is_empty() || styles.is_empty() {
        return Err(Failure::new("www/index.html names no script or no style sheet to be put into one page"));
    }
    Ok(out.into_bytes())
}

fn attribute(tag: &str, name: &str) -> Option<String> {
    tag.split_once(&format!("{name}=\""))?.1.split_once('"').map(|(value, _)| value.to_string())
}

/// How a policy names what stands in a page.
fn hash(body: &str) -> String {
    format!("'sha256-{}'", base64(&Sha256::digest(body.as_bytes())))
}

/// Base64 with its usual letters and padding.
fn base64(bytes: &[u8]) -> String {
    let mut text = url_base64::write(bytes).replace('-', "+").replace('_', "/");
    while !text.len().is_multiple_of(4) {
        text.push('=');
    }
    text
}

fn kind_of(name: &str) -> &'static str {
    match name.rsplit_once('.').map_or("", |(_, e)| e) {
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "js" => "text/javascript",
        "json" => "application/json",
        "wasm" => "application/wasm",
        "html" => "text/html",
        _ => "text/plain",
    }
}

fn data_address(files: &Files, name: &str) -> Result<String, Failure> {
    let bytes = files.get(name).ok_or_else(|| Failure::new(format!("the page has no {name}")))?;
    Ok(format!("data:{};base64,{}", kind_of(name), base64(bytes)))
}

/// A path as seen from a file: `../img/x.svg` from `css/base.css` is `img/x.svg`.
fn resolved(from: &str, path: &str) -> String {
    let mut parts: Vec<&str> = from.split('/').collect();
    parts.pop();
    for part in path.split('/') {
        match part {
            "." => {}
            ".." => {
                parts.pop();
            }
            part => parts.push(part),
        }
    }
    parts.join("/")
}

/// A style sheet with its pictures in it.
fn style(files: &Files, name: &str, css: &str) -> Result<String, Failure> {
    let mut out = String::new();
    let mut rest = css;
    while let Some((before, after)) = rest.split_once("url(\"") {
        let (path, tail) = after.split_once('"').unwrap_or((after, ""));
        let told = if path.starts_with("data:") || path.starts_with('#') {
            path.to_string()
        } else {
            data_address(files, &resolved(name, path))?
        };
        out += &format!("{before}url(\"{told}\"");
        rest = tail;
    }
    Ok(out + rest)
}

/// The import map: each module under its name, the modules that it names under theirs.
fn modules(files: &Files) -> Result<BTreeMap<String, String>, Failure> {
    let mut map = BTreeMap::new();
    for (name, bytes) in files.iter().filter(|(name, _)| name.ends_with(".js")) {
        let source = String::from_utf8(bytes.clone()).while_doing(|| format!("reading {name}"))?;
        // A module at a data address has no place of its own; the loader of the core asks for it beside the page.
        let source = source.replace("import.meta.url", "new URL(\"wasm/dicrotic.js\", document.baseURI)");
        let linked = linked(files, name, &source)?;
        map.insert(
            format!("{PREFIX}{name}"),
            format!("data:text/javascript;base64,{}", base64(linked.as_bytes())),
        );
    }
    Ok(map)
}

/// A module whose imports name modules of the map. In the house's modules an import's path stands in double quotes and
/// begins with a dot.
fn linked(files: &Files, name: &str, source: &str) -> Result<String, Failure> {
    let mut out = String::with_capacity(source.len() + 1024);
    let mut rest = source;
    while let Some(at) = ["from \".", "import \".", "import(\"."]
        .iter()
        .filter_map(|m| rest.find(m).map(|k| k + m.len() - 1))
        .min()
    {
        out += &rest[..at];
        let (path, tail) = rest[at..].split_once('"').unwrap_or((&rest[at..], ""));
        let target = resolved(name, path);
        if !files.contains_key(&target) {
            return Err(Failure::new(format!("{name} imports {path}, which is not in the page")));
        }
        out += &format!("{PREFIX}{target}\"");
        rest = tail;
    }
    Ok(out + rest)
}

/// A script that hands the page what it would fetch.
fn fetched(files: &Files) -> Result<String, Failure> {
    let mut held = BTreeMap::new();
    for (name, bytes) in files {
        let read = ["json", "toml", "wasm", "html"].iter().any(|e| name.ends_with(&format!(".{e}")));
        if read && name != "index.html" {
            let mut packer = GzEncoder::new(Vec::new(), Compression::best());
            let packed = packer.write_all(bytes).and_then(|()| packer.finish());
            let packed = packed.while_doing(|| format!("packing {name}"))?;
            held.insert(name.as_str(), (kind_of(name), base64(&packed)));
        }
    }
    let held = serde_json::to_string(&held).while_doing(|| "packing".into())?;
    Ok(format!(
        "{{const held = {held};\n\
         const ask = globalThis.fetch;\n\
         globalThis.fetch = async (what, how) => {{\n\
         \x20 const url = new URL(what.url ?? what, document.baseURI);\n\
         \x20 const name = Object.keys(held).find((one) => url.href === new URL(one, document.baseURI).href);\n\
         \x20 if (!name) return ask(what, how);\n\
         \x20 const [type, text] = held[name];\n\
         \x20 const bytes = Uint8Array.from(atob(text), (c) => c.charCodeAt(0));\n\
         \x20 const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream(\"gzip\"));\n\
         \x20 return new Response(stream, {{ headers: {{ \"content-type\": type }} }});\n\
         }};}}"
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files(all: &[(&str, &str)]) -> Files {
        all.iter().map(|(name, text)| (name.to_string(), text.as_bytes().to_vec())).collect()
    }

    #[test]
    fn imports_of_every_form_name_modules_of_the_map() {
        let files = files(&[("js/a/b.js", ""), ("js/c.js", ""), ("wasm/d.js", "")]);
        let source = "import { x } from \"../c.js\";\nimport \"./b.js\";\nconst y = import(\"../../wasm/d.js\"); // \"./e\"";
        let linked = linked(&files, "js/a/b.js", source).unwrap();
        assert_eq!(
            linked,
            "import { x } from \"dicrotic/js/c.js\";\nimport \"dicrotic/js/a/b.js\";\n\
             const y = import(\"dicrotic/wasm/d.js\"); // \"./e\""
        );
        let lost = super::linked(&files, "js/c.js", "import \"./gone.js\";").unwrap_err().to_string();
        assert!(lost.contains("js/c.js") && lost.contains("./gone.js"), "{lost}");
    }

    #[test]
    fn pictures_of_a_style_sheet_stand_in_it() {
        let files = files(&[("img/x.svg", "<svg/>")]);
        let css = style(&files, "css/base.css", "a { b: url(\"../img/x.svg\") 0; c: url(\"#d\") }").unwrap();
        assert_eq!(css, "a { b: url(\"data:image/svg+xml;base64,PHN2Zy8+\") 0; c: url(\"#d\") }");
        assert!(style(&files, "css/base.css", "url(\"../img/y.svg\")").is_err());
    }

    #[test]
    fn base64_is_padded() {
        // RFC 4648, section 10.
        for (plain, coded) in
            [("", ""), ("f", "Zg=="), ("fo", "Zm8="), ("foo", "Zm9v"), ("foobar", "Zm9vYmFy")]
        {
            assert_eq!(base64(plain.as_bytes()), coded);
        }
    }
}
