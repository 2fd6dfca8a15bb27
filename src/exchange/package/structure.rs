//! `cmi5.xml`: a course of one assignable unit, which is the page. The order of the elements and the values of the attributes
//! are those of the course structure's schema (cmi5, Quartz, 1st edition, section 13), to which tests/reference/pack.py holds it.

use super::{MASTERY, escaped};
use crate::scenario::Scenario;
use crate::scenario::digest::{bench_digest, hex};

/// The course structure; `toml` is the scenario's text, whose digest makes the names of course and unit.
///
/// - `moveOn` is `Passed`: a unit that moved on at `Completed` would be done by a check with any reading.
/// - `launchMethod` is `AnyWindow`: the page asks for no window of its own, so that a site may show it in its frame.
/// - No `entitlementKey`: whoever has the package may use it.
pub fn text(told: &Scenario, toml: &str) -> String {
    let digest = bench_digest(toml);
    let (course, unit) = (name(&digest[..16]), name(&digest[16..]));
    let (title, about) = (langstring(&told.title), langstring(&told.aim));
    let mastery = f64::from(MASTERY) / 100.0;
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n\
         <courseStructure xmlns=\"https://w3id.org/xapi/profiles/cmi5/v1/CourseStructure.xsd\">\n\
         \x20 <course id=\"{course}\">\n    <title>{title}</title>\n    <description>{about}</description>\n  </course>\n\
         \x20 <au id=\"{unit}\" moveOn=\"Passed\" masteryScore=\"{mastery}\" launchMethod=\"AnyWindow\">\n\
         \x20   <title>{title}</title>\n    <description>{about}</description>\n    <url>index.html</url>\n\
         \x20   <launchParameters>{}</launchParameters>\n  </au>\n</courseStructure>\n",
        escaped(&told.id)
    )
}

/// A name that is the bench's own wherever it is packed: a UUID of version 8 (RFC 9562, section 5.8) out of 16 bytes.
fn name(bytes: &[u8]) -> String {
    let mut bytes = bytes.to_vec();
    bytes[6] = bytes[6] & 0x0f | 0x80;
    bytes[8] = bytes[8] & 0x3f | 0x80;
    let all = hex(&bytes);
    format!("urn:uuid:{}-{}-{}-{}-{}", &all[..8], &all[8..12], &all[12..16], &all[16..20], &all[20..])
}

/// A text that names its language. Of an instructor's own it is not known; English is what a site falls back to (common
/// practice).
fn langstring(text: &str) -> String {
    let line: Vec<&str> = text.split_whitespace().collect();
    format!("<langstring lang=\"en-US\">{}</langstring>", escaped(&line.join(" ")))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_of_the_form_of_version_8() {
        assert_eq!(name(&[0xff; 16]), "urn:uuid:ffffffff-ffff-8fff-bfff-ffffffffffff");
        assert_eq!(name(&[0; 16]), "urn:uuid:00000000-0000-8000-8000-000000000000");
    }

    #[test]
    fn two_benches_of_one_name_share_no_name() {
        let toml = include_str!("../../../scenarios/04-rest-pulse.toml");
        let edited = toml.replace("rest_rate_bpm = 66.0", "rest_rate_bpm = 84.0");
        let ids = |toml: &str| {
            let xml = text(&Scenario::read(toml).expect("a scenario"), toml);
            let of =
                |tag: &str| xml.split(tag).nth(1).and_then(|rest| rest.split('"').next()).map(String::from);
            [of("<course id=\""), of("<au id=\"")].map(|id| id.expect("an id"))
        };
        let all = [ids(toml), ids(&edited)].concat();
        assert!((1..all.len()).all(|n| !all[..n].contains(&all[n])), "{all:?}");
        assert_eq!(
            ids(toml),
            ids(&toml.replace("A pulse at rest", "A calm pulse")),
            "a change of words alone"
        );
    }
}
