//! The job's demand against ratings: the operators of a list, and the gust at which the job's own runs out.

use super::Model;
use crate::drive::{Grid, Rating, Swept, WindLimit};
use crate::elements::Efficiency;
use crate::fault::Invalid;
use crate::job::Operator;
use crate::leaf::{Body, gust_moment_n_m};
use alloc::vec::Vec;

impl Model {
    /// Rates the operators of a list in the place of the job's own; a faulty one is told. What is asked of the shaft depends on an operator
    /// by its efficiencies alone, so it is computed once for each of them, and nothing else of the plan is.
    #[must_use]
    pub fn rate(&self, operators: &[Operator]) -> Vec<Result<Rating, Invalid>> {
        let grid = Grid::with_step(self.linkage().open_rad, self.loads());
        let swept = grid.swept(self.linkage());
        let mut known: Vec<(Efficiency, f64)> = Vec::new();
        let mut demand_n_m = |efficiency: Efficiency| {
            if let Some((_, demand_n_m)) = known.iter().find(|(one, _)| *one == efficiency) {
                return *demand_n_m;
            }
            let demand_n_m = self.largest_at(efficiency, &swept, self.loads()).shaft_torque_n_m;
            known.push((efficiency, demand_n_m));
            demand_n_m
        };
        let required = self.job().required_reserve();
        let mut rate = |operator: &Operator| -> Result<Rating, Invalid> {
            operator.check()?;
            let demand_n_m = demand_n_m(operator.efficiencies());
            Ok(Rating::new(demand_n_m, operator.rated_torque_n_m, operator.peak_torque_n_m, required))
        };
        operators.iter().map(&mut rate).collect()
    }

    /// The part of the rated torque that is asked for at a leaf angle, the larger of opening and closing, held back or driven.
    #[must_use]
    pub fn utilisation_at(&self, leaf_rad: f64) -> f64 {
        let point = self.point(leaf_rad);
        let asked_n_m = point.shaft_torque_open_n_m.abs().max(point.shaft_torque_close_n_m.abs());
        asked_n_m / self.job().operator.rated_torque_n_m
    }

    pub(super) fn wind_limit(&self, swept: &Swept) -> WindLimit {
        let (gust, body) = (self.job().gust(), Body::of(self.job()));
        let moment = |speed_m_s| gust_moment_n_m(&gust.at(speed_m_s), &body);
        let rated = self.job().operator.rated_torque_n_m;
        WindLimit::solve(moment(1.0) > 0.0, |speed_m_s| {
            self.largest(swept, &self.loads().in_wind(moment(speed_m_s))).shaft_torque_n_m / rated
        })
    }
}
