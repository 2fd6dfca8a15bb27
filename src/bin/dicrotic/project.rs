//! Where the project's sources are. The page and its WebAssembly are built from them on the person's own machine.

use std::path::{Path, PathBuf};

use crate::failure::Failure;

/// The folder that this program was compiled from, if it is still there.
pub fn root() -> Result<PathBuf, Failure> {
    checked_root(Path::new(env!("CARGO_MANIFEST_DIR")))
}

fn checked_root(folder: &Path) -> Result<PathBuf, Failure> {
    for needed in ["Cargo.toml", "Cargo.lock", "src/lib.rs"] {
        if !folder.join(needed).is_file() {
            return Err(Failure::new(format!(
                "the project's folder {} is gone or incomplete: it has no {needed}. \
                 Run `cargo run` in the folder where the project is now",
                folder.display()
            )));
        }
    }
    Ok(folder.to_path_buf())
}

/// The folder for what is built: cargo's, if it was told one, else `target` in the project.
pub fn target_folder(root: &Path) -> PathBuf {
    match std::env::var_os("CARGO_TARGET_DIR") {
        Some(folder) if !folder.is_empty() => root.join(folder),
        _ => root.join("target"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_project_is_where_it_was_compiled() {
        assert!(root().unwrap().join("src/bin/dicrotic/project.rs").is_file());
    }

    #[test]
    fn a_project_that_was_moved_away_is_named() {
        let message = checked_root(Path::new("/nowhere/dicrotic")).unwrap_err().to_string();
        assert!(message.contains("/nowhere/dicrotic"), "{message}");
        assert!(message.contains("Cargo.toml"), "{message}");
    }
}
