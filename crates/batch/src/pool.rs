//! How can one log that hangs be kept from stopping the others?
//!
//! Jobs are done by worker processes, one per core, each used again for job after job. A worker announces what it begins. If
//! it dies, or is silent for longer than allowed, it is ended, what it was working on is reported as failed, a new worker
//! takes its place, and the job is done again without that log or that night.
//!
//! Only a few answers wait at any time, so memory does not grow with the number of gardens.

use crate::BatchError;
use crate::job::{Failed, GardenAnswer, GardenJob, JobStage, Message};
use std::ffi::OsString;
use std::io::{BufRead, BufReader, Read, Write};
use std::path::PathBuf;
use std::process::{Child, ChildStdin, Command, Stdio};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, RecvTimeoutError, sync_channel};
use std::sync::{Arc, Mutex};
use std::time::Duration;

/// A garden in which this many logs or nights end their worker is given up for this run.
const MOST_ENDINGS: usize = 25;
/// The number of bytes of a worker's last output that are examined.
const LAST_WORDS_BYTES: usize = 4096;
/// A worker writes no longer line than this.
const LONGEST_LINE_BYTES: u64 = 256 << 20;

/// The workers.
#[derive(Clone, Debug, PartialEq)]
pub struct Crew {
    /// The program of a worker.
    pub program: PathBuf,
    /// Its arguments.
    pub arguments: Vec<OsString>,
    /// How many at once.
    pub workers: usize,
    /// The longest time that a worker may spend on one log or one night.
    pub longest_s: f64,
}

/// One worker, kept from job to job by a caller that has jobs one after the other.
pub struct Hand {
    crew: Crew,
    worker: Option<Worker>,
}

impl Hand {
    /// A worker of a crew, started with the first job.
    pub const fn new(crew: Crew) -> Self {
        Self { crew, worker: None }
    }

    /// Does a job. Whatever ends the worker is named in the answer, as in [`Crew::work`].
    ///
    /// # Errors
    /// If no worker can be started.
    pub fn job(&mut self, job: &GardenJob) -> Result<GardenAnswer, BatchError> {
        self.crew.job(&mut self.worker, job.clone())
    }
}

impl Drop for Hand {
    fn drop(&mut self) {
        if let Some(worker) = self.worker.take() {
            worker.dismiss();
        }
    }
}

struct Worker {
    child: Child,
    stdin: ChildStdin,
    lines: Receiver<String>,
    last_words: Arc<Mutex<Vec<u8>>>,
}

/// How a worker ended.
struct Ending {
    reason: &'static str,
    detail: String,
}

impl Crew {
    fn hire(&self) -> Result<Worker, BatchError> {
        let no_worker = |source| BatchError::NoWorker {
            program: self.program.display().to_string(),
            source,
        };
        let mut child = Command::new(&self.program)
            .args(&self.arguments)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .map_err(no_worker)?;
        let missing = || no_worker(std::io::Error::other("it has no input or output"));
        let stdin = child.stdin.take().ok_or_else(missing)?;
        let stdout = child.stdout.take().ok_or_else(missing)?;
        let mut stderr = child.stderr.take().ok_or_else(missing)?;
        let (send, lines) = sync_channel(4);
        std::thread::spawn(move || {
            let mut reader = BufReader::new(stdout);
            loop {
                let mut line = Vec::new();
                match reader
                    .by_ref()
                    .take(LONGEST_LINE_BYTES)
                    .read_until(b'\n', &mut line)
                {
                    Ok(read) if read > 0 && line.ends_with(b"\n") => {}
                    _ => return,
                }
                if send.send(String::from_utf8_lossy(&line).into_owned()).is_err() {
                    return;
                }
            }
        });
        let last_words = Arc::new(Mutex::new(Vec::new()));
        let words = Arc::clone(&last_words);
        std::thread::spawn(move || {
            let mut piece = [0; 1024];
            while let Ok(read) = stderr.read(&mut piece) {
                if read == 0 {
                    return;
                }
                if let Ok(mut words) = words.lock() {
                    words.extend(&piece[..read]);
                    let over = words.len().saturating_sub(LAST_WORDS_BYTES);
                    words.drain(..over);
                }
            }
        });
        Ok(Worker {
            child,
            stdin,
            lines,
            last_words,
        })
    }

    /// Does all jobs and passes on each answer. Stops at the first error of `each`.
    ///
    /// # Errors
    /// If no worker can be started, and the errors of `each`.
    pub fn work(
        &self,
        jobs: Vec<GardenJob>,
        each: &mut dyn FnMut(&GardenJob, GardenAnswer) -> Result<(), BatchError>,
    ) -> Result<(), BatchError> {
        let workers = self.workers.clamp(1, jobs.len().max(1));
        let jobs = Mutex::new(jobs.into_iter());
        let stop = AtomicBool::new(false);
        let (send, answers) = sync_channel(workers);
        std::thread::scope(|scope| {
            for _ in 0..workers {
                let send = send.clone();
                let (jobs, stop) = (&jobs, &stop);
                scope.spawn(move || {
                    let mut worker = None;
                    while !stop.load(Ordering::SeqCst) {
                        let Some(job) = jobs.lock().ok().and_then(|mut jobs| jobs.next()) else {
                            break;
                        };
                        let answer = self.job(&mut worker, job.clone());
                        if send.send((job, answer)).is_err() {
                            break;
                        }
                    }
                    if let Some(worker) = worker {
                        worker.dismiss();
                    }
                });
            }
            drop(send);
            let mut outcome = Ok(());
            for (job, answer) in answers {
                if outcome.is_err() {
                    continue;
                }
                outcome = answer.and_then(|answer| each(&job, answer));
                if outcome.is_err() {
                    stop.store(true, Ordering::SeqCst);
                }
            }
            outcome
        })
    }

    fn job(&self, worker: &mut Option<Worker>, mut job: GardenJob) -> Result<GardenAnswer, BatchError> {
        let mut failed: Vec<Failed> = Vec::new();
        loop {
            let mut hired = match worker.take() {
                Some(worker) => worker,
                None => self.hire()?,
            };
            let mut at = JobStage::default();
            match self.attempt(&mut hired, &job, &mut at) {
                Ok(mut answer) => {
                    answer.failed.extend(failed);
                    *worker = Some(hired);
                    return Ok(answer);
                }
                Err(why) => {
                    let ending = hired.end(why, self.longest_s);
                    let log = job.logs.iter().position(|log| log.path == at.what);
                    let modified_unix_ms = log.map_or_else(
                        || job.logs.iter().map(|log| log.modified_unix_ms).max().unwrap_or(0),
                        |log| job.logs[log].modified_unix_ms,
                    );
                    let what = if at.what.is_empty() { "garden" } else { &at.what };
                    let night = at.night.unwrap_or_else(|| {
                        job.clock
                            .landed(modified_unix_ms, &tussock_types::GardenClock::Fixed(0))
                    });
                    failed.push(Failed {
                        bytes: log.map_or(0, |log| job.logs[log].bytes),
                        modified_unix_ms: log.map_or(0, |_| modified_unix_ms),
                        ..Failed::of(what, night, ending.reason, ending.detail, &at.sha256)
                    });
                    match (at.night, log) {
                        (Some(night), _) => job.failed.push((night, at.sha256)),
                        (None, Some(log)) => {
                            job.logs.remove(log);
                        }
                        (None, None) => {
                            return Ok(GardenAnswer {
                                failed,
                                ..GardenAnswer::default()
                            });
                        }
                    }
                    if failed.len() >= MOST_ENDINGS {
                        return Ok(GardenAnswer {
                            failed,
                            ..GardenAnswer::default()
                        });
                    }
                }
            }
        }
    }

    fn attempt(&self, worker: &mut Worker, job: &GardenJob, at: &mut JobStage) -> Result<GardenAnswer, Why> {
        let mut line = serde_json::to_vec(job).map_err(|_| Why::Ended)?;
        line.push(b'\n');
        if worker
            .stdin
            .write_all(&line)
            .and_then(|()| worker.stdin.flush())
            .is_err()
        {
            return Err(Why::Ended);
        }
        loop {
            let longest = Duration::try_from_secs_f64(self.longest_s).unwrap_or(Duration::MAX);
            let text = match worker.lines.recv_timeout(longest) {
                Ok(text) => text,
                Err(RecvTimeoutError::Timeout) => return Err(Why::Silent),
                Err(RecvTimeoutError::Disconnected) => return Err(Why::Ended),
            };
            match serde_json::from_str(&text) {
                Ok(Message::Begins(stage)) => *at = stage,
                Ok(Message::Done(answer)) => return Ok(*answer),
                Err(_) => return Err(Why::Garbled),
            }
        }
    }
}

#[derive(Clone, Copy)]
enum Why {
    Silent,
    Ended,
    Garbled,
}

impl Worker {
    fn dismiss(self) {
        let Self { mut child, stdin, .. } = self;
        // A worker ends when its input does.
        drop(stdin);
        let _ = child.wait();
    }

    fn end(mut self, why: Why, longest_s: f64) -> Ending {
        if !matches!(why, Why::Ended) {
            // It may have gone already; then there is nothing to end.
            let _ = self.child.kill();
        }
        let status = self.child.wait();
        // The last output is read by its own thread: wait until the pipe is empty.
        let mut words = String::new();
        for _ in 0..20 {
            std::thread::sleep(Duration::from_millis(5));
            let now = self
                .last_words
                .lock()
                .map(|words| String::from_utf8_lossy(&words).into_owned())
                .unwrap_or_default();
            if !now.is_empty() && now == words {
                break;
            }
            words = now;
        }
        match why {
            Why::Silent => Ending {
                reason: "time",
                detail: format!("took longer than {longest_s} s and was ended"),
            },
            Why::Garbled => Ending {
                reason: "died",
                detail: "said something that is no answer and was ended".to_owned(),
            },
            Why::Ended if words.contains("memory allocation of") => Ending {
                reason: "memory",
                detail: "wanted more memory than a worker may have".to_owned(),
            },
            Why::Ended => {
                let how = status.map_or_else(|error| error.to_string(), |status| status.to_string());
                let last = words
                    .lines()
                    .rev()
                    .find(|line| !line.trim().is_empty() && !line.starts_with("note:"));
                let last = last.map(|line| format!(": {}", line.trim())).unwrap_or_default();
                Ending {
                    reason: "died",
                    detail: format!("the worker ended ({how}){last}"),
                }
            }
        }
    }
}

#[cfg(all(test, unix))]
mod tests {
    use super::*;
    use crate::job::LogRef;

    fn job(garden: &str, logs: &[&str]) -> GardenJob {
        GardenJob {
            place: "/".to_owned(),
            garden: garden.to_owned(),
            plan: "plan".to_owned(),
            settings: "settings".to_owned(),
            reach: crate::PlaceReach::Inside,
            clock: crate::Clock {
                now_unix_s: 1.78e9,
                night_turns_at_h: 12,
                oldest_log_days: crate::USUAL_OLDEST_LOG_DAYS,
            },
            logs: logs
                .iter()
                .map(|path| LogRef {
                    path: (*path).to_owned(),
                    machine: None,
                    bytes: 7,
                    modified_unix_ms: 1_777_700_000_000,
                    known: None,
                    is_there: true,
                })
                .collect(),
            done: Vec::new(),
            failed: Vec::new(),
            advice: None,
        }
    }

    /// A worker written as a shell script: it does what the names of the logs say.
    fn crew(longest_s: f64) -> Crew {
        let script = r#"
            begins() { echo "{\"begins\":{\"what\":\"$1\",\"night\":null,\"sha256\":\"d\"}}"; }
            while read -r line; do
                case "$line" in *'"hangs"'*) begins hangs; sleep 60 ;; esac
                case "$line" in *'"dies"'*) begins dies; echo "thread panicked at the grass" >&2; exit 101 ;; esac
                case "$line" in *'"eats"'*) begins eats; echo "memory allocation of 10 bytes failed" >&2; kill -ABRT $$ ;; esac
                case "$line" in *'"mumbles"'*) begins mumbles; echo "huh" ;; esac
                case "$line" in *'"early"'*) exit 3 ;; esac
                echo '{"done":{"name":null,"plan_sha256":"p","settings_sha256":"s","promised_fraction":0.9,"promised_days":3.0,"logs":[],"nights":[],"failed":[]}}'
            done"#;
        Crew {
            program: "sh".into(),
            arguments: vec!["-c".into(), script.into()],
            workers: 2,
            longest_s,
        }
    }

    #[test]
    fn what_ends_a_worker_is_named_and_the_rest_goes_on() {
        let jobs = vec![
            job("a", &["good"]),
            job("b", &["good", "hangs", "dies"]),
            job("c", &["eats", "mumbles"]),
            job("d", &["early"]),
            job("e", &["good"]),
        ];
        let mut found = Vec::new();
        crew(0.5)
            .work(jobs, &mut |job, answer| {
                let reasons: Vec<String> = answer
                    .failed
                    .iter()
                    .map(|one| format!("{} {}", one.what, one.reason))
                    .collect();
                if let Some(died) = answer.failed.iter().find(|one| one.what == "dies") {
                    assert!(
                        died.detail.contains("thread panicked at the grass"),
                        "{}",
                        died.detail
                    );
                    assert_eq!((died.bytes, &died.sha256[..]), (7, "d"));
                }
                found.push((job.garden.clone(), answer.plan_sha256, reasons));
                Ok(())
            })
            .unwrap();
        found.sort();
        let told = |garden: &str, plan: &str, reasons: &[&str]| {
            (
                garden.to_owned(),
                plan.to_owned(),
                reasons.iter().map(|one| (*one).to_owned()).collect::<Vec<_>>(),
            )
        };
        assert_eq!(
            found,
            [
                told("a", "p", &[]),
                told("b", "p", &["hangs time", "dies died"]),
                told("c", "p", &["eats memory", "mumbles died"]),
                told("d", "", &["garden died"]),
                told("e", "p", &[]),
            ]
        );
    }

    #[test]
    fn an_error_of_the_caller_stops_the_crew_and_comes_back() {
        let jobs = (0..50)
            .map(|number| job(&number.to_string(), &["good"]))
            .collect();
        let mut seen = 0;
        let outcome = crew(5.0).work(jobs, &mut |_, _| {
            seen += 1;
            Err(BatchError::Place {
                place: "x".to_owned(),
                why: "full".to_owned(),
            })
        });
        assert!(matches!(outcome, Err(BatchError::Place { .. })));
        assert_eq!(seen, 1);
    }

    #[test]
    fn a_program_that_is_not_there_is_told() {
        let nobody = Crew {
            program: "/nowhere/nobody".into(),
            ..crew(1.0)
        };
        let outcome = nobody.work(vec![job("a", &[])], &mut |_, _| Ok(()));
        assert!(matches!(outcome, Err(BatchError::NoWorker { .. })));
    }
}
