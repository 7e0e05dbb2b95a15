//! Where the logs lie: a folder, or a bucket behind the `s3` feature.
//!
//! Failed requests are tried again, each time after twice the pause; objects that do not exist are not requested again. A
//! folder is read by the standard library, so the plain build contains no runtime, no HTTP and no TLS.

use crate::BatchError;
use serde::{Deserialize, Serialize};
use std::io::{Error, ErrorKind};
use std::path::{Path, PathBuf};
use std::time::Duration;

/// Attempts per request. If one request in ten fails, one in a million is given up.
const TRIES: u32 = 6;
const FIRST_PAUSE: Duration = Duration::from_millis(20);

/// An object in the bucket.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SeenFile {
    /// Path below the place.
    pub path: String,
    /// Bytes as stored.
    pub bytes: u64,
    /// When it was last written, milliseconds since 1970.
    pub modified_unix_ms: i64,
}

/// Names directly below a path: folders, and files.
pub type Listed = (Vec<String>, Vec<SeenFile>);

/// Something that can be listed and read, once per call; the caller tries again.
pub trait Objects: Send + Sync {
    /// All bytes of an object.
    ///
    /// # Errors
    /// The error of the place; `NotFound` if the object does not exist.
    fn read(&self, path: &str) -> std::io::Result<Vec<u8>>;
    /// What is directly below a path; nothing if there is no such folder.
    ///
    /// # Errors
    /// The error of the place.
    fn list(&self, path: &str) -> std::io::Result<Listed>;
}

/// How far a place reaches. Someone who may add a line to `gardens.toml` or a link among the logs need not be allowed to
/// read this computer's files.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum PlaceReach {
    /// Only what is inside it, once all links are followed.
    #[default]
    Inside,
    /// Wherever paths and links lead, because operators keep logs on other disks.
    Anywhere,
}

/// A folder of this machine.
pub struct Folder {
    path: PathBuf,
    reach: PlaceReach,
}

impl Folder {
    /// By its path.
    pub const fn new(path: PathBuf, reach: PlaceReach) -> Self {
        Self { path, reach }
    }

    /// The real path of an object.
    fn real(&self, path: &str) -> std::io::Result<PathBuf> {
        let real = self.path.join(path).canonicalize()?;
        if self.reach == PlaceReach::Inside && !real.starts_with(self.path.canonicalize()?) {
            return Err(Error::new(
                ErrorKind::PermissionDenied,
                "leads out of the folder of the gardens (expected something inside; --allow-outside lets it)",
            ));
        }
        Ok(real)
    }
}

impl Objects for Folder {
    fn read(&self, path: &str) -> std::io::Result<Vec<u8>> {
        std::fs::read(self.real(path)?)
    }

    fn list(&self, path: &str) -> std::io::Result<Listed> {
        let entries = match self.real(path).and_then(std::fs::read_dir) {
            Ok(entries) => entries,
            Err(error) if error.kind() == ErrorKind::NotFound => return Ok((Vec::new(), Vec::new())),
            Err(error) => return Err(error),
        };
        let (mut folders, mut files) = (Vec::new(), Vec::new());
        for entry in entries {
            let entry = entry?;
            let name = entry
                .file_name()
                .into_string()
                .map_err(|name| Error::new(ErrorKind::InvalidData, format!("name {name:?} is not UTF-8")))?;
            let below = if path.is_empty() {
                name
            } else {
                format!("{path}/{name}")
            };
            // A link is listed as its target; if that is outside, it cannot be read.
            let about = match std::fs::metadata(entry.path()) {
                Ok(about) => about,
                // It disappeared between listing and looking.
                Err(error) if error.kind() == ErrorKind::NotFound => continue,
                Err(error) => return Err(error),
            };
            if about.is_dir() {
                folders.push(below);
                continue;
            }
            let modified = about.modified()?;
            let since = modified.duration_since(std::time::UNIX_EPOCH).unwrap_or_default();
            files.push(SeenFile {
                path: below,
                bytes: about.len(),
                modified_unix_ms: i64::try_from(since.as_millis()).unwrap_or(i64::MAX),
            });
        }
        Ok((folders, files))
    }
}

/// A place that can be listed and read.
pub struct Bucket {
    place: String,
    reach: PlaceReach,
    objects: Box<dyn Objects>,
}

impl Bucket {
    /// Opens a folder, or `s3://bucket/folder` if the `s3` feature is built in (keys, region and endpoint come from the
    /// usual `AWS_` variables).
    ///
    /// # Errors
    /// If there is no such place, or this build does not know its kind.
    pub fn open(place: &str, reach: PlaceReach) -> Result<Self, BatchError> {
        let wrong = |why: String| BatchError::Place {
            place: place.to_owned(),
            why,
        };
        if let Some((kind, _)) = place.split_once("://") {
            return match kind {
                "s3" => Self::open_s3(place),
                _ => Err(wrong(format!(
                    "{kind} is no kind of place, expected a folder or s3://bucket/folder"
                ))),
            };
        }
        if !Path::new(place).is_dir() {
            return Err(wrong(
                "is no folder, expected the folder of the gardens".to_owned(),
            ));
        }
        let folder = Folder::new(PathBuf::from(place), reach);
        Ok(Self {
            reach,
            ..Self::over(place, Box::new(folder))
        })
    }

    #[cfg(feature = "s3")]
    fn open_s3(place: &str) -> Result<Self, BatchError> {
        Ok(Self::over(place, Box::new(crate::s3::S3::open(place)?)))
    }

    #[cfg(not(feature = "s3"))]
    fn open_s3(place: &str) -> Result<Self, BatchError> {
        Err(BatchError::Place {
            place: place.to_owned(),
            why: "this build reads folders only, expected one built with the feature s3".to_owned(),
        })
    }

    /// Any other place.
    pub fn over(place: &str, objects: Box<dyn Objects>) -> Self {
        Self {
            place: place.to_owned(),
            reach: PlaceReach::Inside,
            objects,
        }
    }

    /// How far it reaches.
    pub const fn reach(&self) -> PlaceReach {
        self.reach
    }

    /// As it was given.
    pub fn place(&self) -> &str {
        &self.place
    }

    fn tried<T>(
        &self,
        path: &str,
        what: &'static str,
        request: impl Fn() -> std::io::Result<T>,
    ) -> Result<T, BatchError> {
        let mut pause = FIRST_PAUSE;
        let mut tries = 1;
        loop {
            match request() {
                Ok(answer) => return Ok(answer),
                // These two are passed on unchanged.
                Err(source)
                    if tries == TRIES
                        || matches!(source.kind(), ErrorKind::NotFound | ErrorKind::PermissionDenied) =>
                {
                    return Err(BatchError::Bucket {
                        place: path.to_owned(),
                        what,
                        source,
                    });
                }
                Err(_) => {
                    std::thread::sleep(pause);
                    pause *= 2;
                    tries += 1;
                }
            }
        }
    }

    /// All bytes of an object.
    ///
    /// # Errors
    /// If it does not exist, or cannot be read after several attempts.
    pub fn read(&self, path: &str) -> Result<Vec<u8>, BatchError> {
        self.tried(path, "read", || self.objects.read(path))
    }

    /// Names directly below a path, in order: folders, and files.
    ///
    /// # Errors
    /// If it cannot be listed after several attempts.
    pub fn list(&self, path: &str) -> Result<Listed, BatchError> {
        let (mut folders, mut files) = self.tried(path, "listed", || self.objects.list(path))?;
        folders.sort();
        files.sort_by(|a, b| a.path.cmp(&b.path));
        Ok((folders, files))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::atomic::{AtomicUsize, Ordering};

    /// A place where one request in ten fails, in an irregular pattern.
    struct Shaky(Folder, AtomicUsize);

    impl Shaky {
        fn fails(&self) -> std::io::Result<()> {
            let request = self.1.fetch_add(1, Ordering::SeqCst);
            if request.wrapping_mul(2_654_435_761).is_multiple_of(10) {
                return Err(Error::from(ErrorKind::ConnectionReset));
            }
            Ok(())
        }
    }

    impl Objects for Shaky {
        fn read(&self, path: &str) -> std::io::Result<Vec<u8>> {
            self.fails()?;
            self.0.read(path)
        }
        fn list(&self, path: &str) -> std::io::Result<Listed> {
            self.fails()?;
            self.0.list(path)
        }
    }

    #[cfg(unix)]
    #[test]
    fn what_lies_outside_of_a_folder_is_read_only_where_that_is_wanted() {
        let (folder, other) = (
            tempfile::TempDir::new().unwrap(),
            tempfile::TempDir::new().unwrap(),
        );
        let here = folder.path().join("gardens");
        std::fs::create_dir_all(here.join("g/logs")).unwrap();
        std::fs::write(here.join("g/logs/own"), "own").unwrap();
        std::fs::write(folder.path().join("beside"), "secret").unwrap();
        std::fs::write(other.path().join("far"), "secret").unwrap();
        let link = |to: &Path, name: &str| std::os::unix::fs::symlink(to, here.join(name)).unwrap();
        link(&other.path().join("far"), "g/logs/link");
        link(Path::new("../../../beside"), "g/logs/above");
        link(other.path(), "g/away");
        link(Path::new("g"), "twin");
        link(Path::new("nowhere"), "g/logs/dangling");
        let absolute = other.path().join("far").display().to_string();
        // The place itself may be reached by a link.
        let by_link = folder.path().join("by-link");
        std::os::unix::fs::symlink(&here, &by_link).unwrap();
        for place in [&here, &by_link] {
            let open = |reach| Bucket::open(place.to_str().unwrap(), reach).unwrap();
            let (inside, anywhere) = (open(PlaceReach::Inside), open(PlaceReach::Anywhere));
            for path in [
                "g/logs/link",
                "g/logs/above",
                "g/away/far",
                "../beside",
                "g/../../beside",
                &absolute,
            ] {
                let refused = inside.read(path);
                assert!(
                    matches!(&refused, Err(BatchError::Bucket { source, .. }) if source.kind() == ErrorKind::PermissionDenied),
                    "{path}: {refused:?}"
                );
                assert_eq!(anywhere.read(path).unwrap(), b"secret", "{path}");
            }
            for path in ["g/away", "..", other.path().to_str().unwrap()] {
                assert!(inside.list(path).is_err(), "{path}");
                assert!(!anywhere.list(path).unwrap().1.is_empty(), "{path}");
            }
            for path in ["g/logs/own", "twin/logs/own", "g/../g/logs/own"] {
                assert_eq!(inside.read(path).unwrap(), b"own", "{path}");
            }
            assert_eq!(inside.list("twin/logs").unwrap().1.len(), 3);
            assert!(inside.list("nowhere").unwrap().1.is_empty());
        }
    }

    #[test]
    fn a_place_where_one_request_in_ten_fails_loses_nothing() {
        let folder = tempfile::TempDir::new().unwrap();
        std::fs::create_dir_all(folder.path().join("g/logs")).unwrap();
        for number in 0..100 {
            std::fs::write(
                folder.path().join(format!("g/logs/{number:03}")),
                format!("log {number}"),
            )
            .unwrap();
        }
        let shaky = Shaky(
            Folder::new(folder.path().to_owned(), PlaceReach::Inside),
            AtomicUsize::new(0),
        );
        let bucket = Bucket::over("shaky", Box::new(shaky));
        assert_eq!(bucket.list("").unwrap().0, ["g"]);
        let (_, files) = bucket.list("g/logs").unwrap();
        assert_eq!(files.len(), 100);
        for (number, file) in files.iter().enumerate() {
            assert_eq!(
                bucket.read(&file.path).unwrap(),
                format!("log {number}").into_bytes()
            );
        }
        assert!(bucket.list("nowhere").unwrap().1.is_empty());
        assert!(
            matches!(bucket.read("g/none"), Err(BatchError::Bucket { source, .. }) if source.kind() == ErrorKind::NotFound)
        );
        assert!(Bucket::open("ftp://x", PlaceReach::Inside).is_err());
    }
}
