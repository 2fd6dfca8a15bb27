//! `imsmanifest.xml`: one organisation with one item, whose resource is the page with all of its files. The order of the
//! elements is that of the published schemas (IMS Content Packaging 1.1.2 and 1.1.4, ADL 1.2 and 2004 4th edition), against
//! which tests/reference/pack.py holds it.

use dicrotic::scenario::Scenario;

use super::{Standard, escaped};

/// The manifest of a package with these files.
pub fn text(told: &Scenario, standard: Standard, files: &[&str]) -> String {
    let (title, id) = (escaped(&told.title), escaped(&told.id));
    let listed: String =
        files.iter().map(|name| format!("      <file href=\"{}\"/>\n", escaped(name))).collect();
    let (head, version, launch, kind, sequencing) = match standard {
        Standard::Scorm12 => (
            "xmlns=\"http://www.imsproject.org/xsd/imscp_rootv1p1p2\" \
             xmlns:adlcp=\"http://www.adlnet.org/xsd/adlcp_rootv1p2\"",
            "1.2",
            format!("        <adlcp:datafromlms>{id}</adlcp:datafromlms>\n"),
            "adlcp:scormtype",
            "",
        ),
        Standard::Scorm2004 => (
            "xmlns=\"http://www.imsglobal.org/xsd/imscp_v1p1\" \
             xmlns:adlcp=\"http://www.adlnet.org/xsd/adlcp_v1p3\" \
             xmlns:imsss=\"http://www.imsglobal.org/xsd/imsss\"",
            "2004 4th Edition",
            format!("        <adlcp:dataFromLMS>{id}</adlcp:dataFromLMS>\n"),
            "adlcp:scormType",
            // The page itself tells completion and success.
            "        <imsss:sequencing><imsss:deliveryControls completionSetByContent=\"true\" \
             objectiveSetByContent=\"true\"/></imsss:sequencing>\n",
        ),
    };
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n\
         <manifest identifier=\"dicrotic-{id}\" version=\"1\" {head}>\n\
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
