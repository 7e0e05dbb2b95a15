//! A square lawn, for tests in the open.

use tussock_plane::{Frame, Site};
use tussock_types::{GeoPolygon, Place, Plan, PlanFeature, PlanRole, PlanShape};

pub(crate) fn square(side_m: f64) -> Site {
    let frame = Frame::at(crate::gardens::ORIGIN);
    let ring = [
        (0.0, 0.0),
        (side_m, 0.0),
        (side_m, side_m),
        (0.0, side_m),
        (0.0, 0.0),
    ]
    .map(|(x, y)| frame.to_geo(Place::new(x, y)));
    let plan = Plan {
        features: vec![PlanFeature::new(
            PlanRole::Lawn,
            "lawn",
            0,
            PlanShape::Polygons(vec![GeoPolygon {
                rings: vec![ring.to_vec()],
            }]),
        )],
    };
    Site::build(&plan).unwrap().0
}
