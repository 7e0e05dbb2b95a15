//! Arguments as typed. Nothing is checked here but their shape; see [`crate::wishes`].

use clap::{Args, Parser, Subcommand, ValueEnum};
use std::path::PathBuf;
use tussock_types::{Language, Units};

const TOP_EXAMPLES: &str = "\
Examples:
  tussock inspect night.nmea
  tussock analyse night.gpx --cut-width 22cm
  tussock analyse *.gpx --plan garden.geojson --settings garden.toml --out result
  tussock plan from-walk walk.gpx --out garden.geojson

Exit codes:
  0    done
  1    done, but a threshold that you set was missed
  2    wrong use, or something failed
  130  interrupted

Data goes to stdout, everything else to stderr. NO_COLOR is respected.";

/// Finds the grass that an autonomous mower leaves standing.
#[derive(Debug, Parser)]
#[command(name = "tussock", version, about, after_help = TOP_EXAMPLES, disable_help_subcommand = true)]
pub(crate) struct Arguments {
    #[command(subcommand)]
    pub(crate) command: Command,
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    Inspect(InspectArguments),
    Analyse(AnalyseArguments),
    Compare(CompareArguments),
    #[command(subcommand)]
    Plan(PlanCommand),
    Ask(AskArguments),
    Visits(VisitsArguments),
    Report(ReportArguments),
    #[command(subcommand)]
    Batch(BatchCommand),
    Simulate(Box<SimulateArguments>),
}

/// Output format.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub(crate) enum Format {
    /// Text for people.
    #[default]
    Human,
    /// JSON for programs.
    Json,
}

/// In which language and units it is said.
#[derive(Clone, Copy, Debug, Args)]
pub(crate) struct VoiceArguments {
    /// Language of page and terminal: en, de, fr, es, it, nl, sv or pl
    ///
    /// Without it the page is in the language of garden.language in the settings, else in English, and the terminal in that of LC_ALL,
    /// LC_MESSAGES or LANG. Errors, help and files for programs are in English.
    #[arg(long, value_name = "LANGUAGE", value_parser = language)]
    pub(crate) language: Option<Language>,

    /// Units of page and terminal: metric or imperial [default: garden.units of the settings, else metric]
    ///
    /// Files for programs are metric.
    #[arg(long, value_name = "UNITS", value_parser = units)]
    pub(crate) units: Option<Units>,
}

fn language(typed: &str) -> Result<Language, String> {
    (Language::ALL
        .into_iter()
        .find(|language| language.word() == typed))
    .ok_or_else(|| "expected en, de, fr, es, it, nl, sv or pl".to_owned())
}

fn units(typed: &str) -> Result<Units, String> {
    (Units::ALL.into_iter().find(|units| units.word() == typed))
        .ok_or_else(|| "expected metric or imperial".to_owned())
}

/// Logs and how to read them.
#[derive(Debug, Args)]
pub(crate) struct LogArguments {
    /// Logs of one garden (GPX, NMEA 0183, CSV, KML, ...), plain or packed; - is stdin
    ///
    /// The format is detected from the content, never from the name. Several files from one machine are joined into one trace; files
    /// from two machines (same time, different place) are kept apart, and ground visited by either counts as visited.
    #[arg(value_name = "LOG", required = true)]
    pub(crate) logs: Vec<PathBuf>,

    /// Settings of the garden (TOML)
    ///
    /// Machine, promise, turf, working hours and limits. docs/formats.md lists every key with its default.
    #[arg(long, value_name = "FILE")]
    pub(crate) settings: Option<PathBuf>,

    /// Date on which the log begins, such as 2026-05-01
    ///
    /// For logs with times of day but no date (GGA alone). In a log with dates it helps to detect a GPS week rollover.
    #[arg(long, value_name = "DATE")]
    pub(crate) date: Option<String>,

    /// Columns of a CSV log, such as time=t,lat=y,lon=x
    ///
    /// Names refer to the header; #3 is the third column, for logs without a header. For logs in metres use x_m and y_m
    /// instead of lat and lon.
    #[arg(long, value_name = "COLUMNS")]
    pub(crate) columns: Option<String>,

    /// Stop at the first fault in a log instead of skipping it
    ///
    /// By default, faulty lines are skipped, counted and reported with their position, and the rest is used.
    #[arg(long)]
    pub(crate) strict: bool,

    /// Worker threads [default: one for each core]
    ///
    /// The result is the same for any number.
    #[arg(long, value_name = "N")]
    pub(crate) threads: Option<usize>,
}

const INSPECT_EXAMPLES: &str = "\
Examples:
  tussock inspect night.nmea
  zcat night.nmea.gz | tussock inspect -
  tussock inspect track.csv --columns time=#1,lat=#2,lon=#3
  tussock inspect *.gpx --format json";

/// Is this log good enough?
///
/// Shows a verdict, logging rate, fix quality, silences, and what was skipped and where. No lawn is counted.
#[derive(Debug, Args)]
#[command(after_help = INSPECT_EXAMPLES)]
pub(crate) struct InspectArguments {
    #[command(flatten)]
    pub(crate) log: LogArguments,

    /// Plan of the garden (GeoJSON), used for the position of the station
    #[arg(long, value_name = "FILE")]
    pub(crate) plan: Option<PathBuf>,

    /// Write how the receiver erred while the machine stood (CSV: t_s,east_m,north_m)
    ///
    /// A device card of the receiver: positions.card in the settings of any garden that it visits, or --error-from of tussock
    /// simulate. Stays of ten minutes and more are taken; a log that stood the whole time gives all of it.
    #[arg(long, value_name = "FILE")]
    pub(crate) write_error: Option<PathBuf>,

    /// Output format on stdout
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: Format,

    #[command(flatten)]
    pub(crate) voice: VoiceArguments,
}

const ANALYSE_EXAMPLES: &str = "\
Examples:
  tussock analyse night.gpx --cut-width 22cm
  tussock analyse night1.gpx night2.gpx --plan garden.geojson --settings garden.toml --out result
  tussock analyse night.nmea --cut-width 22cm --format json | jq .coverage.visited_fraction
  tussock analyse night.gpx --plan garden.geojson --cut-width 22cm --fail-under 95";

/// What was visited, what was missed, and where did the machine get stuck?
///
/// The answer opens with the verdict on the log: the smallest pocket that it can show. Without a plan, the outline of the lawn is
/// derived from the log; without a cutting width, the visited fraction is given for widths from 17 to 35 cm.
#[derive(Debug, Args)]
#[command(after_help = ANALYSE_EXAMPLES)]
pub(crate) struct AnalyseArguments {
    #[command(flatten)]
    pub(crate) log: LogArguments,

    /// Plan of the garden (GeoJSON): lawn, boundary, zones, guide runs, station
    ///
    /// See docs/formats.md. `tussock plan from-walk` makes one from a walk round the garden.
    #[arg(long, value_name = "FILE")]
    pub(crate) plan: Option<PathBuf>,

    /// Width of the swath, such as 22cm, 0.22 m or 9in
    ///
    /// Overrides machine.cut_width_m of the settings.
    #[arg(long, value_name = "WIDTH")]
    pub(crate) cut_width: Option<String>,

    /// A surveyed path to compare the log with (GPX or CSV)
    ///
    /// Reports cross-track error and, over 15 minutes, pass-to-pass error; if the path has times, also along-track and timing
    /// error. A CSV file needs a header that names lat and lon, or x_m and y_m.
    #[arg(long, value_name = "FILE")]
    pub(crate) reference: Option<PathBuf>,

    /// A place that somebody points at, with what was said: the answer begins with it. May be given several times
    #[arg(long, value_name = "LAT,LON=TEXT", allow_hyphen_values = true)]
    pub(crate) complaint: Vec<String>,

    /// Write the plan as the log shows the garden to be
    ///
    /// Moved to where the log says that it lies, sides that were drawn elsewhere than the mower turns moved to where it does, zones left
    /// out that are driven over, and things added that turned it. Look at the answer first: a receiver that is off beside a wall moves
    /// a side as well. FILE must not exist.
    #[arg(long, value_name = "FILE", requires = "plan")]
    pub(crate) write_plan: Option<PathBuf>,

    /// Write findings, page, picture and layers into this folder
    ///
    /// The folder is created if it does not exist. Only files that this tool wrote and nobody has changed since are replaced; each is
    /// written completely or not at all.
    #[arg(long, value_name = "DIR")]
    pub(crate) out: Option<PathBuf>,

    /// Output format on stdout
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: Format,

    /// Draw the lawn as text below the answer
    #[arg(long)]
    pub(crate) map: bool,

    #[command(flatten)]
    pub(crate) picture: PictureArguments,

    /// Exit with code 1 if less than this percentage of the lawn was visited
    ///
    /// Compared with the low end of the interval if there is one, otherwise with the estimate.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) fail_under: Option<String>,

    /// Omit coordinates, names, dates and digests
    ///
    /// No GPX or GeoJSON is written, and the squares have no coordinate system. The shape of the lawn is kept.
    #[arg(long)]
    pub(crate) private: bool,

    /// Random seed
    #[arg(long, value_name = "N", default_value_t = 0)]
    pub(crate) seed: u64,

    /// Correct estimation bias by simulating logs like yours; takes a few seconds
    ///
    /// Needs a plan and a cutting width. Sparse logs with errors of half a metre or more are always corrected.
    #[arg(long)]
    pub(crate) calibrate: bool,

    /// Do not suggest changes
    ///
    /// Changes are suggested for missed pockets if a plan and a width are given. Each is tried on a simulated machine fitted to
    /// this log, which takes a few seconds.
    #[arg(long)]
    pub(crate) no_suggestions: bool,

    #[command(flatten)]
    pub(crate) voice: VoiceArguments,
}

const COMPARE_EXAMPLES: &str = "\
Examples:
  tussock compare --before may.gpx --after june.gpx --plan garden.geojson --cut-width 22cm
  tussock compare --before may.gpx --after june.gpx --plan old.geojson --after-plan new.geojson --settings garden.toml
  tussock compare --before result/findings.json --after june.gpx --plan new.geojson --cut-width 22cm --out proof";

/// Did a change help?
///
/// Before and after are logs, or the findings.json of an earlier analysis, whose predictions are then compared with what was
/// measured. Only ground that is lawn in both plans is compared. A difference counts as real if neither position error nor the
/// luck of a night explains it.
#[derive(Debug, Args)]
#[command(after_help = COMPARE_EXAMPLES)]
pub(crate) struct CompareArguments {
    /// Logs from before the change, or one findings.json
    #[arg(long, value_name = "LOG|FINDINGS", required = true, num_args = 1..)]
    pub(crate) before: Vec<PathBuf>,

    /// Logs from after the change, or one findings.json
    #[arg(long, value_name = "LOG|FINDINGS", required = true, num_args = 1..)]
    pub(crate) after: Vec<PathBuf>,

    /// Plan of the garden (GeoJSON), if logs are given
    #[arg(long, value_name = "FILE")]
    pub(crate) plan: Option<PathBuf>,

    /// Plan after the change, if it differs
    #[arg(long, value_name = "FILE")]
    pub(crate) after_plan: Option<PathBuf>,

    /// Settings of the garden (TOML)
    #[arg(long, value_name = "FILE")]
    pub(crate) settings: Option<PathBuf>,

    /// Width of the swath, such as 22cm, 0.22 m or 9in
    #[arg(long, value_name = "WIDTH")]
    pub(crate) cut_width: Option<String>,

    /// Columns of CSV logs, such as time=t,lat=y,lon=x
    #[arg(long, value_name = "COLUMNS")]
    pub(crate) columns: Option<String>,

    /// Write comparison.json and comparison.html into this folder
    #[arg(long, value_name = "DIR")]
    pub(crate) out: Option<PathBuf>,

    /// Output format on stdout
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: Format,

    /// Random seed
    #[arg(long, value_name = "N", default_value_t = 0)]
    pub(crate) seed: u64,

    /// Worker threads [default: one for each core]
    #[arg(long, value_name = "N")]
    pub(crate) threads: Option<usize>,

    #[command(flatten)]
    pub(crate) voice: VoiceArguments,
}

/// Check a plan, make one from a walk, or align one with a log
#[derive(Debug, Subcommand)]
pub(crate) enum PlanCommand {
    Check(PlanCheckArguments),
    FromWalk(FromWalkArguments),
    FromTrace(FromTraceArguments),
    Align(AlignArguments),
}

const CHECK_EXAMPLES: &str = "\
Examples:
  tussock plan check garden.geojson
  tussock plan check garden.geojson --cut-width 22cm
  tussock plan check garden.geojson --settings garden.toml --out before-digging
  tussock plan check garden.geojson --settings garden.toml --format json";

/// Is this plan sound, and can the machine get everywhere?
///
/// Sizes, passages, ground out of reach, and, with a cutting width, how much of the lawn working days will bring. Every fault is told at once, with its feature and ring counted from 0. A plan that cannot be used ends with exit code 2.
#[derive(Debug, Args)]
#[command(after_help = CHECK_EXAMPLES)]
pub(crate) struct PlanCheckArguments {
    /// Plan (GeoJSON); - is stdin
    #[arg(value_name = "PLAN")]
    pub(crate) plan: PathBuf,

    /// Settings of the garden (TOML)
    ///
    /// Machine, promise and working hours; docs/formats.md lists every key with its default.
    #[arg(long, value_name = "FILE")]
    pub(crate) settings: Option<PathBuf>,

    /// Width of the swath, such as 22cm, 0.22 m or 9in
    ///
    /// Overrides machine.cut_width_m of the settings. Without a width, reach and days are not reported.
    #[arg(long, value_name = "WIDTH")]
    pub(crate) cut_width: Option<String>,

    /// Folder for a page and a picture: how the lawn fills up, weak places, and what would mend them
    ///
    /// plan.html and plan.png. A simulated run as long as the promise allows is analysed as a log would be; that takes some seconds.
    #[arg(long, value_name = "DIR")]
    pub(crate) out: Option<PathBuf>,

    /// Random seed of the simulated runs
    #[arg(long, value_name = "SEED", default_value_t = 0)]
    pub(crate) seed: u64,

    /// Output format on stdout
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: Format,

    #[command(flatten)]
    pub(crate) voice: VoiceArguments,
}

const WALK_EXAMPLES: &str = "\
Examples:
  tussock plan from-walk walk.gpx --out garden.geojson
  tussock plan from-walk walk.gpx | tussock plan check -
  tussock plan from-walk walk.gpx --role \"Front garden=lawn\" --role \"Track 2=exclusion\"

Names of tracks and waypoints begin with what they are: lawn, boundary, exclusion, obstacle, guide, station.
\"lawn front\" and \"guide to the pond\" are such names. Other names are asked about once, with what each looks like.";

/// Make a plan from a walk round the garden
///
/// Walk along the lawn's edge, zones and guide runs with a receiver that records GPX, one named track for each, and set a
/// waypoint at the station. Stand still for some ten seconds at each corner: it is then kept exactly.
#[derive(Debug, Args)]
#[command(after_help = WALK_EXAMPLES)]
pub(crate) struct FromWalkArguments {
    /// The walk (GPX); - is stdin
    #[arg(value_name = "GPX")]
    pub(crate) walk: PathBuf,

    /// What a track or waypoint is: lawn, boundary, exclusion, obstacle, guide or station; may be repeated
    ///
    /// NAME is its name in the file; tracks without a name are "track 1", "track 2", ... Takes precedence over what the name says.
    #[arg(long, value_name = "NAME=ROLE", allow_hyphen_values = true)]
    pub(crate) role: Vec<String>,

    /// Output file for the plan; - is stdout. An existing file is not replaced
    #[arg(long, value_name = "FILE", default_value = "-")]
    pub(crate) out: PathBuf,

    #[command(flatten)]
    pub(crate) voice: VoiceArguments,
}

const TRACE_EXAMPLES: &str = "\
Examples:
  tussock plan from-trace night.gpx --out garden.geojson
  tussock plan from-trace night1.nmea night2.nmea --settings garden.toml > garden.geojson";

/// Draft a plan from the drive itself
///
/// Contains the outline of the ground that was driven over, what the machine went round as obstacles, and the station if the machine
/// rested at one. Zones and ground that was never reached are missing: name, check and complete the plan in a map program.
#[derive(Debug, Args)]
#[command(after_help = TRACE_EXAMPLES)]
pub(crate) struct FromTraceArguments {
    #[command(flatten)]
    pub(crate) log: LogArguments,

    /// Output file for the plan; - is stdout. An existing file is not replaced
    #[arg(long, value_name = "FILE", default_value = "-")]
    pub(crate) out: PathBuf,
}

const ALIGN_EXAMPLES: &str = "\
Examples:
  tussock plan align garden.geojson night.gpx --out garden-aligned.geojson
  tussock plan align garden.geojson night1.nmea night2.nmea > garden-aligned.geojson";

/// Align a plan with a log
///
/// The machine turns at the edges of the lawn; its turns show how far the drawing is offset and rotated.
#[derive(Debug, Args)]
#[command(after_help = ALIGN_EXAMPLES)]
pub(crate) struct AlignArguments {
    /// Plan (GeoJSON)
    #[arg(value_name = "PLAN")]
    pub(crate) plan: PathBuf,

    #[command(flatten)]
    pub(crate) log: LogArguments,

    /// Output file for the moved plan; - is stdout. An existing file is not replaced
    #[arg(long, value_name = "FILE", default_value = "-")]
    pub(crate) out: PathBuf,
}

/// How the picture is drawn.
#[derive(Debug, Args)]
pub(crate) struct PictureArguments {
    /// Width of map.png in pixels, 200 to 8000
    #[arg(long, value_name = "PIXELS", default_value_t = tussock_report::MAP_WIDTH_PX, value_parser = clap::value_parser!(u32).range(200..=8000))]
    pub(crate) png_width: u32,
}

const ASK_EXAMPLES: &str = "\
Examples:
  tussock ask result/findings.json --at 53.86006,12.42021
  tussock ask result/findings.json --at-m 4.5,-2 --said 'long grass by the shed'";

/// What is known of one place: how often driven over, when last, and what follows
///
/// Asked of saved findings. The answer is one of: driven over like the rest, seldom, never and why, or that this log cannot tell.
#[derive(Debug, Args)]
#[command(after_help = ASK_EXAMPLES)]
pub(crate) struct AskArguments {
    /// findings.json of an earlier analysis; - is stdin
    #[arg(value_name = "FINDINGS")]
    pub(crate) findings: PathBuf,

    /// The place in degrees
    #[arg(
        long,
        value_name = "LAT,LON",
        allow_hyphen_values = true,
        required_unless_present_any = ["at_m", "waypoints"]
    )]
    pub(crate) at: Option<String>,

    /// The place in metres east and north of the findings' origin
    #[arg(
        long,
        value_name = "EAST,NORTH",
        allow_hyphen_values = true,
        conflicts_with = "at"
    )]
    pub(crate) at_m: Option<String>,

    /// The waypoints of a GPX file, each with its name as what was said of it
    #[arg(long, value_name = "FILE", conflicts_with_all = ["at", "at_m", "said"])]
    pub(crate) waypoints: Option<PathBuf>,

    /// What was said of it, to be written beside the answer
    #[arg(long, value_name = "TEXT")]
    pub(crate) said: Option<String>,

    /// Output format
    #[arg(long, value_enum, default_value_t)]
    pub(crate) format: Format,

    #[command(flatten)]
    pub(crate) voice: VoiceArguments,
}

const VISITS_EXAMPLES: &str = "\
Examples:
  tussock visits gardens/fennmoor
  tussock visits gardens/fennmoor --out history --language de";

/// The visits to a garden, and what each brought
///
/// Reads every comparison.json in a folder and the folders in it, as tussock compare --out writes them: who came, what the customer
/// said, what was changed, and what became of the pocket.
#[derive(Debug, Args)]
#[command(after_help = VISITS_EXAMPLES)]
pub(crate) struct VisitsArguments {
    /// Folder with the comparisons of one garden
    #[arg(value_name = "FOLDER")]
    pub(crate) folder: PathBuf,

    /// Write the page visits.html into this folder
    #[arg(long, value_name = "DIR")]
    pub(crate) out: Option<PathBuf>,

    /// Omit who came, when, the machine and what was said
    #[arg(long)]
    pub(crate) private: bool,

    #[command(flatten)]
    pub(crate) voice: VoiceArguments,

    /// Output format
    #[arg(long, value_name = "FORMAT", default_value = "human")]
    pub(crate) format: Format,
}

const REPORT_EXAMPLES: &str = "\
Examples:
  tussock report result/findings.json --out page
  tussock report result/findings.json --out for-the-forum --private";

/// Redraw the page and files from saved findings
///
/// Nothing is measured again; the findings hold everything that is needed.
#[derive(Debug, Args)]
#[command(after_help = REPORT_EXAMPLES)]
pub(crate) struct ReportArguments {
    /// findings.json of an earlier analysis; - is stdin
    #[arg(value_name = "FINDINGS")]
    pub(crate) findings: PathBuf,

    /// Output folder; not the one that holds FINDINGS
    #[arg(long, value_name = "DIR")]
    pub(crate) out: PathBuf,

    #[command(flatten)]
    pub(crate) picture: PictureArguments,

    /// Omit coordinates, names, dates and digests
    #[arg(long)]
    pub(crate) private: bool,

    #[command(flatten)]
    pub(crate) voice: VoiceArguments,
}

/// Analyse many gardens every night, and report in the morning which need a visit
#[derive(Debug, Subcommand)]
pub(crate) enum BatchCommand {
    Run(BatchRunArguments),
    Report(BatchReportArguments),
    Check(BatchCheckArguments),
    Acknowledge(BatchAcknowledgeArguments),
    Mute(BatchMuteArguments),
    Forget(BatchForgetArguments),
    #[command(hide = true)]
    Worker(BatchWorkerArguments),
}

const BATCH_RUN_EXAMPLES: &str = "\
Examples:
  tussock batch run gardens --store store
  tussock batch run gardens --store store --log-format json --metrics tussock.prom 2>> night.jsonl

Exit codes: 0 done, 2 wrong use, 3 some logs or gardens could not be used, 4 nothing was found where there was something, 5 the store or
its disk is at fault.

A garden is a folder with plan.geojson, settings.toml and logs/; gardens.toml may say otherwise. See docs/store.md.";

/// Analyse every new log, and store the results
///
/// Only new logs are read. You can stop it at any time: what has been committed is complete, and the next run continues from there. A
/// log that cannot be read, takes too long or needs too much memory is named, and the exit code is 3; all others are processed.
#[derive(Debug, Args)]
#[command(after_help = BATCH_RUN_EXAMPLES)]
pub(crate) struct BatchRunArguments {
    /// Folder of the gardens, or s3://bucket/folder if built with S3 support
    #[arg(value_name = "GARDENS")]
    pub(crate) place: String,

    /// Folder of the store; created if it does not exist
    #[arg(long, value_name = "DIR")]
    pub(crate) store: PathBuf,

    /// Worker processes [default: one for each core]
    #[arg(long, value_name = "N")]
    pub(crate) workers: Option<usize>,

    /// Longest time that a worker may spend on one log or one night
    #[arg(long, value_name = "TIME", default_value = "120s")]
    pub(crate) time_limit: String,

    /// Memory that a worker may use, in MiB
    #[arg(long, value_name = "MIB", default_value_t = 1024, value_parser = clap::value_parser!(u64).range(32..=1_048_576))]
    pub(crate) memory_limit: u64,

    /// Number of gardens that are committed together
    #[arg(long, value_name = "N", default_value_t = tussock_batch::run::USUAL_CHUNK, hide = true)]
    pub(crate) chunk: usize,

    /// Do not suggest changes for the worst gardens
    #[arg(long)]
    pub(crate) no_suggestions: bool,

    /// Current time, such as 2026-05-01T06:00:00Z [default: this computer's clock]
    ///
    /// A night that is later than both its file and this time is set aside and named, because the clock of its machine must be wrong.
    /// The age of nights is measured from the newest night that this time allows.
    #[arg(long, value_name = "TIME")]
    pub(crate) now: Option<String>,

    /// Largest share of the nights that may expire at once (retention_days) [default: 33.3%]
    ///
    /// If more would expire, the run removes none and fails, because a wrong clock or setting is more likely than so much old data.
    /// If you do mean it, raise this share once.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) expire_at_most: Option<String>,

    /// Also read files outside GARDENS that gardens.toml or a link points to
    #[arg(long)]
    pub(crate) allow_outside: bool,

    /// Output format: a line on stderr for people, or an object on stdout for programs
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: Format,

    /// Format of what is told on stderr; with json, one object per line with time, level, run and garden
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) log_format: Format,

    /// Write figures of the run to this file, for Prometheus
    ///
    /// In the text exposition format, whole or not at all, also when the run fails. An earlier file of this command is replaced, no
    /// other.
    #[arg(long, value_name = "FILE")]
    pub(crate) metrics: Option<PathBuf>,
}

const BATCH_CHECK_EXAMPLES: &str = "\
Examples:
  tussock batch check gardens
  tussock batch check gardens --log-format json";

/// Try manifest, plans, settings and newest logs without a run
///
/// Nothing is analysed and nothing written. Of each garden the plan, the settings and the log that was written last are read. The exit
/// code is 3 if one of them could not be used, 4 if there is no garden or no log at all.
#[derive(Debug, Args)]
#[command(after_help = BATCH_CHECK_EXAMPLES)]
pub(crate) struct BatchCheckArguments {
    /// Folder of the gardens, or s3://bucket/folder if built with S3 support
    #[arg(value_name = "GARDENS")]
    pub(crate) place: String,

    /// Current time, such as 2026-05-01T06:00:00Z [default: this computer's clock]
    #[arg(long, value_name = "TIME")]
    pub(crate) now: Option<String>,

    /// Also read files outside GARDENS that gardens.toml or a link points to
    #[arg(long)]
    pub(crate) allow_outside: bool,

    /// Format of what is told on stderr; with json, one object per line with time, level, run and garden
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) log_format: Format,
}

/// Which alarms of which garden.
#[derive(Debug, Args)]
pub(crate) struct BatchMarkArguments {
    /// Folder of the store
    #[arg(value_name = "STORE")]
    pub(crate) store: PathBuf,

    /// Name of the garden in the store
    #[arg(value_name = "GARDEN")]
    pub(crate) garden: String,

    /// Kind of alarm, such as stuck_spot [default: all kinds]
    #[arg(long, value_name = "KIND")]
    pub(crate) alarm: Option<String>,

    /// Why, in a few words
    #[arg(long, value_name = "TEXT")]
    pub(crate) reason: Option<String>,
}

const BATCH_ACKNOWLEDGE_EXAMPLES: &str = "\
Examples:
  tussock batch acknowledge store \"Garden 17\" --alarm stuck_spot --reason \"root, boards ordered\"";

/// Say that an alarm is known
///
/// It stays on the list until it is mended, behind those that nobody knows, and no longer counts for --fail-on-visit. What opens later
/// is told anew. A run may be writing meanwhile.
#[derive(Debug, Args)]
#[command(after_help = BATCH_ACKNOWLEDGE_EXAMPLES)]
pub(crate) struct BatchAcknowledgeArguments {
    #[command(flatten)]
    pub(crate) mark: BatchMarkArguments,

    /// Date of the night after which it is said [default: the last night that is over]
    #[arg(long, value_name = "DATE")]
    pub(crate) date: Option<String>,
}

const BATCH_MUTE_EXAMPLES: &str = "\
Examples:
  tussock batch mute store \"Garden 17\" --until 2026-06-15 --reason \"new lawn sown\"
  tussock batch mute store \"Garden 17\" --until 2026-05-01    an earlier date ends it";

/// Keep alarms of a garden off the list for a while
///
/// A run may be writing meanwhile.
#[derive(Debug, Args)]
#[command(after_help = BATCH_MUTE_EXAMPLES)]
pub(crate) struct BatchMuteArguments {
    #[command(flatten)]
    pub(crate) mark: BatchMarkArguments,

    /// Date of the last night that is not told
    #[arg(long, value_name = "DATE")]
    pub(crate) until: String,
}

const BATCH_REPORT_EXAMPLES: &str = "\
Examples:
  tussock batch report store
  tussock batch report store --date 2026-05-04 --format json
  tussock batch report store --fail-on-visit || mail -s \"gardens to visit\" office";

/// Which gardens need a visit, and since when?
///
/// Lists gardens by what a visit would bring, each with what has changed compared with its own history, since when, and what to bring.
///
/// With --fail-on-visit the exit code is 1 if a garden needs a visit that nobody has acknowledged, 4 if none does but so many sent
/// nothing that it is their delivery, 5 if the store is at fault.
#[derive(Debug, Args)]
#[command(after_help = BATCH_REPORT_EXAMPLES)]
pub(crate) struct BatchReportArguments {
    /// Folder of the store
    #[arg(value_name = "STORE")]
    pub(crate) store: PathBuf,

    /// Report the morning after the night of this date [default: of each garden the last night that is over by its own clock]
    #[arg(long, value_name = "DATE")]
    pub(crate) date: Option<String>,

    /// Current time, such as 2026-05-01T06:00:00Z [default: this computer's clock]
    #[arg(long, value_name = "TIME", conflicts_with = "date")]
    pub(crate) now: Option<String>,

    /// Exit with code 1 if a garden needs a visit
    #[arg(long)]
    pub(crate) fail_on_visit: bool,

    /// Write the page to this file; an existing file is not replaced
    #[arg(long, value_name = "FILE")]
    pub(crate) out: Option<PathBuf>,

    /// Output format on stdout
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: Format,

    #[command(flatten)]
    pub(crate) voice: VoiceArguments,
}

const BATCH_FORGET_EXAMPLES: &str = "\
Examples:
  tussock batch forget store \"Garden 17\"

Logs and plan of the garden are not touched: take them away too, or the next run reads them again.";

/// Remove a garden from every table
#[derive(Debug, Args)]
#[command(after_help = BATCH_FORGET_EXAMPLES)]
pub(crate) struct BatchForgetArguments {
    /// Folder of the store
    #[arg(value_name = "STORE")]
    pub(crate) store: PathBuf,

    /// Name of the garden
    #[arg(value_name = "GARDEN")]
    pub(crate) garden: String,
}

/// Process jobs from stdin on behalf of a run.
#[derive(Debug, Args)]
pub(crate) struct BatchWorkerArguments {
    /// Memory in MiB.
    #[arg(long)]
    pub(crate) memory_limit: u64,
}

/// Format of the log that is written.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub(crate) enum LogKind {
    /// GPX 1.1.
    #[default]
    Gpx,
    /// NMEA 0183: RMC, GGA and GST.
    Nmea,
    /// Rows of time, lat, lon.
    Csv,
}

/// How a simulated machine moves.
#[derive(Debug, Args)]
pub(crate) struct MotionArguments {
    /// Turn on arcs of this radius, such as 0.4m [default: from the settings, else on the spot]
    ///
    /// An arc begins as late before the edge as it can. Only a roaming machine turns on arcs.
    #[arg(long, value_name = "RADIUS")]
    pub(crate) turning_radius: Option<String>,

    /// Slow down over so much way before a turn, such as 0.6m
    ///
    /// Evenly, to 0.3 of the speed; arcs are driven as slowly.
    #[arg(long, value_name = "LENGTH")]
    pub(crate) slowing: Option<String>,

    /// Curvature of legs, such as 0.02/m: the standard deviation from leg to leg
    #[arg(long, value_name = "CURVATURE")]
    pub(crate) curvature: Option<String>,

    /// Random walk of the heading, such as 3deg: the standard deviation after 1 m, which grows with the root of the way
    #[arg(long, value_name = "ANGLE")]
    pub(crate) heading_walk: Option<String>,

    /// Pull of a slope, such as 0.1/m: legs curve downhill by this times the sine of their angle to it
    #[arg(long, value_name = "CURVATURE", requires = "downhill")]
    pub(crate) slope_pull: Option<String>,

    /// Where downhill is, clockwise from north, such as 180deg
    #[arg(long, value_name = "ANGLE", allow_hyphen_values = true)]
    pub(crate) downhill: Option<String>,

    /// Mean loss of speed to slipping wheels, in percent; each leg loses between nothing and twice this
    #[arg(long, value_name = "PCT")]
    pub(crate) slip: Option<String>,

    /// When the machine first drives once round along the edge
    #[arg(long, value_enum, default_value_t, value_name = "WHEN")]
    pub(crate) edge_round: EdgeRoundKind,

    /// Rounds along all edges before the lanes
    #[arg(long, value_name = "N", default_value_t = 0)]
    pub(crate) headland_rounds: usize,

    /// Pause at the end of each lane, such as 3s
    #[arg(long, value_name = "TIME")]
    pub(crate) lane_pause: Option<String>,
}

/// When a simulated machine drives round along the edge.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub(crate) enum EdgeRoundKind {
    /// Never.
    #[default]
    Never,
    /// In the first outing of every 24 hours.
    Night,
    /// In every outing.
    Outing,
}

/// How a simulated machine covers the lawn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub(crate) enum PatternKind {
    /// Straight until an edge, then in another direction.
    #[default]
    Roaming,
    /// To and fro in parallel lanes.
    Lanes,
    /// Spirals outwards from places on the lawn.
    Spiral,
    /// Lanes in one outing, roaming in the next.
    Combined,
}

const SIMULATE_EXAMPLES: &str = "\
Examples:
  tussock simulate --plan garden.geojson --hours 8 --out night.gpx
  tussock simulate --plan garden.geojson --hours 24 --noise decimetre --format nmea --out day.nmea
  tussock simulate --plan garden.geojson --noise white=5cm,drift=40cm,drift-time=10min --out a.gpx
  tussock simulate --plan garden.geojson --error-from receiver.csv --out c.gpx
  tussock simulate --plan garden.geojson --turning-radius 0.4m --slowing 0.6m --out d.gpx
  tussock simulate --plan garden.geojson --pattern lanes --headland-rounds 2 --out e.gpx
  tussock simulate --plan garden.geojson --stuck 40.00006,-30.00012 --out b.gpx";

/// Simulate a run and write its log, with the truth beside it
///
/// A machine drives on the plan, and a logger with a given position error writes the log. Beside the log NAME.EXT, the file
/// NAME.EXT.truth.json records what was really visited, what was missed, and where the machine got stuck. The same plan, options and
/// seed give the same bytes.
#[derive(Debug, Args)]
#[command(after_help = SIMULATE_EXAMPLES, subcommand_negates_reqs = true, args_conflicts_with_subcommands = true)]
pub(crate) struct SimulateArguments {
    #[command(subcommand)]
    pub(crate) many: Option<SimulateCommand>,

    /// Plan of the garden (GeoJSON)
    #[arg(long, value_name = "FILE", required = true)]
    pub(crate) plan: Option<PathBuf>,

    /// Settings of the garden (TOML); cutting width, speed, setback and turning radius are used
    #[arg(long, value_name = "FILE")]
    pub(crate) settings: Option<PathBuf>,

    /// Length of the run in hours, including stays at the station
    #[arg(long, value_name = "HOURS", default_value_t = 8.0)]
    pub(crate) hours: f64,

    /// Random seed
    #[arg(long, value_name = "N", default_value_t = 1)]
    pub(crate) seed: u64,

    /// Time of the first fix, RFC 3339 in UTC
    #[arg(long, value_name = "TIME", default_value = "2026-05-01T20:00:00Z")]
    pub(crate) start: String,

    /// Time between fixes, such as 1s or 200ms
    #[arg(long, value_name = "TIME", default_value = "1s")]
    pub(crate) period: String,

    /// Position error: none, centimetre, decimetre, metre, or white=..,drift=..,drift-time=..
    ///
    /// Standard deviations per axis. centimetre: white 1 cm, drift 1.5 cm, drift time 10 min. decimetre: white 8 cm, drift
    /// 30 cm, drift time 10 min. metre: white 30 cm, drift 2 m, drift time 5 min.
    #[arg(long, value_name = "NOISE", default_value = "centimetre")]
    pub(crate) noise: String,

    /// Recorded position error of a receiver, used instead of --noise (CSV: t_s,east_m,north_m)
    ///
    /// Reported minus true position, in order of time. A run that is longer than the series plays it forwards and backwards in turn.
    #[arg(long, value_name = "FILE", conflicts_with = "noise")]
    pub(crate) error_from: Option<PathBuf>,

    /// Width of the swath, used for the truth [default: from the settings, else 22cm]
    #[arg(long, value_name = "WIDTH")]
    pub(crate) cut_width: Option<String>,

    /// How the machine covers the lawn
    #[arg(long, value_enum, default_value_t, value_name = "PATTERN")]
    pub(crate) pattern: PatternKind,

    #[command(flatten)]
    pub(crate) motion: MotionArguments,

    /// A place where the machine gets stuck, LAT,LON; can be given more than once
    ///
    /// One in three passes within 0.6 m of it ends in a halt of 2 to 6 minutes.
    #[arg(long, value_name = "LAT,LON", allow_hyphen_values = true)]
    pub(crate) stuck: Vec<String>,

    /// Format of the log
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: LogKind,

    /// Output file for the log; an existing file is not replaced
    #[arg(long, value_name = "FILE", required = true)]
    pub(crate) out: Option<PathBuf>,
}

/// What else can be simulated.
#[derive(Debug, Subcommand)]
pub(crate) enum SimulateCommand {
    Gardens(SimulateGardensArguments),
}

const GARDENS_EXAMPLES: &str = "\
Examples:
  tussock simulate gardens --count 100 --nights 14 --out load
  tussock batch run load/gardens --store store

In the folder: gardens/ for tussock batch, late/night-NN/ with logs to copy over it after that night, truth.json.";

/// Simulate many gardens with logs and faults, for tussock batch
///
/// Some gardens develop a fault on some night, and some of those are mended later; some logs arrive late, twice, truncated or
/// damaged. truth.json records which.
#[derive(Debug, Args)]
#[command(after_help = GARDENS_EXAMPLES)]
pub(crate) struct SimulateGardensArguments {
    /// Number of gardens
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=100_000))]
    pub(crate) count: u32,

    /// Number of nights
    #[arg(long, value_name = "N", default_value_t = 1, value_parser = clap::value_parser!(u32).range(1..=400))]
    pub(crate) nights: u32,

    /// Length of a night's log in hours
    #[arg(long, value_name = "HOURS", default_value_t = 8.0)]
    pub(crate) hours: f64,

    /// Time between fixes, such as 1s
    #[arg(long, value_name = "TIME", default_value = "1s")]
    pub(crate) period: String,

    /// Percentage of gardens with a fault
    #[arg(long, value_name = "PERCENT", default_value = "20")]
    pub(crate) troubled: String,

    /// Percentage of logs that arrive late, twice, truncated or damaged
    #[arg(long, value_name = "PERCENT", default_value = "10")]
    pub(crate) faulty: String,

    /// Smallest and largest lawn in square metres, such as 300-900
    #[arg(long, value_name = "AREA", default_value = "300-900")]
    pub(crate) area: String,

    /// Time of the first fix of the first night, RFC 3339 in UTC
    #[arg(long, value_name = "TIME", default_value = "2026-05-01T20:00:00Z")]
    pub(crate) start: String,

    /// Random seed
    #[arg(long, value_name = "N", default_value_t = 1)]
    pub(crate) seed: u64,

    /// Output folder; an existing folder is left untouched
    #[arg(long, value_name = "DIR")]
    pub(crate) out: PathBuf,
}
