//! Which pattern are these logs taken for? One JSON line a log: `pattern PLAN LOG [PLAN LOG ...]`.
//!
//! `tests/python/other_gardens/patterns.py` asks it about drives whose pattern is known, and writes `docs/patterns.md`.

use std::error::Error;
use std::fs::File;
use tussock::measures::guess_pattern;
use tussock::{Advice, Job};
use tussock_ingest::{ReadOptions, assemble, read_log, read_plan};
use tussock_survey::Survey;
use tussock_types::{LimitSettings, Settings};

fn main() -> Result<(), Box<dyn Error>> {
    let paths: Vec<String> = std::env::args().skip(1).collect();
    let mut settings = Settings::default();
    settings.machine.cut_width_m = Some(0.22);
    for pair in paths.chunks_exact(2) {
        let plan = read_plan(&pair[0], &std::fs::read(&pair[0])?, &LimitSettings::default())?.plan;
        let logs = assemble(vec![read_log(
            &pair[1],
            File::open(&pair[1])?,
            &ReadOptions::default(),
        )?])?;
        let job = Job {
            traces: &logs.traces,
            inputs: &logs.inputs,
            plan: Some(&plan),
            settings: &settings,
            seed: 0,
            advice: Advice::LeftOut,
            progress: None,
        };
        let survey = Survey::of(&job)?;
        let guess = serde_json::to_string(&guess_pattern(&survey)?)?;
        let chance = format!("{:?}", survey.drive()?.pattern).to_lowercase();
        use std::io::Write;
        writeln!(
            std::io::stdout(),
            "{{\"log\": {:?}, \"luck\": {chance:?}, \"guess\": {guess}}}",
            pair[1]
        )?;
    }
    Ok(())
}
