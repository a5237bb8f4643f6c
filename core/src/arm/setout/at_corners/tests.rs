//! The corners of the tape's errors against all 64 of them walked one by one, by the mechanics that the tests of the search share.

use super::super::corner::Corner;
use super::super::fixtures::{self, Dice, OPEN, arms, pose, travel, with_problem, works};
use super::super::kernel::ArmKernel;
use super::super::play::Play;
use super::super::problem::Problem;
use super::super::proof::Proof;
use super::super::terms::{Piece, Term};
use super::CornerTerms;
use crate::job::{Arm, SetOut, SetOutSite};
use alloc::vec::Vec;

const ERRORS_M: [f64; 6] = [0.004, 0.003, 0.005, 0.002, 0.004, 0.001];

fn site() -> SetOutSite {
    let block = SetOut { least_lever_m: Some(0.2), shaft_travel_deg: Some(150.0), ..fixtures::setout() };
    SetOutSite { errors_m: Some(ERRORS_M), ..block.into() }
}

fn with_proof(then: impl FnOnce(&mut Problem)) {
    with_problem(&site(), |problem| {
        problem.prove();
        then(problem);
    });
}

fn moved(arm: &Arm, corner: u32) -> Arm {
    let own_m = arm.lengths_m();
    let sign = |i: usize| if corner >> i & 1 == 1 { 1.0 } else { -1.0 };
    Arm::of_lengths_m(core::array::from_fn(|i| own_m[i] + sign(i) * ERRORS_M[i]), arm.elbow)
}

#[test]
fn corners_are_the_64_arms() {
    let proof = Proof::new(ERRORS_M);
    let arm = arms(&mut Dice(3), 1)[0];
    let told: Vec<Arm> = Corner::all().map(|corner| proof.moved(&arm, corner)).collect();
    assert_eq!(told, (0..64).map(|corner| moved(&arm, corner)).collect::<Vec<_>>());
}

/// Without a height at the straightest corner the lengths there are the longest way between the pins.
#[test]
fn straight_is_what_the_straightest_corner_is() {
    with_proof(|problem| {
        for arm in arms(&mut Dice(5), 40) {
            let mut point = problem.shifted(&arm);
            point[4] = 0.0;
            let arm = problem.arm(&point, arm.elbow);
            let spare = |corner: u32| {
                let moved = moved(&arm, corner);
                moved.crank_m + moved.link_m - pose(&moved, 0.0).reach
            };
            let least = (0..64).map(spare).fold(f64::MAX, f64::min);
            assert!((0.0..1e-7).contains(&least), "{least}");
        }
    });
}

/// The reach is extreme at the corner that is told, among all of them.
#[test]
fn pins_are_furthest_apart_and_nearest_where_it_is_said() {
    with_proof(|problem| {
        for arm in arms(&mut Dice(7), 60) {
            let kernel = ArmKernel::new(&arm);
            let asked = CornerTerms::new(problem, &kernel, 1.0).expect("there is a proof");
            for index in [0, 13, 40] {
                let station = problem.stations[index];
                let reach = |corner: u32| pose(&moved(&arm, corner), station.leaf_rad).reach;
                let all: Vec<f64> = (0..64).map(reach).collect();
                let [longest, shortest] = asked.reaches(&station);
                let most = all.iter().copied().fold(0.0, f64::max);
                let least = all.iter().copied().fold(f64::MAX, f64::min);
                assert!((longest.0 - most).abs() < 1e-12 && (shortest.0 - least).abs() < 1e-12);
                for (told, corner) in [longest, shortest] {
                    let arm = problem.proof.as_ref().expect("there is one").moved(&arm, corner);
                    assert!((pose(&arm, station.leaf_rad).reach - told).abs() < 1e-12);
                }
            }
        }
    });
}

/// What keeps its limit by more than the play is not asked: so no corner may change more than that.
#[test]
fn no_corner_changes_more_than_the_play() {
    with_proof(|problem| {
        let proof = problem.proof.as_ref().expect("there is one");
        let mut checked = 0;
        for arm in arms(&mut Dice(11), 300) {
            if !(0..64).all(|corner| works(&moved(&arm, corner))) {
                continue;
            }
            for index in [0, 4, 20, 40] {
                checked += 1;
                let station = problem.stations[index];
                let play = Play::of(proof, &ArmKernel::new(&arm), station.cosine, station.sine);
                let planned = pose(&arm, station.leaf_rad);
                for corner in 0..64 {
                    let there = pose(&moved(&arm, corner), station.leaf_rad);
                    let elbow = (there.elbow.0 - planned.elbow.0).hypot(there.elbow.1 - planned.elbow.1);
                    assert!(elbow <= play.elbow_m, "{arm:?} {index}: {elbow} {play:?}");
                    assert!((there.lever - planned.lever).abs() <= play.lever_m, "{arm:?} {index}: {play:?}");
                }
            }
        }
        assert!(checked > 100, "{checked}");
    });
}

/// What is broken somewhere is found, and nothing else: levers, travel and assembly at all corners by steps.
#[test]
fn an_arm_is_proven_where_every_corner_keeps_everything() {
    with_proof(|problem| {
        let (mut kept, mut broken) = (0, 0);
        for arm in arms(&mut Dice(17), 160) {
            let sense = problem.sense(&ArmKernel::new(&arm));
            let (limit, most) = (problem.limits.lever_m, problem.limits.travel_rad);
            // Positive by how much everything is kept, roughly; what is next to nothing decides nothing here.
            let room = |corner: u32| {
                let arm = moved(&arm, corner);
                let poses = (0..=400).map(|index| (index, pose(&arm, OPEN * f64::from(index) / 400.0)));
                let lever =
                    poses.clone().map(|(index, pose)| sense * pose.lever - if index >= 40 { limit } else { 0.0 });
                let spare = poses.map(|(_, pose)| {
                    (arm.crank_m + arm.link_m - pose.reach).min(pose.reach - (arm.crank_m - arm.link_m).abs())
                });
                lever.chain(spare).fold(most - travel(&arm), f64::min)
            };
            let least = (0..64).map(room).fold(f64::MAX, f64::min);
            let proven = problem.keeps_at_corners(&arm);
            if least > 1e-4 {
                assert!(proven, "{arm:?} {least}");
                kept += 1;
            } else if least < -1e-4 {
                assert!(!proven, "{arm:?} {least}");
                broken += 1;
            }
        }
        assert!(kept > 10 && broken > 10, "{kept} {broken}");
    });
}

/// The corner that is asked is the worst of all for the lever, or next to it.
#[test]
fn the_worst_corner_is_asked() {
    with_proof(|problem| {
        for arm in arms(&mut Dice(19), 80) {
            if !(0..64).all(|corner| works(&moved(&arm, corner))) {
                continue;
            }
            let kernel = ArmKernel::new(&arm);
            let sense = problem.sense(&kernel);
            let mut asked = CornerTerms::new(problem, &kernel, sense).expect("there is a proof");
            for index in [4, 40] {
                let station = problem.stations[index];
                let piece = asked.worst(Term::Lever, &station);
                let told = problem.value(&kernel, sense, &piece);
                let value = |corner: u32| {
                    problem.value(&ArmKernel::new(&moved(&arm, corner)), sense, &Piece::new(Term::Lever, station))
                };
                let planned = problem.value(&kernel, sense, &Piece::new(Term::Lever, station));
                let most = (0..64).map(value).fold(f64::MIN, f64::max);
                // A tenth of what the errors do: a dimension that hardly matters may go either way, and what is left is found where the answer is checked.
                assert!(told <= most + 1e-12 && most - told < 0.1 * (most - planned), "{arm:?} {told} {most}");
            }
        }
    });
}
