//! Output files: complete or not there at all, and never written over somebody else's.
//!
//! In an output folder, `.tussock-outputs.json` lists what this tool wrote there, with digests. A file with one of our names
//! is replaced only while its content is on the list. Any other file belongs to somebody, be it a stranger's file of the
//! same name or a page that a user edited by hand, and stops the run before it starts.
//!
//! Everything is rendered before anything is written. Each file is written beside its final place and renamed into it. The
//! list is renewed twice: before the renames it holds the old and the new digests, after them only the new, so that a run
//! killed in between leaves a folder that the next run still recognises.
//!
//! Writers into one folder take turns (with a lock on the folder, if the system supports it; it disappears with its holder),
//! and each checks the folder again when its turn comes. The folder therefore holds the files of one run, never a mixture.

use crate::exit::{CommandFailure, failure};
use crate::interrupt::Writing;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::fs::{self, Metadata};
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};
use tempfile::{NamedTempFile, TempDir};
use tussock_ingest::digest;

/// The list of what was written.
const LIST: &str = ".tussock-outputs.json";
/// Every name that an output can have.
const NAMES: [&str; 13] = [
    "findings.json",
    "findings.geojson",
    "report.html",
    "map.png",
    "cells.parquet",
    "legs.parquet",
    "fixes.parquet",
    "pockets.gpx",
    "comparison.json",
    "comparison.html",
    "plan.html",
    "plan.png",
    "visits.html",
];

/// What is to be written.
pub(crate) struct Rendered {
    pub(crate) name: String,
    pub(crate) bytes: Vec<u8>,
}

#[derive(Debug, Default, Serialize, Deserialize)]
struct List {
    /// What wrote this list.
    tool: String,
    /// Its version.
    tool_version: String,
    /// SHA-256 of each file, hexadecimal; two while files are being replaced.
    files: BTreeMap<String, Vec<String>>,
}

/// A folder that may be written to.
#[derive(Debug)]
pub(crate) struct OutputFolder {
    path: PathBuf,
}

impl OutputFolder {
    /// Checks a folder before the work: can it be written to, is everything in it ours, is no input in the way?
    pub(crate) fn probe<'a>(
        path: &Path,
        inputs: impl IntoIterator<Item = &'a PathBuf>,
    ) -> Result<Self, CommandFailure> {
        let shown = path.display();
        if crate::inputs::is_stdin(path) {
            return Err(
                CommandFailure::told("--out: - is no folder, expected one for several files")
                    .hint("--format json writes the findings to stdout"),
            );
        }
        let is_there = match fs::metadata(path) {
            Ok(found) if found.is_dir() => true,
            Ok(_) => {
                return Err(failure!("--out: {shown} is a file, expected a folder"));
            }
            Err(error) if matches!(error.kind(), ErrorKind::NotFound | ErrorKind::NotADirectory) => false,
            Err(error) => return Err(unwritable(path, &error)),
        };
        probe_writing(path)?;
        let folder = Self {
            path: path.to_owned(),
        };
        if !is_there {
            return Ok(folder);
        }
        for input in inputs.into_iter().filter(|input| !crate::inputs::is_stdin(input)) {
            refuse_input(path, input)?;
        }
        folder.ours()?;
        Ok(folder)
    }

    /// What an earlier run wrote there and nobody has changed since.
    fn ours(&self) -> Result<BTreeMap<String, Vec<String>>, CommandFailure> {
        let list = read_list(&self.path)?;
        let mut ours = BTreeMap::new();
        for name in NAMES {
            let Some(digest) = digest_of(&self.path.join(name))? else {
                continue;
            };
            let known = list
                .files
                .get(name)
                .is_some_and(|digests| digests.contains(&digest));
            if !known {
                return Err(foreign(&self.path, name, list.files.contains_key(name)));
            }
            ours.insert(name.to_owned(), vec![digest]);
        }
        Ok(ours)
    }

    /// Writes all files, then removes those of an earlier run that this one does not make. Returns the paths in the order
    /// given.
    pub(crate) fn write(&self, rendered: &[Rendered]) -> Result<Vec<PathBuf>, CommandFailure> {
        if let Some(stray) = rendered.iter().find(|file| !NAMES.contains(&file.name.as_str())) {
            return Err(failure!(
                "{}: is no known output, nothing was written",
                stray.name
            ));
        }
        let writing = Writing::begin();
        let is_new = !self.path.exists();
        fs::create_dir_all(&self.path).map_err(|error| unwritable(&self.path, &error))?;
        let written = self.write_in_turn(rendered, &writing);
        if is_new && written.is_err() {
            // It is ours to remove, and only while it is empty.
            let _ = fs::remove_dir(&self.path);
        }
        written
    }

    fn write_in_turn(
        &self,
        rendered: &[Rendered],
        writing: &Writing,
    ) -> Result<Vec<PathBuf>, CommandFailure> {
        let _turn = turn(&self.path).map_err(|error| unwritable(&self.path, &error))?;
        // Somebody may have written here while we worked.
        let ours = self.ours()?;
        let mut files: BTreeMap<String, Vec<String>> = rendered
            .iter()
            .map(|file| (file.name.clone(), vec![digest(&file.bytes)]))
            .collect();
        let mut staged = Vec::with_capacity(rendered.len());
        for file in rendered {
            writing.go_on()?;
            staged.push((self.stage(&file.bytes)?, &file.name));
        }
        let new_list = self.stage_list(&files)?;
        for (name, digests) in &ours {
            files
                .entry(name.clone())
                .or_default()
                .extend(digests.iter().cloned());
        }
        let both_list = self.stage_list(&files)?;
        writing.go_on()?;
        self.place(both_list, LIST)?;
        let mut written = Vec::with_capacity(rendered.len());
        for (file, name) in staged {
            written.push(self.place(file, name)?);
        }
        for name in ours
            .keys()
            .filter(|name| !rendered.iter().any(|file| file.name == **name))
        {
            let path = self.path.join(name);
            fs::remove_file(&path).map_err(|error| unwritable(&path, &error))?;
        }
        self.place(new_list, LIST)?;
        // The renames are done: the files are whole, and an interrupt that arrived meanwhile may end the run now.
        writing.go_on()?;
        Ok(written)
    }

    fn stage_list(&self, files: &BTreeMap<String, Vec<String>>) -> Result<NamedTempFile, CommandFailure> {
        let list = List {
            tool: "tussock".to_owned(),
            tool_version: tussock::TOOL_VERSION.to_owned(),
            files: files.clone(),
        };
        let mut text = serde_json::to_vec_pretty(&list)
            .map_err(|error| failure!("{LIST}: cannot be rendered: {error}"))?;
        text.push(b'\n');
        self.stage(&text)
    }

    fn stage(&self, bytes: &[u8]) -> Result<NamedTempFile, CommandFailure> {
        stage(&self.path, bytes).map_err(|error| unwritable(&self.path, &error))
    }

    fn place(&self, file: NamedTempFile, name: &str) -> Result<PathBuf, CommandFailure> {
        let path = self.path.join(name);
        file.persist(&path)
            .map_err(|error| unwritable(&path, &error.error))?;
        Ok(path)
    }
}

/// One new file that is not part of an output folder; an existing file is not replaced.
#[derive(Debug)]
pub(crate) struct NewFile {
    path: PathBuf,
}

impl NewFile {
    /// Checks the place before the work.
    pub(crate) fn probe(path: &Path) -> Result<Self, CommandFailure> {
        match fs::symlink_metadata(path) {
            Ok(_) => Err(
                failure!("--out: {} exists, expected a name that is free", path.display())
                    .hint("this file is not replaced: remove it first, or choose another name"),
            ),
            Err(error) if matches!(error.kind(), ErrorKind::NotFound | ErrorKind::NotADirectory) => {
                probe_writing(&folder_of(path))?;
                Ok(Self {
                    path: path.to_owned(),
                })
            }
            Err(error) => Err(unwritable(path, &error)),
        }
    }

    pub(crate) fn path(&self) -> &Path {
        &self.path
    }
}

/// Writes new files, all or none.
pub(crate) fn write_new(files: &[(&NewFile, &[u8])]) -> Result<(), CommandFailure> {
    let writing = Writing::begin();
    let mut staged = Vec::with_capacity(files.len());
    for (file, bytes) in files {
        writing.go_on()?;
        let folder = folder_of(&file.path);
        fs::create_dir_all(&folder).map_err(|error| unwritable(&folder, &error))?;
        staged.push((
            stage(&folder, bytes).map_err(|error| unwritable(&file.path, &error))?,
            &file.path,
        ));
    }
    writing.go_on()?;
    for (file, path) in staged {
        // Somebody may have created a file of this name while we worked.
        file.persist_noclobber(path)
            .map_err(|error| unwritable(path, &error.error))?;
    }
    writing.go_on()
}

/// Waits until no other run is writing into the folder, and keeps others waiting while the lock is held. If the file system
/// has no locks, nobody waits.
#[cfg(unix)]
fn turn(folder: &Path) -> std::io::Result<Option<fs::File>> {
    let handle = fs::File::open(folder)?;
    match handle.lock() {
        Ok(()) => Ok(Some(handle)),
        Err(_) => Ok(None),
    }
}

/// Folders cannot be locked here.
#[cfg(not(unix))]
fn turn(_: &Path) -> std::io::Result<Option<fs::File>> {
    Ok(None)
}

pub(crate) fn stage(folder: &Path, bytes: &[u8]) -> std::io::Result<NamedTempFile> {
    let mut builder = tempfile::Builder::new();
    builder.prefix(".tussock-").suffix(".part");
    // A temporary file is readable by its owner only; an output follows the user's umask.
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(0o666));
    let mut file = builder.tempfile_in(folder)?;
    file.write_all(bytes)?;
    file.as_file().sync_all()?;
    Ok(file)
}

/// The folder that contains a path.
pub(crate) fn folder_of(path: &Path) -> PathBuf {
    match path.parent() {
        Some(folder) if folder != Path::new("") => folder.to_owned(),
        _ => PathBuf::from("."),
    }
}

/// Creates and removes a file in the folder, or in its nearest existing parent.
fn probe_writing(folder: &Path) -> Result<(), CommandFailure> {
    let mut nearest = folder.to_owned();
    loop {
        match fs::metadata(&nearest) {
            Ok(found) if found.is_dir() => break,
            Ok(_) => {
                return Err(failure!(
                    "--out: {} cannot be made: {} is a file, expected a folder",
                    folder.display(),
                    nearest.display()
                ));
            }
            Err(error) if matches!(error.kind(), ErrorKind::NotFound | ErrorKind::NotADirectory) => {
                nearest = folder_of(&nearest);
            }
            Err(error) => return Err(unwritable(folder, &error)),
        }
    }
    TempDir::with_prefix_in(".tussock-", &nearest)
        .and_then(TempDir::close)
        .map_err(|error| {
            failure!(
                "--out: {} cannot be written: nothing can be made in {} ({})",
                folder.display(),
                nearest.display(),
                error.kind()
            )
        })
}

fn unwritable(path: &Path, error: &std::io::Error) -> CommandFailure {
    // The error of a temporary file names its random path, so only the reason is reported.
    let reason = error.kind().to_string();
    failure!("--out: {} cannot be written: {reason}", path.display())
}

fn foreign(folder: &Path, name: &str, was_ours: bool) -> CommandFailure {
    let path = folder.join(name);
    let whose = if was_ours {
        "was changed since this tool wrote it"
    } else {
        "was not written by this tool"
    };
    failure!(
        "--out: {} {whose}, expected a folder without it; nothing was written",
        path.display()
    )
    .hint("move it away, or choose another folder")
}

fn refuse_input(folder: &Path, input: &Path) -> Result<(), CommandFailure> {
    let (Ok(folder_full), Ok(input_full)) = (folder.canonicalize(), input.canonicalize()) else {
        return Ok(());
    };
    let in_the_way = NAMES.iter().find(|name| {
        folder_full
            .join(name)
            .canonicalize()
            .is_ok_and(|path| path == input_full)
    });
    match in_the_way {
        Some(name) => Err(failure!(
            "--out: {} is an input, and {name} would be written over it; nothing was written",
            input.display()
        )
        .hint("choose another folder")),
        None => Ok(()),
    }
}

fn read_list(folder: &Path) -> Result<List, CommandFailure> {
    match fs::read(folder.join(LIST)) {
        // A list that cannot be read proves nothing, so the files count as somebody else's.
        Ok(bytes) => {
            let list: Option<List> = serde_json::from_slice(&bytes).ok();
            Ok(list.filter(|list| list.tool == "tussock").unwrap_or_default())
        }
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(List::default()),
        Err(error) => Err(unwritable(&folder.join(LIST), &error)),
    }
}

/// Digest of a plain file; `None` if there is nothing. A link or a folder gets a digest that no list contains.
fn digest_of(path: &Path) -> Result<Option<String>, CommandFailure> {
    match fs::symlink_metadata(path).as_ref().map(Metadata::is_file) {
        Ok(true) => {}
        Ok(false) => return Ok(Some(String::new())),
        Err(error) if error.kind() == ErrorKind::NotFound => return Ok(None),
        Err(error) => return Err(unwritable(path, error)),
    }
    match fs::read(path) {
        Ok(bytes) => Ok(Some(digest(&bytes))),
        Err(error) => Err(unwritable(path, &error)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rendered(files: &[(&str, &str)]) -> Vec<Rendered> {
        files
            .iter()
            .map(|(name, text)| Rendered {
                name: (*name).to_owned(),
                bytes: text.as_bytes().to_vec(),
            })
            .collect()
    }

    fn probe(folder: &Path) -> Result<OutputFolder, CommandFailure> {
        OutputFolder::probe(folder, &[])
    }

    fn names(folder: &Path) -> Vec<String> {
        let mut names: Vec<String> = fs::read_dir(folder)
            .unwrap()
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .collect();
        names.sort();
        names
    }

    #[test]
    fn a_second_run_replaces_the_files_of_the_first_and_takes_away_what_it_does_not_make() {
        let folder = TempDir::new().unwrap();
        let out = folder.path().join("new/deep");
        probe(&out)
            .unwrap()
            .write(&rendered(&[("findings.json", "1"), ("pockets.gpx", "1")]))
            .unwrap();
        assert_eq!(names(&out), [LIST, "findings.json", "pockets.gpx"]);
        probe(&out)
            .unwrap()
            .write(&rendered(&[("findings.json", "2")]))
            .unwrap();
        assert_eq!(names(&out), [LIST, "findings.json"]);
        assert_eq!(fs::read(out.join("findings.json")).unwrap(), b"2");
    }

    #[test]
    fn files_of_others_and_edited_ones_stop_the_run() {
        let folder = TempDir::new().unwrap();
        let out = folder.path();
        fs::write(out.join("notes.txt"), "no name of ours").unwrap();
        probe(out)
            .unwrap()
            .write(&rendered(&[("report.html", "page")]))
            .unwrap();
        fs::write(out.join("report.html"), "edited by hand").unwrap();
        assert!(
            matches!(probe(out), Err(CommandFailure::Told { message, .. }) if message.contains("was changed since"))
        );
        fs::remove_file(out.join("report.html")).unwrap();
        fs::write(out.join("map.png"), "a holiday picture").unwrap();
        assert!(
            matches!(probe(out), Err(CommandFailure::Told { message, .. }) if message.contains("map.png was not written by"))
        );
        assert_eq!(fs::read(out.join("map.png")).unwrap(), b"a holiday picture");
    }

    #[test]
    fn a_run_that_was_killed_between_renames_is_still_recognised() {
        let folder = TempDir::new().unwrap();
        let out = folder.path();
        probe(out)
            .unwrap()
            .write(&rendered(&[("findings.json", "1"), ("map.png", "1")]))
            .unwrap();
        // The list of both, and one of two files renamed: the state after a kill.
        let probed = probe(out).unwrap();
        let both = BTreeMap::from([
            ("findings.json".to_owned(), vec![digest(b"2"), digest(b"1")]),
            ("map.png".to_owned(), vec![digest(b"2"), digest(b"1")]),
        ]);
        probed.place(probed.stage_list(&both).unwrap(), LIST).unwrap();
        fs::write(out.join("findings.json"), "2").unwrap();
        probe(out)
            .unwrap()
            .write(&rendered(&[("findings.json", "3"), ("map.png", "3")]))
            .unwrap();
        assert_eq!(fs::read(out.join("map.png")).unwrap(), b"3");
    }

    #[test]
    fn a_link_under_one_of_our_names_is_somebody_elses() {
        let folder = TempDir::new().unwrap();
        fs::write(folder.path().join("elsewhere"), "x").unwrap();
        #[cfg(unix)]
        std::os::unix::fs::symlink(folder.path().join("elsewhere"), folder.path().join("map.png")).unwrap();
        #[cfg(unix)]
        assert!(probe(folder.path()).is_err());
    }

    #[test]
    fn probing_leaves_nothing_behind() {
        let folder = TempDir::new().unwrap();
        probe(&folder.path().join("not/yet/there")).unwrap();
        NewFile::probe(&folder.path().join("also/not/there.gpx")).unwrap();
        assert_eq!(names(folder.path()), Vec::<String>::new());
    }
}
