//! The few operations that the store needs from a disk, so that tests can make one that fills up or fails at any step.

use std::io::Write;
use std::path::{Path, PathBuf};

/// What the store needs from a disk. Every operation fails with the system's error.
pub trait Disk: Send + Sync {
    /// Creates a folder and its parents.
    fn make_folder(&self, path: &Path) -> std::io::Result<()>;
    /// Writes a new file and waits until it is on the disk.
    fn write(&self, path: &Path, bytes: &[u8]) -> std::io::Result<()>;
    /// Replaces a file by another one in one step.
    fn rename(&self, from: &Path, to: &Path) -> std::io::Result<()>;
    /// Removes a file.
    fn remove(&self, path: &Path) -> std::io::Result<()>;
    /// Gives a file another name, or copies it if the file system has no hard links.
    fn link(&self, from: &Path, to: &Path) -> std::io::Result<()>;
    /// Makes a name lead to a folder beside it, replacing its previous target in one step.
    fn lead(&self, name: &Path, to: &Path) -> std::io::Result<()>;
    /// Removes a folder and everything in it.
    fn remove_folder(&self, path: &Path) -> std::io::Result<()>;
    /// All bytes of a file.
    fn read(&self, path: &Path) -> std::io::Result<Vec<u8>>;
    /// Opens a file for reading parts of it.
    fn open(&self, path: &Path) -> std::io::Result<std::fs::File>;
    /// Paths directly below a folder, and whether each is a folder; empty if the folder does not exist.
    fn list(&self, path: &Path) -> std::io::Result<Vec<(PathBuf, bool)>>;
}

/// The disk of this computer.
#[derive(Clone, Copy, Debug, Default)]
pub struct RealDisk;

impl Disk for RealDisk {
    fn make_folder(&self, path: &Path) -> std::io::Result<()> {
        std::fs::create_dir_all(path)
    }

    fn write(&self, path: &Path, bytes: &[u8]) -> std::io::Result<()> {
        let mut file = std::fs::File::create(path)?;
        file.write_all(bytes)?;
        file.sync_all()
    }

    fn rename(&self, from: &Path, to: &Path) -> std::io::Result<()> {
        std::fs::rename(from, to)?;
        // The rename itself must reach the disk too; if folders cannot be opened, there is nothing to wait for.
        match to.parent().map(std::fs::File::open) {
            Some(Ok(folder)) => folder.sync_all().or(Ok(())),
            _ => Ok(()),
        }
    }

    fn remove(&self, path: &Path) -> std::io::Result<()> {
        std::fs::remove_file(path)
    }

    fn link(&self, from: &Path, to: &Path) -> std::io::Result<()> {
        std::fs::hard_link(from, to).or_else(|_| std::fs::copy(from, to).map(|_| ()))
    }

    #[cfg(unix)]
    fn lead(&self, name: &Path, to: &Path) -> std::io::Result<()> {
        let part = name.with_extension("part");
        match std::fs::remove_file(&part) {
            Err(error) if error.kind() != std::io::ErrorKind::NotFound => return Err(error),
            _ => {}
        }
        std::os::unix::fs::symlink(to, &part)?;
        self.rename(&part, name)
    }

    /// Other systems allow links only to administrators; there, the newest folder is the one to read.
    #[cfg(not(unix))]
    fn lead(&self, _: &Path, _: &Path) -> std::io::Result<()> {
        Ok(())
    }

    fn remove_folder(&self, path: &Path) -> std::io::Result<()> {
        std::fs::remove_dir_all(path)
    }

    fn read(&self, path: &Path) -> std::io::Result<Vec<u8>> {
        std::fs::read(path)
    }

    fn open(&self, path: &Path) -> std::io::Result<std::fs::File> {
        std::fs::File::open(path)
    }

    fn list(&self, path: &Path) -> std::io::Result<Vec<(PathBuf, bool)>> {
        let entries = match std::fs::read_dir(path) {
            Ok(entries) => entries,
            Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Ok(Vec::new()),
            Err(error) => return Err(error),
        };
        let mut found = Vec::new();
        for entry in entries {
            let entry = entry?;
            found.push((entry.path(), entry.file_type()?.is_dir()));
        }
        found.sort();
        Ok(found)
    }
}
