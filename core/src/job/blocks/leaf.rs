//! The leaf: weight, size, what the wind sees of it.

use super::Member;
use crate::job::MemberTotals;
use crate::job::table::*;
use crate::units::Quantity::{Area, Inertia, Length, Mass, ShortLength};
use alloc::vec::Vec;

block! {
    /// The leaf's weight, size and what the wind sees of it.
    pub struct Leaf at "leaf." {
        /// Mass, kg; unless its members say.
        mass_kg: Option<f64> = number(Mass, 1.0, 5000.0, 160.0).unless("members").varied(),
        /// Hinge axis to latch edge, m.
        length_m: f64 = number(Length, 0.3, 15.0, 3.2).varied(),
        /// Height, m. Needed where a standard's shape gives the force coefficient; also for drawing and hand-over. A plain force coefficient does
        /// without it.
        height_m: Option<f64> = number(Length, 0.2, 6.0, 1.6),
        /// Leaf's face on its opening side from the axis line, m, positive towards that side; marks on the ground may be shown from it; default 0.
        face_m: Option<f64> = assumed(ShortLength, -0.5, 0.5, 0.0) => face,
        /// How thick it is, from that face away from the opening side, m; default 0.06.
        thickness_m: Option<f64> = assumed(ShortLength, 0.0, 1.0, 0.06) => thickness,
        /// How far it reaches past the hinge axis, away from its latch edge, m; default 0.
        heel_m: Option<f64> = assumed(ShortLength, 0.0, 1.0, 0.0) => heel,
        /// Area that stops the wind, square to the leaf, m²; unless its members say.
        wind_area_m2: Option<f64> = number(Area, 0.0, 60.0, 1.9).unless("members").varied(),
        /// Hinge axis to mass centre along the leaf, m; default half the length.
        mass_centroid_m: Option<f64> = number(Length, -1.0, 15.0, 1.6).follows("members").varied(),
        /// Hinge axis to the wind area's centre along the leaf, m; default half the length.
        wind_centroid_m: Option<f64> = number(Length, -1.0, 15.0, 1.6).follows("members").varied(),
        /// Moment of inertia about the hinge axis, kg·m²; default mass × length² / 3, also where the mass centre was moved.
        inertia_kg_m2: Option<f64> = number(Inertia, 1e-6, 2e6, 546.0).follows("members"),
        /// What it is made of: mass, mass centre, inertia and wind area follow, unless they are given here as well.
        members: Option<Vec<Member>> = list(&Kind::Choice(Member::CHOICE), 200).or_else(FaultCode::NoMembers),
    }
}

impl Leaf {
    /// The leaf seen from above, in axes that turn with it, the hinge axis at their origin: along it, and square to it, m.
    pub(crate) fn sides_m(&self) -> [[f64; 2]; 2] {
        [[-self.heel(), self.length_m], [self.face() - self.thickness(), self.face()]]
    }

    /// Faults between fields that are each within their own range: centres beyond the leaf's end.
    pub(in crate::job) fn relations(&self) -> Vec<Fault> {
        let length = self.length_m;
        let row = const { Leaf::BLOCK.number("mass_centroid_m") };
        let allowed = Number { most: Some(length), ..row }.allowed();
        [("leaf.mass_centroid_m", self.mass_centroid_m), ("leaf.wind_centroid_m", self.wind_centroid_m)]
            .into_iter()
            .filter_map(|(path, centre)| Some((path, centre.filter(|&value| value > length)?)))
            .map(|(path, value)| {
                Fault::number(path, FaultCode::OutsideLeaf, value, allowed.clone())
                    .example(Example::Number(length / 2.0))
            })
            .collect()
    }

    /// Faults of the members one by one, and of what they come to.
    pub(in crate::job) fn member_relations(&self) -> Vec<Fault> {
        let Some(members) = &self.members else { return Vec::new() };
        let one =
            |(index, member): (usize, &Member)| member.relations(format_args!("leaf.members.{index}"), self.length_m);
        let mut faults: Vec<Fault> = members.iter().enumerate().flat_map(one).collect();
        if faults.is_empty() {
            let totals = MemberTotals::of(members);
            let mass = (totals.mass_kg, const { Leaf::BLOCK.number("mass_kg") });
            let area = (totals.wind_area_m2, const { Leaf::BLOCK.number("wind_area_m2") });
            let beyond = |(total, row): &(f64, Number)| !row.holds(*total);
            faults.extend(
                [mass, area]
                    .into_iter()
                    .filter(beyond)
                    .map(|(total, row)| Fault::number("leaf.members", FaultCode::OutOfRange, total, row.allowed())),
            );
        }
        faults
    }
}
