//! Builds the core for the browser: cargo compiles the library to WebAssembly, wasm-bindgen's library writes the
//! JavaScript that loads it. Nothing but the Rust tool chain is needed, so that `cargo run` is all one types.

use std::collections::BTreeMap;
use std::ffi::OsString;
use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use crate::failure::{Failure, While};
use crate::stamp::Stamp;
use crate::{project, terminal};

const TARGET: &str = "wasm32-unknown-unknown";

/// The cores by name, and the features of the crate that each has beside none: what every visit needs, and all there is,
/// which the page loads when a visit wants more than that. See `src/web/desk.rs`.
const CORES: [(&str, &str); 2] = [("dicrotic", ""), ("dicrotic_desk", "desk")];

/// The files that the page loads from its folder `wasm`, by name: of each core the loader, an ES module, and the core.
pub type Cores = BTreeMap<String, Vec<u8>>;

/// The cores built from the sources in `root` as they are now; taken from the last build if they have not changed.
/// Progress goes to the standard error stream.
pub fn up_to_date(root: &Path) -> Result<Cores, Failure> {
    let folder = project::target_folder(root).join("page");
    fs::create_dir_all(&folder).while_doing(|| format!("making the folder {}", folder.display()))?;
    // Two servers may start at once; the second waits here and then finds the first one's build.
    let lock_file = folder.join("lock");
    let lock = File::create(&lock_file).while_doing(|| format!("making {}", lock_file.display()))?;
    lock.lock().while_doing(|| format!("locking {}", lock_file.display()))?;

    let now = stamp_of_sources(root)?;
    let stamp_file = folder.join("stamp");
    if fs::read_to_string(&stamp_file).is_ok_and(|stamp| stamp == now)
        && let Ok(cores) = read(&folder)
    {
        return Ok(cores);
    }
    // Without a stamp, a build that is broken off half way counts as none.
    let _ = fs::remove_file(&stamp_file);
    require_target(root)?;
    terminal::say("building the page's core; the first time takes about a minute");
    for (name, features) in CORES {
        // Cargo gives both files the same name, so that each is taken up before the next is made.
        bind(&compile(root, features)?, name, &folder)?;
    }
    fs::write(&stamp_file, now).while_doing(|| format!("writing {}", stamp_file.display()))?;
    read(&folder)
}

/// The host's own sources are left out: they do not go into the core. Only the recipe, this file, does.
fn stamp_of_sources(root: &Path) -> Result<String, Failure> {
    let mut stamp = Stamp::new(include_str!("wasm.rs"));
    let src = root.join("src");
    let mut names = Vec::new();
    for entry in fs::read_dir(&src).while_doing(|| format!("reading {}", src.display()))? {
        let entry = entry.while_doing(|| format!("reading {}", src.display()))?;
        if entry.file_name() != "bin" {
            names.push(format!("src/{}", entry.file_name().to_string_lossy()));
        }
    }
    names.sort();
    names.extend(["Cargo.toml", "Cargo.lock", "rust-toolchain.toml"].map(String::from));
    for name in names {
        stamp.add(root, &name)?;
    }
    Ok(stamp.text())
}

fn read(folder: &Path) -> Result<Cores, Failure> {
    let names = CORES.iter().flat_map(|(name, _)| [format!("{name}.js"), format!("{name}_bg.wasm")]);
    let file = |name: String| {
        let path = folder.join(&name);
        let bytes = fs::read(&path).while_doing(|| format!("reading {}", path.display()))?;
        Ok((name, bytes))
    };
    names.map(file).collect()
}

fn tool(variable: &str, name: &str) -> OsString {
    std::env::var_os(variable).filter(|path| !path.is_empty()).unwrap_or_else(|| name.into())
}

/// Compiles the library with some features and returns the path of the `.wasm` file.
fn compile(root: &Path, features: &str) -> Result<PathBuf, Failure> {
    // The crate has no crate-type of its own, because "cdylib" beside "rlib" there turns link-time optimisation off.
    // The empty flags override a person's own, from the environment or from cargo's configuration: flags that are
    // meant for their processor break this target.
    let output = Command::new(tool("CARGO", "cargo"))
        .current_dir(root)
        .args([
            "rustc",
            "--lib",
            "--crate-type",
            "cdylib",
            "--profile",
            "wasm",
            "--target",
            TARGET,
            "--locked",
            "--no-default-features",
            "--features",
            features,
        ])
        .args(["--message-format", "json-render-diagnostics"])
        .env_remove("RUSTFLAGS")
        .env("CARGO_ENCODED_RUSTFLAGS", "")
        .stdin(Stdio::null())
        .stderr(Stdio::inherit())
        .output()
        .while_doing(|| "running cargo, which builds the page's core".into())?;
    if !output.status.success() {
        return Err(Failure::new("the page's core could not be built; cargo's messages above say why"));
    }
    artifact(&String::from_utf8_lossy(&output.stdout))
        .ok_or_else(|| Failure::new("cargo built the page's core, but named no .wasm file"))
}

/// The `.wasm` file that cargo's machine-readable messages name.
fn artifact(messages: &str) -> Option<PathBuf> {
    messages
        .lines()
        .filter_map(|line| serde_json::from_str::<serde_json::Value>(line).ok())
        .filter(|message| message["reason"] == "compiler-artifact" && message["target"]["name"] == "dicrotic")
        .filter_map(|message| {
            message["filenames"]
                .as_array()?
                .iter()
                .filter_map(|name| name.as_str())
                .find(|name| name.ends_with(".wasm"))
                .map(PathBuf::from)
        })
        .next_back()
}

/// Brings the target where it is missing: rustup reads rust-toolchain.toml when it installs a tool chain, but adds nothing to
/// one that is already there.
fn require_target(root: &Path) -> Result<(), Failure> {
    if has_target(root)? {
        return Ok(());
    }
    terminal::say(&format!(
        "this Rust tool chain has no {TARGET} target, which the page needs; asking rustup for it"
    ));
    let added = Command::new("rustup")
        .current_dir(root)
        .args(["target", "add", TARGET])
        .stdin(Stdio::null())
        .status()
        .is_ok_and(|status| status.success());
    // Rustup may have added it to another tool chain than the one that will be asked.
    if added && has_target(root)? {
        return Ok(());
    }
    Err(Failure::new(format!(
        "this Rust tool chain has no {TARGET} target, which the page needs, and rustup could not add it. \
         Run `rustup target add {TARGET}` in {}",
        root.display()
    )))
}

fn has_target(root: &Path) -> Result<bool, Failure> {
    let output = Command::new(tool("RUSTC", "rustc"))
        .current_dir(root)
        .args(["--print", "target-libdir", "--target", TARGET])
        .stdin(Stdio::null())
        .output()
        .while_doing(|| "running rustc, to see whether it can build the page's core".into())?;
    let folder = String::from_utf8_lossy(&output.stdout).trim().to_string();
    Ok(output.status.success() && Path::new(&folder).is_dir())
}

fn bind(wasm: &Path, name: &str, folder: &Path) -> Result<(), Failure> {
    let mut bindgen = wasm_bindgen_cli_support::Bindgen::new();
    bindgen
        .web(true)
        .and_then(|bindgen| {
            bindgen
                .input_path(wasm)
                .out_name(name)
                // Declarations of what the core offers, for checking the page's scripts; no part of the page.
                .typescript(true)
                // `init()` without an argument finds the .wasm file beside the loader.
                .omit_default_module_path(false)
                .remove_name_section(true)
                .remove_producers_section(true)
                .generate(folder)
        })
        // The alternate form has the chain of causes in one line.
        .map_err(|error| Failure::new(format!("writing the loader of the page's core: {error:#}")))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scratch::Scratch;

    fn project() -> Scratch {
        let folder = Scratch::new("wasm-stamp");
        folder.write("src/lib.rs", "//! Nothing.");
        folder.write("src/bin/dicrotic/main.rs", "fn main() {}");
        folder.write("Cargo.toml", "");
        folder
    }

    #[test]
    fn the_core_is_stale_after_an_edit_of_the_core_but_not_of_the_host() {
        let folder = project();
        let first = stamp_of_sources(folder.path()).unwrap();
        folder.write("src/bin/dicrotic/main.rs", "fn main() { }");
        assert_eq!(stamp_of_sources(folder.path()).unwrap(), first);
        folder.write("src/lib.rs", "//! Something.");
        let second = stamp_of_sources(folder.path()).unwrap();
        assert_ne!(second, first);
        folder.write("Cargo.lock", "");
        assert_ne!(stamp_of_sources(folder.path()).unwrap(), second);
    }

    #[test]
    fn the_artifact_is_the_librarys_wasm_file() {
        let messages = r#"{"reason":"compiler-artifact","target":{"name":"libm"},"filenames":["/t/liblibm.rlib"]}
            {"reason":"compiler-artifact","target":{"name":"dicrotic"},"filenames":["/t/dicrotic.d","/t/dicrotic.wasm"]}
            {"reason":"build-finished","success":true}"#;
        let messages: String = messages.lines().map(|line| format!("{}\n", line.trim())).collect();
        assert_eq!(artifact(&messages), Some(PathBuf::from("/t/dicrotic.wasm")));
        assert_eq!(artifact("{\"reason\":\"build-finished\"}\nnot JSON\n"), None);
    }
}
