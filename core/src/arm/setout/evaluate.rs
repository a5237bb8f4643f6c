//! What an arm is worth: its objective and its excess over the whole swing.

use super::at_corners::CornerTerms;
use super::found::Found;
use super::kernel::{ArmKernel, SearchStation};
use super::limit::Limit;
use super::problem::{INTERVALS, Problem};
use super::swept::{CRANK, LINK, SweptParts};
use super::terms::{LEAST_SENSE_M, Piece, Term};
use super::variables::Point;
use crate::job::{Aim, Arm, Elbow};
use crate::numerics::vertex;
use crate::real::atan2;
use core::f64::consts::PI;

/// Excess from which on no further rectangle is looked at.
const FAR: f64 = 0.3;

/// How closely the rectangles are looked at, which cost most.
#[derive(Clone, Copy)]
enum Look {
    /// Not at all.
    Away,
    /// At the stations, until what they come to is so much.
    AtStations(f64),
    /// Between the stations too.
    Closely,
    /// So closely, until the merit at a weight is above so much.
    Within { weight: f64, merit: f64 },
}

/// Values of one term at the stations.
type Row = [f64; INTERVALS + 1];

/// The larger of what counts towards the objective and of what counts as excess.
struct Scales<'a, 'b> {
    problem: &'a Problem<'b>,
    objective: f64,
    excess: f64,
    /// The limit that is exceeded most, or kept by least.
    limit: Option<Limit>,
}

impl Scales<'_, '_> {
    fn note_piece(&mut self, kernel: &ArmKernel, sense: f64, piece: &Piece) {
        self.note(piece.limit(), self.problem.value(kernel, sense, piece));
    }

    fn note(&mut self, limit: Option<Limit>, value: f64) {
        if self.problem.is_objective(limit) {
            self.objective = self.objective.max(value);
        } else if limit.is_some() && value > self.excess {
            (self.excess, self.limit) = (value, limit);
        }
    }
}

impl Problem<'_> {
    /// A point with what it is worth.
    pub fn found(&self, point: &Point, elbow: Elbow, sense: f64) -> Found {
        let (objective, excess) = self.evaluate(&self.kernel(point, elbow), sense);
        Found { point: *point, elbow, sense, objective, excess }
    }

    /// The same where its merit is `merit` or less; else something whose merit is above that, told as soon as it is known.
    pub fn found_within(&self, point: &Point, elbow: Elbow, sense: f64, [weight, merit]: [f64; 2]) -> Found {
        let look = Look::Within { weight, merit };
        let Scales { objective, excess, .. } = self.evaluated(&self.kernel(point, elbow), sense, look);
        Found { point: *point, elbow, sense, objective, excess }
    }

    /// A promised arm with the rectangles at the stations, and whether they were all looked at: as soon as its merit is known to be above `most` they are not.
    pub fn ranked(&self, promised: &Found, weight: f64, most: f64) -> (Found, bool) {
        let until = if self.given_up == Some(Limit::KeepOut) {
            most - weight * promised.excess.max(0.0)
        } else {
            ((most - promised.objective) / weight).max(0.0)
        };
        let kernel = self.kernel(&promised.point, promised.elbow);
        // The rectangles can but add to what was promised.
        let mut scales = Scales { problem: self, objective: promised.objective, excess: promised.excess, limit: None };
        if let Some(mut asked) = CornerTerms::new(self, &kernel, promised.sense) {
            let levers = self.levers(&kernel, promised.sense);
            asked.arm(&levers, 0.0, &mut |piece| scales.note_piece(&kernel, promised.sense, &piece));
        }
        self.look_among_rectangles(&kernel, promised.sense, &mut scales, Look::AtStations(until));
        let Scales { objective, excess, .. } = scales;
        let found = Found { objective, excess, ..*promised };
        (found, excess >= FAR || found.merit(weight) <= most)
    }

    /// Objective and excess at the stations, the rectangles looked at until the excess is above `enough`.
    pub fn roughly(&self, kernel: &ArmKernel, sense: f64, enough: f64) -> (f64, f64) {
        let scales = self.evaluated(kernel, sense, Look::AtStations(enough));
        (scales.objective, scales.excess)
    }

    /// The sign of the lever an arm works in: that at mid-swing.
    pub fn sense(&self, kernel: &ArmKernel) -> f64 {
        let station = &self.stations[INTERVALS / 2];
        if kernel.at(station.cosine, station.sine).numerator < 0.0 { -1.0 } else { 1.0 }
    }

    /// Objective and excess of an arm over the whole swing. Extremes between the stations come from a parabola through three of them; where
    /// the problem is [`exact`](Problem::exact), from the term itself at an angle refined twice.
    pub fn evaluate(&self, kernel: &ArmKernel, sense: f64) -> (f64, f64) {
        let scales = self.evaluated(kernel, sense, Look::Closely);
        (scales.objective, scales.excess)
    }

    /// What an arm is worth at best: the rectangles, which cost most, are not looked at.
    pub fn promised(&self, point: &Point, elbow: Elbow) -> Found {
        let kernel = self.kernel(point, elbow);
        let sense = self.sense(&kernel);
        let Scales { objective, excess, .. } = self.evaluated(&kernel, sense, Look::Away);
        Found { point: *point, elbow, sense, objective, excess }
    }

    /// Levers at the stations, turned over: at most nothing where the arm keeps its sense, m.
    pub(super) fn levers(&self, kernel: &ArmKernel, sense: f64) -> [f64; INTERVALS + 1] {
        core::array::from_fn(|index| {
            let station = &self.stations[index];
            -sense * kernel.lever_m(&kernel.at(station.cosine, station.sine))
        })
    }

    /// Peak shaft torque of an arm, N·m.
    pub fn peak_torque_n_m(&self, arm: &Arm) -> f64 {
        let kernel = ArmKernel::new(arm);
        let exact = Problem { exact: true, ..self.clone() };
        let torques = core::array::from_fn(|index| {
            let station = &self.stations[index];
            station.effort_n_m / self.torque_scale_n_m * kernel.at(station.cosine, station.sine).inverse_ratio()
        });
        exact.local_max(&kernel, exact.sense(&kernel), Term::Torque, &torques, 0) * self.torque_scale_n_m
    }

    /// Least lever from a tenth of the swing on, m.
    pub(super) fn least_lever_m(&self, kernel: &ArmKernel, sense: f64) -> f64 {
        -self.local_max(kernel, sense, Term::Lever, &self.levers(kernel, sense), Problem::tenth())
    }

    /// The limit an arm exceeds most, by how much in the search's unit.
    pub fn most_exceeded(&self, found: &Found) -> Option<(Limit, f64)> {
        let scales = self.evaluated(&self.kernel(&found.point, found.elbow), found.sense, Look::Closely);
        Some((scales.limit?, scales.excess))
    }

    fn evaluated(&self, kernel: &ArmKernel, sense: f64, look: Look) -> Scales<'_, '_> {
        let (mut torques, mut levers) = ([0.0; INTERVALS + 1], [0.0; INTERVALS + 1]);
        for ((station, torque), lever) in self.stations.iter().zip(&mut torques).zip(&mut levers) {
            let instant = kernel.at(station.cosine, station.sine);
            *torque = station.effort_n_m / self.torque_scale_n_m * instant.inverse_ratio();
            *lever = -sense * kernel.lever_m(&instant);
        }
        let least = if self.gives_up() { 0.0 } else { f64::MIN };
        let mut scales = Scales { problem: self, objective: least, excess: -1.0, limit: None };
        let setout = self.setout;
        let lever = self.local_max(kernel, sense, Term::Lever, &levers, Problem::tenth());
        scales.note(Some(Limit::LeastLeverM), self.limits.lever_m + self.margin.length_m + lever);
        let any = levers[..=Problem::tenth()].iter().copied().fold(lever, f64::max);
        scales.note(Some(Limit::Arm), LEAST_SENSE_M + any);
        scales.note(Some(Limit::LinkM), (setout.link_m[0] - kernel.link_m).max(kernel.link_m - setout.link_m[1]));
        let mut at = |term: Term, station: &SearchStation| {
            let value = self.value(kernel, sense, &Piece::new(term, *station));
            scales.note(term.limit(), value);
        };
        for sign in [1.0, -1.0] {
            at(Term::Square(sign), self.open());
            at(Term::Near(sign), self.closed());
            self.turns(kernel).iter().flatten().for_each(|station| at(Term::Near(sign), station));
        }
        self.turns(kernel).iter().flatten().for_each(|station| at(Term::Far, station));
        at(Term::TravelLimit, self.open());
        if self.proof.is_some() {
            at(Term::Bent, self.closed());
            at(Term::Stretched, self.closed());
        }
        if let Some(variable) = self.given_up.and_then(Limit::variable) {
            at(Term::Beyond(variable, -1.0), self.open());
            at(Term::Beyond(variable, 1.0), self.open());
        }
        let torque = self.wants(Aim::LeastShaftTorque) || setout.most_shaft_torque_n_m.is_some();
        let torque = if torque { self.local_max(kernel, sense, Term::Torque, &torques, 0) } else { 0.0 };
        if let Some(most) = setout.most_shaft_torque_n_m {
            let most = most / self.torque_scale_n_m * (1.0 - self.margin.plain);
            scales.note(Some(Limit::MostShaftTorqueNM), torque - most);
        }
        if !self.gives_up() {
            scales.objective = match setout.aim() {
                Aim::LeastShaftTorque => torque,
                Aim::LeastLinkForce => {
                    let mut forces = [0.0; INTERVALS + 1];
                    for ((force, lever), station) in forces.iter_mut().zip(&levers).zip(&self.stations) {
                        *force = station.storm_n_m / ((-lever).max(LEAST_SENSE_M) * self.force_scale_n);
                    }
                    self.local_max(kernel, sense, Term::Force, &forces, 0)
                }
                Aim::LeastShaftTravel => kernel.travel_rad(sense, self.closed(), self.open()),
                Aim::NearestPlace => self.value(kernel, sense, &Piece::new(Term::Place, *self.open())),
            };
        }
        if !matches!(look, Look::Away)
            && let Some(mut asked) = CornerTerms::new(self, kernel, sense)
        {
            asked.arm(&levers, 0.0, &mut |piece| scales.note_piece(kernel, sense, &piece));
        }
        // Rectangles cost most and are looked at last; far from everything else it makes no difference what they say.
        self.look_among_rectangles(kernel, sense, &mut scales, look);
        scales
    }

    /// Notes how far an arm is inside the rectangles, as closely as asked.
    fn look_among_rectangles(&self, kernel: &ArmKernel, sense: f64, scales: &mut Scales, look: Look) {
        let given_up = self.given_up == Some(Limit::KeepOut);
        let (enough, closely) = match look {
            Look::AtStations(until) => (if given_up { until } else { until.min(FAR) }, false),
            // What rounding leaves undecided is looked at.
            Look::Within { weight, merit } if !given_up => {
                (((merit - scales.objective) / weight * (1.0 + 1e-12) + 1e-15).min(FAR), true)
            }
            _ => (if given_up { f64::MAX } else { FAR }, true),
        };
        let noted = if given_up { scales.objective } else { scales.excess };
        let looks = !matches!(look, Look::Away) && self.setout.is_around() && scales.excess < FAR && noted <= enough;
        if looks {
            self.stand(kernel, |excess| scales.note(Some(Limit::KeepOut), excess));
            if let Some(mut asked) = CornerTerms::new(self, kernel, sense).filter(|_| closely) {
                asked.stand(0.0, &mut |piece| scales.note_piece(kernel, sense, &piece));
            }
        }
        if looks && !self.setout.keep_out.is_empty() {
            let swept = SweptParts::new(self, kernel);
            // What is met deepest at a few stations tells soonest that an arm is out, and leaves the others least to be asked about.
            let (first, gap) = swept.deepest();
            scales.note(Some(Limit::KeepOut), self.wanted_gap_m() - gap);
            let others = (0..self.setout.keep_out.len()).filter(|&other| other != first);
            for rectangle in core::iter::once(first).chain(others) {
                for part in [CRANK, LINK] {
                    let noted = if given_up { scales.objective } else { scales.excess };
                    if noted > enough {
                        break;
                    }
                    // What is wider than this changes nothing.
                    let bar = self.wanted_gap_m() - noted.max(0.0);
                    let gap = swept.least_gap(rectangle, part, [if closely { bar } else { f64::MIN }, bar], |_| ());
                    scales.note(Some(Limit::KeepOut), self.wanted_gap_m() - gap);
                }
            }
            if let Some(mut asked) = CornerTerms::new(self, kernel, sense).filter(|_| closely && scales.excess < FAR) {
                asked.clear(&swept, 0.0, &mut |piece| scales.note_piece(kernel, sense, &piece));
            }
        }
    }

    /// The largest value of a term over the swing from a station on; for the lever, of the lever turned over.
    fn local_max(&self, kernel: &ArmKernel, sense: f64, term: Term, values: &Row, from: usize) -> f64 {
        let mut most = values[from].max(values[INTERVALS]);
        for index in from + 1..INTERVALS {
            let Some((shift, value)) = vertex(values[index - 1], values[index], values[index + 1]) else { continue };
            if value < most {
                continue;
            }
            most = if self.exact {
                let station = self.refined(kernel, sense, term, index, shift);
                let turned_over = if term == Term::Lever { self.limits.lever_m + self.margin.length_m } else { 0.0 };
                most.max(self.value(kernel, sense, &Piece::new(term, station)) - turned_over)
            } else {
                value
            };
        }
        most
    }

    /// The angle of a local maximum near a station, from the parabola's vertex there and once more on a sixteenth of the interval: the angle to some
    /// 1e-5 of a radian, the value therefore to some 1e-10 of itself.
    pub fn refined(&self, kernel: &ArmKernel, sense: f64, term: Term, index: usize, shift: f64) -> SearchStation {
        let step = self.open_rad / INTERVALS as f64;
        let mut leaf_rad = self.stations[index].leaf_rad + shift * step;
        for fine in [step / 16.0, step / 128.0] {
            leaf_rad = leaf_rad.clamp(fine, self.open_rad - fine);
            let at = |leaf_rad: f64| self.value(kernel, sense, &Piece::new(term, self.station(leaf_rad)));
            let shift = vertex(at(leaf_rad - fine), at(leaf_rad), at(leaf_rad + fine)).map_or(0.0, |(shift, _)| shift);
            leaf_rad += shift * fine;
        }
        self.station(leaf_rad)
    }

    /// Where shaft→bracket may be extreme beside closed: open, and where shaft, hinge and bracket are in line inside the swing.
    pub fn turns(&self, kernel: &ArmKernel) -> [Option<SearchStation>; 2] {
        let (from, to) = (self.closed(), self.open());
        let [cross_from, cross_to] = [from, to].map(|station| kernel.cross(station.cosine, station.sine));
        let mut turns = [Some(*to), None];
        // dD/dθ ∝ S×P changes its sign once at most in a swing of up to half a turn.
        if (cross_from < 0.0) != (cross_to < 0.0) {
            let arm = kernel.arm();
            let direction = atan2(arm.bracket_v_m, arm.bracket_u_m) - atan2(arm.shaft_y_m, arm.shaft_x_m);
            let leaf_rad = (-2..=2)
                .map(|turn| f64::from(turn) * PI - direction)
                .find(|&leaf_rad| leaf_rad > 0.0 && leaf_rad < self.open_rad);
            turns[1] = leaf_rad.map(|leaf_rad| self.station(leaf_rad));
        }
        turns
    }
}

#[cfg(test)]
mod tests;
