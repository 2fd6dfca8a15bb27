//! `pack` with a page that was built before: it is read as its own list names it, guarded as everything that others give.

#![cfg(unix)]

mod command;

use command::{SCENARIO, dicrotic, error_of, scratch, told, written};
use std::fs;
use std::os::unix::fs::symlink;
use std::path::{Path, PathBuf};
use std::process::Command;

/// A small page: the first file of ours, and two beside it.
fn page(name: &str) -> PathBuf {
    let folder = scratch(name);
    fs::create_dir(folder.join("js")).unwrap();
    let index = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("www/index.html")).unwrap();
    written(&folder, "index.html", index);
    written(&folder.join("js"), "main.js", "// here");
    written(&folder, "sw.js", "// the worker");
    written(&folder, "files.json", "[\"index.html\", \"js/main.js\"]");
    folder
}

#[test]
fn a_built_page_is_packed_as_it_is_without_a_compiler() {
    let folder = page("pack-built");
    let here = scratch("pack-here");
    let (scenario, to) = (written(&here, "a.toml", SCENARIO), here.join("a.zip"));
    let [page, to] = [&folder, &to].map(|path| path.to_str().unwrap());
    let mut pack = dicrotic(&["pack", &scenario, "--to", to, "--page", page]);
    // A compiler that is not there, so that nobody could call it.
    pack.env("CARGO", "/nowhere/cargo").env("PATH", "/nowhere");
    let output = pack.output().unwrap();
    assert!(output.status.success(), "{output:?}");
    assert_eq!(String::from_utf8(output.stderr).unwrap(), "", "nothing is made, so nothing is told");
    let bytes = fs::read(to).unwrap();
    for (name, there) in [
        ("js/main.js", true),
        ("imsmanifest.xml", true),
        ("scenarios/assignment.toml", true),
        ("sw.js", false),
    ] {
        let found = bytes.windows(name.len()).any(|at| at == name.as_bytes());
        assert_eq!(found, there, "{name}");
    }
    // Nothing of the page is written over.
    let own =
        error_of(&mut dicrotic(&["pack", &scenario, "--to", &format!("{page}/index.html"), "--page", page]));
    assert!(own.contains("index.html") && own.contains("is read"), "{own}");
    // Nor beside it: what is in that folder is the page, and is put up with it.
    fs::create_dir(folder.join("deep")).unwrap();
    symlink(folder.join("deep"), here.join("in")).unwrap();
    for inside in [folder.join("a.zip"), folder.join("deep/../js/a.html"), here.join("in/a.zip")] {
        let told =
            error_of(&mut dicrotic(&["pack", &scenario, "--to", inside.to_str().unwrap(), "--page", page]));
        assert!(told.contains("--to ") && told.contains("in the folder of the page"), "{told}");
        assert!(!inside.exists(), "{told}");
    }
}

#[test]
fn what_is_no_built_page_is_refused_in_words() {
    let here = scratch("pack-refused");
    let scenario = written(&here, "a.toml", SCENARIO);
    let to = here.join("a.zip");
    let pack = |page: &Path| {
        let words = ["pack", &scenario, "--to", to.to_str().unwrap(), "--page", page.to_str().unwrap()];
        let error = error_of(&mut dicrotic(&words));
        assert!(error.contains("--page ") && !to.exists(), "{error}");
        error
    };
    assert!(pack(&here).contains("`dicrotic build --out FOLDER` makes one"));
    assert!(pack(&here.join("gone")).contains("gone"));
    let listed = |list: &str| {
        let folder = page("pack-listed");
        written(&folder, "files.json", list);
        pack(&folder)
    };
    assert!(listed("{}").contains("files.json is no list"));
    assert!(listed("[\"index.html\", \"js/gone.js\"]").contains("js/gone.js"));
    assert!(listed("[\"../pack-refused/a.toml\"]").contains("leads out of the folder"));
    assert!(listed("[\"/etc/hostname\"]").contains("leads out of the folder"));
    let folder = page("pack-pipe");
    assert!(Command::new("mkfifo").arg(folder.join("pipe.js")).status().unwrap().success());
    symlink("/dev/zero", folder.join("zero.js")).unwrap();
    written(&folder, "files.json", "[\"pipe.js\"]");
    assert!(pack(&folder).contains("a pipe"));
    written(&folder, "files.json", "[\"zero.js\"]");
    assert!(pack(&folder).contains("leads out"));
    written(&folder, ".dicrotic-unfinished", "");
    assert!(pack(&folder).contains("unfinished"));
    // The help tells of both ways.
    let help = told(&mut dicrotic(&["pack", "--help"]));
    assert!(help.contains("--page <FOLDER>") && help.contains("built"), "{help}");
}
