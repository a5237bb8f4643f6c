//! The plan put together.

use super::answer::Plan;
use super::overall::Overall;
use super::sensitivity::Sensitivity;
use super::{Model, findings};
use crate::drive::{Grid, Rating, toggle_zone_rad};
use crate::fault::Invalid;
use crate::job::{MemberTotals, SCHEMA, ToChecked};
use alloc::vec::Vec;

impl Model {
    /// Everything computed from the job.
    #[must_use]
    pub fn plan(&self) -> Plan {
        self.plan_with(self.sensitivity())
    }

    /// The same without the sensitivity, which takes some sixty plans even where the job asks for it.
    #[must_use]
    pub fn plan_without_sensitivity(&self) -> Plan {
        self.plan_with(None)
    }

    fn plan_with(&self, sensitivity: Option<Vec<Sensitivity>>) -> Plan {
        let grid = Grid::with_step(self.linkage().open_rad, self.loads());
        let (swept, rows) = (grid.swept(self.linkage()), self.rows());
        let peak = self.largest(&swept, self.loads());
        let operator = &self.job().operator;
        let required = self.job().required_reserve();
        let rating = Rating::new(peak.shaft_torque_n_m, operator.rated_torque_n_m, operator.peak_torque_n_m, required);
        let (least_lever_m, least_lever_rad) = swept.least_lever(0.1 * self.linkage().open_rad);
        let (motion, tracks) = self.motion().unzip();
        let mut plan = Plan {
            schema: SCHEMA,
            loads: self.told_loads(),
            curve: rows.iter().map(|row| self.point_of(row)).collect(),
            peak: self.told_peak(&peak),
            rating,
            shaft_travel_deg: self.linkage().pose(self.linkage().open_rad).crank_rad.to_degrees().abs(),
            least_lever_m,
            wind_limit: self.wind_limit(&swept),
            overrun: self.overrun(&swept),
            findings: Vec::new(),
            overall: Overall::of(&[], &[], true),
            judgements: Vec::new(),
            assumed: self.job().assumed(),
            wind: None,
            members: self.job().leaf.members.as_deref().map(MemberTotals::of),
            ice: self.ice(),
            band: self.band(&swept, &rows),
            sensitivity,
            storm: self.storm(),
            ground: self.over_ground(),
            clearances: self.clearances(),
            mark_out: self.job().marks.map(|_| self.mark_out()),
            tape: self.job().tape.map(|tape| self.tape_cost_on(&grid, tape)),
            as_built: self.rebuilt(&grid),
            motion,
            breakaway: None,
            holding: None,
            person: None,
            entrapment: None,
            record: None,
        };
        plan.breakaway = self.breakaway(&plan.peak, plan.overrun.as_ref(), plan.motion.as_ref(), &rows);
        plan.holding = self.holding(plan.storm.as_ref());
        let person = |_| self.force_on_person(&tracks.unwrap_or_default(), toggle_zone_rad(self.linkage()));
        plan.person = self.job().contact.as_ref().and_then(person);
        plan.entrapment = self.entrapment(plan.ground.as_ref(), plan.clearances.as_ref());
        plan.wind = self.working_wind(&swept, &rows, plan.wind_limit.speed_m_s);
        plan.record = self.job().has_record().then(|| self.commissioning(&plan));
        plan.findings = findings::of(self, &plan, least_lever_rad);
        plan.judge(&[]);
        plan
    }
}

/// Plans a job. Pure: the same job always gives the same plan, to the bit.
///
/// ```
/// use pintle_core::{Document, drive::Verdict, job::Job, plan::plan};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let text = r#"{ "schema": 2, "leaf": { "mass_kg": 160, "length_m": 3.2, "wind_area_m2": 1.9 },
///     "hinges": { "kind": "measured", "pull_open_n": 45, "pull_close_n": 41, "pull_radius_m": 3.0, "pull_leaf_deg": 45 },
///     "wind": { "speed_m_s": 12, "force_coefficient": 1.4 }, "swing": { "open_deg": 90 },
///     "arm": { "shaft_x_m": -0.25, "shaft_y_m": 0.45, "bracket_u_m": 1.2, "bracket_v_m": 0.06,
///              "crank_m": 0.8728, "link_m": 0.6363, "elbow": "left" },
///     "operator": { "rated_torque_n_m": 900 } }"#;
/// let document: Document = serde_json::from_str(text)?;
/// let plan = plan(&Job::read(&document)?)?;
/// assert_eq!(plan.rating.verdict, Verdict::Within);
/// # Ok(()) }
/// ```
///
/// # Errors
/// [`Invalid`] with every fault of the values, or with the reason why the arm cannot work.
pub fn plan(job: &impl ToChecked) -> Result<Plan, Invalid> {
    Ok(Model::new(job)?.plan())
}
