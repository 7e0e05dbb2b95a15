//! Arguments as typed. Nothing is checked here but their shape; see [`crate::wishes`].

use clap::{Args, Parser, Subcommand, ValueEnum};
use std::path::PathBuf;

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
    Report(ReportArguments),
    #[command(subcommand)]
    Batch(BatchCommand),
    Simulate(SimulateArguments),
}

/// How an answer is given.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub(crate) enum Format {
    /// Text for people.
    #[default]
    Human,
    /// JSON for programs.
    Json,
}

/// Logs and how to read them.
#[derive(Debug, Args)]
pub(crate) struct LogArguments {
    /// Logs of one garden (GPX, NMEA 0183, CSV, KML, ...), plain or packed; - is stdin
    ///
    /// The kind is told by the content, never by the name. Several files of one machine make one trace; files of two
    /// machines (same time, different place) make two, and their visits are united.
    #[arg(value_name = "LOG", required = true)]
    pub(crate) logs: Vec<PathBuf>,

    /// Settings of the garden (TOML)
    ///
    /// Machine, promise, turf, working hours and limits. docs/formats.md lists every key with its default.
    #[arg(long, value_name = "FILE")]
    pub(crate) settings: Option<PathBuf>,

    /// Day on which the log begins, such as 2026-05-01
    ///
    /// For logs that hold times of day but no date (GGA alone). In a log with dates it helps to find a rolled-over week
    /// counter.
    #[arg(long, value_name = "DATE")]
    pub(crate) date: Option<String>,

    /// Columns of a CSV log, such as time=t,lat=y,lon=x
    ///
    /// Names come from the header; #3 is the third column, for logs without a header. Logs in metres have x_m and y_m
    /// instead of lat and lon.
    #[arg(long, value_name = "COLUMNS")]
    pub(crate) columns: Option<String>,

    /// Stop at the first fault in a log instead of skipping it
    ///
    /// Without it faulty lines are skipped, counted and located, and the rest is used.
    #[arg(long)]
    pub(crate) strict: bool,

    /// Worker threads [default: one for each core]
    ///
    /// The answer does not depend on it.
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
/// Verdict, rates, quality, silences, and what was skipped and where. Counts nothing.
#[derive(Debug, Args)]
#[command(after_help = INSPECT_EXAMPLES)]
pub(crate) struct InspectArguments {
    #[command(flatten)]
    pub(crate) log: LogArguments,

    /// Plan of the garden (GeoJSON), for the place of the station
    #[arg(long, value_name = "FILE")]
    pub(crate) plan: Option<PathBuf>,

    /// How the answer is given on stdout
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: Format,
}

const ANALYSE_EXAMPLES: &str = "\
Examples:
  tussock analyse night.gpx --cut-width 22cm
  tussock analyse night1.gpx night2.gpx --plan garden.geojson --settings garden.toml --out result
  tussock analyse night.nmea --cut-width 22cm --format json | jq .coverage.visited_fraction
  tussock analyse night.gpx --plan garden.geojson --cut-width 22cm --fail-under 95";

/// What was visited, what was missed, and where did it get stuck?
///
/// The first line is the verdict on the log: the smallest pocket that it can show. Without a plan the outline of the lawn is
/// drawn from the log; without a cutting width the visited fraction is given for widths from 17 to 35 cm.
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

    /// Width of the swath, such as 22cm, 0.22 m or 220mm
    ///
    /// Overrides machine.cut_width_m of the settings.
    #[arg(long, value_name = "WIDTH")]
    pub(crate) cut_width: Option<String>,

    /// A surveyed path to hold the log to (GPX or CSV)
    ///
    /// Gives cross-track error and, over 15 minutes, pass-to-pass error; where the path carries times also along-track and
    /// timing error. A CSV file needs a header that names lat and lon, or x_m and y_m.
    #[arg(long, value_name = "FILE")]
    pub(crate) reference: Option<PathBuf>,

    /// Write findings, page, picture and layers into this folder
    ///
    /// The folder is made where it is missing. Only files that this tool made and nobody changed since are replaced, each one
    /// complete or not at all.
    #[arg(long, value_name = "DIR")]
    pub(crate) out: Option<PathBuf>,

    /// How the answer is given on stdout
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: Format,

    /// Draw the lawn in characters below the answer
    #[arg(long)]
    pub(crate) map: bool,

    #[command(flatten)]
    pub(crate) picture: PictureArguments,

    /// Exit with 1 when less than this was visited, in percent of the lawn
    ///
    /// Judged by the low end of the interval where there is one, else by the estimate.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) fail_under: Option<String>,

    /// Leave out place on Earth, names, dates and digests
    ///
    /// Neither GPX nor GeoJSON is written then, and squares have no coordinate system. The shape of the lawn stays.
    #[arg(long)]
    pub(crate) private: bool,

    /// Seed of everything random
    #[arg(long, value_name = "N", default_value_t = 0)]
    pub(crate) seed: u64,

    /// Simulate logs like yours and take off what estimating does to them; a few seconds
    ///
    /// Takes a plan and a cutting width. Sparse logs with errors of half a metre and more are calibrated anyway.
    #[arg(long)]
    pub(crate) calibrate: bool,

    /// Make no suggestions
    ///
    /// Suggestions are made for missed pockets where there is a plan and a width. Each is tried on a simulated machine that was
    /// fitted to this log, which takes some seconds.
    #[arg(long)]
    pub(crate) no_suggestions: bool,
}

const COMPARE_EXAMPLES: &str = "\
Examples:
  tussock compare --before may.gpx --after june.gpx --plan garden.geojson --cut-width 22cm
  tussock compare --before may.gpx --after june.gpx --plan old.geojson --after-plan new.geojson --settings garden.toml
  tussock compare --before result/findings.json --after june.gpx --plan new.geojson --cut-width 22cm --out proof";

/// What did a change bring?
///
/// Before and after are logs, or the findings.json of an earlier analysis: then its predictions stand beside what is measured. Only
/// ground that is lawn in both plans is compared. A difference is called real when neither position error nor the luck of a
/// night explains it.
#[derive(Debug, Args)]
#[command(after_help = COMPARE_EXAMPLES)]
pub(crate) struct CompareArguments {
    /// Logs before the change, or one findings.json
    #[arg(long, value_name = "LOG|FINDINGS", required = true, num_args = 1..)]
    pub(crate) before: Vec<PathBuf>,

    /// Logs after it, or one findings.json
    #[arg(long, value_name = "LOG|FINDINGS", required = true, num_args = 1..)]
    pub(crate) after: Vec<PathBuf>,

    /// Plan of the garden (GeoJSON) for logs
    #[arg(long, value_name = "FILE")]
    pub(crate) plan: Option<PathBuf>,

    /// Plan after the change, where it is another
    #[arg(long, value_name = "FILE")]
    pub(crate) after_plan: Option<PathBuf>,

    /// Settings of the garden (TOML)
    #[arg(long, value_name = "FILE")]
    pub(crate) settings: Option<PathBuf>,

    /// Width of the swath, such as 22cm, 0.22 m or 220mm
    #[arg(long, value_name = "WIDTH")]
    pub(crate) cut_width: Option<String>,

    /// Columns of CSV logs, such as time=t,lat=y,lon=x
    #[arg(long, value_name = "COLUMNS")]
    pub(crate) columns: Option<String>,

    /// Write comparison.json and comparison.html into this folder
    #[arg(long, value_name = "DIR")]
    pub(crate) out: Option<PathBuf>,

    /// How the answer is given on stdout
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: Format,

    /// Seed of everything random
    #[arg(long, value_name = "N", default_value_t = 0)]
    pub(crate) seed: u64,

    /// Worker threads [default: one for each core]
    #[arg(long, value_name = "N")]
    pub(crate) threads: Option<usize>,
}

/// Check a plan, make one from a walk, or lay one where the log says
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
    /// Machine, promise and working hours: docs/formats.md lists every key with its default.
    #[arg(long, value_name = "FILE")]
    pub(crate) settings: Option<PathBuf>,

    /// Width of the swath, such as 22cm, 0.22 m or 220mm
    ///
    /// Overrides machine.cut_width_m of the settings. Without a width nothing is said of reach and days.
    #[arg(long, value_name = "WIDTH")]
    pub(crate) cut_width: Option<String>,

    /// Number that the simulated runs start from
    #[arg(long, value_name = "SEED", default_value_t = 0)]
    pub(crate) seed: u64,

    /// How the answer is given on stdout
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: Format,
}

const WALK_EXAMPLES: &str = "\
Examples:
  tussock plan from-walk walk.gpx --out garden.geojson
  tussock plan from-walk walk.gpx | tussock plan check -

Names of tracks and waypoints begin with what they are: lawn, boundary, exclusion, obstacle, guide, station.
\"lawn front\" and \"guide to the pond\" are such names.";

/// Make a plan from a walk round the garden
///
/// Walk along the lawn's edge, zones and guide runs with a receiver that records GPX, one named track for each, and set a
/// waypoint at the station.
#[derive(Debug, Args)]
#[command(after_help = WALK_EXAMPLES)]
pub(crate) struct FromWalkArguments {
    /// The walk (GPX); - is stdin
    #[arg(value_name = "GPX")]
    pub(crate) walk: PathBuf,

    /// Where the plan goes; - is stdout. A file that exists is not replaced
    #[arg(long, value_name = "FILE", default_value = "-")]
    pub(crate) out: PathBuf,
}

const TRACE_EXAMPLES: &str = "\
Examples:
  tussock plan from-trace night.gpx --out garden.geojson
  tussock plan from-trace night1.nmea night2.nmea --settings garden.toml > garden.geojson";

/// Draw a plan from the drive itself, to begin with
///
/// The outline of the ground that was driven over, and the station where the machine rested. Zones, obstacles and ground that
/// was never reached are not in it: mend it in a map program.
#[derive(Debug, Args)]
#[command(after_help = TRACE_EXAMPLES)]
pub(crate) struct FromTraceArguments {
    #[command(flatten)]
    pub(crate) log: LogArguments,

    /// Where the plan goes; - is stdout. A file that exists is not replaced
    #[arg(long, value_name = "FILE", default_value = "-")]
    pub(crate) out: PathBuf,
}

const ALIGN_EXAMPLES: &str = "\
Examples:
  tussock plan align garden.geojson night.gpx --out garden-aligned.geojson
  tussock plan align garden.geojson night1.nmea night2.nmea > garden-aligned.geojson";

/// Lay a plan where the log says that it lies
///
/// The machine turns at the edge; its turns show by how much the drawing lies beside the log, and how it is turned.
#[derive(Debug, Args)]
#[command(after_help = ALIGN_EXAMPLES)]
pub(crate) struct AlignArguments {
    /// Plan (GeoJSON)
    #[arg(value_name = "PLAN")]
    pub(crate) plan: PathBuf,

    #[command(flatten)]
    pub(crate) log: LogArguments,

    /// Where the moved plan goes; - is stdout. A file that exists is not replaced
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

const REPORT_EXAMPLES: &str = "\
Examples:
  tussock report result/findings.json --out page
  tussock report result/findings.json --out for-the-forum --private";

/// Draw page and files again from saved findings
///
/// Nothing is counted again: the findings are all that is needed.
#[derive(Debug, Args)]
#[command(after_help = REPORT_EXAMPLES)]
pub(crate) struct ReportArguments {
    /// findings.json of an earlier analysis; - is stdin
    #[arg(value_name = "FINDINGS")]
    pub(crate) findings: PathBuf,

    /// Folder for the files; not the one that holds FINDINGS
    #[arg(long, value_name = "DIR")]
    pub(crate) out: PathBuf,

    #[command(flatten)]
    pub(crate) picture: PictureArguments,

    /// Leave out place on Earth, names, dates and digests
    #[arg(long)]
    pub(crate) private: bool,
}

/// Work through many gardens every night, and say in the morning which need a visit
#[derive(Debug, Subcommand)]
pub(crate) enum BatchCommand {
    Run(BatchRunArguments),
    Report(BatchReportArguments),
    Forget(BatchForgetArguments),
    #[command(hide = true)]
    Worker(BatchWorkerArguments),
}

const BATCH_RUN_EXAMPLES: &str = "\
Examples:
  tussock batch run gardens --store store
  tussock batch run gardens --store store --format json 2>> night.jsonl

A garden is a folder with plan.geojson, settings.toml and logs/; gardens.toml may say otherwise. See docs/store.md.";

/// Analyse every log that is new, and keep what it says
///
/// Only what is new is read. Stop it whenever you like: what is committed is whole, and the next run goes on. A log that cannot
/// be read, takes too long or wants too much memory is named and ends with exit code 2; all others are done.
#[derive(Debug, Args)]
#[command(after_help = BATCH_RUN_EXAMPLES)]
pub(crate) struct BatchRunArguments {
    /// Folder of the gardens, or s3://bucket/folder where that is built in
    #[arg(value_name = "GARDENS")]
    pub(crate) place: String,

    /// Folder of the store; made where it is missing
    #[arg(long, value_name = "DIR")]
    pub(crate) store: PathBuf,

    /// Worker processes [default: one for each core]
    #[arg(long, value_name = "N")]
    pub(crate) workers: Option<usize>,

    /// A worker may be at one log or one night for so long
    #[arg(long, value_name = "TIME", default_value = "120s")]
    pub(crate) time_limit: String,

    /// Memory that a worker may use, in MiB
    #[arg(long, value_name = "MIB", default_value_t = 1024, value_parser = clap::value_parser!(u64).range(32..=1_048_576))]
    pub(crate) memory_limit: u64,

    /// Gardens that are committed together
    #[arg(long, value_name = "N", default_value_t = tussock_batch::run::USUAL_CHUNK, hide = true)]
    pub(crate) chunk: usize,

    /// Make no suggestions for the worst gardens
    #[arg(long)]
    pub(crate) no_suggestions: bool,

    /// What time it is, such as 2026-05-01T06:00:00Z [default: this computer's clock]
    ///
    /// A night later than its file and this time is set apart and named: the clock of its machine lies. Nights are old from the
    /// newest that this time allows.
    #[arg(long, value_name = "TIME")]
    pub(crate) now: Option<String>,

    /// Share of the nights that may be too old at once (retention_days) [default: 33.3%]
    ///
    /// When more would go, the run takes none and fails: sooner a clock or a setting is wrong than that so much is old. Where it
    /// is meant, say so once.
    #[arg(long, value_name = "PERCENT")]
    pub(crate) expire_at_most: Option<String>,

    /// Read also what lies outside of GARDENS, where gardens.toml or a link leads there
    #[arg(long)]
    pub(crate) allow_outside: bool,

    /// How the sum is given on stdout; with json progress on stderr is one JSON object a line
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: Format,
}

const BATCH_REPORT_EXAMPLES: &str = "\
Examples:
  tussock batch report store
  tussock batch report store --date 2026-05-04 --format json
  tussock batch report store --fail-on-visit || mail -s \"gardens to visit\" office";

/// Which gardens need a visit, and since when?
///
/// Gardens in the order of what a visit would gain, each with what changed against its own last two weeks.
#[derive(Debug, Args)]
#[command(after_help = BATCH_REPORT_EXAMPLES)]
pub(crate) struct BatchReportArguments {
    /// Folder of the store
    #[arg(value_name = "STORE")]
    pub(crate) store: PathBuf,

    /// Morning after the night of this date [default: the last night that is over]
    #[arg(long, value_name = "DATE")]
    pub(crate) date: Option<String>,

    /// Exit with 1 when a garden needs a visit
    #[arg(long)]
    pub(crate) fail_on_visit: bool,

    /// Write the page to this file; a file that exists is not replaced
    #[arg(long, value_name = "FILE")]
    pub(crate) out: Option<PathBuf>,

    /// How the answer is given on stdout
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: Format,
}

const BATCH_FORGET_EXAMPLES: &str = "\
Examples:
  tussock batch forget store \"Garden 17\"

Logs and plan of the garden are not touched: take them away too, or the next run reads them again.";

/// Take a garden out of every table
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

/// Do jobs from stdin, for a run.
#[derive(Debug, Args)]
pub(crate) struct BatchWorkerArguments {
    /// Memory in MiB.
    #[arg(long)]
    pub(crate) memory_limit: u64,
}

/// Kind of a log that is written.
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

/// How a simulated machine goes over the lawn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, ValueEnum)]
pub(crate) enum PatternKind {
    /// Straight until an edge, then another way.
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
  tussock simulate --plan garden.geojson --stuck 40.00006,-30.00012 --out b.gpx";

/// Log an invented outing, with the truth beside it
///
/// A seeded machine drives on the plan; a logger with a stated position error writes the log. Next to the log NAME.EXT
/// goes NAME.EXT.truth.json with what was really visited, missed and where it was caught. Same plan, flags and seed give the
/// same bytes.
#[derive(Debug, Args)]
#[command(after_help = SIMULATE_EXAMPLES, subcommand_negates_reqs = true, args_conflicts_with_subcommands = true)]
pub(crate) struct SimulateArguments {
    #[command(subcommand)]
    pub(crate) many: Option<SimulateCommand>,

    /// Plan of the garden (GeoJSON)
    #[arg(long, value_name = "FILE", required = true)]
    pub(crate) plan: Option<PathBuf>,

    /// Settings of the garden (TOML): cutting width, speed and setback are used
    #[arg(long, value_name = "FILE")]
    pub(crate) settings: Option<PathBuf>,

    /// Length of the run in hours, stays at the station included
    #[arg(long, value_name = "HOURS", default_value_t = 8.0)]
    pub(crate) hours: f64,

    /// Seed of everything random
    #[arg(long, value_name = "N", default_value_t = 1)]
    pub(crate) seed: u64,

    /// First fix, RFC 3339 in UTC
    #[arg(long, value_name = "TIME", default_value = "2026-05-01T20:00:00Z")]
    pub(crate) start: String,

    /// Time between two fixes, such as 1s or 200ms
    #[arg(long, value_name = "TIME", default_value = "1s")]
    pub(crate) period: String,

    /// Position error: none, centimetre, decimetre, metre, or white=..,drift=..,drift-time=..
    ///
    /// Standard deviations per axis. centimetre: white 1 cm, drift 1.5 cm, drift time 10 min. decimetre: white 8 cm, drift
    /// 30 cm, drift time 10 min. metre: white 30 cm, drift 2 m, drift time 5 min.
    #[arg(long, value_name = "NOISE", default_value = "centimetre")]
    pub(crate) noise: String,

    /// Recorded error of a receiver instead of an invented one (CSV: t_s,east_m,north_m)
    ///
    /// What a receiver said less where it was, in rising time; a night longer than the series runs through it to and fro.
    #[arg(long, value_name = "FILE", conflicts_with = "noise")]
    pub(crate) error_from: Option<PathBuf>,

    /// Width of the swath, for the truth [default: of the settings, else 22cm]
    #[arg(long, value_name = "WIDTH")]
    pub(crate) cut_width: Option<String>,

    /// How the machine goes over the lawn
    #[arg(long, value_enum, default_value_t, value_name = "PATTERN")]
    pub(crate) pattern: PatternKind,

    /// A place that catches the machine, LAT,LON; may be given several times
    ///
    /// Within 0.6 m of it every third entry ends in a halt of 2 to 6 minutes.
    #[arg(long, value_name = "LAT,LON", allow_hyphen_values = true)]
    pub(crate) stuck: Vec<String>,

    /// Kind of the log
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    pub(crate) format: LogKind,

    /// The log; a file that exists is not replaced
    #[arg(long, value_name = "FILE", required = true)]
    pub(crate) out: Option<PathBuf>,
}

/// What else can be invented.
#[derive(Debug, Subcommand)]
pub(crate) enum SimulateCommand {
    Gardens(SimulateGardensArguments),
}

const GARDENS_EXAMPLES: &str = "\
Examples:
  tussock simulate gardens --count 100 --nights 14 --out load
  tussock batch run load/gardens --store store

In the folder: gardens/ for tussock batch, late/night-NN/ with logs to copy over it after that night, truth.json.";

/// Invent many gardens with logs and troubles, for tussock batch
///
/// Some gardens have a trouble from some night on, some of them are mended again; some logs come late, twice, cut off or damaged.
/// truth.json says which.
#[derive(Debug, Args)]
#[command(after_help = GARDENS_EXAMPLES)]
pub(crate) struct SimulateGardensArguments {
    /// How many gardens
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=100_000))]
    pub(crate) count: u32,

    /// How many nights
    #[arg(long, value_name = "N", default_value_t = 1, value_parser = clap::value_parser!(u32).range(1..=400))]
    pub(crate) nights: u32,

    /// Length of a night's log in hours
    #[arg(long, value_name = "HOURS", default_value_t = 8.0)]
    pub(crate) hours: f64,

    /// Time between two fixes, such as 1s
    #[arg(long, value_name = "TIME", default_value = "1s")]
    pub(crate) period: String,

    /// Share of gardens with a trouble, in percent
    #[arg(long, value_name = "PERCENT", default_value = "20")]
    pub(crate) troubled: String,

    /// Share of logs that come late, twice, cut off or damaged, in percent
    #[arg(long, value_name = "PERCENT", default_value = "10")]
    pub(crate) faulty: String,

    /// Least and largest lawn in square metres, such as 300-900
    #[arg(long, value_name = "AREA", default_value = "300-900")]
    pub(crate) area: String,

    /// First fix of the first night, RFC 3339 in UTC
    #[arg(long, value_name = "TIME", default_value = "2026-05-01T20:00:00Z")]
    pub(crate) start: String,

    /// Seed of everything random
    #[arg(long, value_name = "N", default_value_t = 1)]
    pub(crate) seed: u64,

    /// Folder for all of it; one that exists is not touched
    #[arg(long, value_name = "DIR")]
    pub(crate) out: PathBuf,
}
