//! Which metres are under which units of the drawing?

use tussock_types::{Findings, GeoPoint, Place, PlanFeature, PlanRole, PlanShape};

/// Plan features farther than this from the lawn are left out of view: a slip in a plan must not shrink the lawn to a dot.
const PLAN_REACH_M: f64 = 30.0;
/// Strays farther than this are listed but not drawn, for the same reason.
const STRAYS_REACH_M: f64 = 6.0;
/// Free space around everything, as a fraction of the longer side.
const MARGIN_FRACTION: f64 = 0.035;

/// A window on the ground, north up, in units of the drawing.
#[derive(Clone, Copy)]
pub(crate) struct View {
    west_m: f64,
    north_m: f64,
    /// Units per metre.
    pub(crate) scale: f64,
    /// Units from west to east.
    pub(crate) width: f64,
    /// Units from north to south.
    pub(crate) height: f64,
    /// Units above the window.
    pub(crate) top: f64,
}

#[derive(Clone, Copy)]
struct Bounds {
    low: Place,
    high: Place,
}

impl Bounds {
    fn of(places: impl Iterator<Item = Place>) -> Option<Self> {
        places
            .filter(|place| place.east_m.is_finite() && place.north_m.is_finite())
            .map(|place| Self {
                low: place,
                high: place,
            })
            .reduce(Self::with)
    }

    fn with(self, other: Self) -> Self {
        Self {
            low: Place::new(
                self.low.east_m.min(other.low.east_m),
                self.low.north_m.min(other.low.north_m),
            ),
            high: Place::new(
                self.high.east_m.max(other.high.east_m),
                self.high.north_m.max(other.high.north_m),
            ),
        }
    }

    fn grown(self, by_m: f64) -> Self {
        Self {
            low: Place::new(self.low.east_m - by_m, self.low.north_m - by_m),
            high: Place::new(self.high.east_m + by_m, self.high.north_m + by_m),
        }
    }

    fn holds(self, place: Place) -> bool {
        (self.low.east_m..=self.high.east_m).contains(&place.east_m)
            && (self.low.north_m..=self.high.north_m).contains(&place.north_m)
    }
}

impl View {
    /// A window that shows everything, within this many units; `None` if there is nothing to show.
    pub(crate) fn of(findings: &Findings, max_width: f64, max_height: f64) -> Option<Self> {
        let outline = || findings.lawn_outline.iter().flatten().flatten().copied();
        let lines = || findings.driven_lines.iter().flatten().copied();
        let ground = Bounds::of(outline()).or_else(|| Bounds::of(lines()))?;
        let pockets = findings
            .missed_pockets
            .iter()
            .flat_map(|pocket| &pocket.outline)
            .chain(findings.not_yet.iter().flat_map(|pocket| &pocket.outline))
            .flatten()
            .copied();
        let spots = findings
            .stuck_spots
            .iter()
            .map(|spot| Place::new(spot.east_m, spot.north_m));
        let strays = findings.strays.iter().flatten();
        let strays = strays.map(|stray| Place::new(stray.east_m, stray.north_m));
        let around = ground.grown(STRAYS_REACH_M);
        let near = ground.grown(PLAN_REACH_M);
        let extra = plan_places(findings)
            .into_iter()
            .chain(pockets)
            .chain(spots)
            .filter(|&place| near.holds(place))
            .chain(strays.filter(|&place| around.holds(place)));
        let all = Bounds::of(extra).map_or(ground, |extra| ground.with(extra));
        let side_m = (all.high.east_m - all.low.east_m).max(all.high.north_m - all.low.north_m);
        let shown = all.grown((side_m * MARGIN_FRACTION).max(0.6));
        let (east_m, north_m) = (
            shown.high.east_m - shown.low.east_m,
            shown.high.north_m - shown.low.north_m,
        );
        let scale = (max_width / east_m).min(max_height / north_m);
        (scale.is_finite() && scale > 0.0).then_some(Self {
            west_m: shown.low.east_m,
            north_m: shown.high.north_m,
            scale,
            width: east_m * scale,
            height: north_m * scale,
            top: 0.0,
        })
    }

    /// The same window with space above it.
    pub(crate) fn below(self, top: f64) -> Self {
        Self { top, ..self }
    }

    /// The same window with free space on both sides, until its height over its width is at most this ratio: a tall garden
    /// then leaves space for words beside it.
    pub(crate) fn no_taller_than(self, ratio: f64) -> Self {
        let width = self.width.max(self.height / ratio);
        Self {
            west_m: self.west_m - 0.5 * (width - self.width) / self.scale,
            width,
            ..self
        }
    }

    /// The same window in other units, this many from west to east.
    pub(crate) fn as_wide_as(self, width: f64) -> Self {
        let times = width / self.width;
        Self {
            scale: self.scale * times,
            width,
            height: self.height * times,
            ..self
        }
    }

    /// Units from the left and from the top.
    pub(crate) fn at(&self, place: Place) -> (f64, f64) {
        (
            (place.east_m - self.west_m) * self.scale,
            (self.north_m - place.north_m) * self.scale + self.top,
        )
    }

    /// The place under a point of the drawing.
    pub(crate) fn place(&self, x: f64, y: f64) -> Place {
        Place::new(
            self.west_m + x / self.scale,
            self.north_m - (y - self.top) / self.scale,
        )
    }

    /// `x,y` with a tenth of a unit.
    pub(crate) fn point(&self, place: Place) -> String {
        let (x, y) = self.at(place);
        format!("{x:.1},{y:.1}")
    }

    /// Path data of a line.
    pub(crate) fn line(&self, places: &[Place]) -> String {
        let mut data = String::new();
        let mut last = String::new();
        for place in places
            .iter()
            .filter(|place| place.east_m.is_finite() && place.north_m.is_finite())
        {
            let point = self.point(*place);
            if point == last {
                continue;
            }
            data.push(if data.is_empty() { 'M' } else { 'L' });
            data.push_str(&point);
            last = point;
        }
        data
    }

    /// Path data of closed rings.
    pub(crate) fn rings(&self, rings: &[Vec<Place>]) -> String {
        rings
            .iter()
            .map(|ring| self.line(ring))
            .filter(|data| data.contains('L'))
            .map(|data| data + "Z")
            .collect()
    }
}

/// A shape of the plan in metres.
pub(crate) enum Shape {
    Area(Vec<Vec<Place>>),
    Line(Vec<Place>),
    Point(Place),
}

/// The shape of a feature; `None` without geographic coordinates.
pub(crate) fn shape(findings: &Findings, feature: &PlanFeature) -> Option<Shape> {
    let line = |points: &[GeoPoint]| -> Option<Vec<Place>> {
        points
            .iter()
            .map(|&point| findings.frame.to_place(point))
            .collect()
    };
    Some(match &feature.shape {
        PlanShape::Polygons(polygons) => {
            let rings = polygons.iter().flat_map(|polygon| &polygon.rings);
            Shape::Area(rings.map(|ring| line(ring)).collect::<Option<_>>()?)
        }
        PlanShape::Line(points) => Shape::Line(line(points)?),
        PlanShape::Point(point) => Shape::Point(findings.frame.to_place(*point)?),
    })
}

fn plan_places(findings: &Findings) -> Vec<Place> {
    let features = findings.plan.iter().flat_map(|plan| &plan.features);
    features
        .filter(|feature| feature.role != PlanRole::Lawn)
        .filter_map(|feature| shape(findings, feature))
        .flat_map(|shape| match shape {
            Shape::Area(rings) => rings.concat(),
            Shape::Line(line) => line,
            Shape::Point(place) => vec![place],
        })
        .collect()
}
