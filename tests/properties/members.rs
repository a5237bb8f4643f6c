//! Members added up piece by piece: each is cut into many small masses and areas.

use crate::jobs::{document, job, planned};
use crate::plan::example;
use pintle_core::{
    elements::{CornerRule, hollow_largest_wall_m},
    job::{Job, MemberTotals},
    leaf::Body,
};
use proptest::prelude::*;
use serde_json::{Value, json};
use std::f64::consts::PI;

const PIECES: u32 = 2000;

/// Kilograms and square metres of wind area of a metre of bar, or of a square metre of panel. Steel has 7,850 kg/m³.
fn stuff(member: &Value) -> (f64, f64) {
    let at = |name: &str| member[name].as_f64();
    let number = |name: &str| at(name).expect("said");
    let density = at("density_kg_m3").unwrap_or(7850.0);
    let face = at("face_m").unwrap_or(0.0);
    let depth = at("depth_m").unwrap_or(face);
    match member["section"].as_str().expect("a section") {
        "tube" => {
            let wall = number("wall_m");
            // Outside less inside, each a rectangle whose corners are rounded off: (4 − π)·r² is missing.
            let (outer, inner) = match member["corners"].as_str() {
                Some("aisc") => (2.0, 1.0),
                _ if wall > 0.010 => (3.0, 2.0),
                _ if wall > 0.006 => (2.5, 1.5),
                _ => (2.0, 1.0),
            };
            let rounded = |a: f64, b: f64, r: f64| a * b - (4.0 - PI) * r * r;
            let area =
                rounded(face, depth, outer * wall) - rounded(face - 2.0 * wall, depth - 2.0 * wall, inner * wall);
            (density * area, face)
        }
        "round_tube" => {
            let inner = face - 2.0 * number("wall_m");
            (density * PI / 4.0 * (face * face - inner * inner), face)
        }
        "bar" => (density * face * depth, face),
        "round_bar" => (density * PI / 4.0 * face * face, face),
        "sheet" => (density * number("thickness_m"), 1.0),
        "boards" => {
            let share = face / (face + at("gap_m").unwrap_or(0.0));
            (density * number("thickness_m") * share, share)
        }
        "mesh" => {
            let (wire, pitch) = (number("wire_m"), number("pitch_m"));
            // A square of one pitch has a wire's length of one pitch each way, and an opening of what the wires leave.
            let open = (pitch - wire) / pitch;
            (density * PI / 4.0 * wire * wire * 2.0 * pitch / (pitch * pitch), 1.0 - open * open)
        }
        other => panic!("{other}"),
    }
}

/// Small pieces of a member: distance from the hinge, mass, area.
fn pieces(member: &Value) -> Vec<(f64, f64, f64)> {
    let place = &member["place"];
    let at = |name: &str| place[name].as_f64();
    let (from, to) = (at("from_m").unwrap(), at("to_m").unwrap());
    let count = place["count"].as_u64().unwrap_or(1);
    let (mass, area) = stuff(member);
    let panel = ["sheet", "boards", "mesh"].contains(&member["section"].as_str().unwrap());
    if let (false, Some(height)) = (panel, at("height_m")) {
        // Uprights, the first and the last at the ends.
        return (0..count)
            .map(
                |index| {
                    if count > 1 { from + (to - from) * index as f64 / (count - 1) as f64 } else { (from + to) / 2.0 }
                },
            )
            .map(|x| (x, mass * height, area * height))
            .collect();
    }
    let width = (to - from).abs();
    let metres = if panel { width * at("height_m").unwrap() } else { width.hypot(at("rise_m").unwrap_or(0.0)) };
    let each = count as f64 * metres / f64::from(PIECES);
    (0..PIECES)
        .map(|index| from + (to - from) * (f64::from(index) + 0.5) / f64::from(PIECES))
        .map(|x| (x, mass * each, area * each))
        .collect()
}

fn member() -> impl Strategy<Value = Value> {
    let place = (-0.3..1.0f64, 0.0..2.0f64, 1..6u64, 0.2..2.0f64, prop::option::of(0.0..1.5f64), any::<bool>());
    let size = (0.03..0.08f64, 0.05..0.1f64, 0.001..0.004f64, prop::option::of(400.0..8000.0f64));
    (0..9u32, place, size).prop_map(|(kind, (from, spread, count, height, rise, upright), (face, depth, thin, density))| {
        let bar = |section: &str| json!({ "section": section, "face_m": face });
        let mut member = match kind {
            0 => bar("tube"),
            1 => json!({ "section": "tube", "face_m": 10.0 * face, "depth_m": 10.0 * depth, "wall_m": 2.0 * thin + 0.003 }),
            2 => json!({ "section": "tube", "face_m": 3.0 * face, "wall_m": 2.0 * thin, "corners": "aisc" }),
            3 => bar("round_tube"),
            4 => bar("bar"),
            5 => bar("round_bar"),
            6 => json!({ "section": "sheet", "thickness_m": thin }),
            7 => json!({ "section": "boards", "thickness_m": thin, "face_m": face, "gap_m": depth / 4.0 }),
            _ => json!({ "section": "mesh", "wire_m": thin, "pitch_m": depth }),
        };
        if kind == 0 || kind == 3 {
            member["wall_m"] = json!(thin);
        }
        if (kind == 0 || kind == 4) && upright {
            member["depth_m"] = json!(depth);
        }
        member["density_kg_m3"] = json!(density);
        member["place"] = json!({ "from_m": from, "to_m": from + spread, "count": count });
        // A panel has a height; a bar stands with one or lies with a rise.
        if kind >= 6 || upright {
            member["place"]["height_m"] = json!(height);
        } else {
            member["place"]["rise_m"] = json!(rise);
        }
        member
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn members_are_the_sum_of_their_pieces(members in prop::collection::vec(member(), 1..5)) {
        let mut value = example();
        value["leaf"]["members"] = json!(members);
        value["leaf"]["length_m"] = json!(6.0);
        // A list that comes to less than a kilogram or beyond the leaf's end is refused.
        let Ok(job) = Job::read(&document(&value)) else { return Ok(()) };
        let totals = MemberTotals::of(job.leaf.members.as_deref().unwrap());
        let all: Vec<_> = members.iter().flat_map(pieces).collect();
        let sum = |of: fn(&(f64, f64, f64)) -> f64| all.iter().map(of).sum::<f64>();
        let (mass, area) = (sum(|piece| piece.1), sum(|piece| piece.2));
        prop_assert!((totals.mass_kg - mass).abs() <= 1e-9 * mass, "{} {mass}", totals.mass_kg);
        prop_assert!((totals.wind_area_m2 - area).abs() <= 1e-9 * area, "{} {area}", totals.wind_area_m2);
        let near = |one: f64, other: f64| (one - other).abs() <= 1e-9 * other.abs().max(1.0);
        if mass > 0.0 {
            prop_assert!(near(totals.mass_centroid_m, sum(|piece| piece.0 * piece.1) / mass));
            prop_assert!(near(totals.wind_centroid_m, sum(|piece| piece.0 * piece.2) / area));
        }
        // The middle of each piece stands for it: too little by a twelfth of its own width squared.
        let inertia = sum(|piece| piece.0 * piece.0 * piece.1);
        prop_assert!((totals.inertia_kg_m2 - inertia).abs() <= 1e-5 * inertia.max(mass), "{} {inertia}", totals.inertia_kg_m2);
    }

    /// The largest wall by trying walls: the outer corners may take up the shorter side and no more.
    #[test]
    fn the_largest_wall_just_fits(face in 0.01..0.2f64, depth in 0.01..0.2f64, aisc in any::<bool>()) {
        let radius = |wall: f64| match wall {
            _ if aisc => 2.0,
            wall if wall > 0.010 => 3.0,
            wall if wall > 0.006 => 2.5,
            _ => 2.0,
        };
        let fits = |wall: f64| 2.0 * radius(wall) * wall <= face.min(depth);
        const STEP_M: f64 = 1e-5;
        let most = (1..5000).map(|step| f64::from(step) * STEP_M).filter(|&wall| fits(wall)).fold(0.0, f64::max);
        let rule = if aisc { CornerRule::Aisc } else { CornerRule::En10219 };
        let told = hollow_largest_wall_m(face, depth, rule);
        prop_assert!(told >= most - 1e-9 && told <= most + STEP_M + 1e-9, "{told} {most}");
    }
}

/// No members come to nothing, and not to something that is no number.
#[test]
fn nothing_listed_is_nothing() {
    assert_eq!(MemberTotals::of(&[]), MemberTotals::default());
}

/// A weighed leaf keeps the scales' mass; what its members come to gives the rest, their inertia in proportion.
#[test]
fn the_scales_go_before_the_list() {
    let bars =
        json!([{ "section": "bar", "face_m": 0.05, "place": { "from_m": 0, "to_m": 2, "height_m": 1, "count": 3 } }]);
    let mut value = example();
    value["leaf"] = json!({ "length_m": 3.0, "members": bars });
    let listed = Body::of(&job(&value));
    // Three bars of 7,850 × 0.05² × 1 m at 0, 1 and 2 m.
    let each = 7850.0 * 0.0025;
    assert!((listed.mass_kg - 3.0 * each).abs() < 1e-9);
    assert!((listed.mass_centroid_m - 1.0).abs() < 1e-12);
    assert!((listed.inertia_kg_m2 - 5.0 * each).abs() < 1e-9);
    assert!((listed.wind_area_m2 - 0.15).abs() < 1e-12);
    value["leaf"]["mass_kg"] = json!(6.0 * each);
    let weighed = Body::of(&job(&value));
    assert!((weighed.mass_kg - 6.0 * each).abs() < 1e-9);
    assert!((weighed.inertia_kg_m2 - 10.0 * each).abs() < 1e-9);
    value["leaf"]["inertia_kg_m2"] = json!(77.0);
    value["leaf"]["mass_centroid_m"] = json!(1.25);
    value["leaf"]["wind_centroid_m"] = json!(1.5);
    value["leaf"]["wind_area_m2"] = json!(2.5);
    let said = Body::of(&job(&value));
    assert_eq!(
        (said.inertia_kg_m2, said.mass_centroid_m, said.wind_centroid_m, said.wind_area_m2),
        (77.0, 1.25, 1.5, 2.5)
    );
}

/// A leaf of one member under 5 mm of ice at 900 kg/m³: what the ice weighs, the wind area with it, and the plan.
fn iced(member: Value, ice: Value) -> (f64, f64, pintle_core::plan::Plan) {
    let mut value = example();
    value["leaf"] = json!({ "length_m": 3.2, "members": [member] });
    value["ice"] = ice;
    let plan = planned(&value);
    let told = plan.ice.expect("there is ice");
    assert!(told.all_round);
    (told.mass_kg, told.wind_area_m2, plan)
}

/// Bars carry it all round and stand wider by it, a sheet carries it on both faces: sections drawn with their ice.
#[test]
fn ice_lies_all_round_what_the_leaf_is_made_of() {
    let near = |found: f64, wanted: f64| assert!((found - wanted).abs() <= 1e-9 * wanted, "{found} {wanted}");
    let coat = || json!({ "thickness_m": 0.005, "density_kg_m3": 900 });
    // Eleven uprights of 30 mm, 1.5 m high, 0.3 m apart: 0.63 kg of ice a metre, 40 mm wide with it.
    let uprights = || json!({ "section": "bar", "face_m": 0.03, "place": { "from_m": 0, "to_m": 3, "height_m": 1.5, "count": 11 } });
    let (mass, area, with) = iced(uprights(), coat());
    near(mass, 0.63 * 1.5 * 11.0);
    near(area, 0.04 * 1.5 * 11.0);
    let mut bare = example();
    bare["leaf"] = json!({ "length_m": 3.2, "members": [uprights()] });
    let without = planned(&bare);
    near(with.loads.wind_n_m / without.loads.wind_n_m, 4.0 / 3.0);
    let square_sum: f64 = (0..11).map(|index| (0.3 * f64::from(index)).powi(2)).sum();
    near(with.loads.inertia_kg_m2 - without.loads.inertia_kg_m2, 0.63 * 1.5 * square_sum);
    assert!(!with.assumed.contains(&"ice.area_factor"));
    // A factor only raises what the members come to.
    for (factor, ratio) in [(1.0, 4.0 / 3.0), (1.1, 4.0 / 3.0), (1.5, 1.5)] {
        let mut said = coat();
        said["area_factor"] = json!(factor);
        near(iced(uprights(), said).2.loads.wind_n_m / without.loads.wind_n_m, ratio);
    }
    let panel = |mut member: Value| {
        member["place"] = json!({ "from_m": 0, "to_m": 3, "height_m": 1 });
        let (mass, area, _) = iced(member, coat());
        (mass / 3.0, area / 3.0)
    };
    let both = |found: (f64, f64), wanted: (f64, f64)| {
        near(found.0, wanted.0);
        near(found.1, wanted.1);
    };
    both(panel(json!({ "section": "sheet", "thickness_m": 0.002 })), (9.0, 1.0));
    // Five metres of board of 100 by 20 mm a square metre, then boards that touch.
    let boards = |gap: f64| panel(json!({ "section": "boards", "face_m": 0.1, "thickness_m": 0.02, "gap_m": gap }));
    both(boards(0.1), (900.0 * 5.0 * (0.11 * 0.03 - 0.1 * 0.02), 0.55));
    both(boards(0.0), (9.0, 1.0));
    // Forty metres of wire of 5 mm a square metre, 15 mm thick with its ice.
    let mesh = panel(json!({ "section": "mesh", "wire_m": 0.005, "pitch_m": 0.05 }));
    both(mesh, (900.0 * 40.0 * std::f64::consts::PI * (0.0075f64.powi(2) - 0.0025f64.powi(2)), 1.0 - 0.7 * 0.7));
    let round = json!({ "section": "round_tube", "face_m": 0.04, "wall_m": 0.003, "place": { "from_m": 0, "to_m": 3, "count": 4 } });
    let (mass, area, _) = iced(round, coat());
    near(mass, 900.0 * 12.0 * std::f64::consts::PI * (0.025f64.powi(2) - 0.02f64.powi(2)));
    near(area, 12.0 * 0.05);
}
