//! What stands around the gate: one list that every check asks for, wherever the job says it.
//!
//! A job may name what stands around under `site` and under `room`. A wall is a wall in either place: what the leaf meets, what the arm meets,
//! what is left behind the open leaf, where a person can be caught, where an operator can be stood and what is drawn all come from here.

use super::{Job, KeepOut, SetOut};
use alloc::vec::Vec;

/// Something that stands around, seen from above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Obstacle {
    /// Its place in `site.obstacles`, from 0; those of `room.obstacles` count on behind the last of the site's.
    pub index: usize,
    /// Where it stands.
    pub place: KeepOut,
}

impl Job {
    /// Everything that stands around but the hinge post, in the order of the document, what is said twice once.
    ///
    /// An index says where in the two lists it stands, so that what is left out moves no other.
    #[must_use]
    pub fn obstacles(&self) -> Vec<Obstacle> {
        let of_site = self.site.iter().flat_map(|site| site.obstacles.iter().flatten());
        let of_room = self.room.iter().flat_map(|room| room.obstacles.iter().flatten());
        let mut all: Vec<Obstacle> = Vec::new();
        for (index, &place) in of_site.chain(of_room).enumerate() {
            if self.hinge_post() != Some(&place) && all.iter().all(|known| known.place != place) {
                all.push(Obstacle { index, place });
            }
        }
        all
    }

    /// What the leaf is hung on, where the job says where that is.
    #[must_use]
    pub fn hinge_post(&self) -> Option<&KeepOut> {
        self.room.as_ref()?.hinge_post.as_ref()
    }

    /// The leaf's face on its opening side from the hinge axis, m.
    #[must_use]
    pub fn face_m(&self) -> f64 {
        self.room.as_ref().map_or(0.0, |room| room.front())
    }

    /// Half the width of crank and link in plan, m: an arm has one width, and where two are said the larger counts.
    pub fn arm_half_width_m(&self) -> f64 {
        let of_room = self.room.as_ref().map_or(0.0, |room| room.half_width());
        self.setout.as_ref().map_or(0.0, SetOut::half_width).max(of_room)
    }

    /// Rectangles that the arm of a set-out stays out of: those of the block, the hinge post, and what stands around.
    #[must_use]
    pub fn arm_keeps_out_of(&self) -> Vec<KeepOut> {
        let mut all: Vec<KeepOut> = self.setout.iter().flat_map(|setout| setout.keep_out.iter().copied()).collect();
        let standing = self.obstacles().into_iter().map(|obstacle| obstacle.place);
        for place in self.hinge_post().copied().into_iter().chain(standing) {
            if !all.contains(&place) {
                all.push(place);
            }
        }
        all
    }

    /// The set-out block among all that stands around.
    pub(crate) fn setout_around(&self) -> Option<SetOut> {
        let setout = self.setout.clone()?;
        let arm_half_width_m = Some(self.arm_half_width_m());
        Some(SetOut { keep_out: self.arm_keeps_out_of(), arm_half_width_m, ..setout })
    }
}
