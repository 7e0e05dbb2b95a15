//! Gardens with ground that is hard to reach, all invented: random members of eight families, in any orientation.

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use tussock_plane::Frame;
use tussock_simulate::gardens::ORIGIN;
use tussock_types::{GeoPolygon, Place, Plan, PlanFeature, PlanRole, PlanShape};

/// A family of gardens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Family {
    /// A back lawn behind a straight passage.
    BackLawn,
    /// A side lawn along the house.
    SideLawn,
    /// An L with a neck in its arm.
    EllWithNeck,
    /// A passage with a bend.
    DogLeg,
    /// Two lawns, a guide run into one of them.
    TwoLawns,
    /// A U with a neck.
    YouWithNeck,
    /// A nook of less than a hundredth of the lawn.
    Nook,
    /// A lawn nearly closed by a zone.
    ZonePinched,
}

impl Family {
    pub(crate) const ALL: [Self; 8] = [
        Self::BackLawn,
        Self::Nook,
        Self::SideLawn,
        Self::ZonePinched,
        Self::EllWithNeck,
        Self::DogLeg,
        Self::YouWithNeck,
        Self::TwoLawns,
    ];
}

pub(crate) struct Garden {
    pub(crate) plan: Plan,
    pub(crate) hours: f64,
    pub(crate) speed_mps: f64,
    pub(crate) setback_m: f64,
    pub(crate) cut_width_m: f64,
}

/// A member of a family.
pub(crate) fn member(family: Family, seed: u64) -> Garden {
    let mut dice = ChaCha8Rng::seed_from_u64(seed);
    let mut within = |low: f64, high: f64| dice.random_range(low..high);
    let setback_m = within(0.1, 0.35);
    let gap_m = within(0.2, 0.7);
    let neck_m = gap_m + 2.0 * setback_m;
    let (w, h) = (within(14.0, 26.0), within(12.0, 20.0));
    let long_m = within(1.0, 5.0);
    let mut zones: Vec<Vec<(f64, f64)>> = Vec::new();
    let mut guide: Option<Vec<(f64, f64)>> = None;
    let station = (within(0.15, 0.4) * w, 0.0);
    let x = within(0.5, 0.8) * w;
    let lawn: Vec<(f64, f64)> = match family {
        Family::BackLawn | Family::TwoLawns | Family::SideLawn => {
            let (bw, bh) = if family == Family::SideLawn {
                (within(3.0, 4.5), within(9.0, 16.0))
            } else {
                (within(7.0, 12.0), within(6.0, 10.0))
            };
            let left = (x - 0.5 * bw).max(0.0);
            if family == Family::TwoLawns {
                let far = (x + 0.2 * bw, h + long_m + 0.7 * bh);
                guide = Some(vec![
                    station,
                    (station.0, 2.0),
                    (x, h - 1.0),
                    (x, h + long_m + 1.0),
                    far,
                ]);
            }
            vec![
                (0.0, 0.0),
                (w, 0.0),
                (w, h),
                (x + 0.5 * neck_m, h),
                (x + 0.5 * neck_m, h + long_m),
                (left + bw, h + long_m),
                (left + bw, h + long_m + bh),
                (left, h + long_m + bh),
                (left, h + long_m),
                (x - 0.5 * neck_m, h + long_m),
                (x - 0.5 * neck_m, h),
                (0.0, h),
            ]
        }
        Family::Nook => {
            // At least slightly wider than twice the setback of the machine's ground.
            let (bw, bh) = (within(1.8, 2.6), within(1.6, 2.4));
            vec![
                (0.0, 0.0),
                (w, 0.0),
                (w, h),
                (x + 0.5 * neck_m, h),
                (x + 0.5 * neck_m, h + 0.6),
                (x + 0.5 * bw, h + 0.6),
                (x + 0.5 * bw, h + 0.6 + bh),
                (x - 0.5 * bw, h + 0.6 + bh),
                (x - 0.5 * bw, h + 0.6),
                (x - 0.5 * neck_m, h + 0.6),
                (x - 0.5 * neck_m, h),
                (0.0, h),
            ]
        }
        Family::EllWithNeck => {
            let (aw, ah) = (within(5.0, 9.0), within(8.0, 14.0));
            vec![
                (0.0, 0.0),
                (w, 0.0),
                (w, h),
                (aw, h),
                (aw, h + 2.0),
                (0.5 * aw + 0.5 * neck_m, h + 2.0),
                (0.5 * aw + 0.5 * neck_m, h + 2.0 + 0.5 * long_m),
                (aw, h + 2.0 + 0.5 * long_m),
                (aw, h + 2.0 + ah),
                (0.0, h + 2.0 + ah),
                (0.0, h + 2.0 + 0.5 * long_m),
                (0.5 * aw - 0.5 * neck_m, h + 2.0 + 0.5 * long_m),
                (0.5 * aw - 0.5 * neck_m, h + 2.0),
                (0.0, h + 2.0),
            ]
        }
        Family::DogLeg => {
            let (bw, bh) = (within(6.0, 11.0), within(5.0, 9.0));
            let (wide, side) = (neck_m + 0.3, within(2.0, 4.0));
            vec![
                (0.0, 0.0),
                (w, 0.0),
                (w, h),
                (x + wide, h),
                (x + wide, h + 1.5),
                (x + wide + side, h + 1.5),
                (x + wide + side, h + 1.5 + wide + 1.5),
                (x + side + bw, h + 3.0 + wide),
                (x + side + bw, h + 3.0 + wide + bh),
                (x + side - 2.0, h + 3.0 + wide + bh),
                (x + side - 2.0, h + 3.0 + wide),
                (x + side, h + 3.0 + wide),
                (x + side, h + 1.5 + wide),
                (x, h + 1.5 + wide),
                (x, h),
                (0.0, h),
            ]
        }
        Family::YouWithNeck => {
            let (aw, ah) = (within(4.0, 0.4 * w), within(8.0, 13.0));
            let y = h + within(1.0, 3.0);
            vec![
                (0.0, 0.0),
                (w, 0.0),
                (w, y),
                (w - 0.5 * aw + 0.5 * neck_m, y),
                (w - 0.5 * aw + 0.5 * neck_m, y + 1.0),
                (w, y + 1.0),
                (w, y + ah),
                (w - aw, y + ah),
                (w - aw, y + 1.0),
                (w - 0.5 * aw - 0.5 * neck_m, y + 1.0),
                (w - 0.5 * aw - 0.5 * neck_m, y),
                (w - aw, y),
                (w - aw, h - 3.0),
                (aw, h - 3.0),
                (aw, h + 4.0),
                (0.0, h + 4.0),
            ]
        }
        Family::ZonePinched => {
            let at = within(0.55, 0.7) * w;
            let free = within(-0.15, 0.08) + 2.0 * setback_m;
            // Over one edge and nearly to the other.
            zones.push(vec![
                (at, -0.5),
                (at + within(1.5, 3.5), -0.5),
                (at + within(1.5, 3.5), h - free),
                (at, h - free),
            ]);
            vec![(0.0, 0.0), (w, 0.0), (w, h), (0.0, h)]
        }
    };
    let hours = [8.0, 12.0, 16.0, 24.0][(within(0.0, 4.0)) as usize];
    let speed_mps = within(0.28, 0.45);
    let cut_width_m = within(0.18, 0.3);
    let turn = within(0.0, std::f64::consts::TAU);
    let frame = Frame::at(ORIGIN);
    let geo = |(x, y): (f64, f64)| {
        let (x, y) = (x - 0.5 * w, y - 0.5 * h);
        frame.to_geo(Place::new(
            x * turn.cos() - y * turn.sin(),
            x * turn.sin() + y * turn.cos(),
        ))
    };
    let mut plan = Plan::default();
    let mut add = |role: PlanRole, name: &str, shape: PlanShape, share: Option<f64>| {
        plan.features.push(PlanFeature {
            role,
            name: name.to_owned(),
            shape,
            radius_m: None,
            outing_share_fraction: share,
            index: plan.features.len(),
        });
    };
    let polygon = |corners: &[(f64, f64)]| {
        let mut ring: Vec<_> = corners.iter().map(|corner| geo(*corner)).collect();
        ring.push(ring[0]);
        PlanShape::Polygons(vec![GeoPolygon { rings: vec![ring] }])
    };
    add(PlanRole::Lawn, "lawn", polygon(&lawn), None);
    for zone in &zones {
        add(PlanRole::Exclusion, "bed", polygon(zone), None);
    }
    add(PlanRole::Station, "station", PlanShape::Point(geo(station)), None);
    if let Some(guide) = &guide {
        let line = guide.iter().map(|corner| geo(*corner)).collect();
        add(PlanRole::Guide, "guide", PlanShape::Line(line), Some(0.15));
    }
    Garden {
        plan,
        hours,
        speed_mps,
        setback_m,
        cut_width_m,
    }
}
