//! Random jobs, as wild as the ranges allow: kept ones with numbers drawn anew from the table of ranges, lists grown and cut, blocks taken out
//! and put in from one another. All of them invented.

use pintle_core::{
    Document,
    job::{FieldRule, Job},
    plan::Model,
};
use serde_json::{Map, Value, json};
use std::sync::LazyLock;

/// The table of ranges.
static FIELDS: LazyLock<Vec<FieldRule>> = LazyLock::new(pintle_core::job::fields);

/// Even random numbers: Knuth's linear congruential generator.
#[derive(Clone)]
pub struct Dice(pub u64);

impl Dice {
    /// From 0 up to 1.
    pub fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn below(&mut self, count: usize) -> usize {
        (self.share() * count as f64) as usize
    }

    fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.share()
    }
}

/// Jobs to begin with.
pub fn kept() -> Vec<Value> {
    let texts = [
        include_str!("../../../www/data/starting-job.json"),
        include_str!("../site.json"),
        include_str!("../../../tests/fixtures/schema-1/every-block.json"),
        include_str!("../../../tests/fixtures/slow/plan.json"),
        include_str!("../../../tests/fixtures/slow/plan-2.json"),
        include_str!("../../../tests/fixtures/slow/setout.json"),
        include_str!("../../../tests/fixtures/slow/setout-2.json"),
        include_str!("../../../tests/setout/sites/about_to_turn_back.json"),
        include_str!("../../../tests/setout/sites/bought_arm.json"),
        include_str!("../../../tests/setout/sites/fine_tape.json"),
        include_str!("../../../tests/setout/sites/lean_and_pulls.json"),
        include_str!("../../../tests/setout/sites/posts_and_kerb.json"),
        include_str!("../../../tests/setout/sites/straight_when_closed.json"),
        include_str!("../../../tests/setout/sites/wide_choice.json"),
    ];
    let mut jobs: Vec<Value> =
        texts.iter().map(|text| serde_json::from_str(text).expect("kept jobs are JSON")).collect();
    for job in &mut jobs {
        // What is carried and not read costs nothing.
        let job = job.as_object_mut().expect("a job is an object");
        job.retain(|key, _| key != "entry" && key != "record");
    }
    let mut fitted = jobs[2].clone();
    fitted["room"] = json!({ "front_m": 0.03, "back_m": 0.03, "heel_m": 0.1, "arm_half_width_m": 0.03,
        "hinge_post": { "x_m": [-0.3, -0.12], "y_m": [-0.1, 0.1] }, "obstacles": [{ "x_m": [-2, -0.5], "y_m": [1, 2] }] });
    fitted["marks"] = json!({ "anchor_along_m": 0.25, "anchor_across_m": 0.15 });
    fitted["as_built"] = json!({ "shaft_x_m": -0.251, "link_m": 0.64 });
    fitted["site"]["means"] = json!([{ "kind": "non_contact", "monitored": true, "reaches": ["bottom"],
        "area": { "on": "ground", "from_x_m": 3.3, "from_y_m": 0, "to_x_m": 0, "to_y_m": 3.3 } }]);
    jobs.push(fitted);
    jobs.into_iter().map(opened).collect()
}

/// The job of a document; `None` where it is refused.
pub fn read(value: &Value) -> Option<Job> {
    Job::read(&serde_json::from_value::<Document>(value.clone()).ok()?).ok()
}

/// A job of the kept ones changed a little or a lot, that can be planned or searched as `wanted` says.
pub fn drawn(dice: &mut Dice, kept: &[Value], wanted: impl Fn(&Job) -> bool) -> (Value, Job) {
    loop {
        let base = kept[dice.below(kept.len())].clone();
        let changes = 1 + dice.below(12);
        if let Some(found) = changed(dice, base, kept, changes).filter(|(_, job)| wanted(job)) {
            return found;
        }
    }
}

/// Whether a job has a plan.
pub fn is_planned(job: &Job) -> bool {
    Model::new(job).is_ok()
}

/// A job with so many of its entries changed, `None` where it is refused.
pub fn changed(dice: &mut Dice, mut value: Value, kept: &[Value], changes: usize) -> Option<(Value, Job)> {
    for _ in 0..changes {
        let before = value.clone();
        change(dice, &mut value, kept);
        if read(&value).is_none() {
            value = before;
        }
    }
    let job = read(&value)?;
    Some((value, job))
}

fn change(dice: &mut Dice, value: &mut Value, kept: &[Value]) {
    match dice.below(13) {
        // A block from another job, or a block less.
        0 => {
            let other = &kept[dice.below(kept.len())];
            let Some((key, block)) = other.as_object().and_then(|job| pick(dice, job)) else { return };
            value[key] = block;
        }
        1 => {
            let job = value.as_object_mut().expect("a job is an object");
            let keys: Vec<String> = job.keys().cloned().collect();
            let key = &keys[dice.below(keys.len())];
            if key != "setout" && key != "motion" {
                job.remove(key);
            }
        }
        2 => {
            let mut lists = Vec::new();
            places(value, "", &mut lists, &|value| {
                value.as_array().is_some_and(|items| items.iter().any(Value::is_object))
            });
            if lists.is_empty() {
                return;
            }
            let list = &lists[dice.below(lists.len())];
            let items = value.pointer_mut(list).and_then(Value::as_array_mut).expect("a list");
            let more = [1, 4, 64, 200][dice.below(4)];
            let item = items[dice.below(items.len())].clone();
            for _ in 0..more.min(if list.contains("members") { 200 } else { 64 } - items.len().min(64)) {
                let mut item = item.clone();
                jitter(dice, &mut item);
                items.push(item);
            }
        }
        3 => {
            let mut words = Vec::new();
            places(value, "", &mut words, &|value| value.is_string() || value.is_boolean());
            let place = words[dice.below(words.len())].clone();
            let word = match place.rsplit('/').next().unwrap_or_default() {
                "elbow" => json!(["left", "right", "either"][dice.below(3)]),
                "aim" => json!(
                    ["least_shaft_torque", "least_link_force", "least_shaft_travel", "nearest_place"][dice.below(4)]
                ),
                "level" => json!(["strength", "allowable"][dice.below(2)]),
                _ => return,
            };
            if word == "nearest_place" {
                value["setout"]["place"] = json!({ "x_m": -0.3, "y_m": 0.4 });
            }
            *value.pointer_mut(&place).expect("it was found") = word;
        }
        // Whatever stands around: a few large things or a thicket.
        10 | 11 => {
            let count = [1, 8, 64][dice.below(3)];
            let (size, spread) = (0.01 * 100_f64.powf(dice.share()), dice.between(0.3, 4.0));
            let standing: Vec<Value> = (0..count).map(|_| stands(dice, size, spread)).collect();
            value["obstacles"] = standing.into();
        }
        // What makes runs and searches long: a wide swing, a creeping or a racing shaft, slow zones, a fine tape, hundreds of parts.
        12 => {
            let (pointer, least, most) = LONG[dice.below(LONG.len())];
            let (block, field) = pointer.rsplit_once('/').expect("a block and its field");
            let number = least * f64::powf(most / least, dice.share());
            if let Some(Value::Object(block)) = value.pointer_mut(block) {
                block.insert(field.into(), json!(number));
            }
        }
        // A number that was not said.
        4 | 5 => {
            let rule = &FIELDS[dice.below(FIELDS.len())];
            let Some((block, field)) = rule.path.rsplit_once('.') else { return };
            let pointer = format!("/{}", block.replace('.', "/"));
            let number = number(dice, rule, None);
            if let Some(Value::Object(block)) = value.pointer_mut(&pointer) {
                let range = block.get(field).is_some_and(Value::is_array) || field == "straightness";
                block.insert(field.into(), if range { ranged(dice, rule, None) } else { json!(number) });
            }
        }
        _ => {
            let mut numbers = Vec::new();
            places(value, "", &mut numbers, &Value::is_number);
            let place = numbers[dice.below(numbers.len())].clone();
            renew(dice, value, &place);
        }
    }
}

/// Numbers that decide how long a run or a search is, with ranges to draw them from by order of magnitude.
const LONG: [(&str, f64, f64); 13] = [
    ("/swing/open_deg", 60.0, 180.0),
    ("/operator/shaft_speed_deg_s", 0.05, 200.0),
    ("/motion/ramp_up_s", 0.05, 60.0),
    ("/motion/ramp_down_s", 0.05, 60.0),
    ("/motion/slow_open_deg", 0.1, 180.0),
    ("/motion/slow_close_deg", 0.1, 180.0),
    ("/motion/slow_speed_deg_s", 0.01, 20.0),
    ("/motion/motor/no_load_speed_deg_s", 0.1, 10_000.0),
    ("/motion/motor/stall_torque_n_m", 10.0, 50_000.0),
    ("/motion/motor/inertia_kg_m2", 1e-6, 1e4),
    ("/setout/step_m", 0.0005, 0.05),
    ("/arm_half_width_m", 0.001, 0.5),
    ("/storm/speed_m_s", 5.0, 80.0),
];

/// A kept job in today's schema.
fn opened(job: Value) -> Value {
    let document: Document = serde_json::from_value(job).expect("a kept job is a document");
    serde_json::to_value(Job::open(&document).expect("kept jobs open")).expect("a document is JSON")
}

/// A rectangle somewhere about the gate.
fn stands(dice: &mut Dice, size: f64, spread: f64) -> Value {
    let [x, y] = core::array::from_fn(|_| dice.between(-0.5 * spread, spread));
    let [across, along] = core::array::from_fn(|_| size * (0.1 + dice.share()));
    json!({ "x_m": [x, x + across], "y_m": [y, y + along] })
}

fn pick(dice: &mut Dice, job: &Map<String, Value>) -> Option<(String, Value)> {
    let (key, block) = job.iter().nth(dice.below(job.len()))?;
    Some((key.clone(), block.clone()))
}

/// Pointers to everything in a value that has a property.
fn places(value: &Value, here: &str, found: &mut Vec<String>, wanted: &impl Fn(&Value) -> bool) {
    if wanted(value) {
        found.push(here.into());
    }
    match value {
        Value::Object(entries) => {
            entries
                .iter()
                .for_each(|(key, inner)| places(inner, &format!("{here}/{}", key.replace('/', "~1")), found, wanted));
        }
        Value::Array(items) => {
            items
                .iter()
                .enumerate()
                .for_each(|(index, inner)| places(inner, &format!("{here}/{index}"), found, wanted));
        }
        _ => {}
    }
}

/// The rule of a pointer: list indices out, the storm by the wind's.
fn rule(pointer: &str) -> Option<&'static FieldRule> {
    let words: Vec<&str> = pointer.split('/').skip(1).filter(|word| word.parse::<usize>().is_err()).collect();
    let path = words.join(".").replacen("storm.", "wind.", 1);
    FIELDS.iter().find(|rule| rule.path == path)
}

/// A number drawn anew; both ends of a range together, so that they stay the right way round.
fn renew(dice: &mut Dice, value: &mut Value, pointer: &str) {
    let Some(rule) = rule(pointer) else { return };
    let outer = pointer.rsplit_once('/').map_or("", |(outer, _)| outer);
    if let Some(Value::Array(ends)) = value.pointer_mut(outer).filter(|outer| outer.is_array()) {
        let ends: Vec<f64> = ends.iter().filter_map(Value::as_f64).collect();
        let range = ranged(dice, rule, Some((ends[0], ends[1])));
        *value.pointer_mut(outer).expect("it was found") = range;
        return;
    }
    let old = value.pointer(pointer).and_then(Value::as_f64);
    *value.pointer_mut(pointer).expect("it was found") = whole(rule, number(dice, rule, old));
}

fn whole(rule: &FieldRule, number: f64) -> Value {
    if rule.quantity == pintle_core::units::Quantity::Count { json!(number.round() as i64) } else { json!(number) }
}

fn ranged(dice: &mut Dice, rule: &FieldRule, old: Option<(f64, f64)>) -> Value {
    let (least, most) = old.unwrap_or_else(|| (number(dice, rule, None), number(dice, rule, None)));
    let (one, other) = match dice.below(4) {
        0 => (number(dice, rule, Some(least)), most),
        1 => (least, number(dice, rule, Some(most))),
        2 => {
            let middle = dice.between(least, most);
            (middle, middle)
        }
        _ => (number(dice, rule, Some(least)), number(dice, rule, Some(most))),
    };
    json!([one.min(other), one.max(other)])
}

/// A number within a rule: anywhere, at an end, by its order of magnitude, or near what it was.
fn number(dice: &mut Dice, rule: &FieldRule, old: Option<f64>) -> f64 {
    let (least, most) = (rule.least.unwrap_or(-360.0), rule.most.unwrap_or(360.0));
    let drawn = match (dice.below(8), old) {
        (0, _) => least,
        (1, _) => most,
        (2, _) => dice.between(least, most),
        (3, _) if most > 0.0 => {
            let from = least.max(most * 1e-6);
            from * (most / from).powf(dice.share())
        }
        (4, Some(old)) => old + 0.1 * dice.between(-1.0, 1.0),
        (_, Some(old)) => old * 3f64.powf(dice.between(-1.0, 1.0)),
        _ => rule.example * 3f64.powf(dice.between(-1.0, 1.0)),
    };
    drawn.clamp(least, most)
}

fn jitter(dice: &mut Dice, item: &mut Value) {
    match item {
        Value::Array(items) if items.iter().all(Value::is_number) => {
            let by = dice.between(-0.5, 0.5);
            for item in items {
                *item = json!(item.as_f64().expect("a number") + by);
            }
        }
        Value::Object(entries) => entries.values_mut().for_each(|inner| jitter(dice, inner)),
        _ => {}
    }
}
