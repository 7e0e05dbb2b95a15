//! The few things that the store asks of a disk, so that tests can make one that fills up or dies at any step.

use std::io::Write;
use std::path::{Path, PathBuf};

/// What the store asks of a disk. Each of it fails with what the system says.
pub trait Disk: Send + Sync {
    /// Makes a folder and those above it.
    fn make_folder(&self, path: &Path) -> std::io::Result<()>;
    /// Writes a new file and waits until it lies on the disk.
    fn write(&self, path: &Path, bytes: &[u8]) -> std::io::Result<()>;
    /// Puts a file in the place of another in one step.
    fn rename(&self, from: &Path, to: &Path) -> std::io::Result<()>;
    /// Takes a file away.
    fn remove(&self, path: &Path) -> std::io::Result<()>;
    /// Gives a file another name, or copies it where a file system gives none.
    fn link(&self, from: &Path, to: &Path) -> std::io::Result<()>;
    /// Lets a name lead to a folder beside it, in one step in the place of where it led before.
    fn lead(&self, name: &Path, to: &Path) -> std::io::Result<()>;
    /// Takes a folder away with all that is in it.
    fn remove_folder(&self, path: &Path) -> std::io::Result<()>;
    /// All bytes of a file.
    fn read(&self, path: &Path) -> std::io::Result<Vec<u8>>;
    /// Opens a file to read parts of it.
    fn open(&self, path: &Path) -> std::io::Result<std::fs::File>;
    /// Paths directly below a folder, and whether each is a folder; nothing where there is none.
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

    /// Other systems give links to administrators only: there the newest folder is the one to read.
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
