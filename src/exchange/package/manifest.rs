//! `imsmanifest.xml`: one organisation with one item, whose resource is the page with all of its files. The order of the
//! elements is that of the published schemas (IMS Content Packaging 1.1.2 and 1.1.4, ADL 1.2 and 2004 4th edition), against
//! which tests/reference/pack.py holds it.

use super::{MASTERY, escaped};
use crate::scenario::Scenario;
use crate::scenario::digest::{bench_digest, hex};

/// The manifest of a package with these files, of SCORM 1.2 or 2004; `toml` is the scenario's text, whose digest keeps two of
/// one name apart.
pub fn text(told: &Scenario, toml: &str, new: bool, files: &[&str]) -> String {
    let which = &hex(&bench_digest(toml))[..12];
    let (title, id) = (escaped(&told.title), escaped(&told.id));
    let listed: String =
        files.iter().map(|name| format!("      <file href=\"{}\"/>\n", escaped(name))).collect();
    let (head, version, launch, kind, sequencing) = if new {
        (
            "xmlns=\"http://www.imsglobal.org/xsd/imscp_v1p1\" \
             xmlns:adlcp=\"http://www.adlnet.org/xsd/adlcp_v1p3\" \
             xmlns:imsss=\"http://www.imsglobal.org/xsd/imsss\"",
            "2004 4th Edition",
            format!("        <adlcp:dataFromLMS>{id}</adlcp:dataFromLMS>\n"),
            "adlcp:scormType",
            // The page itself tells completion and success; the score that passes is the same for both.
            format!(
                "        <imsss:sequencing><imsss:objectives><imsss:primaryObjective objectiveID=\"whole\" \
                 satisfiedByMeasure=\"true\"><imsss:minNormalizedMeasure>{}</imsss:minNormalizedMeasure>\
                 </imsss:primaryObjective></imsss:objectives><imsss:deliveryControls \
                 completionSetByContent=\"true\" objectiveSetByContent=\"true\"/></imsss:sequencing>\n",
                f64::from(MASTERY) / 100.0
            ),
        )
    } else {
        (
            "xmlns=\"http://www.imsproject.org/xsd/imscp_rootv1p1p2\" \
             xmlns:adlcp=\"http://www.adlnet.org/xsd/adlcp_rootv1p2\"",
            "1.2",
            // The order is the schema's: what is told to the page, then the score that passes.
            format!(
                "        <adlcp:datafromlms>{id}</adlcp:datafromlms>\n        \
                 <adlcp:masteryscore>{MASTERY}</adlcp:masteryscore>\n"
            ),
            "adlcp:scormtype",
            String::new(),
        )
    };
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n\
         <manifest identifier=\"dicrotic-{id}-{which}\" version=\"1\" {head}>\n\
         \x20 <metadata>\n    <schema>ADL SCORM</schema>\n    <schemaversion>{version}</schemaversion>\n  </metadata>\n\
         \x20 <organizations default=\"organization\">\n\
         \x20   <organization identifier=\"organization\">\n      <title>{title}</title>\n\
         \x20     <item identifier=\"item\" identifierref=\"page\">\n        <title>{title}</title>\n\
         {launch}{sequencing}      </item>\n    </organization>\n  </organizations>\n\
         \x20 <resources>\n\
         \x20   <resource identifier=\"page\" type=\"webcontent\" {kind}=\"sco\" href=\"index.html\">\n\
         {listed}    </resource>\n  </resources>\n</manifest>\n"
    )
}
