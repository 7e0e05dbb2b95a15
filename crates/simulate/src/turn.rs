//! Which way does the machine go after a turn?
//!
//! Draws from the machine's [`TurnLaw`]. Angles are anticlockwise from the edge's inward normal.

use crate::drive::Driver;
use crate::ground::GroundEdge;
use crate::machine::TurnLaw;
use std::f64::consts::FRAC_PI_2;
use tussock_plane::Vector;

impl Driver<'_> {
    /// What a machine does that has come to an edge.
    pub(crate) fn turn_at_edge(&mut self, edge: usize) {
        if self.machine.turning_radius_m > 0.0 {
            self.turn_on_arc(edge);
            return;
        }
        self.slow_down();
        let heading = self.after_edge(self.part().edges[edge]);
        self.turn_to(heading, 1.0);
    }

    /// Draws the way after a turn.
    pub(crate) fn after_edge(&mut self, edge: GroundEdge) -> Vector {
        let incoming = self.heading;
        let inwards = edge.inwards();
        // Angles anticlockwise from the inward normal.
        let angle_rad = |heading: Vector| inwards.angle_to_rad(heading);
        let mirror = incoming - inwards * (2.0 * incoming.dot(inwards));
        let mirror_rad = angle_rad(mirror).clamp(-FRAC_PI_2, FRAC_PI_2);
        let law = &self.machine.turn_law;
        let observed = std::mem::take(&mut self.observed);
        let heading = self.free_heading(|dice| match law {
            TurnLaw::CosineFromNormal => {
                let sin = dice.between(-1.0, 1.0);
                inwards * (1.0 - sin * sin).sqrt() + inwards.left() * sin
            }
            TurnLaw::UniformFromNormal => inwards.turned(dice.between(-FRAC_PI_2, FRAC_PI_2)),
            TurnLaw::ReflectWithSpread { sd_deg } => {
                inwards.turned(mirror_rad + sd_deg.to_radians() * dice.normal())
            }
            TurnLaw::FromHeading { min_deg, max_deg } => {
                let size_rad = dice.between(min_deg.to_radians(), max_deg.to_radians());
                incoming.turned(if dice.happens(0.5) { size_rad } else { -size_rad })
            }
            TurnLaw::Observed { neighbours, .. } => {
                let count = (*neighbours).clamp(1, observed.len().max(1));
                let middle = observed.partition_point(|pair| pair.0 < mirror_rad);
                let first = middle
                    .saturating_sub(count / 2)
                    .min(observed.len().saturating_sub(count));
                let picked = observed.get(first + dice.below(count)).map_or(0.0, |pair| pair.1);
                inwards.turned(picked)
            }
        });
        self.observed = observed;
        heading
    }
}
