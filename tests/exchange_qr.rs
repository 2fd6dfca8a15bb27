//! Links as pictures. Another program's reader is asked in tests/reference/qr.py.

use dicrotic::exchange::qr::{MOST_BYTES, svg};

#[test]
fn a_link_is_drawn_dark_on_light_with_its_quiet_zone_and_finders() {
    // 32 bytes at level L fill version 2: 25 modules (ISO/IEC 18004, table 7), and four modules all round.
    let link = "http://127.0.0.1/#s=abc&seed=123";
    assert_eq!(link.len(), 32);
    let picture = svg(link).unwrap();
    assert!(picture.contains("viewBox=\"0 0 33 33\""), "{picture}");
    // The finder's upper side is a run of seven dark modules in three corners.
    assert!(
        picture.contains("M4 4h7v1") && picture.contains("M22 4h7v1") && picture.contains("M4 22h7v1"),
        "{picture}"
    );
    assert!(picture.contains("fill=\"#fff\"") && picture.contains("fill=\"#000\""));
    assert!(!picture.contains("M3 ") && !picture.contains("script"));
}

#[test]
fn the_longest_link_that_fits_is_drawn_and_a_longer_one_is_not() {
    assert!(svg(&"a".repeat(MOST_BYTES)).unwrap().contains("viewBox=\"0 0 185 185\""));
    assert_eq!(svg(&"a".repeat(MOST_BYTES + 1)), None);
}
