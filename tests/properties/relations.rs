//! A relation that is printed is the one that computes: its text, read as a formula and evaluated, gives what the plan has.

use crate::jobs::planned;
use crate::plan::example;
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// Reads a formula as it is printed: `·` and `/`, `+` and `−`, `±` as one of the two, `²` and `³`, `⅔`, cos and tan, symbols with subscripts.
struct Reader<'a> {
    rest: &'a str,
    symbols: &'a BTreeMap<&'static str, f64>,
    sign: f64,
}

impl Reader<'_> {
    fn evaluate(text: &str, symbols: &BTreeMap<&'static str, f64>, sign: f64) -> f64 {
        let mut reader = Reader { rest: text, symbols, sign };
        let value = reader.sum();
        assert!(reader.rest.trim().is_empty(), "{text}: {:?} is left over", reader.rest);
        value
    }

    fn takes(&mut self, token: &str) -> bool {
        let rest = self.rest.trim_start();
        let taken = rest.strip_prefix(token);
        self.rest = taken.unwrap_or(rest);
        taken.is_some()
    }

    fn sum(&mut self) -> f64 {
        let mut value = if self.takes("±") { self.sign * self.product() } else { self.product() };
        loop {
            if self.takes("+") {
                value += self.product();
            } else if self.takes("−") {
                value -= self.product();
            } else if self.takes("±") {
                value += self.sign * self.product();
            } else {
                return value;
            }
        }
    }

    fn product(&mut self) -> f64 {
        let mut value = self.power();
        loop {
            if self.takes("·") {
                value *= self.power();
            } else if self.takes("/") {
                value /= self.power();
            } else {
                return value;
            }
        }
    }

    fn power(&mut self) -> f64 {
        let value = self.atom();
        match () {
            () if self.takes("²") => value * value,
            () if self.takes("³") => value * value * value,
            () => value,
        }
    }

    fn atom(&mut self) -> f64 {
        if self.takes("(") {
            let value = self.sum();
            assert!(self.takes(")"), "no end before {:?}", self.rest);
            return value;
        }
        if self.takes("cos ") {
            return self.atom().cos();
        }
        if self.takes("sin ") {
            return self.atom().sin();
        }
        if self.takes("tan") {
            return self.atom().tan();
        }
        if self.takes("⅔") {
            return 2.0 / 3.0;
        }
        let rest = self.rest;
        let end = rest.find(|letter: char| !(letter.is_alphanumeric() && !"²³".contains(letter) || letter == '_'));
        let (word, rest) = rest.split_at(end.unwrap_or(rest.len()));
        self.rest = rest;
        word.parse().unwrap_or_else(|_| *self.symbols.get(word).unwrap_or_else(|| panic!("{word:?} is no symbol")))
    }
}

/// 100 kg, its centre 1.4 m out, on hinges 1.1 m apart.
fn on(hinges: Value) -> Value {
    let mut value = example();
    value["leaf"]["mass_kg"] = json!(100);
    value["leaf"]["mass_centroid_m"] = json!(1.4);
    value["hinges"] = hinges;
    value["hinges"]["spacing_m"] = json!(1.1);
    value["hinges"]["pin_radius_m"] = json!(0.013);
    value["hinges"]["friction_coefficient"] = json!(0.17);
    value["wind"]["speed_m_s"] = json!(0);
    value
}

#[test]
fn the_hinges_relation_on_the_sheet_is_the_one_that_computes() {
    let (outer, inner): (f64, f64) = (0.024, 0.011);
    let collar = |kind: &str, collar: &str| json!({ "kind": kind, "collar": collar, "thrust_outer_radius_m": outer, "thrust_inner_radius_m": inner });
    let mut rising = collar("rising", "uniform_pressure");
    rising["rise_m"] = json!(0.03);
    let cases =
        [collar("plain", "uniform_pressure"), collar("plain", "uniform_wear"), json!({ "kind": "rolling" }), rising];
    let mut read = Vec::new();
    for hinges in cases {
        let rises = hinges["kind"] == "rising";
        let plan = planned(&on(hinges));
        let relation = plan.loads.friction_relation.expect("not measured");
        let weight = 100.0 * 9.80665;
        let radius = 2.0 / 3.0 * (outer.powi(3) - inner.powi(3)) / (outer.powi(2) - inner.powi(2));
        let rise = 0.03 / 90f64.to_radians();
        let symbols = BTreeMap::from([
            ("μ", 0.17),
            ("H", weight * 1.4 / 1.1),
            ("W", weight),
            ("r", 0.013),
            ("R_o", outer),
            ("R_i", inner),
            ("R", radius),
            ("α", (rise / radius).atan()),
            ("γ", (rise / 0.013).atan()),
            ("φ", 0.17f64.atan()),
        ]);
        let row = plan.curve[0];
        let near = |found: f64, printed: f64| {
            assert!((found - printed).abs() < 1e-9 * printed.abs().max(1.0), "{relation}: {found} {printed}")
        };
        if rises {
            near(row.leaf_torque_open_n_m, Reader::evaluate(relation, &symbols, 1.0));
            near(row.leaf_torque_close_n_m, Reader::evaluate(relation, &symbols, -1.0));
        } else {
            near(plan.loads.hinge_friction_n_m, Reader::evaluate(relation, &symbols, 1.0));
        }
        assert!(!read.contains(&relation), "{relation} stands for two");
        read.push(relation);
    }
    let measured =
        json!({ "kind": "measured", "pull_open_n": 45, "pull_close_n": 41, "pull_radius_m": 3, "pull_leaf_deg": 45 });
    let mut value = example();
    value["hinges"] = measured;
    assert_eq!(planned(&value).loads.friction_relation, None);
}

/// The sheet's sentences take the relation from the plan and have no coefficient of their own.
#[test]
fn the_sheet_s_sentences_have_no_relation_of_their_own() {
    for table in [include_str!("../../www/strings/en.json"), include_str!("../../www/strings/es.json")] {
        let table: Value = serde_json::from_str(table).expect("JSON");
        for kind in ["plain", "rolling", "rising"] {
            let sentence =
                table.pointer(&format!("/handover/paper/relations/{kind}")).and_then(Value::as_str).expect("told");
            assert!(sentence.contains("{friction}") && !sentence.contains("μ·"), "{sentence}");
        }
    }
}
