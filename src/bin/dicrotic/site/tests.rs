//! What the page is made of, and where it may be written.

use super::*;
use crate::scratch::Scratch;

fn project(name: &str) -> Scratch {
    let folder = Scratch::new(name);
    folder.write("www/index.html", "<!doctype html>");
    folder.write("www/js/main.js", "export {};");
    folder.write("www/texts/en/page.ftl", "hello = Hello\n");
    folder.write("www/js/types/view.d.ts", "export type View = {};");
    folder.write("www/.editor", "private");
    folder.write("www/.cache/x.js", "private");
    folder.write("scenarios/b.toml", "id = \"second\"\nlevel = 2\n[bench]\nid = \"no\"\n");
    folder.write(
        "scenarios/a.toml",
        "level = 1\nid = \"first\"\ntitle = \"One\"\naim = \"To see.\"\nhelp = \"alone\"\n",
    );
    folder.write("scenarios/notes.md", "not a scenario");
    folder
}

#[test]
fn the_page_has_the_hand_written_files_without_dot_files_and_a_sorted_index() {
    let folder = project("site-files");
    let files = hand_written(folder.path()).unwrap();
    let names: Vec<&str> = files.keys().map(String::as_str).collect();
    assert_eq!(
        names,
        [
            "index.html",
            "js/main.js",
            "scenarios/a.toml",
            "scenarios/b.toml",
            "scenarios/index.json",
            "texts/en.json"
        ]
    );
    assert_eq!(
        String::from_utf8_lossy(&files["scenarios/index.json"]),
        concat!(
            r#"[{"file":"a.toml","id":"first","level":1,"title":"One","aim":"To see.","help":"alone","path":true},"#,
            r#"{"file":"b.toml","id":"second","level":2,"title":"","aim":"","help":"","path":true}]"#
        )
    );
}

#[test]
fn a_script_goes_out_without_what_is_only_for_the_type_checker() {
    let source = "// @ts-check\n// Why.\n/** @import { X } from './x' */\n/**\n * What.\n * @param {X} x\n */\n\
        export const f = (x) => /** @type {X} */ (x);\n  /** @type {X} */ let y;\n/** @param {X} x */\nlet s = \"* @\";\n/** X\n * @type {X} */\n";
    let served = "\n// Why.\n\n/**\n * What.\n\n */\n\
        export const f = (x) => /** @type {X} */ (x);\n  /** @type {X} */ let y;\n\nlet s = \"* @\";\n/** X\n * @type {X} */\n";
    assert_eq!(String::from_utf8_lossy(&without_types(source.as_bytes())), served);
}

#[test]
fn the_worker_knows_every_file_and_changes_with_each_of_them() {
    let folder = project("site-version");
    folder.write("www/sw.js", "// rest");
    let build = |core: &str| {
        let mut files = hand_written(folder.path()).unwrap();
        add_cores(&mut files, Cores::from([("dicrotic_bg.wasm".into(), core.into())]));
        add_version(&mut files);
        files
    };
    let files = build("one");
    let worker = String::from_utf8(files["sw.js"].clone()).unwrap();
    assert!(worker.ends_with(";\n// rest"), "{worker}");
    let line = worker.lines().next().unwrap();
    let told = line.strip_prefix("const BUILD = ").unwrap().strip_suffix(';').unwrap();
    let told: serde_json::Value = serde_json::from_str(told).unwrap();
    let listed: Vec<&String> = told["files"].as_object().unwrap().keys().collect();
    assert_eq!(listed, files.keys().filter(|name| *name != "sw.js").collect::<Vec<_>>());
    assert_eq!(build("one")["sw.js"], files["sw.js"]);
    assert_ne!(build("two")["sw.js"], files["sw.js"]);
}

#[test]
fn a_scenario_that_cannot_be_indexed_is_named_with_its_field() {
    for (text, expected) in [
        ("level = 1", "has no `id`"),
        ("id = \"x\"", "has no `level`"),
        ("id = 3\nlevel = 1", "`id` must be text, found 3"),
        ("id = \"x\"\nlevel = 1.5", "`level` must be a whole number, found 1.5"),
        ("id = ", "not TOML"),
    ] {
        let folder = project("site-scenario");
        folder.write("scenarios/c.toml", text);
        let message = hand_written(folder.path()).unwrap_err().to_string();
        assert!(message.starts_with("scenarios/c.toml: "), "{message}");
        assert!(message.contains(expected), "{message}");
    }
}

#[test]
fn names_that_need_escapes_are_refused() {
    for name in ["a b.js", "a%2e.js", "ä.js", "a?.js"] {
        let folder = project("site-names");
        folder.write(&format!("www/{name}"), "");
        let message = hand_written(folder.path()).unwrap_err().to_string();
        assert!(message.contains(name), "{message}");
    }
}

#[test]
fn a_page_without_its_first_file_or_scenarios_is_refused() {
    let folder = project("site-incomplete");
    fs::remove_file(folder.path().join("www/index.html")).unwrap();
    assert!(hand_written(folder.path()).unwrap_err().to_string().contains("index.html"));
    folder.write("www/index.html", "");
    fs::remove_dir_all(folder.path().join("scenarios")).unwrap();
    assert!(hand_written(folder.path()).unwrap_err().to_string().contains("scenarios"));
}

#[test]
fn it_is_written_to_a_new_folder_and_over_an_earlier_build_only() {
    let folder = project("site-write");
    let root = folder.path();
    let mut files = hand_written(root).unwrap();
    add_cores(&mut files, Cores::from([("dicrotic_bg.wasm".into(), b"wasm".to_vec())]));
    let out = root.join("out/page");
    for _ in 0..2 {
        write(&files, &checked_out(root, &out).unwrap()).unwrap();
    }
    assert_eq!(fs::read(out.join("wasm/dicrotic_bg.wasm")).unwrap(), b"wasm");
    assert_eq!(fs::read(out.join("js/main.js")).unwrap(), b"export {};");

    folder.write("letters/dear.txt", "keep me");
    let message = checked_out(root, &root.join("letters")).unwrap_err().to_string();
    assert!(message.contains("not empty"), "{message}");
    let message = checked_out(root, &root.join("www/js/page")).unwrap_err().to_string();
    assert!(message.contains("www/"), "{message}");
    let message = checked_out(root, &root.join("letters/dear.txt")).unwrap_err().to_string();
    assert!(message.contains("not a folder"), "{message}");
}

#[test]
fn a_build_that_was_broken_off_can_be_built_into_again() {
    let folder = project("site-broken");
    let root = folder.path();
    let mut files = hand_written(root).unwrap();
    // The core comes last, and its folder's name is taken by a file: the build fails with all others written.
    add_cores(&mut files, Cores::from([("dicrotic_bg.wasm".into(), b"wasm".to_vec())]));
    folder.write("out/page/x", "");
    fs::remove_file(root.join("out/page/x")).unwrap();
    let out = root.join("out/page");
    let checked = checked_out(root, &out).unwrap();
    let broken: Files = files.iter().map(|(n, b)| (n.replace("wasm/", "js/main.js/"), b.clone())).collect();
    assert!(write(&broken, &checked).is_err());
    assert!(out.join("js/main.js").is_file() && !out.join("wasm").exists());
    write(&files, &checked_out(root, &out).unwrap()).unwrap();
    assert_eq!(fs::read(out.join("wasm/dicrotic_bg.wasm")).unwrap(), b"wasm");
    let left = files_below(&out).unwrap();
    assert_eq!(left.len(), files.len(), "{left:?}");
}

#[cfg(unix)]
#[test]
fn a_link_among_the_sources_is_no_other_place() {
    let folder = project("site-link");
    std::os::unix::fs::symlink(folder.path().join("www"), folder.path().join("elsewhere")).unwrap();
    let message = checked_out(folder.path(), &folder.path().join("elsewhere/page")).unwrap_err().to_string();
    assert!(message.contains("www/"), "{message}");
}

#[test]
fn an_edit_changes_the_state() {
    let folder = project("site-state");
    let before = state(folder.path());
    assert_eq!(state(folder.path()), before);
    folder.write("www/js/more.js", "");
    assert_ne!(state(folder.path()), before);
}
