//! What was installed, from a GeoJSON file?
//!
//! A plan is an RFC 7946 FeatureCollection. `properties.role` says what a feature represents:
//!
//! | role | geometry | further properties |
//! |---|---|---|
//! | `lawn` (at least one) | Polygon, MultiPolygon | `name` |
//! | `boundary` | Polygon, or closed LineString | `name` |
//! | `exclusion` | Polygon, MultiPolygon | `name` |
//! | `obstacle` | Polygon, MultiPolygon, or Point with `radius_m` | `name`, `radius_m` |
//! | `guide` | LineString from the station outwards | `name`, `outing_share_fraction` |
//! | `station` | Point | `name` |
//!
//! Here the file is checked: is it JSON and GeoJSON, does every feature have a role and the shape for it, is every ring
//! closed? Whether the shapes make sense on the ground (crossings, zones outside the lawn) is checked in the room for the
//! ground.
//!
//! All faults are reported at once. A faulty feature keeps whatever part of its shape is usable, so that checks on the
//! ground can go on.
//!
//! Cost: the whole file as a tree, about ten times its bytes.

mod write;

pub use write::write_plan;

use serde_json::{Map, Value};
use std::collections::BTreeMap;
use tussock_types::{GeoPoint, GeoPolygon, LimitSettings, Plan, PlanFault, PlanFeature, PlanRole, PlanShape};

/// Most bytes that a corner takes in a sane file: two numbers of 20 digits, a height and blanks.
const BYTES_A_CORNER: u64 = 256;
/// Bytes that properties may take in addition.
const BYTES_BESIDE: u64 = 1 << 20;

/// A plan as read, with everything that is wrong with the file.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanRead {
    /// The features that could be read; faulty ones with whatever is usable.
    pub plan: Plan,
    /// Faults of the file, in file order; an analysis must not continue if one of them is fatal.
    pub faults: Vec<PlanFault>,
}

/// Why a plan could not be read at all.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum PlanFileError {
    /// The bytes are not JSON.
    #[error("{name}: line {line}, column {column}: not JSON: {reason}")]
    NotJson {
        /// Name of the file.
        name: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// The parser's message.
        reason: String,
    },
    /// JSON, but not a FeatureCollection.
    #[error(
        "{name}: {found}, expected a GeoJSON FeatureCollection (an object with \"type\": \"FeatureCollection\" and \"features\")"
    )]
    NotAFeatureCollection {
        /// Name of the file.
        name: String,
        /// What it is.
        found: String,
    },
    /// More than a plan can be.
    #[error("{name}: {found} {unit} are more than the limit of {limit} (limits.plan_corners)")]
    TooLarge {
        /// Name of the file.
        name: String,
        /// How many.
        found: u64,
        /// Corners or bytes.
        unit: &'static str,
        /// How many are allowed.
        limit: u64,
    },
}

/// Reads a plan.
///
/// # Errors
/// [`PlanFileError`] if there is no list of features to read; faults of features are in [`PlanRead::faults`].
///
/// # Example
/// ```
/// use tussock_ingest::read_plan;
/// use tussock_types::LimitSettings;
///
/// let file = br#"{"type": "FeatureCollection", "features": [{"type": "Feature", "properties": {"role": "lwan"},
///     "geometry": {"type": "Polygon", "coordinates": [[[5, 52], [5.001, 52], [5.001, 52.001], [5, 52]]]}}]}"#;
/// let read = read_plan("garden.geojson", file, &LimitSettings::default())?;
/// assert!(read.faults[0].to_string().contains("\"lwan\" is no role"));
/// assert!(read.faults[0].to_string().contains("nearest is \"lawn\""));
/// # Ok::<(), tussock_ingest::PlanFileError>(())
/// ```
pub fn read_plan(name: &str, bytes: &[u8], limits: &LimitSettings) -> Result<PlanRead, PlanFileError> {
    let most_bytes = BYTES_BESIDE.saturating_add(BYTES_A_CORNER.saturating_mul(limits.plan_corners));
    if bytes.len() as u64 > most_bytes {
        return Err(PlanFileError::TooLarge {
            name: name.to_owned(),
            found: bytes.len() as u64,
            unit: "bytes",
            limit: most_bytes,
        });
    }
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    let root: Value = serde_json::from_slice(bytes).map_err(|error| not_json(name, bytes, &error))?;
    let not_a_collection = |found: String| PlanFileError::NotAFeatureCollection {
        name: name.to_owned(),
        found,
    };
    let Value::Object(root) = root else {
        return Err(not_a_collection(format!("it holds {}", kind_of(&root))));
    };
    match root.get("type") {
        Some(Value::String(kind)) if kind == "FeatureCollection" => {}
        Some(other) => return Err(not_a_collection(format!("its \"type\" is {}", short(other)))),
        None => return Err(not_a_collection("it has no \"type\"".to_owned())),
    }
    let Some(Value::Array(features)) = root.get("features") else {
        let found = root
            .get("features")
            .map_or("it has no \"features\"".to_owned(), |other| {
                format!("its \"features\" are {}", kind_of(other))
            });
        return Err(not_a_collection(found));
    };
    let mut reader = Reader {
        faults: Vec::new(),
        corners: 0,
        limit: limits.plan_corners,
        count_of_role: BTreeMap::new(),
    };
    reader.check_crs(&root);
    let mut plan = Plan::default();
    for (index, feature) in features.iter().enumerate() {
        plan.features.extend(reader.feature(index, feature));
        if reader.corners > reader.limit {
            return Err(PlanFileError::TooLarge {
                name: name.to_owned(),
                found: reader.corners,
                unit: "corners",
                limit: reader.limit,
            });
        }
    }
    Ok(PlanRead {
        plan,
        faults: reader.faults,
    })
}

fn not_json(name: &str, bytes: &[u8], error: &serde_json::Error) -> PlanFileError {
    // The parser says "... at line 1 column 2"; the place is reported separately.
    let said = error.to_string();
    let reason = said.split(" at line ").next().unwrap_or(&said).to_owned();
    let reason = match bytes.iter().find(|byte| !byte.is_ascii_whitespace()) {
        None => "the file is empty".to_owned(),
        Some(b'<') => format!("{reason}; this looks like XML"),
        Some(_) => reason,
    };
    PlanFileError::NotJson {
        name: name.to_owned(),
        line: error.line().max(1),
        column: error.column().max(1),
        reason,
    }
}

fn kind_of(value: &Value) -> &'static str {
    match value {
        Value::Null => "null",
        Value::Bool(_) => "true or false",
        Value::Number(_) => "a number",
        Value::String(_) => "a text",
        Value::Array(_) => "a list",
        Value::Object(_) => "an object",
    }
}

/// A value as written in the file, cut to one line.
fn short(value: &Value) -> String {
    const MOST: usize = 60;
    let text = value.to_string();
    match text.char_indices().nth(MOST) {
        Some((end, _)) => format!("{}...", &text[..end]),
        None => text,
    }
}

/// What a feature is called in faults before its shape has been read.
struct Title {
    index: usize,
    name: Option<String>,
}

struct Reader {
    faults: Vec<PlanFault>,
    corners: u64,
    limit: u64,
    count_of_role: BTreeMap<&'static str, u64>,
}

impl Reader {
    fn push(
        &mut self,
        title: &Title,
        found: String,
        expected: impl Into<String>,
        is_fatal: bool,
    ) -> &mut PlanFault {
        self.faults.push(PlanFault {
            feature: Some(title.index),
            name: title.name.clone(),
            found,
            expected: expected.into(),
            is_fatal,
            ..PlanFault::default()
        });
        let last = self.faults.len() - 1;
        &mut self.faults[last]
    }

    fn fatal(&mut self, title: &Title, found: impl Into<String>, expected: impl Into<String>) {
        self.push(title, found.into(), expected, true);
    }

    /// GeoJSON from before 2016 could name another reference system.
    fn check_crs(&mut self, root: &Map<String, Value>) {
        let Some(crs) = root.get("crs").filter(|crs| !crs.is_null()) else {
            return;
        };
        let text = crs.to_string();
        if ["CRS84", "EPSG::4326", "EPSG:4326", "EPSG::4979"]
            .iter()
            .any(|known| text.contains(known))
        {
            return;
        }
        self.faults.push(PlanFault {
            found: format!("it names the reference system {}", short(crs)),
            expected: "longitude and latitude in WGS 84 (RFC 7946)".to_owned(),
            is_fatal: true,
            ..PlanFault::default()
        });
    }

    fn feature(&mut self, index: usize, value: &Value) -> Option<PlanFeature> {
        let mut title = Title { index, name: None };
        let Value::Object(feature) = value else {
            self.fatal(
                &title,
                format!("it is {}", kind_of(value)),
                "an object with \"type\": \"Feature\"",
            );
            return None;
        };
        if feature.get("type").and_then(Value::as_str) != Some("Feature") {
            let found = feature
                .get("type")
                .map_or("it has no \"type\"".to_owned(), |kind| {
                    format!("its \"type\" is {}", short(kind))
                });
            self.fatal(&title, found, "\"Feature\"");
            return None;
        }
        let none = Map::new();
        let properties = match feature.get("properties") {
            Some(Value::Object(properties)) => properties,
            Some(Value::Null) | None => &none,
            Some(other) => {
                self.fatal(
                    &title,
                    format!("its properties are {}", kind_of(other)),
                    "an object",
                );
                return None;
            }
        };
        title.name = match properties.get("name") {
            Some(Value::String(name)) if !name.trim().is_empty() => Some(name.trim().to_owned()),
            Some(Value::Number(number)) => Some(number.to_string()),
            _ => None,
        };
        let role = self.role(&title, properties)?;
        let count = self.count_of_role.entry(role.word()).or_default();
        *count += 1;
        let count = *count;
        let name = title
            .name
            .get_or_insert_with(|| format!("{}-{count}", role.word()))
            .clone();
        self.check_keys(&title, properties);
        let shape = self.shape(&title, role, feature.get("geometry"))?;
        let radius_m = self.number(&title, properties, "radius_m");
        if matches!((&shape, role), (PlanShape::Point(_), PlanRole::Obstacle)) {
            match radius_m {
                Some(radius_m) if radius_m > 0.0 => {}
                Some(radius_m) => self.fatal(&title, format!("radius_m is {radius_m}"), "a radius above 0"),
                None if properties.contains_key("radius_m") => {}
                None => {
                    let expected = "properties.radius_m for an obstacle given as a point";
                    self.fatal(&title, "radius_m is missing", expected);
                }
            }
        }
        let outing_share_fraction = self.number(&title, properties, "outing_share_fraction");
        if let Some(share_fraction) = outing_share_fraction.filter(|share| !(0.0..=1.0).contains(share)) {
            let hint = if (1.0..=100.0).contains(&share_fraction) {
                "; is it in percent?"
            } else {
                ""
            };
            let found = format!("outing_share_fraction is {share_fraction}{hint}");
            self.fatal(&title, found, "a number from 0 to 1");
        }
        Some(PlanFeature {
            role,
            name,
            index,
            shape,
            radius_m,
            outing_share_fraction,
        })
    }

    fn role(&mut self, title: &Title, properties: &Map<String, Value>) -> Option<PlanRole> {
        let words = PlanRole::ALL.map(PlanRole::word).join(", ");
        let Some(value) = properties.get("role") else {
            self.fatal(title, "properties.role is missing", format!("one of {words}"));
            return None;
        };
        let Value::String(text) = value else {
            self.fatal(
                title,
                format!("properties.role is {}", short(value)),
                format!("one of {words}"),
            );
            return None;
        };
        let word = text.trim().to_lowercase();
        if let Some(role) = PlanRole::ALL.into_iter().find(|role| role.word() == word) {
            return Some(role);
        }
        let found = format!(
            "{} is no role, the nearest is \"{}\"",
            short(value),
            nearest_role(&word).word()
        );
        self.fatal(title, found, format!("one of {words}"));
        None
    }

    /// Keys that look like ours but are not.
    fn check_keys(&mut self, title: &Title, properties: &Map<String, Value>) {
        const KNOWN: [&str; 4] = ["role", "name", "radius_m", "outing_share_fraction"];
        for key in properties.keys().filter(|key| !KNOWN.contains(&key.as_str())) {
            let near = KNOWN.into_iter().find(|known| {
                let is_cut_short = known.starts_with(key.as_str()) && key.len() >= 5;
                is_cut_short || strsim::damerau_levenshtein(known, &key.to_lowercase()) <= 2
            });
            if let Some(near) = near {
                let found = format!("properties.{key} is not read");
                self.push(title, found, format!("properties.{near}"), false);
            }
        }
    }

    /// A number, if the key exists and is not null.
    fn number(&mut self, title: &Title, properties: &Map<String, Value>, key: &str) -> Option<f64> {
        match properties.get(key) {
            None | Some(Value::Null) => None,
            Some(Value::Number(number)) => number.as_f64(),
            Some(other) => {
                self.fatal(
                    title,
                    format!("{key} is {}", short(other)),
                    "a number without quotes",
                );
                None
            }
        }
    }

    fn shape(&mut self, title: &Title, role: PlanRole, geometry: Option<&Value>) -> Option<PlanShape> {
        let expected = geometries_of(role);
        let geometry = match geometry {
            Some(Value::Object(geometry)) => geometry,
            Some(Value::Null) | None => {
                self.fatal(title, "it has no geometry", expected);
                return None;
            }
            Some(other) => {
                self.fatal(title, format!("its geometry is {}", kind_of(other)), expected);
                return None;
            }
        };
        let kind = geometry.get("type").and_then(Value::as_str).unwrap_or("");
        let none = Value::Null;
        let coordinates = geometry.get("coordinates").unwrap_or(&none);
        let is_area = matches!(
            role,
            PlanRole::Lawn | PlanRole::Boundary | PlanRole::Exclusion | PlanRole::Obstacle
        );
        match (kind, role) {
            ("Polygon", _) if is_area => {
                let mut ring = 0;
                let polygon = self.polygon(title, coordinates, &mut ring)?;
                Some(PlanShape::Polygons(vec![polygon]))
            }
            ("MultiPolygon", _) if is_area => {
                let Some(polygons) = coordinates.as_array().filter(|list| !list.is_empty()) else {
                    self.fatal(title, "its coordinates hold no polygon", "a list of polygons");
                    return None;
                };
                let mut ring = 0;
                let polygons = polygons
                    .iter()
                    .filter_map(|polygon| self.polygon(title, polygon, &mut ring));
                Some(PlanShape::Polygons(polygons.collect()))
            }
            ("LineString", PlanRole::Boundary) => {
                let points = self.positions(title, None, coordinates)?;
                let points = self.closed(title, None, points);
                Some(PlanShape::Line(points))
            }
            ("LineString", PlanRole::Guide) => {
                let points = self.positions(title, None, coordinates)?;
                if points.len() < 2 {
                    let found = format!("the line has {} position(s)", points.len());
                    self.fatal(title, found, "at least 2, from the station outwards");
                }
                Some(PlanShape::Line(points))
            }
            ("Point", PlanRole::Station | PlanRole::Obstacle) => {
                self.corners += 1;
                let point = self.position(title, None, None, coordinates)?;
                Some(PlanShape::Point(point))
            }
            _ => {
                let found = match geometry.get("type") {
                    Some(kind) => format!("its geometry is {}", short(kind)),
                    None => "its geometry has no \"type\"".to_owned(),
                };
                self.fatal(title, found, format!("{expected} for a {}", role.word()));
                None
            }
        }
    }

    fn polygon(&mut self, title: &Title, value: &Value, number: &mut usize) -> Option<GeoPolygon> {
        let Some(rings) = value.as_array().filter(|list| !list.is_empty()) else {
            self.fatal(
                title,
                "its coordinates hold no ring",
                "a list of rings, each a list of positions",
            );
            return None;
        };
        let rings = rings
            .iter()
            .filter_map(|ring| {
                let at = Some(*number);
                *number += 1;
                let points = self.positions(title, at, ring)?;
                Some(self.closed(title, at, points))
            })
            .collect();
        Some(GeoPolygon { rings })
    }

    /// Reports a ring that is too short or open; returns it closed.
    fn closed(&mut self, title: &Title, ring: Option<usize>, mut points: Vec<GeoPoint>) -> Vec<GeoPoint> {
        let is_closed = points.first() == points.last();
        if points.len() < 4 && (is_closed || points.len() < 3) {
            let found = format!("the ring has {} position(s)", points.len());
            self.push(title, found, "at least 4, the last equal to the first", true)
                .ring = ring;
            return points;
        }
        if let (false, Some(&first), Some(&last)) = (is_closed, points.first(), points.last()) {
            let found = format!(
                "the ring is not closed: it starts at longitude {}, latitude {} and ends at longitude {}, latitude {}",
                first.lon_deg, first.lat_deg, last.lon_deg, last.lat_deg
            );
            let fault = self.push(title, found, "a last position equal to the first", true);
            fault.ring = ring;
            fault.at = Some(last);
            points.push(first);
        }
        points
    }

    fn positions(&mut self, title: &Title, ring: Option<usize>, value: &Value) -> Option<Vec<GeoPoint>> {
        let Some(list) = value.as_array() else {
            let found = format!("its coordinates are {}", kind_of(value));
            self.push(title, found, "a list of positions", true).ring = ring;
            return None;
        };
        self.corners += list.len() as u64;
        if self.corners > self.limit {
            return None;
        }
        let before = self.faults.len();
        let points: Vec<GeoPoint> = list
            .iter()
            .enumerate()
            .filter_map(|(corner, value)| {
                // One fault per ring is enough: what is wrong with one position is mostly wrong with all.
                if self.faults.len() > before {
                    return None;
                }
                self.position(title, ring, Some(corner), value)
            })
            .collect();
        (self.faults.len() == before).then_some(points)
    }

    fn position(
        &mut self,
        title: &Title,
        ring: Option<usize>,
        corner: Option<usize>,
        value: &Value,
    ) -> Option<GeoPoint> {
        let of = corner.map_or("the position".to_owned(), |corner| format!("position {corner}"));
        let numbers: Option<Vec<f64>> = value
            .as_array()
            .and_then(|list| list.iter().take(2).map(Value::as_f64).collect());
        let Some(&[lon_deg, lat_deg]) = numbers.as_deref() else {
            let found = format!("{of} is {}", short(value));
            self.push(title, found, "[longitude, latitude] as numbers", true)
                .ring = ring;
            return None;
        };
        if lon_deg.abs() <= 180.0 && lat_deg.abs() <= 90.0 {
            return Some(GeoPoint { lat_deg, lon_deg });
        }
        let hint = if lat_deg.abs() <= 180.0 && lon_deg.abs() <= 90.0 {
            "; latitude and longitude look swapped"
        } else if lon_deg.abs() > 1000.0 || lat_deg.abs() > 1000.0 {
            "; these look like metres of a map projection"
        } else {
            ""
        };
        let found = format!("{of} has longitude {lon_deg}, latitude {lat_deg}{hint}");
        let expected = "longitude from -180 to 180, then latitude from -90 to 90 degrees";
        self.push(title, found, expected, true).ring = ring;
        None
    }
}

const fn geometries_of(role: PlanRole) -> &'static str {
    match role {
        PlanRole::Lawn | PlanRole::Exclusion => "a Polygon or MultiPolygon",
        PlanRole::Boundary => "a Polygon or closed LineString",
        PlanRole::Obstacle => "a Polygon, MultiPolygon, or Point with radius_m",
        PlanRole::Guide => "a LineString",
        PlanRole::Station => "a Point",
    }
}

/// The role that a word most likely means: a synonym, or else the one with the most similar spelling.
fn nearest_role(word: &str) -> PlanRole {
    const SYNONYMS: [(&str, PlanRole); 18] = [
        ("grass", PlanRole::Lawn),
        ("garden", PlanRole::Lawn),
        ("area", PlanRole::Lawn),
        ("wire", PlanRole::Boundary),
        ("edge", PlanRole::Boundary),
        ("perimeter", PlanRole::Boundary),
        ("zone", PlanRole::Exclusion),
        ("no-go", PlanRole::Exclusion),
        ("nogo", PlanRole::Exclusion),
        ("keep-out", PlanRole::Exclusion),
        ("pond", PlanRole::Exclusion),
        ("tree", PlanRole::Obstacle),
        ("shed", PlanRole::Obstacle),
        ("path", PlanRole::Guide),
        ("dock", PlanRole::Station),
        ("charger", PlanRole::Station),
        ("base", PlanRole::Station),
        ("home", PlanRole::Station),
    ];
    if let Some((_, role)) = SYNONYMS.iter().find(|(synonym, _)| word.contains(synonym)) {
        return *role;
    }
    let likeness = |role: &PlanRole| strsim::normalized_damerau_levenshtein(role.word(), word);
    PlanRole::ALL
        .into_iter()
        .max_by(|a, b| likeness(a).total_cmp(&likeness(b)))
        .unwrap_or(PlanRole::Lawn)
}

#[cfg(test)]
#[path = "plan_file_tests.rs"]
mod tests;
