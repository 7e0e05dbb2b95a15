//! Constant-velocity Kalman filter and Rauch-Tung-Striebel smoother, one axis.
//!
//! State: position and velocity. Motion: white acceleration of spectral density `acceleration_m2_per_s3`, discretised as
//! q [[dt^4/4, dt^3/2], [dt^3/2, dt^2]] for a piecewise constant acceleration. After Bar-Shalom, Li & Kirubarajan,
//! Estimation with Applications to Tracking and Navigation (2001), sections 6.3 and 8.6; smoother after Rauch, Tung &
//! Striebel (1965). Exact for the model. Cost: linear, about 100 bytes a fix.

use tussock_types::math;

/// Position and velocity with their covariance.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct State {
    /// Position.
    pub position_m: f64,
    /// Velocity.
    pub velocity_mps: f64,
    /// Variance of the position, covariance, variance of the velocity.
    pub covariance: [f64; 3],
}

/// Input of the filter and smoother.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Model {
    /// Variance of the piecewise constant acceleration.
    pub acceleration_m2_per_s4: f64,
    /// Variance of one measured position.
    pub measurement_m2: f64,
}

/// Smoothed states and the log-likelihood of the measurements.
#[derive(Clone, Debug, PartialEq)]
pub struct Smoothed {
    /// Filtered state at each measurement.
    pub filtered: Vec<State>,
    /// Smoothed state at each measurement.
    pub smoothed: Vec<State>,
    /// Log-likelihood.
    pub log_likelihood: f64,
}

/// Runs the filter and smoother over measured positions at increasing times.
///
/// `first` is the state that is assumed just before the first measurement, at its time.
///
/// # Panics
/// When the columns differ in length.
pub fn smooth(time_s: &[f64], measured_m: &[f64], first: State, model: Model) -> Smoothed {
    assert_eq!(time_s.len(), measured_m.len(), "one time for each measurement");
    let mut predicted = Vec::with_capacity(time_s.len());
    let mut filtered: Vec<State> = Vec::with_capacity(time_s.len());
    let mut log_likelihood = 0.0;
    for (index, measured_m) in measured_m.iter().enumerate() {
        let before = match filtered.last() {
            None => first,
            Some(last) => predict(*last, time_s[index] - time_s[index - 1], model),
        };
        let innovation_m2 = before.covariance[0] + model.measurement_m2;
        let innovation_m = measured_m - before.position_m;
        log_likelihood -= 0.5
            * (innovation_m * innovation_m / innovation_m2
                + math::ln(2.0 * std::f64::consts::PI * innovation_m2));
        let gain = [
            before.covariance[0] / innovation_m2,
            before.covariance[1] / innovation_m2,
        ];
        filtered.push(State {
            position_m: before.position_m + gain[0] * innovation_m,
            velocity_mps: before.velocity_mps + gain[1] * innovation_m,
            covariance: [
                (1.0 - gain[0]) * before.covariance[0],
                (1.0 - gain[0]) * before.covariance[1],
                before.covariance[2] - gain[1] * before.covariance[1],
            ],
        });
        predicted.push(before);
    }
    let mut smoothed = filtered.clone();
    for index in (0..filtered.len().saturating_sub(1)).rev() {
        let dt_s = time_s[index + 1] - time_s[index];
        let here = filtered[index];
        let ahead = predicted[index + 1];
        let later = smoothed[index + 1];
        // cross = P F'
        let cross = [
            [here.covariance[0] + dt_s * here.covariance[1], here.covariance[1]],
            [here.covariance[1] + dt_s * here.covariance[2], here.covariance[2]],
        ];
        let [p, q, r] = ahead.covariance;
        let determinant = p * r - q * q;
        if determinant <= 0.0 {
            continue;
        }
        let inverse = [
            [r / determinant, -q / determinant],
            [-q / determinant, p / determinant],
        ];
        let gain = [
            [
                cross[0][0] * inverse[0][0] + cross[0][1] * inverse[1][0],
                cross[0][0] * inverse[0][1] + cross[0][1] * inverse[1][1],
            ],
            [
                cross[1][0] * inverse[0][0] + cross[1][1] * inverse[1][0],
                cross[1][0] * inverse[0][1] + cross[1][1] * inverse[1][1],
            ],
        ];
        let off = [
            later.position_m - ahead.position_m,
            later.velocity_mps - ahead.velocity_mps,
        ];
        let change = [
            later.covariance[0] - ahead.covariance[0],
            later.covariance[1] - ahead.covariance[1],
            later.covariance[2] - ahead.covariance[2],
        ];
        let spread = |row: usize, column: usize| {
            let left = [
                gain[row][0] * change[0] + gain[row][1] * change[1],
                gain[row][0] * change[1] + gain[row][1] * change[2],
            ];
            left[0] * gain[column][0] + left[1] * gain[column][1]
        };
        smoothed[index] = State {
            position_m: here.position_m + gain[0][0] * off[0] + gain[0][1] * off[1],
            velocity_mps: here.velocity_mps + gain[1][0] * off[0] + gain[1][1] * off[1],
            covariance: [
                here.covariance[0] + spread(0, 0),
                here.covariance[1] + spread(0, 1),
                here.covariance[2] + spread(1, 1),
            ],
        };
    }
    Smoothed {
        filtered,
        smoothed,
        log_likelihood,
    }
}

fn predict(state: State, dt_s: f64, model: Model) -> State {
    let [p, q, r] = state.covariance;
    let a = model.acceleration_m2_per_s4;
    State {
        position_m: state.position_m + dt_s * state.velocity_mps,
        velocity_mps: state.velocity_mps,
        covariance: [
            p + 2.0 * dt_s * q + dt_s * dt_s * r + a * dt_s.powi(4) / 4.0,
            q + dt_s * r + a * dt_s.powi(3) / 2.0,
            r + a * dt_s * dt_s,
        ],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_abs_diff_eq;

    /// Six measurements; filterpy 2.0.0, pykalman 0.11.2 and a numpy recursion agree on these values.
    #[test]
    fn alg_15_to_17_filter_and_smoother_agree_with_two_reference_libraries() {
        let times = [0.0, 1.0, 2.0, 3.0, 4.0, 5.0];
        let measured = [0.2, 0.9, 2.3, 2.8, 4.1, 5.2];
        let first = State {
            position_m: 0.0,
            velocity_mps: 1.0,
            covariance: [1.0, 0.0, 1.0],
        };
        let found = smooth(
            &times,
            &measured,
            first,
            Model {
                acceleration_m2_per_s4: 0.01,
                measurement_m2: 1.0,
            },
        );
        assert_abs_diff_eq!(found.filtered[5].position_m, 5.101068765, epsilon = 1e-8);
        assert_abs_diff_eq!(found.filtered[5].velocity_mps, 1.012270493, epsilon = 1e-8);
        assert_abs_diff_eq!(found.smoothed[0].position_m, 0.051811429, epsilon = 1e-8);
        assert_abs_diff_eq!(found.smoothed[0].velocity_mps, 1.007707002, epsilon = 1e-8);
        assert_abs_diff_eq!(found.smoothed[0].covariance[0], 0.337299146, epsilon = 1e-8);
        assert_abs_diff_eq!(found.smoothed[0].covariance[1], -0.093852887, epsilon = 1e-8);
        assert_abs_diff_eq!(found.smoothed[0].covariance[2], 0.055833769, epsilon = 1e-8);
        assert_abs_diff_eq!(found.log_likelihood, -8.190754042, epsilon = 1e-8);
    }
}
