//! What can prevent an output from being made?

/// An output could not be made, or a saved result could not be read.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum ReportError {
    /// The text is not JSON, or does not have the shape of findings.
    #[error("not saved findings: {message} (line {line}, column {column})")]
    NotFindings {
        /// The parser's message.
        message: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
    /// A layout that this version does not know.
    #[error(
        "findings of schema version {found}, expected {expected}; run `tussock analyse` on the log again"
    )]
    SchemaVersion {
        /// The version in the file.
        found: String,
        /// The version that this tool reads.
        expected: u32,
    },
    /// The packed squares do not unpack to what they claim to be.
    #[error("cells, column \"{column}\": {found}, expected {expected}")]
    Cells {
        /// Column, or `grid`.
        column: &'static str,
        /// What was found.
        found: String,
        /// What was expected.
        expected: String,
    },
    /// A number that JSON cannot represent.
    #[error("{field} is {value}, expected a finite number")]
    NotFinite {
        /// Path of the field.
        field: String,
        /// The value.
        value: f64,
    },
    /// The public part does not make valid findings.
    #[error("private findings cannot be made: {message}")]
    Private {
        /// What does not fit.
        message: String,
    },
    /// JSON could not be written.
    #[error("findings cannot be written as JSON")]
    Json {
        /// The cause.
        #[source]
        source: serde_json::Error,
    },
    /// Positions in local metres have no latitude and longitude.
    #[error(
        "no {file}: positions are in local metres, without geographic coordinates, expected an origin in the settings"
    )]
    NoPlaceOnEarth {
        /// The output.
        file: &'static str,
    },
    /// No squares to write or to draw.
    #[error("no {file}: the findings hold no squares, expected a cutting width in the settings")]
    NoCells {
        /// The output.
        file: &'static str,
    },
    /// GPX could not be written.
    #[error("pockets.gpx cannot be written")]
    Gpx {
        /// The cause.
        #[source]
        source: gpx::errors::GpxError,
    },
    /// No driven lines to write.
    #[error("no {file}: the findings hold no driven lines, expected a log with movement")]
    NoLines {
        /// The output.
        file: &'static str,
    },
    /// Parquet could not be written.
    #[cfg(feature = "parquet")]
    #[error("{file} cannot be written")]
    Parquet {
        /// The output.
        file: &'static str,
        /// The cause.
        #[source]
        source: parquet::errors::ParquetError,
    },
    /// The picture could not be drawn.
    #[error("map.png cannot be drawn: {message}")]
    Picture {
        /// The drawing library's message.
        message: String,
    },
    /// A width that is not allowed for a picture.
    #[error("picture of {width_px} pixels, expected {min_px} to {max_px}")]
    PictureWidth {
        /// The width asked for.
        width_px: u32,
        /// Smallest.
        min_px: u32,
        /// Largest.
        max_px: u32,
    },
    /// The page could not be filled in.
    #[error("report.html cannot be written")]
    Page {
        /// The cause.
        #[source]
        source: minijinja::Error,
    },
}
