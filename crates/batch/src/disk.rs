//! The few things that the store asks of a disk, so that tests can make one that fills up or dies at any step.

use std::io::Write;
use std::path::{Path, PathBuf};

/// What the store asks of a disk.
pub trait Disk: Send + Sync {
    /// Makes a folder and those above it.
    ///
    /// # Errors
    /// What the system says.
    fn make_folder(&self, path: &Path) -> std::io::Result<()>;
    /// Writes a new file and waits until it lies on the disk.
    ///
    /// # Errors
    /// What the system says.
    fn write(&self, path: &Path, bytes: &[u8]) -> std::io::Result<()>;
    /// Puts a file in the place of another in one step.
    ///
    /// # Errors
    /// What the system says.
    fn rename(&self, from: &Path, to: &Path) -> std::io::Result<()>;
    /// Takes a file away.
    ///
    /// # Errors
    /// What the system says.
    fn remove(&self, path: &Path) -> std::io::Result<()>;
    /// All bytes of a file.
    ///
    /// # Errors
    /// What the system says.
    fn read(&self, path: &Path) -> std::io::Result<Vec<u8>>;
    /// Opens a file to read parts of it.
    ///
    /// # Errors
    /// What the system says.
    fn open(&self, path: &Path) -> std::io::Result<std::fs::File>;
    /// Paths directly below a folder, and whether each is a folder; nothing where there is none.
    ///
    /// # Errors
    /// What the system says.
    fn list(&self, path: &Path) -> std::io::Result<Vec<(PathBuf, bool)>>;
}

/// The disk of this machine.
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
        // The rename itself must be on the disk too; where folders cannot be opened there is nothing to wait for.
        match to.parent().map(std::fs::File::open) {
            Some(Ok(folder)) => folder.sync_all().or(Ok(())),
            _ => Ok(()),
        }
    }

    fn remove(&self, path: &Path) -> std::io::Result<()> {
        std::fs::remove_file(path)
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
