//! A job that passed every check, solved as far as every answer needs it.

use super::curve::Row;
use super::{
    Clearances, CurvePoint, IceLoad, Loads, Overrun, Peak, Plan, Ramp, Sensitivity, Shares, findings, overall,
};
use crate::arm::Linkage;
use crate::drive::{Demand, Direction, Grid, PeakDemand, Rating, Swept, WindCase, WindLimit, toggle_zone_rad};
use crate::job::{Arm, CheckedJob, Hinges, Invalid, Job, Operator, Room, SCHEMA, ToChecked};
use crate::leaf::{Body, LeafLoads, MemberTotals, gust_moment_n_m};
use alloc::vec::Vec;

/// A valid job with its linkage and loads: what the plan, the cursor and the drawings ask.
#[derive(Clone, Debug)]
pub struct Model {
    job: CheckedJob,
    arm: Arm,
    linkage: Linkage,
    loads: LeafLoads,
    /// Part of the shaft's work that reaches the leaf.
    efficiency: f64,
}

impl Model {
    /// Checks the job, unless it was, and its arm.
    ///
    /// # Errors
    /// [`Invalid`] with every fault of the values, or with the reason why the arm cannot work.
    pub fn new(job: &impl ToChecked) -> Result<Model, Invalid> {
        Model::of(job.checked()?.into_owned())
    }

    /// The model of a checked job.
    ///
    /// # Errors
    /// [`Invalid`] with the reason why the arm cannot work, or naming it where the job has none.
    pub fn of(job: CheckedJob) -> Result<Model, Invalid> {
        let arm = *job.needed_arm()?;
        let linkage = Linkage::new(&arm, job.open_rad());
        match linkage.defect() {
            Some(defect) => Err(Invalid { errors: alloc::vec![defect.fault(&arm)] }),
            None => {
                let (loads, efficiency) = (LeafLoads::new(&job), job.operator.efficiency());
                Ok(Model { job, arm, linkage, loads, efficiency })
            }
        }
    }

    /// The job.
    pub fn job(&self) -> &Job {
        &self.job
    }

    /// The arm as the job gives it.
    pub fn arm(&self) -> &Arm {
        &self.arm
    }

    /// The arm as a mechanism.
    pub fn linkage(&self) -> &Linkage {
        &self.linkage
    }

    /// The loads on the leaf.
    pub fn loads(&self) -> &LeafLoads {
        &self.loads
    }

    /// Shaft torque by leaf angle, one way, in one wind.
    pub fn demand(&self, direction: Direction, wind: WindCase) -> Demand<'_> {
        self.demand_of(&self.loads, direction, wind)
    }

    pub(super) fn demand_of<'a>(&'a self, loads: &'a LeafLoads, direction: Direction, wind: WindCase) -> Demand<'a> {
        Demand { linkage: &self.linkage, loads, efficiency: self.efficiency, direction, wind }
    }

    /// Part of the shaft's work that reaches the leaf.
    pub(super) fn efficiency(&self) -> f64 {
        self.efficiency
    }

    /// The curve's leaf angles, rad: `samples` evenly spaced ones, both ends included and exact.
    pub(super) fn leaf_angles(&self) -> impl Iterator<Item = f64> + use<> {
        let (last, open) = (self.job.samples() - 1, self.linkage.open_rad);
        (0..=last).map(move |index| if index == last { open } else { open * f64::from(index) / f64::from(last) })
    }

    /// The curve: one row at each of its leaf angles.
    pub fn curve(&self) -> Vec<CurvePoint> {
        self.leaf_angles().map(|leaf_rad| self.point(leaf_rad)).collect()
    }

    /// Arm and leaf at the curve's leaf angles: what every table of rows begins with.
    pub(super) fn rows(&self) -> Vec<Row> {
        self.leaf_angles().map(|leaf_rad| self.row(leaf_rad)).collect()
    }

    /// Everything computed from the job.
    pub fn plan(&self) -> Plan {
        self.plan_with(self.sensitivity())
    }

    /// The same without the sensitivity, which takes some sixty plans even where the job asks for it.
    pub fn plan_without_sensitivity(&self) -> Plan {
        self.plan_with(None)
    }

    fn plan_with(&self, sensitivity: Option<Vec<Sensitivity>>) -> Plan {
        let grid = Grid::with_step(self.linkage.open_rad, &self.loads);
        let (swept, rows) = (grid.swept(&self.linkage), self.rows());
        let peak = self.largest(&swept, &self.loads);
        let operator = &self.job.operator;
        let required = self.job.required_reserve();
        let rating = Rating::new(peak.shaft_torque_n_m, operator.rated_torque_n_m, operator.peak_torque_n_m, required);
        let (least_lever_m, least_lever_rad) = swept.least_lever(0.1 * self.linkage.open_rad);
        let (motion, tracks) = self.motion().unzip();
        let mut plan = Plan {
            schema: SCHEMA,
            loads: Loads {
                hinge_friction_n_m: self.loads.friction_n_m(Direction::Open),
                wind_n_m: self.loads.wind_n_m,
                inertia_kg_m2: self.loads.inertia_kg_m2,
                friction_relation: self.job.hinges.friction_relation(),
                ramp: self.ramp(),
            },
            curve: rows.iter().map(|row| self.point_of(row)).collect(),
            peak: Peak {
                leaf_deg: peak.leaf_rad.to_degrees(),
                shaft_torque_n_m: peak.shaft_torque_n_m,
                direction: peak.direction,
                shares: self.shares(&peak),
            },
            rating,
            shaft_travel_deg: self.linkage.pose(self.linkage.open_rad).crank_rad.to_degrees().abs(),
            least_lever_m,
            wind_limit: self.wind_limit(&swept),
            overrun: self.overrun(&swept),
            findings: Vec::new(),
            overall: overall::overall(rating.verdict, &[]),
            assumed: self.job.assumed(),
            wind: None,
            members: self.job.leaf.members.as_deref().map(MemberTotals::of),
            ice: self.ice(),
            band: self.band(&swept, &rows),
            sensitivity,
            storm: self.storm(),
            ground: self.over_ground(),
            clearances: self.clearances(),
            mark_out: self.job.marks.map(|_| self.mark_out()),
            tape: self.job.tape.map(|tape| self.tape_cost_on(&grid, tape)),
            as_built: self.rebuilt(&grid),
            motion,
            breakaway: None,
            holding: None,
            person: None,
            entrapment: None,
            record: None,
        };
        plan.breakaway = self.breakaway(&plan, &rows);
        plan.holding = self.holding(plan.storm.as_ref());
        let person = |_| self.force_on_person(&tracks.unwrap_or_default(), toggle_zone_rad(&self.linkage));
        plan.person = self.job.contact.as_ref().and_then(person);
        plan.entrapment = self.entrapment(plan.ground.as_ref(), plan.clearances.as_ref());
        plan.wind = self.working_wind(&swept, &rows, plan.wind_limit.speed_m_s);
        plan.record = self.job().has_record().then(|| self.commissioning(&plan));
        plan.findings = findings::of(self, &plan, least_lever_rad);
        plan.overall = overall::overall(plan.rating.verdict, &plan.findings);
        plan
    }

    /// Rates the operators of a list in the place of the job's own; a faulty one is told. What is asked of the shaft depends on an operator
    /// by the efficiency of its arm alone, so it is computed once for each efficiency, and nothing else of the plan is.
    pub fn rate(&self, operators: &[Operator]) -> Vec<Result<Rating, Invalid>> {
        let grid = Grid::with_step(self.linkage.open_rad, &self.loads);
        let swept = grid.swept(&self.linkage);
        let mut known: Vec<(f64, f64)> = Vec::new();
        let mut demand_n_m = |efficiency: f64| {
            if let Some((_, demand_n_m)) = known.iter().find(|(one, _)| *one == efficiency) {
                return *demand_n_m;
            }
            let demand_n_m = self.largest_at(efficiency, &swept, &self.loads).shaft_torque_n_m;
            known.push((efficiency, demand_n_m));
            demand_n_m
        };
        let required = self.job.required_reserve();
        let mut rate = |operator: &Operator| -> Result<Rating, Invalid> {
            operator.check()?;
            let demand_n_m = demand_n_m(operator.efficiency());
            Ok(Rating::new(demand_n_m, operator.rated_torque_n_m, operator.peak_torque_n_m, required))
        };
        operators.iter().map(&mut rate).collect()
    }

    /// The clearances beside what a search is to keep out of. Before the job says anything of the room the leaf is a line.
    pub fn clearances_of_search(&self) -> Option<Clearances> {
        if self.job.room.is_some() {
            return self.clearances();
        }
        Model { job: self.job.in_room(Room::default()), ..self.clone() }.clearances()
    }

    /// Of the plan alone the peak shaft torque, N·m, the least lever from a tenth of the swing on, m, and the shaft's travel, rad.
    pub(super) fn peak_lever_and_travel(&self) -> (f64, f64, f64) {
        let open_rad = self.linkage.open_rad;
        // With the angle at which the latch lets go: the plan counts its step, too.
        let grid = Grid::with_step(open_rad, &self.loads);
        let swept = grid.swept(&self.linkage);
        let (least_lever_m, _) = swept.least_lever(0.1 * open_rad);
        let peak_n_m = self.largest(&swept, &self.loads).shaft_torque_n_m;
        (peak_n_m, least_lever_m, self.linkage.pose(open_rad).crank_rad.abs())
    }

    /// The largest shaft torque both ways, wind against. Of equals the opening one counts.
    pub(super) fn largest(&self, swept: &Swept, loads: &LeafLoads) -> PeakDemand {
        self.largest_at(self.job.operator.efficiency(), swept, loads)
    }

    fn largest_at(&self, efficiency: f64, swept: &Swept, loads: &LeafLoads) -> PeakDemand {
        let [opening, closing] = Direction::BOTH.map(|direction| {
            let calm = PeakDemand { leaf_rad: 0.0, shaft_torque_n_m: 0.0, direction };
            let demand = Demand { efficiency, ..self.demand_of(loads, direction, WindCase::Against) };
            swept.peak(&demand).unwrap_or(calm)
        });
        if closing.shaft_torque_n_m > opening.shaft_torque_n_m { closing } else { opening }
    }

    fn wind_limit(&self, swept: &Swept) -> WindLimit {
        let (gust, body) = (self.job.gust(), Body::of(&self.job));
        let moment = |speed_m_s| gust_moment_n_m(&gust.at(speed_m_s), &body);
        let rated = self.job.operator.rated_torque_n_m;
        WindLimit::solve(moment(1.0) > 0.0, |speed_m_s| {
            self.largest(swept, &self.loads.in_wind(moment(speed_m_s))).shaft_torque_n_m / rated
        })
    }

    fn overrun(&self, swept: &Swept) -> Option<Overrun> {
        self.overrun_in(swept, &self.loads)
    }

    pub(super) fn overrun_in(&self, swept: &Swept, loads: &LeafLoads) -> Option<Overrun> {
        let [opening, closing] =
            Direction::BOTH.map(|direction| swept.held(&self.demand_of(loads, direction, WindCase::Following)));
        let larger = match (opening, closing) {
            (Some(open), Some(close)) if close.shaft_torque_n_m > open.shaft_torque_n_m => close,
            (Some(open), _) => open,
            (None, close) => close?,
        };
        Some(Overrun {
            leaf_deg: larger.leaf_rad.to_degrees(),
            shaft_torque_n_m: larger.shaft_torque_n_m,
            direction: larger.direction,
        })
    }

    /// `None` without ice.
    fn ice(&self) -> Option<IceLoad> {
        let (leaf, iced) = (&self.job.leaf, Body::of(&self.job));
        self.job.ice.map(|_| IceLoad {
            mass_kg: iced.mass_kg - Body::without_ice(leaf).mass_kg,
            wind_area_m2: iced.wind_area_m2,
            all_round: leaf.members.is_some(),
        })
    }

    /// `None` without a ramp.
    fn ramp(&self) -> Option<Ramp> {
        let loads = &self.loads;
        matches!(self.job.hinges, Hinges::Rising(_)).then(|| Ramp {
            weight_n_m: loads.rise_n_m(),
            friction_open_n_m: loads.friction_n_m(Direction::Open),
            friction_close_n_m: loads.friction_n_m(Direction::Close),
        })
    }

    fn shares(&self, peak: &PeakDemand) -> Shares {
        let sign = peak.direction.sign();
        let lean = -sign * self.loads.gravity_n_m(peak.leaf_rad);
        let friction = self.loads.friction_at_n_m(peak.leaf_rad, peak.direction);
        let total = friction + self.loads.wind_n_m + lean;
        if total == 0.0 {
            return Shares { friction: 0.0, wind: 0.0, lean: 0.0 };
        }
        Shares { friction: friction / total, wind: self.loads.wind_n_m / total, lean: lean / total }
    }
}
