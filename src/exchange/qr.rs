//! A link as a picture that a phone reads: a QR code (ISO/IEC 18004) as an SVG document. Dark on light whatever the
//! page's theme, with the quiet zone of four modules that the standard asks for, since readers want both.

use qrcodegen::{QrCode, QrCodeEcc};

/// Longest link, bytes: version 40 at the lowest level of error correction holds 2953.
pub const MOST_BYTES: usize = 2953;
const QUIET: i32 = 4;

/// The picture; none if the link is too long.
pub fn svg(link: &str) -> Option<String> {
    if link.len() > MOST_BYTES {
        return None;
    }
    // The library raises the level of correction by itself where that costs no room.
    let code = QrCode::encode_text(link, QrCodeEcc::Low).ok()?;
    let side = code.size();
    let mut path = String::new();
    for y in 0..side {
        let mut x = 0;
        while x < side {
            let from = x;
            while x < side && code.get_module(x, y) {
                x += 1;
            }
            if x > from {
                path.push_str(&format!("M{} {}h{}v1h-{}z", from + QUIET, y + QUIET, x - from, x - from));
            } else {
                x += 1;
            }
        }
    }
    let all = side + 2 * QUIET;
    Some(format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {all} {all}\" shape-rendering=\"crispEdges\">\
         <path fill=\"#fff\" d=\"M0 0h{all}v{all}h-{all}z\"/><path fill=\"#000\" d=\"{path}\"/></svg>\n"
    ))
}
