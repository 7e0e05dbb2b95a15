//! When did an alarm begin, does it still stand, and when was it mended?
//!
//! Every garden is compared with its own history under one plan, night by night in order, so an alarm depends on the nights
//! alone: a late log works out again whatever it changes.
//!
//! | alarm | what is watched | worse by at least | usual scatter | nights at least |
//! |---|---|---|---|---|
//! | less visited | visited fraction at equal hours | 6 points | 2.5 points | 2 |
//! | lost hours | hours driving, and half an hour more | a quarter | 10 % | 3 |
//! | receiver worse | position error, and 5 cm more | twice | 20 % | 2 |
//! | silences | hours without positions, and an hour more | twice | 30 % | 3 |
//! | missed pocket | whether one identity is missed | | | 2 of 3 |
//! | stuck spot | whether one place took at least four minutes | | | 2 of 3 |
//!
//! **Onset.** A cumulative sum of log-likelihood ratios (Page 1954; Lorden 1971; Hawkins & Olwell 1998) that never falls
//! below zero. It compares a normal law about the usual value with one that is worse by the amount in the table or by two
//! standard deviations, whichever is larger. The usual value is the median of the last 28 quiet nights; the deviation is
//! their median absolute deviation, pulled towards the scatter in the table with the weight of five nights. One night's
//! contribution to the sum is limited, upwards so that at least the number of nights in the table is needed, and downwards
//! to a third of the limit (winsorised as by Hawkins 1993), so odd nights raise no alarm and a good one clears little.
//! Nights since the sum was last zero are under suspicion and enter no baseline: it is frozen at the onset, which is the
//! night after which the mean excess is most certain (Pignatiello & Samuel 2001). Pockets and spots are taken to show in
//! 80 % of nights if they are there and in 2 % if not.
//!
//! **Mended.** The same sum in the other direction, from the level found to the frozen usual value; for pockets and spots,
//! three nights without them.
//!
//! **Equal hours.** A night with more or fewer hours is converted to the median hours of the garden's first fourteen nights
//! by the law of random search (Koopman 1956), so rain is not a fault; a night with less than a third of them says nothing.
//!
//! **Cut short.** A night whose log spans less than three quarters of the usual hours says nothing, except about lost hours.
//!
//! The amounts, shares and limits were chosen on the model of `docs/alarms.md`, which measures them; they have no source.

use crate::night::{self, NightNumber};
use crate::store::{ColumnChoice, StoreChange};
use crate::table::{ALARMS, GARDENS, NIGHTS, POCKETS, STUCK_SPOTS, StoreTable, TableRow, USUAL, Value, row};
use crate::{BatchError, Store, rows};
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::f64::consts::LN_2;
use std::ops::RangeBounds;
use tussock_types::{Alarm, Said, math};

/// Changes if the same nights lead to other alarms: all are then worked out again.
const RULES: u32 = 1;
const LIMIT: f64 = 8.0;
/// The most that one of two, or of three, nights may contribute to the limit.
const OF_TWO: f64 = 0.55 * LIMIT;
const OF_THREE: f64 = 0.37 * LIMIT;
const AGAINST: f64 = LIMIT / 3.0;
const USUAL_NIGHTS: usize = 28;
const LEAST_USUAL: usize = 3;
const EQUAL_HOURS_NIGHTS: usize = 14;
const PRIOR_NIGHTS: f64 = 5.0;
/// Standard deviation of a normal law over its median absolute deviation.
const SD_PER_MAD: f64 = 1.4826;
const WHOLE_SPAN: f64 = 0.75;
const SHOWN_IF_THERE: f64 = 0.8;
const SHOWN_IF_NOT: f64 = 0.02;
const STUCK_MIN: f64 = 4.0;
/// Spots closer than this on two nights are one place; about the reach within which episodes are gathered.
const SAME_SPOT_M: f64 = 2.0;
const AT_ONCE: usize = 1000;

/// One figure of a night that is watched, on a scale where larger is worse.
struct Watched {
    alarm: Alarm,
    column: &'static str,
    /// Added before taking the logarithm; none if the figure itself is watched.
    added: Option<f64>,
    /// 1 if more is worse, -1 if less is.
    sign: f64,
    worse_by: f64,
    scatter: f64,
    night_at_most: f64,
}

#[rustfmt::skip]
const WATCHED: [Watched; 4] = [
    Watched { alarm: Alarm::LessVisited, column: "visited_fraction", added: None, sign: -1.0, worse_by: 0.06, scatter: 0.025, night_at_most: OF_TWO },
    Watched { alarm: Alarm::LostHours, column: "driving_h", added: Some(0.5), sign: -1.0, worse_by: 0.2877, scatter: 0.1, night_at_most: OF_THREE },
    Watched { alarm: Alarm::ReceiverWorse, column: "position_error_m", added: Some(0.05), sign: 1.0, worse_by: LN_2, scatter: 0.2, night_at_most: OF_TWO },
    Watched { alarm: Alarm::Silences, column: "silent_h", added: Some(1.0), sign: 1.0, worse_by: LN_2, scatter: 0.3, night_at_most: OF_THREE },
];

impl Watched {
    fn scaled(&self, figure: f64) -> f64 {
        self.sign
            * self
                .added
                .map_or(figure, |added| math::ln(figure.max(0.0) + added))
    }

    fn figure(&self, scaled: f64) -> f64 {
        let scaled = self.sign * scaled;
        self.added.map_or(scaled, |added| math::exp(scaled) - added)
    }

    /// Median and standard deviation of quiet nights, if there are enough.
    fn law(&self, quiet: &[f64]) -> Option<(f64, f64)> {
        let mut last: Vec<f64> = quiet.iter().rev().take(USUAL_NIGHTS).copied().collect();
        let usual = math::median(&mut last).filter(|_| last.len() >= LEAST_USUAL)?;
        let mut off: Vec<f64> = last.iter().map(|scaled| (scaled - usual).abs()).collect();
        let count = off.len() as f64;
        let own = SD_PER_MAD * math::median(&mut off)?;
        let variance =
            (PRIOR_NIGHTS * self.scatter * self.scatter + count * own * own) / (PRIOR_NIGHTS + count);
        Some((usual, variance.sqrt()))
    }
}

/// An alarm from its first night on.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Episode {
    pub(crate) alarm: Alarm,
    /// Identity of a pocket or spot; empty for the whole garden.
    pub(crate) what: String,
    pub(crate) since: NightNumber,
    /// The night whose log decided it.
    pub(crate) opened: NightNumber,
    /// The first night without it, and the night whose log decided that.
    pub(crate) mended: Option<(NightNumber, NightNumber)>,
    /// Nights that showed it.
    pub(crate) nights: u64,
    /// What was usual before it, the deviation on the watched scale, and what was found since.
    pub(crate) law: Option<(f64, f64)>,
    pub(crate) found: Option<f64>,
    pub(crate) gain_m2: f64,
    /// East, north, latitude, longitude.
    pub(crate) place: [Option<f64>; 4],
    /// What the newest night that shows it says; `None` if an older version wrote that night.
    pub(crate) why: Option<Said>,
}

impl Episode {
    fn new(alarm: Alarm, what: &str, since: NightNumber, opened: NightNumber) -> Self {
        Self {
            alarm,
            what: what.to_owned(),
            since,
            opened,
            mended: None,
            nights: 0,
            law: None,
            found: None,
            gain_m2: 0.0,
            place: [None; 4],
            why: None,
        }
    }

    fn row(&self, garden: &str, plan_sha256: &str) -> TableRow {
        let kind = self.alarm.word();
        let since = night::words(self.since);
        row!(ALARMS {
            garden: garden,
            alarm: [kind, &self.what, &since].join(" "),
            kind: kind,
            what: &self.what,
            plan_sha256: plan_sha256,
            since: &since,
            opened: night::words(self.opened),
            mended: self.mended.map(|(first, _)| night::words(first)),
            closed: self.mended.map(|(_, closed)| night::words(closed)),
            nights: self.nights,
            usual: self.law.map(|(usual, _)| usual),
            usual_sd: self.law.map(|(_, sd)| sd),
            found: self.found,
            gain_m2: self.gain_m2,
            east_m: self.place[0],
            north_m: self.place[1],
            lat: self.place[2],
            lon: self.place[3],
            why: self.why.as_ref().map(tussock_report::text),
            said: self.why.as_ref().map_or(Value::Null, rows::as_data),
        })
    }

    pub(crate) fn of(row: &TableRow) -> Option<Self> {
        let text = |name: &str| row[ALARMS.at(name)].text();
        let number = |name: &str| row[ALARMS.at(name)].number();
        let date = |name: &str| text(name).and_then(night::parse);
        Some(Self {
            alarm: Alarm::parse(text("kind")?)?,
            what: text("what").unwrap_or_default().to_owned(),
            since: date("since")?,
            opened: date("opened")?,
            mended: date("mended").zip(date("closed")),
            nights: row[ALARMS.at("nights")]
                .count()
                .and_then(|nights| u64::try_from(nights).ok())
                .unwrap_or(0),
            law: number("usual").zip(number("usual_sd")),
            found: number("found"),
            gain_m2: number("gain_m2").unwrap_or(0.0),
            place: ["east_m", "north_m", "lat", "lon"].map(number),
            why: text("said").and_then(|said| serde_json::from_str(said).ok()),
        })
    }

    /// Whether it was open on the morning after a night.
    pub(crate) fn is_open(&self, night: NightNumber) -> bool {
        self.opened <= night && self.mended.is_none_or(|(_, closed)| closed > night)
    }
}

/// An alarm that is open, or may open: a sum of log-likelihood ratios that never falls below zero, and the nights since it
/// was last zero, each with its figure.
struct Life {
    open: Option<Episode>,
    sum: f64,
    nights: Vec<(NightNumber, f64)>,
}

/// What a night changes.
enum Turn {
    /// These figures are not under suspicion; most often there are none, or just this night's.
    Cleared(Vec<(NightNumber, f64)>),
    /// It has opened or is mended, in these nights.
    Decided(Vec<(NightNumber, f64)>),
}

impl Life {
    fn new(open: Option<&Episode>) -> Self {
        Self {
            open: open.cloned(),
            sum: 0.0,
            nights: Vec::new(),
        }
    }

    fn take(&mut self, night: NightNumber, figure: f64, ratio: f64, limit: f64) -> Turn {
        self.sum = (self.sum + ratio).max(0.0);
        self.nights.push((night, figure));
        if self.sum > 0.0 && self.sum < limit {
            return Turn::Cleared(Vec::new());
        }
        let nights = std::mem::take(&mut self.nights);
        let is_decided = std::mem::take(&mut self.sum) >= limit;
        if is_decided {
            Turn::Decided(nights)
        } else {
            Turn::Cleared(nights)
        }
    }

    /// Ends the alarm with the first of the nights that showed it to be mended.
    fn mend(&mut self, nights: &[(NightNumber, f64)], out: &mut Vec<Episode>) {
        let (first, last) = (nights.first(), nights.last());
        out.extend(self.open.take().map(|one| Episode {
            mended: first.zip(last).map(|(first, last)| (first.0, last.0)),
            ..one
        }));
    }
}

/// Index of the night since which the mean is most certainly beyond a level.
fn onset(nights: &[(NightNumber, f64)], level: f64) -> usize {
    let (mut excess, mut best) = (0.0, (f64::NEG_INFINITY, 0));
    for (at, (_, scaled)) in nights.iter().enumerate().rev() {
        excess += scaled - level;
        let sure = excess * excess.max(0.0) / (nights.len() - at) as f64;
        if sure >= best.0 {
            best = (sure, at);
        }
    }
    best.1
}

/// Everything that is known about one garden under its plan.
pub(crate) struct History<'a> {
    pub(crate) nights: &'a BTreeMap<NightNumber, TableRow>,
    pub(crate) pockets: &'a ByNight,
    pub(crate) spots: &'a ByNight,
    /// Alarms that opened before the first of the nights.
    pub(crate) before: Vec<Episode>,
}

impl History<'_> {
    fn of(&self, night: NightNumber, column: &str) -> Option<f64> {
        self.nights.get(&night)?[NIGHTS.at(column)].number()
    }

    /// Nights whose log was cut short.
    fn cut_short(&self) -> BTreeSet<NightNumber> {
        let mut spans: Vec<f64> = Vec::new();
        let mut out = BTreeSet::new();
        for night in self.nights.keys() {
            let span_h = self.of(*night, "span_h").or_else(|| self.of(*night, "driving_h"));
            let Some(span_h) = span_h else { continue };
            let mut last: Vec<f64> = spans.iter().rev().take(USUAL_NIGHTS).copied().collect();
            if math::median(&mut last).is_some_and(|usual_h| span_h < WHOLE_SPAN * usual_h) {
                out.insert(*night);
            }
            spans.push(span_h);
        }
        out
    }

    /// Every alarm there was, including those before the first night.
    pub(crate) fn episodes(&self) -> Vec<Episode> {
        let cut_short = self.cut_short();
        let ended = self.before.iter().filter(|one| one.mended.is_some());
        let mut out: Vec<Episode> = ended.cloned().collect();
        for watched in &WATCHED {
            self.watch(watched, &cut_short, &mut out);
        }
        let pockets = self.shown(self.pockets, |row, _| {
            let is_missed = row[POCKETS.at("verdict")].text() == Some("missed");
            row[POCKETS.at("id")]
                .text()
                .filter(|_| is_missed)
                .map(str::to_owned)
        });
        self.watch_shown(Alarm::MissedPocket, &POCKETS, &pockets, &cut_short, &mut out);
        let spots = self.shown(self.spots, same_spot);
        self.watch_shown(Alarm::StuckSpot, &STUCK_SPOTS, &spots, &cut_short, &mut out);
        out.sort_by(|a, b| (a.opened, a.alarm, &a.what).cmp(&(b.opened, b.alarm, &b.what)));
        out
    }

    /// Alarms of a kind that were open before the first night.
    fn open_before(&self, alarm: Alarm) -> impl Iterator<Item = &Episode> {
        let is_open = move |one: &&Episode| one.alarm == alarm && one.mended.is_none();
        self.before.iter().filter(is_open)
    }

    /// The figure of each night that says something about it.
    fn figures(&self, watched: &Watched, cut_short: &BTreeSet<NightNumber>) -> Vec<(NightNumber, f64)> {
        let is_whole = |night: &&NightNumber| !cut_short.contains(night);
        let first = self.nights.keys().filter(is_whole).take(EQUAL_HOURS_NIGHTS);
        let mut first: Vec<f64> = first.filter_map(|night| self.of(*night, "driving_h")).collect();
        let equal_h = math::median(&mut first);
        let figure = |night: &NightNumber| {
            let figure = self.of(*night, watched.column)?;
            let hours = equal_h.zip(self.of(*night, "driving_h"));
            let figure = match (watched.alarm, hours) {
                (Alarm::LessVisited, Some((equal_h, own_h))) if equal_h > 3.0 * own_h => return None,
                (Alarm::LessVisited, Some((equal_h, own_h))) => {
                    1.0 - math::powf((1.0 - figure).clamp(0.0, 1.0), equal_h / own_h.max(1e-9))
                }
                _ => figure,
            };
            Some((*night, figure))
        };
        let of_all = watched.alarm == Alarm::LostHours;
        let nights = self.nights.keys().filter(|night| of_all || is_whole(night));
        nights.filter_map(figure).collect()
    }

    fn watch(&self, watched: &Watched, cut_short: &BTreeSet<NightNumber>, out: &mut Vec<Episode>) {
        let mut life = Life::new(self.open_before(watched.alarm).next());
        let mut quiet: Vec<f64> = Vec::new();
        // Since the onset, on the watched scale.
        let found = life.open.as_ref().and_then(|one| one.found);
        let mut since: Vec<f64> = found.map(|found| watched.scaled(found)).into_iter().collect();
        let only = |nights: &[(NightNumber, f64)]| -> Vec<f64> { nights.iter().map(|one| one.1).collect() };
        for (night, figure) in self.figures(watched, cut_short) {
            let scaled = watched.scaled(figure);
            let Some(law) = life.open.as_ref().map_or_else(
                || watched.law(&quiet),
                |one| one.law.map(|(usual, sd)| (watched.scaled(usual), sd)),
            ) else {
                quiet.push(scaled);
                continue;
            };
            let (usual, sd) = law;
            if life.open.is_some() {
                let level = math::median(&mut since.clone()).unwrap_or(scaled);
                let level = level.max(usual + watched.worse_by);
                let apart = level - usual;
                // Half way back is neither: the farther apart the two are, the less a small step beyond the middle says.
                let variance = (sd * sd).max(apart * apart / 16.0);
                let ratio = apart / variance * (f64::midpoint(usual, level) - scaled);
                let turn = life.take(
                    night,
                    scaled,
                    ratio.clamp(-watched.night_at_most, watched.night_at_most),
                    LIMIT,
                );
                life.open
                    .iter_mut()
                    .for_each(|one| one.nights += u64::from(ratio < 0.0));
                match turn {
                    Turn::Cleared(nights) => since.extend(only(&nights)),
                    Turn::Decided(nights) => {
                        self.weigh(watched, &mut life, &since);
                        life.mend(&nights, out);
                        quiet.extend(only(&nights));
                    }
                }
                continue;
            }
            let worse_by = watched.worse_by.max(2.0 * sd);
            let ratio = worse_by / (sd * sd) * (scaled - usual - worse_by / 2.0);
            match life.take(night, scaled, ratio.clamp(-AGAINST, watched.night_at_most), LIMIT) {
                Turn::Cleared(nights) => quiet.extend(only(&nights)),
                Turn::Decided(nights) => {
                    let (before, after) = nights.split_at(onset(&nights, usual));
                    quiet.extend(only(before));
                    since = only(after);
                    let mut one = Episode::new(watched.alarm, "", after[0].0, night);
                    one.law = Some((watched.figure(usual), sd));
                    one.nights = after.len() as u64;
                    life.open = Some(one);
                }
            }
        }
        self.weigh(watched, &mut life, &since);
        out.extend(life.open);
    }

    /// What was found since the onset, and its cost.
    fn weigh(&self, watched: &Watched, life: &mut Life, since: &[f64]) {
        let Some(one) = &mut life.open else { return };
        one.found = math::median(&mut since.to_vec()).map(|scaled| watched.figure(scaled));
        let less = one
            .law
            .zip(one.found)
            .map_or(0.0, |((usual, _), found)| usual - found);
        one.gain_m2 = match watched.alarm {
            Alarm::LessVisited => less.max(0.0) * self.lawn_m2(),
            Alarm::LostHours => self.more_hours_m2(one.since.., less),
            _ => 0.0,
        };
    }

    fn lawn_m2(&self) -> f64 {
        let mut nights = self.nights.values().rev();
        nights
            .find_map(|row| row[NIGHTS.at("lawn_m2")].number())
            .unwrap_or(0.0)
    }

    /// Lawn that this many more hours would bring in the newest of several nights, by the law of random search (Koopman
    /// 1956).
    fn more_hours_m2(&self, nights: impl RangeBounds<NightNumber>, more_h: f64) -> f64 {
        let newest = self.nights.range(nights).next_back().map(|(night, _)| *night);
        let of = |column: &str| self.of(newest?, column);
        let Some((visited, driving_h)) = of("visited_fraction").zip(of("driving_h")) else {
            return 0.0;
        };
        if !(driving_h > 0.0 && more_h > 0.0 && visited < 1.0) {
            return 0.0;
        }
        let left = 1.0 - visited.max(0.0);
        (left - math::powf(left, 1.0 + more_h / driving_h)) * self.lawn_m2()
    }

    /// Rows by what they show, and by night.
    fn shown<'r>(
        &self,
        rows: &'r BTreeMap<NightNumber, Vec<TableRow>>,
        name: impl Fn(&TableRow, &[(String, f64, f64)]) -> Option<String>,
    ) -> BTreeMap<String, BTreeMap<NightNumber, &'r TableRow>> {
        let mut known: Vec<(String, f64, f64)> = self
            .open_before(Alarm::StuckSpot)
            .filter_map(|one| Some((one.what.clone(), one.place[0]?, one.place[1]?)))
            .collect();
        let mut out: BTreeMap<String, BTreeMap<NightNumber, &TableRow>> = BTreeMap::new();
        for (night, rows) in rows.iter().filter(|(night, _)| self.nights.contains_key(night)) {
            for row in rows {
                let Some(mut what) = name(row, &known) else {
                    continue;
                };
                if what.is_empty() {
                    what = format!("{}/{}", night::words(*night), row[1].text().unwrap_or_default());
                    let place = ["east_m", "north_m"].map(|name| row[STUCK_SPOTS.at(name)].number());
                    if let [Some(east_m), Some(north_m)] = place {
                        known.push((what.clone(), east_m, north_m));
                    }
                }
                out.entry(what).or_default().insert(*night, row);
            }
        }
        out
    }

    fn watch_shown(
        &self,
        alarm: Alarm,
        table: &'static StoreTable,
        shown: &BTreeMap<String, BTreeMap<NightNumber, &TableRow>>,
        cut_short: &BTreeSet<NightNumber>,
        out: &mut Vec<Episode>,
    ) {
        let (there, not_there) = (
            math::ln(SHOWN_IF_THERE / SHOWN_IF_NOT),
            math::ln((1.0 - SHOWN_IF_NOT) / (1.0 - SHOWN_IF_THERE)),
        );
        // Three nights without it decide as surely as two with it, or two of three.
        let (opens_at, mended_at) = (2.0 * there - not_there - 1e-9, 3.0 * not_there - 1e-9);
        let none = BTreeMap::new();
        let before: BTreeMap<&str, &Episode> =
            self.open_before(alarm).map(|one| (&one.what[..], one)).collect();
        let names: BTreeSet<&str> = shown
            .keys()
            .map(String::as_str)
            .chain(before.keys().copied())
            .collect();
        for what in names {
            let rows = shown.get(what).unwrap_or(&none);
            let mut life = Life::new(before.get(what).copied());
            for night in self.nights.keys().filter(|night| !cut_short.contains(night)) {
                let row = rows.get(night);
                let is_shown = f64::from(u8::from(row.is_some()));
                if let (Some(row), Some(one)) = (row, &mut life.open) {
                    one.nights += 1;
                    self.tell_shown(one, table, row, *night);
                }
                let ratio = if row.is_some() { there } else { -not_there };
                if life.open.is_some() {
                    if let Turn::Decided(nights) = life.take(*night, is_shown, -ratio, mended_at) {
                        life.mend(&nights, out);
                    }
                } else if let Turn::Decided(nights) = life.take(*night, is_shown, ratio, opens_at) {
                    let mut one = Episode::new(alarm, what, nights[0].0, *night);
                    one.nights = nights.iter().filter(|night| night.1 > 0.0).count() as u64;
                    row.iter()
                        .for_each(|row| self.tell_shown(&mut one, table, row, *night));
                    life.open = Some(one);
                }
            }
            out.extend(life.open);
        }
    }

    /// What the newest night that shows it says.
    fn tell_shown(
        &self,
        episode: &mut Episode,
        table: &'static StoreTable,
        row: &TableRow,
        night: NightNumber,
    ) {
        let number = |name: &str| row[table.at(name)].number();
        episode.place = ["east_m", "north_m", "lat", "lon"].map(number);
        let said = row[table.at("said")].text();
        episode.why = said.and_then(|said| serde_json::from_str(said).ok());
        if episode.alarm == Alarm::MissedPocket {
            episode.found = number("area_m2");
            episode.gain_m2 = episode.found.unwrap_or(0.0);
        } else {
            episode.found = number("lost_min");
            episode.gain_m2 = self.more_hours_m2(night..night + 1, episode.found.unwrap_or(0.0) / 60.0);
        }
    }
}

/// The known spot at a row's place; an empty name for a place where none is known.
fn same_spot(row: &TableRow, known: &[(String, f64, f64)]) -> Option<String> {
    let number = |name: &str| row[STUCK_SPOTS.at(name)].number();
    let (east_m, north_m) = number("east_m").zip(number("north_m"))?;
    if number("lost_min").unwrap_or(0.0) < STUCK_MIN {
        return None;
    }
    let off_m = |one: &&(String, f64, f64)| math::hypot(one.1 - east_m, one.2 - north_m);
    let nearest = known
        .iter()
        .filter(|one| off_m(one) <= SAME_SPOT_M)
        .min_by(|a, b| off_m(a).total_cmp(&off_m(b)));
    Some(nearest.map(|(name, ..)| name.clone()).unwrap_or_default())
}

type ByNight = BTreeMap<NightNumber, Vec<TableRow>>;

pub(crate) fn by_garden(rows: Vec<(NightNumber, TableRow)>) -> HashMap<String, ByNight> {
    let mut out: HashMap<String, ByNight> = HashMap::new();
    for (night, row) in rows {
        let garden = row[0].text().unwrap_or_default().to_owned();
        out.entry(garden).or_default().entry(night).or_default().push(row);
    }
    out
}

impl Store {
    /// Works alarms out again where nights have changed since, also in stores of older versions. Alarms that opened before
    /// the first night that is kept continue from where they stood.
    ///
    /// # Errors
    /// If the store cannot be read or written; the alarms of at most a thousand gardens are then unchanged.
    pub fn renew_alarms(&mut self) -> Result<(), BatchError> {
        let ever = NightNumber::MIN..=NightNumber::MAX;
        let plans = ColumnChoice::Some(&["plan_sha256"]);
        let plans: BTreeMap<String, Value> = self
            .rows(&GARDENS, plans, ever.clone(), &|_| true)?
            .into_iter()
            .filter_map(|(_, row)| Some((row[0].text()?.to_owned(), row[GARDENS.at("plan_sha256")].clone())))
            .collect();
        let all: Vec<&str> = plans.keys().map(String::as_str).collect();
        for names in all.chunks(AT_ONCE) {
            let names: BTreeSet<&str> = names.iter().copied().collect();
            let known: HashMap<String, String> = self
                .rows_of(&USUAL, ColumnChoice::Some(&["key"]), ever.clone(), &names)?
                .into_iter()
                .filter_map(|(_, row)| Some((row[0].text()?.to_owned(), row[1].text()?.to_owned())))
                .collect();
            let keys = ColumnChoice::Some(&["key", "plan_sha256"]);
            let keys: HashMap<String, String> =
                by_garden(self.rows_of(&NIGHTS, keys, ever.clone(), &names)?)
                    .into_iter()
                    .map(|(garden, nights)| {
                        let key = key_of(&nights, plans.get(&garden));
                        (garden, key)
                    })
                    .collect();
            let stale: BTreeSet<&str> = keys
                .iter()
                .filter(|(garden, key)| known.get(*garden) != Some(*key))
                .map(|(garden, _)| &garden[..])
                .collect();
            if stale.is_empty() {
                continue;
            }
            let read = |table| self.rows_of(table, ColumnChoice::All, ever.clone(), &stale);
            let mut nights = by_garden(read(&NIGHTS)?);
            let mut pockets = by_garden(read(&POCKETS)?);
            let mut spots = by_garden(read(&STUCK_SPOTS)?);
            let mut alarms = by_garden(read(&ALARMS)?);
            let mut change = StoreChange::default();
            for garden in stale {
                let plan = plans.get(garden).unwrap_or(&Value::Null);
                let mut of_plan = BTreeMap::new();
                for (night, mut rows) in nights.remove(garden).unwrap_or_default() {
                    if rows[0][NIGHTS.at("plan_sha256")] == *plan {
                        of_plan.insert(night, rows.swap_remove(0));
                    }
                }
                let old = alarms.remove(garden).and_then(|mut rows| rows.remove(&0));
                let (before, mut rows) = carried(old.unwrap_or_default(), &of_plan, plan);
                let history = History {
                    nights: &of_plan,
                    pockets: &pockets.remove(garden).unwrap_or_default(),
                    spots: &spots.remove(garden).unwrap_or_default(),
                    before,
                };
                let plan = plan.text().unwrap_or_default();
                rows.extend(history.episodes().iter().map(|one| one.row(garden, plan)));
                change.drop(&ALARMS, 0, garden, None);
                rows.into_iter().for_each(|row| change.put(&ALARMS, 0, row));
                change.drop(&USUAL, 0, garden, None);
                change.put(&USUAL, 0, usual(garden, &keys[garden], &of_plan));
            }
            self.commit(change)?;
        }
        Ok(())
    }
}

/// Alarms that opened before the first night under the same plan, and rows of those under another plan, which ended with
/// that plan.
fn carried(
    old: Vec<TableRow>,
    nights: &BTreeMap<NightNumber, TableRow>,
    plan: &Value,
) -> (Vec<Episode>, Vec<TableRow>) {
    let first = nights.keys().next().copied().unwrap_or(NightNumber::MAX);
    let (mut before, mut others) = (Vec::new(), Vec::new());
    for mut row in old {
        let is_same = row[ALARMS.at("plan_sha256")] == *plan;
        match Episode::of(&row) {
            Some(one) if is_same && one.opened < first => before.push(one),
            Some(one) if !is_same && one.opened < first => {
                if one.mended.is_none() {
                    row[ALARMS.at("mended")] = night::words(first).into();
                    row[ALARMS.at("closed")] = night::words(first).into();
                }
                others.push(row);
            }
            _ => {}
        }
    }
    (before, others)
}

/// Digest of everything that alarms follow from.
fn key_of(nights: &ByNight, plan: Option<&Value>) -> String {
    let mut text = format!("{RULES} {:?}\n", plan.and_then(Value::text));
    for (night, rows) in nights {
        let key = rows[0][NIGHTS.at("key")].text().unwrap_or_default();
        let plan = rows[0][NIGHTS.at("plan_sha256")].text().unwrap_or_default();
        text.push_str(&format!("{night} {key} {plan}\n"));
    }
    tussock_ingest::digest(text.as_bytes())[..32].to_owned()
}

/// The row with a garden's usual figures: medians of its last nights, quiet or not.
fn usual(garden: &str, key: &str, nights: &BTreeMap<NightNumber, TableRow>) -> TableRow {
    let of = |column: &str| {
        let last = nights.values().rev().take(USUAL_NIGHTS);
        math::median(
            &mut last
                .filter_map(|row| row[NIGHTS.at(column)].number())
                .collect::<Vec<_>>(),
        )
    };
    row!(USUAL {
        garden: garden,
        key: key,
        nights: nights.len(),
        visited_fraction: of("visited_fraction"),
        driving_h: of("driving_h"),
        span_h: of("span_h"),
        silent_h: of("silent_h"),
        position_error_m: of("position_error_m"),
    })
}

#[cfg(test)]
#[path = "alarms_tests.rs"]
mod tests;
