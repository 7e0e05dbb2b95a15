//! What comes in, what is asked for, and what is answered.

use serde::{Deserialize, Serialize};
use tussock::{Advice, AnalyseError, CompareError, Job, Side, Sides, Stage};
use tussock_ingest::{Assembled, LogFile, ReadOptions};
use tussock_report::{Privacy, Style, Voice};
use tussock_types::{
    Comparison, ComplaintSettings, Findings, GeoPoint, Language, Place, Plan, Settings, file_name,
    plan_faults, with_causes,
};

/// Progress of the work: what is being done, and the fraction that is finished.
pub type Tell = fn(&str, f64);

/// What a file that is handed over is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Settings. They hold the limits, so they come first.
    Settings,
    /// The plan of a side.
    Plan(When),
    /// A log of one side, or its saved findings.
    Log(When),
}

/// Before or after a change. An analysis uses the logs before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum When {
    /// Before, or without any change.
    Before,
    /// After.
    After,
}

impl Kind {
    /// From the number that a worker passes.
    pub const fn of(number: u32) -> Option<Self> {
        Some(match number {
            0 => Self::Settings,
            1 => Self::Plan(When::Before),
            2 => Self::Log(When::Before),
            3 => Self::Plan(When::After),
            4 => Self::Log(When::After),
            _ => return None,
        })
    }
}

/// What to do with the files that were handed over.
#[derive(Clone, Debug, Deserialize)]
#[serde(tag = "act", rename_all = "snake_case")]
pub enum Request {
    /// Analyse the logs, or open the saved findings.
    Analyse {
        /// Language of the page.
        #[serde(default)]
        language: Language,
        /// Cutting width, where the settings are not to be asked for it.
        cut_width_m: Option<f64>,
        /// Whether changes are suggested.
        suggestions: Choice,
    },
    /// Ask about a place, in degrees or in metres, as typed.
    Ask {
        /// Latitude and longitude.
        at_deg: Option<String>,
        /// Metres east and north of the origin.
        at_m: Option<String>,
        /// What was said about it.
        said: Option<String>,
        /// Columns of the answer.
        columns: usize,
        /// Whether the page should begin with the answer.
        kept: Choice,
    },
    /// Compare the two sides.
    Compare {
        /// Language of the page.
        #[serde(default)]
        language: Language,
        /// Cutting width, where the settings are not to be asked for it.
        cut_width_m: Option<f64>,
    },
    /// Say what is shown in another language.
    Speak {
        /// Its tag.
        language: Language,
    },
    /// Make one file.
    Make {
        /// Its name.
        name: String,
        /// Whether coordinates and dates are left out.
        private: Choice,
    },
}

/// Whether something is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Choice {
    /// It is.
    Yes,
    /// It is not.
    No,
}

/// The answer.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "answer", rename_all = "snake_case")]
pub enum Answer {
    /// An analysis.
    Shown {
        /// `report.html`.
        page: String,
        /// Files that can be made.
        files: Vec<&'static str>,
        /// The same for those that reveal neither where nor when.
        private_files: Vec<&'static str>,
        /// Files that cannot be made, and why.
        left_out: Vec<(&'static str, String)>,
        /// What to do next to learn more.
        hints: Vec<String>,
    },
    /// What is known about a place.
    Told {
        /// The text that the command would print.
        text: String,
    },
    /// A comparison.
    Compared {
        /// `comparison.html`.
        page: String,
        /// Files that can be made.
        files: Vec<&'static str>,
    },
    /// A file.
    #[serde(skip)]
    Made(
        /// Its bytes.
        Vec<u8>,
    ),
}

/// Why something could not be done, in the command's words.
#[derive(Clone, Debug, Default, Serialize)]
pub struct Failure {
    /// What was found and what was expected; further lines give details.
    pub message: String,
    /// What the user can do.
    pub hints: Vec<String>,
}

impl Failure {
    fn said(message: impl Into<String>) -> Self {
        Self {
            message: message.into(),
            hints: Vec::new(),
        }
    }

    fn hint(mut self, hint: Option<impl Into<String>>) -> Self {
        self.hints.extend(hint.map(Into::into));
        self
    }
}

impl<E: std::error::Error> From<E> for Failure {
    fn from(error: E) -> Self {
        Self::said(with_causes(&error))
    }
}

const COMPARISON_FILES: [&str; 2] = ["comparison.html", "comparison.json"];

/// The files that were handed over for one side.
#[derive(Default)]
struct Handed {
    names: Vec<String>,
    plan_name: String,
    plan: Option<Plan>,
    logs: Vec<LogFile>,
    saved: Option<Findings>,
}

impl Handed {
    fn take(&mut self, name: &str, bytes: &[u8], settings: &Settings) -> Result<(), Failure> {
        if tussock_report::looks_saved(&bytes[..bytes.len().min(4096)]) {
            self.saved = Some(tussock_report::from_json(bytes).map_err(|error| of_file(name, &error))?);
        } else {
            let options = ReadOptions {
                limits: settings.limits.clone(),
                ..ReadOptions::default()
            };
            self.logs
                .push(tussock_ingest::read_log(name, bytes, &options).map_err(|error| {
                    let hint = error.hint();
                    Failure::from(error).hint(hint)
                })?);
        }
        self.names.push(file_name(name).to_owned());
        if self.saved.is_some() && self.names.len() > 1 {
            return Err(Failure::said(format!(
                "{} files on one side with findings among them, expected one findings.json or logs only",
                self.names.len()
            )));
        }
        Ok(())
    }

    fn plan(&self) -> Option<&Plan> {
        self.plan.as_ref()
    }

    /// The findings of this side, and the logs that they came from.
    fn findings(&mut self, settings: &Settings) -> Result<(Findings, Option<Assembled>), Failure> {
        if let Some(saved) = self.saved.take() {
            return Ok((saved, None));
        }
        if self.plan.is_none() {
            return Err(Failure::said(
                "no plan is given, expected one where a side is a log",
            ));
        }
        let assembled = self.assembled()?;
        let findings = tussock::analyse(&job(&assembled, self.plan(), settings))
            .map_err(|error| self.cannot_go_on(&error))?;
        Ok((findings, Some(assembled)))
    }

    fn assembled(&mut self) -> Result<Assembled, Failure> {
        Ok(tussock_ingest::assemble(std::mem::take(&mut self.logs))?)
    }

    fn cannot_go_on(&self, error: &AnalyseError) -> Failure {
        match error {
            AnalyseError::PlanFaults(faults) => Failure::said(plan_faults(&self.plan_name, faults)),
            _ => Failure::said(with_causes(error)).hint(error.hint()),
        }
    }
}

fn of_file(name: &str, error: &dyn std::error::Error) -> Failure {
    Failure::said(format!("{name}: {}", with_causes(error)))
}

/// Files in, answers out.
#[derive(Default)]
pub struct Counter {
    settings: Settings,
    before: Handed,
    after: Handed,
    findings: Option<Findings>,
    comparison: Option<Comparison>,
    language: Language,
}

impl Counter {
    /// Takes a file and reads it.
    ///
    /// # Errors
    ///
    /// If it cannot be read; the message is the command's.
    pub fn take(&mut self, kind: Kind, name: &str, bytes: &[u8]) -> Result<(), Failure> {
        match kind {
            Kind::Settings => self.settings = tussock_ingest::read_settings_bytes(name, bytes)?,
            Kind::Plan(when) => {
                let read = tussock_ingest::read_plan(name, bytes, &self.settings.limits)?;
                let plan = tussock::sound_plan(read.plan, read.faults)
                    .map_err(|faults| Failure::said(plan_faults(name, &faults)))?;
                let side = self.side(when);
                name.clone_into(&mut side.plan_name);
                side.plan = Some(plan);
            }
            Kind::Log(when) => {
                let settings = std::mem::take(&mut self.settings);
                let taken = self.side(when).take(name, bytes, &settings);
                self.settings = settings;
                taken?;
            }
        }
        Ok(())
    }

    fn side(&mut self, when: When) -> &mut Handed {
        match when {
            When::Before => &mut self.before,
            When::After => &mut self.after,
        }
    }

    /// Does what is wanted.
    ///
    /// # Errors
    ///
    /// If it cannot be done; the message is the command's.
    pub fn act(&mut self, wish: Request, tell: Tell) -> Result<Answer, Failure> {
        match wish {
            Request::Analyse {
                language,
                cut_width_m,
                suggestions,
            } => {
                self.language = language;
                self.settings.machine.cut_width_m = cut_width_m.or(self.settings.machine.cut_width_m);
                self.findings = Some(self.analysed(suggestions, tell)?);
                self.shown(tell)
            }
            Request::Ask {
                at_deg,
                at_m,
                said,
                columns,
                kept,
            } => {
                let asked = place_asked(at_deg.as_deref(), at_m.as_deref(), said)?;
                self.ask(asked, columns, kept, tell)
            }
            Request::Compare {
                language,
                cut_width_m,
            } => {
                self.language = language;
                self.settings.machine.cut_width_m = cut_width_m.or(self.settings.machine.cut_width_m);
                let comparison = self.compared(tell)?;
                let page = tussock_report::html_comparison(&comparison, self.voice())?;
                self.comparison = Some(comparison);
                Ok(Answer::Compared {
                    page,
                    files: COMPARISON_FILES.to_vec(),
                })
            }
            Request::Speak { language } => {
                self.language = language;
                match &self.comparison {
                    Some(comparison) => Ok(Answer::Compared {
                        page: tussock_report::html_comparison(comparison, self.voice())?,
                        files: COMPARISON_FILES.to_vec(),
                    }),
                    None => self.shown(tell),
                }
            }
            Request::Make { name, private } => self.made(&name, private),
        }
    }

    fn analysed(&mut self, suggestions: Choice, tell: Tell) -> Result<Findings, Failure> {
        if let Some(saved) = self.before.saved.take() {
            return Ok(saved);
        }
        let assembled = self.before.assembled()?;
        let tell_stage = |stage: Stage, done_fraction: f64| tell(stage.words(), done_fraction);
        let advice = match suggestions {
            Choice::Yes => Advice::Given,
            Choice::No => Advice::LeftOut,
        };
        let job = Job {
            progress: Some(&tell_stage),
            advice,
            ..job(&assembled, self.before.plan(), &self.settings)
        };
        tussock::analyse(&job).map_err(|error| self.before.cannot_go_on(&error))
    }

    /// In the language that the page was asked in, and in the units of the garden.
    fn voice(&self) -> Voice {
        let garden = self.findings.as_ref().map(|findings| &findings.settings.garden);
        let units = garden.unwrap_or(&self.settings.garden).units;
        Voice::new(self.language, units.unwrap_or_default())
    }

    fn shown(&self, tell: Tell) -> Result<Answer, Failure> {
        tell("drawing", 1.0);
        let findings = self.findings()?;
        Ok(Answer::Shown {
            page: tussock_report::html(findings, self.voice())?,
            files: tussock_report::output_names(findings, Privacy::Full),
            private_files: tussock_report::output_names(findings, Privacy::Private),
            left_out: tussock_report::left_out(findings, Privacy::Full, self.voice()),
            hints: tussock_report::hints(findings, self.voice()),
        })
    }

    fn findings(&self) -> Result<&Findings, Failure> {
        (self.findings.as_ref())
            .ok_or_else(|| Failure::said("nothing is analysed yet, expected logs or findings first"))
    }

    fn ask(
        &mut self,
        asked: ComplaintSettings,
        columns: usize,
        kept: Choice,
        tell: Tell,
    ) -> Result<Answer, Failure> {
        let findings = self.findings()?;
        let found = tussock::ask(findings, &asked)?;
        if kept == Choice::No {
            let style = Style {
                width_columns: columns,
                voice: self.voice(),
                ..Style::default()
            };
            let text = tussock_report::answer_complaint(&found, findings, style);
            return Ok(Answer::Told { text });
        }
        if let Some(findings) = &mut self.findings {
            findings.settings.complaint.push(asked);
            findings.complaints.push(found);
        }
        self.shown(tell)
    }

    fn compared(&mut self, tell: Tell) -> Result<Comparison, Failure> {
        tell("reading", 0.0);
        if self.after.plan.is_none() {
            self.after.plan.clone_from(&self.before.plan);
            self.after.plan_name.clone_from(&self.before.plan_name);
        }
        let (before, before_logs) = self.before.findings(&self.settings)?;
        tell("comparing", 0.45);
        let (after, after_logs) = self.after.findings(&self.settings)?;
        tell("comparing", 0.9);
        let job_of = |logs, given| job(logs, Handed::plan(given), &self.settings);
        let before_job = before_logs.as_ref().map(|logs| job_of(logs, &self.before));
        let after_job = after_logs.as_ref().map(|logs| job_of(logs, &self.after));
        let sides = Sides {
            before: Side {
                names: self.before.names.clone(),
                findings: &before,
                job: before_job.as_ref(),
            },
            after: Side {
                names: self.after.names.clone(),
                findings: &after,
                job: after_job.as_ref(),
            },
            seed: 0,
        };
        tussock::compare(&sides).map_err(|error| match &error {
            CompareError::Analyse(AnalyseError::PlanFaults(faults)) => {
                Failure::said(plan_faults(&self.before.plan_name, faults))
            }
            _ => Failure::said(with_causes(&error)).hint(error.hint()),
        })
    }

    fn made(&self, name: &str, private: Choice) -> Result<Answer, Failure> {
        let privacy = Privacy::from(private == Choice::Yes);
        let bytes = match (&self.comparison, name) {
            (Some(comparison), "comparison.html") => {
                Some(tussock_report::html_comparison(comparison, self.voice())?.into_bytes())
            }
            (Some(comparison), "comparison.json") => {
                Some(tussock_report::comparison_to_json(comparison)?.into_bytes())
            }
            _ => tussock_report::output(self.findings()?, privacy, name, self.voice())?
                .map(|output| output.bytes),
        };
        bytes
            .map(Answer::Made)
            .ok_or_else(|| Failure::said(format!("{name:?} cannot be made of these findings")))
    }
}

fn job<'a>(assembled: &'a Assembled, plan: Option<&'a Plan>, settings: &'a Settings) -> Job<'a> {
    Job {
        plan,
        ..Job::new(&assembled.traces, settings)
            .with_inputs(&assembled.inputs)
            .without_advice()
    }
}

fn place_asked(
    at_deg: Option<&str>,
    at_m: Option<&str>,
    said: Option<String>,
) -> Result<ComplaintSettings, Failure> {
    let mut asked = ComplaintSettings {
        said,
        ..ComplaintSettings::default()
    };
    if let Some(typed) = at_deg {
        let at: GeoPoint = typed.parse()?;
        asked.at_deg = Some([at.lat_deg, at.lon_deg]);
    } else {
        let at: Place = at_m.unwrap_or_default().parse()?;
        asked.at_m = Some([at.east_m, at.north_m]);
    }
    Ok(asked)
}
