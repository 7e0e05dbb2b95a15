//! The night shift without the command: what the tests of this room start, kill and start again.
//!
//! `night_shift run GARDENS STORE CHUNK LONGEST_S NOW_UNIX_S` does a night's work, `night_shift worker MIB` does jobs from stdin.

use tussock_batch::pool::Crew;
use tussock_batch::run::{Shift, run};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    match words.iter().map(String::as_str).collect::<Vec<_>>()[..] {
        ["worker", mib] => {
            tussock_batch::work::limit_memory(mib.parse::<u64>()? << 20)?;
            tussock_batch::work::serve(std::io::stdin().lock(), std::io::stdout().lock())?;
        }
        ["run", place, store, chunk, longest_s, now_unix_s] => {
            let done = run(
                &Shift {
                    place: place.to_owned(),
                    store: store.into(),
                    crew: Crew {
                        program: std::env::current_exe()?,
                        arguments: vec!["worker".into(), "512".into()],
                        workers: 2,
                        longest_s: longest_s.parse()?,
                    },
                    chunk: chunk.parse()?,
                    advice: tussock::Advice::LeftOut,
                    now_unix_s: now_unix_s.parse()?,
                    expire_at_most_fraction: tussock_batch::forget::USUAL_EXPIRY_FRACTION,
                    reach: tussock_batch::PlaceReach::Inside,
                },
                &mut |_| {},
            )?;
            if done.failures > 0 {
                return Err(format!("{} failed", done.failures).into());
            }
        }
        _ => return Err("expected run or worker".into()),
    }
    Ok(())
}
