//! What a link weighs. The bound is the customer's: an ordinary job in at most 300 bytes of address fragment.

use super::{document, same_to_the_bit, through, without_nulls};
use pintle_core::units::{self, Quantity, System};
use pintle_core::{
    Document,
    job::{Job, fields},
    packed,
};
use serde_json::{Value, json};

/// What the page writes before the packed text.
const MARK: &str = "#job=";

const BOUND: usize = 300;

/// The example of the job document's description, with a title such as people give.
fn ordinary() -> Value {
    json!({
        "schema": 1, "title": "Yard entrance, right leaf", "hand": "right",
        "leaf": { "mass_kg": 160, "length_m": 3.2, "height_m": 1.6, "wind_area_m2": 1.9,
                  "mass_centroid_m": null, "wind_centroid_m": null, "inertia_kg_m2": null },
        "hinges": { "kind": "plain", "spacing_m": 1.3, "pin_radius_m": 0.012, "thrust_outer_radius_m": 0.02,
                    "thrust_inner_radius_m": 0.012, "friction_coefficient": 0.2 },
        "lean": { "angle_deg": 0, "downhill_deg": 0 },
        "wind": { "speed_m_s": 12, "force_coefficient": 1.4, "air_density_kg_m3": 1.225 },
        "swing": { "open_deg": 90 },
        "arm": { "shaft_x_m": -0.25, "shaft_y_m": 0.45, "bracket_u_m": 1.2, "bracket_v_m": 0.06,
                 "crank_m": 0.8728, "link_m": 0.6363, "elbow": "left" },
        "operator": { "rated_torque_n_m": 400, "peak_torque_n_m": 650, "shaft_speed_deg_s": 9, "arm_efficiency": 0.95 },
        "required_reserve": 1.5, "samples": 91,
        // What the page adds: the units shown, and which of the values nobody typed.
        "entry": { "system": "us", "assumed": [1_073_741_823, 15] },
    })
}

/// What somebody with a US tape types for each number of the ordinary job.
const TYPED: [(&str, &str); 23] = [
    ("leaf.mass_kg", "353"),
    ("leaf.length_m", "10' 6\""),
    ("leaf.height_m", "5' 3-1/2\""),
    ("leaf.wind_area_m2", "20.5"),
    ("hinges.spacing_m", "4' 3-3/16\""),
    ("hinges.pin_radius_m", "15/32"),
    ("hinges.thrust_outer_radius_m", "25/32"),
    ("hinges.thrust_inner_radius_m", "0.472"),
    ("lean.angle_deg", "0.25"),
    ("lean.downhill_deg", "-135"),
    ("wind.speed_m_s", "27"),
    ("wind.air_density_kg_m3", "0.0765"),
    ("swing.open_deg", "92.5"),
    ("arm.shaft_x_m", "-9-7/8"),
    ("arm.shaft_y_m", "17 11/16"),
    ("arm.bracket_u_m", "3' 11-1/4\""),
    ("arm.bracket_v_m", "2 3/8"),
    ("arm.crank_m", "2ft 10.375in"),
    ("arm.link_m", "25 1/16"),
    ("operator.rated_torque_n_m", "295"),
    ("operator.peak_torque_n_m", "480"),
    ("operator.shaft_speed_deg_s", "1.5 rpm"),
    ("operator.arm_efficiency", "0.95"),
];

/// The ordinary job with everything typed in US units, read as the page reads it.
fn in_us_units() -> Value {
    let mut job = ordinary();
    for (path, typed) in TYPED {
        let quantity = fields().iter().find(|rule| rule.path == path).expect("a field").quantity;
        let value = units::read(typed, quantity, System::Us).expect("a number");
        *job.pointer_mut(&format!("/{}", path.replace('.', "/"))).expect("there") = json!(value);
    }
    job
}

/// Length of the address fragment of a job, its mark included; the job comes back to the bit.
#[track_caller]
fn fragment(job: &Value) -> usize {
    let said = without_nulls(&document(job));
    assert!(same_to_the_bit(&through(&said), &said), "{job}");
    MARK.len() + packed::pack(&said).len()
}

#[test]
fn an_ordinary_job_fits() {
    let job = ordinary();
    assert!(Job::read(&document(&job)).is_ok());
    let length = fragment(&job);
    assert!(length <= BOUND, "{length} bytes");
}

#[test]
fn a_job_typed_in_us_units_fits() {
    let job = in_us_units();
    Job::read(&document(&job)).unwrap_or_else(|invalid| panic!("{invalid}"));
    // Proof that the short form is what makes it fit: many of these values are long decimals of a metre.
    let long = TYPED
        .iter()
        .filter(|(path, _)| job.pointer(&format!("/{}", path.replace('.', "/"))).expect("there").to_string().len() > 9);
    assert!(long.count() >= 5);
    let length = fragment(&job);
    assert!(length <= BOUND, "{length} bytes");
}

/// Every unit anybody types in has a short form: the typed digits and not the product.
#[test]
fn a_typed_number_is_short_in_every_unit() {
    let quantities = [
        (Quantity::Mass, "353.7"),
        (Quantity::Length, "10' 6 1/2\""),
        (Quantity::ShortLength, "34 3/8"),
        (Quantity::ShortLength, "872.9 mm"),
        (Quantity::ShortLength, "87.3 cm"),
        (Quantity::Area, "20.7"),
        (Quantity::Force, "10.3"),
        (Quantity::Torque, "295.3"),
        (Quantity::Speed, "27.1"),
        (Quantity::Speed, "43.1 km/h"),
        (Quantity::Density, "0.0765"),
        (Quantity::Inertia, "1297.3"),
        (Quantity::Pressure, "25.3"),
        (Quantity::Percent, "93.7"),
    ];
    for (quantity, typed) in quantities {
        let value = Document::Number(units::read(typed, quantity, System::Us).expect("a number"));
        // Version, tag, at most four bytes of digits, check: eight bytes or eleven characters. Eight raw bytes would be sixteen.
        let text = packed::pack(&value);
        assert!(text.len() <= 11, "{typed}: {text}");
        assert!(same_to_the_bit(&through(&value), &value), "{typed}");
    }
}
