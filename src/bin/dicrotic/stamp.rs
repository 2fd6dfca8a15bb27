//! Tells whether what was built is older than what it was built from, by content: a checkout or a copy changes times
//! without changing a byte.

use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::{Path, PathBuf};
use std::{fs, io};

use crate::failure::{Failure, While};

/// A hash of the names and bytes of files and folders.
///
/// It is compared only with stamps that the same program wrote, so that the hash may change from one release of the
/// standard library to the next: the worst is one needless build.
pub struct Stamp(DefaultHasher);

impl Stamp {
    /// A stamp that depends on `recipe` too: the text of the program that builds.
    pub fn new(recipe: &str) -> Self {
        let mut hasher = DefaultHasher::new();
        recipe.hash(&mut hasher);
        Self(hasher)
    }

    /// Adds `name` below `root`, a file or a folder with all that is in it. What does not exist adds only its name.
    pub fn add(&mut self, root: &Path, name: &str) -> Result<(), Failure> {
        let path = root.join(name);
        name.hash(&mut self.0);
        for file in files_below(&path).while_doing(|| format!("reading {}", path.display()))? {
            let bytes = fs::read(&file).while_doing(|| format!("reading {}", file.display()))?;
            file.strip_prefix(root).unwrap_or(&file).hash(&mut self.0);
            bytes.hash(&mut self.0);
        }
        Ok(())
    }

    /// The stamp as text.
    pub fn text(self) -> String {
        format!("{:016x}", self.0.finish())
    }
}

/// All files below `path` in a fixed order; `path` itself if it is a file; none if it does not exist.
pub fn files_below(path: &Path) -> io::Result<Vec<PathBuf>> {
    let mut files = Vec::new();
    let mut open = vec![path.to_path_buf()];
    while let Some(path) = open.pop() {
        match fs::metadata(&path) {
            Ok(what) if what.is_dir() => {
                for entry in fs::read_dir(&path)? {
                    open.push(entry?.path());
                }
            }
            Ok(_) => files.push(path),
            Err(error) if error.kind() == io::ErrorKind::NotFound => {}
            Err(error) => return Err(error),
        }
    }
    files.sort();
    Ok(files)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scratch::Scratch;

    fn stamp_of(root: &Path) -> String {
        let mut stamp = Stamp::new("recipe");
        stamp.add(root, "src").unwrap();
        stamp.add(root, "Cargo.lock").unwrap();
        stamp.text()
    }

    #[test]
    fn equal_content_has_an_equal_stamp_whatever_the_times() {
        let folder = Scratch::new("stamp-equal");
        folder.write("src/lib.rs", "one");
        let before = stamp_of(folder.path());
        folder.write("src/lib.rs", "one");
        assert_eq!(stamp_of(folder.path()), before);
    }

    #[test]
    fn each_kind_of_change_is_seen() {
        let folder = Scratch::new("stamp-change");
        folder.write("src/lib.rs", "one");
        folder.write("src/deep/er.rs", "two");
        let mut seen = vec![stamp_of(folder.path())];
        folder.write("src/deep/er.rs", "TWO");
        seen.push(stamp_of(folder.path()));
        folder.write("src/new.rs", "");
        seen.push(stamp_of(folder.path()));
        fs::remove_file(folder.path().join("src/deep/er.rs")).unwrap();
        seen.push(stamp_of(folder.path()));
        fs::rename(folder.path().join("src/new.rs"), folder.path().join("src/newer.rs")).unwrap();
        seen.push(stamp_of(folder.path()));
        folder.write("Cargo.lock", "");
        seen.push(stamp_of(folder.path()));
        let count = seen.len();
        seen.sort();
        seen.dedup();
        assert_eq!(seen.len(), count, "two different states have one stamp: {seen:?}");
    }

    #[test]
    fn another_recipe_is_another_stamp() {
        assert_ne!(Stamp::new("a").text(), Stamp::new("b").text());
    }
}
