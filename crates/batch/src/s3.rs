//! Buckets that speak the S3 interface.

use crate::BatchError;
use crate::bucket::{Listed, Objects, SeenFile};
use object_store::path::Path as ObjectPath;
use object_store::{ObjectStore, ObjectStoreExt};
use std::io::{Error, ErrorKind};

/// A folder of a bucket.
pub(crate) struct S3 {
    store: object_store::aws::AmazonS3,
    prefix: ObjectPath,
    runtime: tokio::runtime::Runtime,
}

impl S3 {
    /// Opens `s3://bucket/folder`.
    pub(crate) fn open(place: &str) -> Result<Self, BatchError> {
        let wrong = |why: String| BatchError::Place {
            place: place.to_owned(),
            why,
        };
        let store = object_store::aws::AmazonS3Builder::from_env()
            .with_url(place)
            .build()
            .map_err(|error| wrong(format!("cannot be opened: {error}")))?;
        let below = place
            .trim_start_matches("s3://")
            .split_once('/')
            .map_or("", |(_, below)| below);
        let runtime = tokio::runtime::Builder::new_current_thread()
            .enable_all()
            .build()
            .map_err(|error| wrong(format!("cannot be waited for: {error}")))?;
        Ok(Self {
            store,
            prefix: ObjectPath::parse(below).map_err(|error| wrong(format!("is no path: {error}")))?,
            runtime,
        })
    }

    fn full(&self, path: &str) -> std::io::Result<ObjectPath> {
        let below = ObjectPath::parse(path).map_err(|error| Error::new(ErrorKind::InvalidInput, error))?;
        Ok(self.prefix.parts().chain(below.parts()).collect())
    }

    fn short(&self, full: &ObjectPath) -> String {
        match full.prefix_match(&self.prefix) {
            Some(parts) => parts.collect::<ObjectPath>().to_string(),
            None => full.to_string(),
        }
    }
}

fn told(error: object_store::Error) -> Error {
    match error {
        object_store::Error::NotFound { .. } => Error::new(ErrorKind::NotFound, error),
        error => Error::other(error),
    }
}

impl Objects for S3 {
    fn read(&self, path: &str) -> std::io::Result<Vec<u8>> {
        let full = self.full(path)?;
        self.runtime
            .block_on(async { self.store.get(&full).await?.bytes().await })
            .map(|bytes| bytes.to_vec())
            .map_err(told)
    }

    fn list(&self, path: &str) -> std::io::Result<Listed> {
        let full = self.full(path)?;
        let listed = self
            .runtime
            .block_on(self.store.list_with_delimiter(Some(&full)))
            .map_err(told)?;
        let folders = listed
            .common_prefixes
            .iter()
            .map(|folder| self.short(folder))
            .collect();
        let found = |object: object_store::ObjectMeta| SeenFile {
            path: self.short(&object.location),
            bytes: object.size,
            modified_unix_ms: object.last_modified.timestamp_millis(),
        };
        Ok((folders, listed.objects.into_iter().map(found).collect()))
    }
}
