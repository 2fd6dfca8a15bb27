//! A folder for one unit test, gone when the test ends.

use std::fs;
use std::path::{Path, PathBuf};

/// The folder.
pub struct Scratch(PathBuf);

impl Scratch {
    /// An empty folder of this process, told from other tests' by `name`.
    pub fn new(name: &str) -> Self {
        let path = std::env::temp_dir().join(format!("dicrotic-{}-{name}", std::process::id()));
        let _ = fs::remove_dir_all(&path);
        fs::create_dir_all(&path).unwrap();
        Self(path)
    }

    /// Where it is.
    pub fn path(&self) -> &Path {
        &self.0
    }

    /// Writes a file below it, with the folders that it needs.
    pub fn write(&self, name: &str, text: &str) {
        let path = self.0.join(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    }
}

impl Drop for Scratch {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}
