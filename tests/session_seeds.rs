//! A seed for each student of a class.

use dicrotic::session::seeds::{MOST_CODE, code, kept, seed, tidy};
use sha2::{Digest, Sha256};

#[test]
fn the_seed_is_the_documented_hash() {
    // By the definition, with the text written out.
    let hash = Sha256::digest(b"dicrotic seed 1\nphys101week3\na17\n1");
    let expected = u64::from_be_bytes(hash[..8].try_into().unwrap());
    assert_eq!(seed("phys101 week-3", " A17 ", 1), expected);
    // Vectors worked out with another program: printf 'dicrotic seed 1\nphys101week3\na17\n1' | sha256sum
    assert_eq!(seed("phys101 week-3", "A17", 1), 512_079_628_935_404_663);
    assert_eq!(seed("phys101 week-3", "A17", 2), 14_282_300_499_450_809_229);
    assert_eq!(seed("k", "", 1), 9_363_889_610_375_280_305);
}

#[test]
fn what_people_type_differently_without_meaning_it_is_the_same_code() {
    for form in ["ab-12", " AB 12", "Ab_12\n", "ab\u{2011}12", "ＡＢ－１２", "a\u{200b}b\u{a0}12"] {
        assert_eq!(tidy(form), "ab12", "{form:?}");
    }
    assert_eq!(tidy("ÉMILE"), "émile");
    assert_ne!(tidy("emile"), tidy("émile"));
    assert_ne!(seed("k", "ab", 1), seed("ka", "b", 1));
}

#[test]
fn a_long_code_is_one_code_wherever_it_is_kept_and_what_it_is_made_of_is_what_is_kept() {
    let long = "Zoë-".repeat(25);
    for typed in [
        &long[..],
        &"x".repeat(100),
        &format!("  {}  ", "A b ".repeat(40)),
        &"e\u{301}".repeat(80),
        &"İ".repeat(100),
        &"\u{1f9ea}".repeat(70),
        &format!("{}\u{feff}", "Q".repeat(59)),
        &" ".repeat(300),
        "A17",
    ] {
        let short = kept(typed);
        assert_eq!(kept(&short), short, "{typed}");
        assert_eq!(seed("k", typed, 1), seed("k", &short, 1), "{typed}");
        assert_eq!(code(typed), code(&short), "{typed}");
        assert!(code(typed).chars().count() <= MOST_CODE && short.chars().count() <= 200, "{typed}");
        assert!(typed.contains(&short), "{typed}");
    }
    assert_eq!(kept(&"x".repeat(100)).len(), 60);
    // What does not count takes no room: typed with hyphens or without, a long code is the same.
    assert_eq!(code(&long), code(&long.replace('-', " ").to_uppercase()));
    assert_eq!(code(&long), "zoë".repeat(20));
    assert_eq!(kept(" A-17 "), "A-17");
    assert_eq!(kept("A\u{202e}17\u{1b}"), "A 17");
    assert_eq!(code("A\u{202e}1\u{2066}7"), "a17");
}

#[test]
fn what_nobody_sees_makes_no_other_student() {
    // Of each range of the table its ends; Unicode Character Database, DerivedCoreProperties (Default_Ignorable_Code_Point) and
    // DerivedGeneralCategory (Cf), with characters that show at both sides of some of them.
    for c in [
        '\u{ad}',
        '\u{34f}',
        '\u{600}',
        '\u{6dd}',
        '\u{70f}',
        '\u{8e2}',
        '\u{115f}',
        '\u{1160}',
        '\u{17b4}',
        '\u{180b}',
        '\u{180e}',
        '\u{200b}',
        '\u{200d}',
        '\u{2060}',
        '\u{2065}',
        '\u{206f}',
        '\u{3164}',
        '\u{fe00}',
        '\u{fe0f}',
        '\u{feff}',
        '\u{ffa0}',
        '\u{fff9}',
        '\u{110bd}',
        '\u{1343f}',
        '\u{1bca0}',
        '\u{1d173}',
        '\u{e0001}',
        '\u{e0061}',
        '\u{e01ef}',
        '\u{fe63}',
        '\u{ff0d}',
    ] {
        assert_eq!(code(&format!("A{c}1{c}7")), "a17", "{c:?}");
        assert_eq!(seed("k", &format!("{c}A17{c}"), 1), seed("k", "A17", 1), "{c:?}");
    }
    for only in ["\u{200b}", "\u{3164}\u{34f} \u{e0020}", "\u{200d}\u{fe0f}\u{2063}"] {
        assert_eq!((kept(only).as_str(), code(only).as_str()), ("", ""), "{only:?}");
    }
    for seen in ["\u{ac}", "\u{ae}", "\u{ffa1}", "\u{1100}", "\u{3165}", "\u{fe10}", "\u{905}"] {
        assert_eq!(code(seen), seen);
    }
}

#[test]
fn a_class_of_ten_thousand_has_ten_thousand_seeds() {
    let mut seeds: Vec<u64> = (0..10_000).map(|k| seed("key", &k.to_string(), 1)).collect();
    seeds.sort_unstable();
    seeds.dedup();
    assert_eq!(seeds.len(), 10_000);
}
