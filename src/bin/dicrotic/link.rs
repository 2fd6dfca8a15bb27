//! `link`: a scenario file as a link that holds all of it, and as a picture for a phone.

use std::io::Write;
use std::path::Path;

use dicrotic::exchange::qr;
use dicrotic::scenario::Scenario;
use dicrotic::scenario::digest::handed_out;
use dicrotic::session::compact::base64;
use flate2::Compression;
use flate2::write::DeflateEncoder;

use crate::failure::{Failure, While};
use crate::{output, same_file, terminal, text_file};

/// Prints the link of `scenario` for the page at `address`, and draws it into `picture`.
pub fn run(scenario: &Path, address: &str, picture: Option<&Path>) -> Result<(), Failure> {
    checked(address)?;
    if let Some(picture) = picture {
        same_file::refuse_overlap([scenario], &[picture])?;
    }
    let text = text_file::read(scenario, text_file::SCENARIO)?;
    Scenario::read(&text).while_doing(|| terminal::name(scenario))?;
    let link = of(address, "#a=", &handed_out(&text))?;
    draw(&link, picture)?;
    output::print(&format!("{link}\n"))
}

/// The link of what is handed out, for the page at an address; `mark` stands before it.
pub fn of(address: &str, mark: &str, handed_out: &str) -> Result<String, Failure> {
    checked(address)?;
    // As the page packs it: raw deflate, base64url.
    let mut packer = DeflateEncoder::new(Vec::new(), Compression::best());
    let packed = packer.write_all(handed_out.as_bytes()).and_then(|()| packer.finish());
    let bytes = packed.while_doing(|| "packing what is handed out".into())?;
    Ok(format!("{address}{mark}{}", base64::write(&bytes)))
}

/// Refuses what is no web address that a link can begin with (RFC 3986, and RFC 3987 for letters of any language).
pub fn checked(address: &str) -> Result<(), Failure> {
    let rest = ["http://", "https://"].iter().find_map(|scheme| address.strip_prefix(scheme));
    let host = rest.map_or("", |rest| rest.split(['/', '?']).next().unwrap_or_default());
    // Brackets are those of a number of IPv6.
    let host_has = |c: char| c.is_alphanumeric() || "-._~:[]%".contains(c);
    let has = |c: char| c.is_alphanumeric() || "-._~:/?[]@!$&'()*+,;=%".contains(c);
    if host.contains(char::is_alphanumeric) && host.chars().all(host_has) && address.chars().all(has) {
        return Ok(());
    }
    let shown: String = address.chars().take(200).collect();
    Err(Failure::new(format!(
        "--at {}: expected the page's address, beginning with http:// or https:// and a host, without blanks and without a #",
        terminal::one_line(&shown)
    )))
}

/// Draws a link into a picture, where one is wanted.
fn draw(link: &str, picture: Option<&Path>) -> Result<(), Failure> {
    let Some(picture) = picture else { return Ok(()) };
    let drawn = qr::svg(link).ok_or_else(|| {
        let (found, most) = (link.len(), qr::MOST_BYTES);
        Failure::new(format!("the link has {found} characters; a picture holds {most}"))
    })?;
    text_file::write(picture, &drawn)
}
