//! A job that was made or changed in code is held to the same rules as one that was read.

use super::carriers::{motion, site};
use super::job;
use pintle_core::{
    Document,
    fault::FaultCode,
    job::{Hinges, Job, Member, WindFrom, WindShape},
    plan::plan,
};
use serde_json::{Value, json};

/// A field's path, and what is done to it.
type Change = (&'static str, fn(&mut Job));

const RECTANGLE: [f64; 2] = [-3.0, -2.0];

/// A job in which every optional block stands.
fn full() -> Job {
    let mut value = job();
    let rectangle = json!({ "x_m": RECTANGLE, "y_m": [2, 3] });
    for block in ["marks", "tape", "as_built", "drag", "breakaway", "contact", "settings"] {
        value[block] = json!({});
    }
    value["obstacles"] = json!([rectangle]);
    value["operator"]["body"] = json!({ "along_m": [-0.1, 0.3], "across_m": [-0.1, 0.1] });
    value["motion"] = motion();
    value["site"] = site();
    value["record"] = json!({ "rod_ohm": 20 });
    value["ice"] = json!({ "thickness_m": 0.005 });
    value["ground"] = json!({ "gap_m": 0.3 });
    value["holding"] = json!({});
    value["storm"] = json!({ "from": { "kind": "beaufort", "number": 9, "gust_factor": 1.6, "height_factor": 0.7 },
        "shape": { "kind": "asce7_wall", "solidity": 1 } });
    value["leaf"]["members"] = json!([
        { "section": "tube", "face_m": 0.05, "wall_m": 0.003, "place": { "from_m": 0.1, "to_m": 2.9 } },
        { "section": "bar", "face_m": 0.02, "place": { "from_m": 0.1, "to_m": 2.9 } }]);
    value["setout"] = json!({ "shaft_x_m": [-0.55, -0.15], "shaft_y_m": [0.25, 0.7], "bracket_u_m": [0.7, 1.5],
        "bracket_v_m": 0.06, "crank_m": [0.35, 0.9], "link_m": [0.35, 0.9], "place": { "x_m": -0.3, "y_m": 0.4 } });
    value["uncertainty"] = json!({ "leaf.mass_kg": 0.2 });
    read(&value)
}

fn read(value: &Value) -> Job {
    let document: Document = serde_json::from_value(value.clone()).expect("a document");
    Job::read(&document).unwrap_or_else(|invalid| panic!("{invalid}"))
}

fn some<T>(part: &mut Option<T>) -> &mut T {
    part.as_mut().expect("it stands in the full job")
}

/// Paths of the faults of a full job with something changed.
fn faults(change: fn(&mut Job)) -> Vec<(String, FaultCode)> {
    let mut job = full();
    change(&mut job);
    let errors = job.check().expect_err("something is wrong").errors;
    assert_eq!(plan(&job).expect_err("nor is it planned").errors, errors);
    errors.into_iter().map(|fault| (fault.path, fault.code)).collect()
}

#[test]
fn a_full_job_is_in_order() {
    assert_eq!(full().check(), Ok(()));
}

/// One number of each block out of its range: it is found, under the path a document has it at, and nothing else.
#[test]
fn every_block_is_looked_at() {
    let changes: [Change; 32] = [
        ("leaf.mass_kg", |job| job.leaf.mass_kg = Some(0.0)),
        ("leaf.length_m", |job| job.leaf.length_m = 15.1),
        ("hinges.pin_radius_m", |job| {
            let Hinges::Plain(plain) = &mut job.hinges else { panic!("plain hinges") };
            plain.pin_radius_m = f64::NAN;
        }),
        ("lean.angle_deg", |job| job.lean.angle_deg = Some(-1.0)),
        ("wind.speed_m_s", |job| job.wind.speed_m_s = Some(f64::INFINITY)),
        ("drag.latch_deg", |job| some(&mut job.drag).latch_deg = Some(46.0)),
        ("ice.thickness_m", |job| some(&mut job.ice).thickness_m = -0.1),
        ("ground.gap_m", |job| some(&mut job.ground).gap_m = 2.5),
        ("motion.ramp_up_s", |job| some(&mut job.motion).ramp_up_s = Some(0.0)),
        ("motion.motor.rated_v", |job| some(&mut some(&mut job.motion).motor).rated_v = 0.0),
        ("motion.duty.cycles_per_day", |job| some(&mut some(&mut job.motion).duty).cycles_per_day = Some(-1.0)),
        ("breakaway.hold_factor", |job| some(&mut job.breakaway).hold_factor = Some(0.9)),
        ("holding.play_deg", |job| some(&mut job.holding).play_deg = Some(11.0)),
        ("contact.near_m", |job| some(&mut job.contact).near_m = Some(0.0)),
        ("site.latch_gap_m", |job| some(&mut job.site).latch_gap_m = Some(2.0)),
        ("site.homes", |job| some(&mut job.site).homes = Some(10_001)),
        ("obstacles.0.x_m.0", |job| some(&mut job.obstacles)[0].x_m[0] = -21.0),
        ("obstacles.0.y_m.1", |job| some(&mut job.obstacles)[0].y_m[1] = 21.0),
        ("site.means.1.area.to_y_m", |job| some(&mut some(&mut some(&mut job.site).means)[1].area).to_y_m = 21.0),
        ("settings.close_timer_s", |job| some(&mut job.settings).close_timer_s = Some(-1.0)),
        ("record.rod_ohm", |job| some(&mut job.record).rod_ohm = Some(-1.0)),
        ("swing.open_deg", |job| job.swing.open_deg = 181.0),
        ("operator.rated_torque_n_m", |job| job.operator.rated_torque_n_m = 0.0),
        ("required_reserve", |job| job.required_reserve = Some(0.5)),
        ("arm.link_m", |job| some(&mut job.arm).link_m = 0.0),
        ("setout.link_m.1", |job| some(&mut job.setout).link_m[1] = 11.0),
        ("setout.place.x_m", |job| some(&mut some(&mut job.setout).place).x_m = 11.0),
        ("leaf.heel_m", |job| job.leaf.heel_m = Some(-0.1)),
        ("operator.body.along_m.1", |job| some(&mut job.operator.body).along_m[1] = 3.1),
        ("marks.overlap_m", |job| some(&mut job.marks).overlap_m = Some(2.1)),
        ("tape.error_m", |job| some(&mut job.tape).error_m = Some(0.0)),
        ("as_built.crank_m", |job| some(&mut job.as_built).crank_m = Some(0.0)),
    ];
    for (path, change) in changes {
        assert_eq!(faults(change), [(path.to_string(), FaultCode::OutOfRange)]);
    }
}

/// The storm keeps the rules of the wind and members those of the list, each under its own path.
#[test]
fn the_storm_and_members_are_looked_at() {
    let changes: [Change; 5] = [
        ("storm.air_density_kg_m3", |job| some(&mut job.storm).air_density_kg_m3 = Some(3.0)),
        ("storm.from.gust_factor", |job| {
            let Some(WindFrom::Beaufort(wind)) = &mut some(&mut job.storm).from else { panic!("a Beaufort wind") };
            wind.gust_factor = 4.0;
        }),
        ("storm.shape.clearance", |job| {
            let Some(WindShape::Asce7Wall(wall)) = &mut some(&mut job.storm).shape else { panic!("a wall") };
            wall.clearance = Some(0.5);
        }),
        ("leaf.members.0.wall_m", |job| {
            let Member::Tube(tube) = &mut some(&mut job.leaf.members)[0] else { panic!("a tube") };
            tube.wall_m = 1.0;
        }),
        ("leaf.members.1.place.from_m", |job| {
            let Member::Bar(bar) = &mut some(&mut job.leaf.members)[1] else { panic!("a bar") };
            bar.place.from_m = -2.0;
        }),
    ];
    for (path, change) in changes {
        assert_eq!(faults(change), [(path.to_string(), FaultCode::OutOfRange)]);
    }
}

#[test]
fn schema_uncertainty_and_relations_are_looked_at() {
    assert_eq!(faults(|job| job.schema = 3), [("schema".into(), FaultCode::NewerSchema)]);
    assert_eq!(faults(|job| job.schema = 0), [("schema".into(), FaultCode::OutOfRange)]);
    for fraction in [-0.1, 1.1, f64::NAN] {
        let mut job = full();
        some(&mut job.uncertainty).insert("leaf.mass_kg".into(), fraction);
        let errors = job.check().expect_err("no such share").errors;
        assert_eq!(
            (errors[0].path.as_str(), errors[0].code, errors.len()),
            ("uncertainty.leaf.mass_kg", FaultCode::OutOfRange, 1)
        );
    }
    for fraction in [0.0, 1.0] {
        let mut job = full();
        some(&mut job.uncertainty).insert("leaf.mass_kg".into(), fraction);
        assert_eq!(job.check(), Ok(()));
    }
    assert_eq!(
        faults(|job| job.operator.shaft_speed_deg_s = None),
        [("operator.shaft_speed_deg_s".into(), FaultCode::Missing)]
    );
    // Relations mean something between numbers that are in range, and are not told beside one that is not.
    let both = faults(|job| {
        job.operator.shaft_speed_deg_s = None;
        job.leaf.length_m = 16.0;
    });
    assert_eq!(both, [("leaf.length_m".into(), FaultCode::OutOfRange)]);
    // Where there is no arm there is nothing to plan.
    let mut job = full();
    job.arm = None;
    assert_eq!(job.check(), Ok(()));
    let errors = plan(&job).expect_err("no arm").errors;
    assert_eq!((errors[0].path.as_str(), errors[0].code), ("arm", FaultCode::Missing));
}
