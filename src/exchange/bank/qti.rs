//! A bank as items of QTI 3 in a package: a manifest, an item each question, its picture beside it. The order of the elements is that of
//! the published schemas (1EdTech QTI 3.0, `imsqti_asiv3p0_v1p0.xsd` and `imsqtiv3p0_imscpv1p2_v1p0.xsd`), whose rules for these
//! elements tests/reference/bank.py writes down.

use super::{Item, picture_name};
use crate::exchange::NamedFile;
use crate::exchange::package::escaped;
use crate::rng::fnv1a;

/// The namespace of items.
pub const ITEM: &str = "http://www.imsglobal.org/xsd/imsqtiasi_v3p0";
/// The namespace of the manifest.
pub const MANIFEST: &str = "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1";
/// What kind of resource an item is.
pub const KIND: &str = "imsqti_item_xmlv3p0";

/// The manifest and the items.
pub(super) fn files(items: &[Item], language: &str) -> Vec<NamedFile> {
    let mut files = vec![("imsmanifest.xml".to_string(), manifest(items).into_bytes())];
    files.extend(items.iter().map(|item| (item_name(&item.id), text(item, language).into_bytes())));
    files
}

fn item_name(id: &str) -> String {
    format!("items/{id}.xml")
}

fn manifest(items: &[Item]) -> String {
    let ids: String = items.iter().map(|item| item.id.as_str()).collect();
    let resources: String = items
        .iter()
        .map(|item| {
            let (name, picture) = (item_name(&item.id), picture_name(&item.id));
            format!(
                "    <resource identifier=\"{}\" type=\"{KIND}\" href=\"{name}\">\n      <file href=\"{name}\"/>\n      \
                 <file href=\"{picture}\"/>\n    </resource>\n",
                item.id
            )
        })
        .collect();
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<manifest xmlns=\"{MANIFEST}\" identifier=\"bank-{:016x}\">\n  \
         <metadata>\n    <schema>QTI Package</schema>\n    <schemaversion>3.0.0</schemaversion>\n  </metadata>\n  \
         <organizations/>\n  <resources>\n{resources}  </resources>\n</manifest>\n",
        fnv1a(ids.as_bytes())
    )
}

/// The name of the k-th answer within its item.
fn choice(k: usize) -> String {
    format!("ANSWER-{}", k + 1)
}

fn text(item: &Item, language: &str) -> String {
    let words = &item.words;
    let choices: String = words
        .answers
        .iter()
        .enumerate()
        .map(|(k, answer)| {
            format!(
                "      <qti-simple-choice identifier=\"{}\">{}</qti-simple-choice>\n",
                choice(k),
                escaped(answer)
            )
        })
        .collect();
    let feedback: String = words
        .feedback
        .iter()
        .enumerate()
        .map(|(k, told)| {
            format!(
                "  <qti-modal-feedback outcome-identifier=\"FEEDBACK\" identifier=\"{}\" show-hide=\"show\">\n    \
                 <qti-content-body>\n      <p>{}</p>\n    </qti-content-body>\n  </qti-modal-feedback>\n",
                choice(k),
                escaped(told)
            )
        })
        .collect();
    let score = |value: u8| {
        format!(
            "<qti-set-outcome-value identifier=\"SCORE\"><qti-base-value base-type=\"float\">{value}</qti-base-value>\
             </qti-set-outcome-value>"
        )
    };
    format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n\
         <qti-assessment-item xmlns=\"{ITEM}\" identifier=\"{id}\" title=\"{title}\" xml:lang=\"{language}\" adaptive=\"false\" \
         time-dependent=\"false\">\n\
         \x20 <qti-response-declaration identifier=\"RESPONSE\" cardinality=\"single\" base-type=\"identifier\">\n    \
         <qti-correct-response>\n      <qti-value>{right}</qti-value>\n    </qti-correct-response>\n  </qti-response-declaration>\n\
         \x20 <qti-outcome-declaration identifier=\"SCORE\" cardinality=\"single\" base-type=\"float\" normal-maximum=\"1\">\n    \
         <qti-default-value>\n      <qti-value>0</qti-value>\n    </qti-default-value>\n  </qti-outcome-declaration>\n\
         \x20 <qti-outcome-declaration identifier=\"FEEDBACK\" cardinality=\"single\" base-type=\"identifier\"/>\n\
         \x20 <qti-item-body>\n    <p><img src=\"../{picture}\" alt=\"{alt}\" width=\"{width}\" height=\"{height}\"/></p>\n    \
         <qti-choice-interaction response-identifier=\"RESPONSE\" shuffle=\"false\" max-choices=\"1\">\n      \
         <qti-prompt>{asked}</qti-prompt>\n{choices}    </qti-choice-interaction>\n  </qti-item-body>\n\
         \x20 <qti-response-processing>\n    <qti-response-condition>\n      <qti-response-if>\n        \
         <qti-match><qti-variable identifier=\"RESPONSE\"/><qti-correct identifier=\"RESPONSE\"/></qti-match>\n        {won}\n      \
         </qti-response-if>\n      <qti-response-else>\n        {lost}\n      </qti-response-else>\n    </qti-response-condition>\n    \
         <qti-set-outcome-value identifier=\"FEEDBACK\"><qti-variable identifier=\"RESPONSE\"/></qti-set-outcome-value>\n\
         \x20 </qti-response-processing>\n{feedback}</qti-assessment-item>\n",
        id = item.id,
        title = escaped(&words.title),
        right = choice(item.right),
        picture = picture_name(&item.id),
        alt = escaped(&words.alt),
        width = item.size.0,
        height = item.size.1,
        asked = escaped(&words.question),
        won = score(1),
        lost = score(0),
    )
}
