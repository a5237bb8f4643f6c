//! Leaf, crank and link as bodies of the engine, pinned to each other and to the ground.

use kurbo::Point;
use pintle_core::job::Arm;
use rapier2d_f64::prelude::*;

/// Time step, s, and how many: long enough for the joints to settle, short enough for the pose to stay.
const STEP_S: f64 = 1e-3;
const STEPS: u32 = 10;

/// Iterations of the engine's solver; its error on this arm is least around here.
const ITERATIONS: usize = 50;

pub struct Bodies<'a> {
    pub arm: &'a Arm,
    pub leaf_rad: f64,
    pub bracket: Point,
    pub elbow: Point,
}

fn vector(x: f64, y: f64) -> Vector {
    Vector::new(x, y)
}

/// A bar with its first pin at its origin, along its own x-axis.
fn bar(at: Point, angle_rad: f64, length_m: f64, mass_kg: f64) -> RigidBodyBuilder {
    let inertia = mass_kg * length_m * length_m / 12.0;
    RigidBodyBuilder::dynamic()
        .translation(vector(at.x, at.y))
        .rotation(angle_rad)
        .additional_mass_properties(MassProperties::new(vector(length_m / 2.0, 0.0), mass_kg, inertia))
        .can_sleep(false)
}

impl Bodies<'_> {
    /// Speed of the leaf after a moment under two torques, starting from rest, rad/s.
    pub fn leaf_speed_rad_s(&self, leaf_n_m: f64, shaft_n_m: f64) -> f64 {
        let (mut bodies, mut joints) = (RigidBodySet::new(), ImpulseJointSet::new());
        let shaft = Point::new(self.arm.shaft_x_m, self.arm.shaft_y_m);
        let link_rad = (self.bracket - self.elbow).atan2();
        let ground = bodies.insert(RigidBodyBuilder::fixed());
        let leaf = bodies.insert(bar(Point::ORIGIN, self.leaf_rad, 3.0, 150.0));
        let crank = bodies.insert(bar(shaft, (self.elbow - shaft).atan2(), self.arm.crank_m, 8.0));
        let link = bodies.insert(bar(self.elbow, link_rad, self.arm.link_m, 6.0));
        let mut pin = |one, at_one, other, at_other| {
            let pin = RevoluteJointBuilder::new().local_anchor1(at_one).local_anchor2(at_other);
            joints.insert(one, other, pin, true);
        };
        pin(ground, vector(0.0, 0.0), leaf, vector(0.0, 0.0));
        pin(ground, vector(shaft.x, shaft.y), crank, vector(0.0, 0.0));
        pin(crank, vector(self.arm.crank_m, 0.0), link, vector(0.0, 0.0));
        pin(link, vector(self.arm.link_m, 0.0), leaf, vector(self.arm.bracket_u_m, self.arm.bracket_v_m));
        bodies[leaf].add_torque(leaf_n_m, true);
        bodies[crank].add_torque(shaft_n_m, true);

        let parameters = IntegrationParameters { dt: STEP_S, num_solver_iterations: ITERATIONS, ..Default::default() };
        let (mut islands, mut broad_phase, mut narrow_phase) =
            (IslandManager::new(), BroadPhaseBvh::new(), NarrowPhase::new());
        let (mut colliders, mut multibodies, mut soft) =
            (ColliderSet::new(), MultibodyJointSet::new(), SoftBodySet::new());
        let (mut pipeline, mut ccd) = (PhysicsPipeline::new(), CCDSolver::new());
        for _ in 0..STEPS {
            pipeline.step(
                Vector::ZERO,
                &parameters,
                &mut islands,
                &mut broad_phase,
                &mut narrow_phase,
                &mut bodies,
                &mut colliders,
                &mut joints,
                &mut multibodies,
                &mut soft,
                &mut ccd,
                &(),
                &(),
            );
        }
        bodies[leaf].angvel()
    }
}
