//! The room around leaf and arm.

use super::{HINGE_POST, KeepOut, MOST, ROOM_OBSTACLE};
use crate::job::table::*;
use crate::units::Quantity::ShortLength;
use alloc::{format, vec::Vec};

block! {
    /// The leaf as a body in plan, and what stands around it. Where nothing is said the leaf is the line through the hinge axis.
    #[derive(Default)]
    pub struct Room at "room." {
        /// Leaf's face on its opening side from the line through the hinge axis, m; marks on the ground are from the closed leaf's; default 0.
        front_m: Option<f64> = assumed(ShortLength, -0.5, 0.5, 0.0) => front,
        /// Leaf's other face from that line, m, positive away from the opening side; default 0.
        back_m: Option<f64> = assumed(ShortLength, -0.5, 0.5, 0.0) => back,
        /// How far the leaf reaches past the hinge axis, away from its latch edge, m; default 0.
        heel_m: Option<f64> = assumed(ShortLength, 0.0, 1.0, 0.0) => heel,
        /// Half the width of crank and link in plan, m; default 0.
        arm_half_width_m: Option<f64> = assumed(ShortLength, 0.0, 0.5, 0.0) => half_width,
        /// What the leaf is hung on, beside which a gap closes.
        hinge_post: Option<KeepOut> = block(HINGE_POST),
        /// What stands in the way of leaf and arm: walls, kerbs, pillars. One list with `site.obstacles`: every check looks at both.
        obstacles: Option<Vec<KeepOut>> = list(&Kind::Block(ROOM_OBSTACLE), MOST),
    }
}

impl Room {
    /// A leaf has its front before its back, a rectangle its ends in order.
    pub(in crate::job) fn relations(&self) -> Vec<Fault> {
        let least = -self.back();
        let allowed = Number { least: Some(least), ..const { Room::BLOCK.number("front_m") } }.allowed();
        let fault = Fault::number("room.front_m", FaultCode::LeastAboveMost, self.front(), allowed);
        let inside_out = (self.front() < least).then(|| fault.example(Example::Number(least)));
        let post = self.hinge_post.iter().flat_map(|post| post.relations("room.hinge_post"));
        let obstacles = self.obstacles.iter().flatten().enumerate();
        let obstacles = obstacles.flat_map(|(index, one)| one.relations(&format!("room.obstacles.{index}")));
        inside_out.into_iter().chain(post).chain(obstacles).collect()
    }
}
