//! No sentence with a hole in it: every fault and every finding that can arise, in both languages, as the page says them.

use std::collections::{BTreeMap, BTreeSet};

use pintle_core::{
    Document, describe,
    fault::{Fault, Invalid},
    job::Job,
    operators, packed,
    plan::{Model, plan},
};
use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};

use crate::jobs::open;
use crate::page::{NEWER, starting_job};

/// A job with every block there is.
fn whole() -> Value {
    serde_json::from_str(include_str!("../fixtures/schema-1/every-block.json")).expect("JSON")
}

/// Pointers to every value of a document, those with values of their own too.
fn pointers(node: &Value, at: &str, found: &mut Vec<String>) {
    let below: Vec<(String, &Value)> = match node {
        Value::Object(entries) => entries.iter().map(|(key, value)| (key.clone(), value)).collect(),
        Value::Array(items) => items.iter().enumerate().map(|(place, value)| (place.to_string(), value)).collect(),
        _ => Vec::new(),
    };
    for (key, value) in below {
        let pointer = format!("{at}/{key}");
        found.push(pointer.clone());
        pointers(value, &pointer, found);
    }
}

/// Faults by what makes their sentence: code, path, kinds of what was found, allowed and given as an example.
type Faults = BTreeMap<String, Value>;

fn take(faults: &mut Faults, invalid: Invalid) {
    for fault in invalid.errors {
        let Fault { ref path, code, ref found, .. } = fault;
        let found = found.as_deref().map(|found| found.chars().next());
        faults.insert(format!("{path} {code:?} {found:?}"), serde_json::to_value(&fault).expect("JSON"));
    }
}

/// What is said of a job both when it is opened and when it is planned.
fn judge(faults: &mut Faults, job: &Value) {
    let document: Document = serde_json::from_value(job.clone()).expect("a document");
    // A plan is refused where its model is, and for nothing else: thousands of plans need not be worked out to hear that.
    let planned = Job::read(&document).and_then(|job| Model::new(&job).map(drop));
    for invalid in [Job::open(&document).err(), planned.err()].into_iter().flatten() {
        take(faults, invalid);
    }
}

/// A movement by a motor of these speeds, °/s, and torques, N·m.
fn motor(points: &[(u32, u32)], supply_resistance_ohm: Value) -> Value {
    let point = |&(speed, torque): &(u32, u32)| json!({ "speed_deg_s": speed, "torque_n_m": torque });
    let motor = json!({ "curve": points.iter().map(point).collect::<Vec<_>>(), "rated_v": 230 });
    json!({ "motor": motor, "supply_resistance_ohm": supply_resistance_ohm })
}

/// Every value of a whole job in turn absent, of every other type, and beyond all ranges; links of every sort; no job at all.
fn faults() -> Faults {
    let mut found = Faults::new();
    let job = whole();
    let mut all = Vec::new();
    pointers(&job, "", &mut all);
    let long = "x".repeat(100);
    let wrong = [json!(null), json!(true), json!(-1e9), json!(1e9), json!(0.5), json!("word"), json!(""), json!(long)];
    let shapes =
        [json!([]), json!([1, 2, 3]), json!({}), json!({ "colour": 1 }), json!([2, 1]), json!(vec![json!({}); 300])];
    for pointer in &all {
        for value in wrong.iter().chain(&shapes) {
            let mut other = job.clone();
            *other.pointer_mut(pointer).expect("it is there") = value.clone();
            judge(&mut found, &other);
        }
    }
    // What only a simpler job meets: of each value a tenth and ten times as much.
    let simple = starting_job();
    let mut all = Vec::new();
    pointers(&simple, "", &mut all);
    for pointer in &all {
        for factor in [-1.0, 0.1, 0.5, 2.0, 10.0] {
            let mut other = simple.clone();
            let value = other.pointer_mut(pointer).expect("it is there");
            let Some(number) = value.as_f64() else { continue };
            *value = json!(number * factor);
            judge(&mut found, &other);
        }
    }
    for (pointer, value) in [
        ("/schema", json!(NEWER)),
        ("/lean", json!({ "angle_deg": 1, "plumb_offset_m": 0.01, "plumb_height_m": 1 })),
        ("/lean", json!({ "plumb_offset_m": 0.01 })),
        ("/marks", json!({ "anchor_along_m": 0.5 })),
        ("/leaf/members", json!([])),
        (
            "/leaf/members",
            json!([{ "section": "tube", "face_m": 0.04, "wall_m": 0.03, "place": { "kind": "vertical" } }]),
        ),
        ("/arm/pivot_b_m", json!(-0.4)),
        ("/arm/shaft_x_m", json!(0)),
        // Tables of a motor: one point; speeds that fall, from another one than 0; one that never runs out; a supply whose current nobody knows.
        ("/motion", motor(&[(0, 500)], Value::Null)),
        ("/motion", motor(&[(1, 500), (9, 900), (8, 0)], Value::Null)),
        ("/motion", motor(&[(0, 500), (9, 0), (12, 700)], Value::Null)),
        ("/motion", motor(&[(0, 500), (9, 900), (12, 0)], json!(0.2))),
    ] {
        let mut other = simple.clone();
        if let Some(place) = pointer.rsplit_once('/').and_then(|(parent, key)| Some((other.pointer_mut(parent)?, key)))
        {
            place.0[place.1] = value;
        }
        judge(&mut found, &other);
    }
    let twice = simple.to_string().replacen("\"swing\":{", "\"swing\":{\"open_deg\":80,", 1);
    let document: Document = serde_json::from_str(&twice).expect("JSON allows it");
    take(&mut found, Job::read(&document).expect_err("twice"));
    for link in ["", "!", "AAAA", "0", include_str!("../fixtures/newer.link").trim(), &long] {
        if let Err(invalid) = packed::unpack(link) {
            take(&mut found, invalid);
        }
    }
    for invalid in of_a_list() {
        take(&mut found, invalid);
    }
    for reason in ["photo.json", "null", ""] {
        take(&mut found, Invalid::not_json(reason));
    }
    found
}

/// What only a list of operators meets: torques in kN·m, lengths in mm, a peak below the rating, an id that stands twice.
fn of_a_list() -> impl Iterator<Item = Invalid> {
    let one = |change: Value| {
        let mut one = json!({ "id": "one", "name": "One", "rated_torque_n_m": 400 });
        for (key, value) in change.as_object().into_iter().flatten() {
            one[key] = value.clone();
        }
        one
    };
    let list = json!({ "operators": [
        one(json!({})),
        one(json!({ "id": "kilo", "rated_torque_n_m": 0.4 })),
        one(json!({ "id": "milli", "kit": { "crank_m": [450, 750], "link_m": [400, 700] } })),
        one(json!({ "id": "peak", "peak_torque_n_m": 300 })),
        one(json!({ "name": "Twice" })),
    ] });
    let document: Document = serde_json::from_value(list).expect("a document");
    let read = operators::read(&document);
    assert_eq!(read.left_out.len(), 4, "{:?}", read.left_out);
    read.left_out.into_iter().map(|left| Invalid::from(left.faults))
}

/// Codes of an enumeration in a schema, each with its description.
fn codes(schema: &Value, pointer: &str) -> Vec<(String, String)> {
    let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    let variants = schema.pointer(pointer).and_then(|at| at["oneOf"].as_array()).expect("an enumeration");
    variants.iter().map(|variant| (text(&variant["const"]), text(&variant["description"]))).collect()
}

/// A fault of every code in every shape the type allows, whether or not the core makes it so today.
fn shapes() -> Vec<Value> {
    let number =
        |least: Value, most: Value| json!({ "kind": "range", "least": least, "most": most, "quantity": "length" });
    let allowed = [
        json!(null),
        number(json!(null), json!(null)),
        number(json!(1), json!(null)),
        number(json!(null), json!(2)),
        number(json!(1), json!(2)),
        json!({ "kind": "one_of", "names": ["plain"] }),
        json!({ "kind": "type", "name": "array" }),
    ];
    let mut all = Vec::new();
    for (code, _) in codes(&describe::faults_schema(), "/properties/errors/items/properties/code") {
        for path in ["", "leaf.length_m", "colour", "leaf.members.3.face_m"] {
            for found in [json!(null), json!(""), json!("7"), json!("[7 items]"), json!("{1 fields}")] {
                for allowed in &allowed {
                    for example in [json!(null), json!(3.5), json!("plain"), json!([1, 2])] {
                        all.push(json!({ "path": path, "code": code, "found": found, "allowed": allowed, "example": example, "values": [] }));
                    }
                }
            }
        }
    }
    all
}

/// Findings of real plans, and of every code with the values its description names.
fn findings() -> Vec<Value> {
    let schema = describe::plan_schema();
    let mut all = Vec::new();
    let mut named = Vec::new();
    for (code, description) in codes(&schema, "/properties/findings/items/properties/code") {
        // "The same when closing" has the values of the code before it.
        if !description.starts_with("The same") {
            named = description.split('`').skip(1).step_by(2).map(str::to_owned).collect();
        }
        let value = |name: &String| json!({ "name": name, "value": 12.5, "quantity": "torque" });
        all.push(json!({ "code": code, "values": named.iter().map(value).collect::<Vec<_>>() }));
    }
    for job in [whole(), starting_job()] {
        let mut pointers_of = Vec::new();
        pointers(&job, "", &mut pointers_of);
        for pointer in pointers_of.iter().step_by(3) {
            let mut other = job.clone();
            let value = other.pointer_mut(pointer).expect("it is there");
            let Some(number) = value.as_f64() else { continue };
            *value = json!(number * 1.7);
            let document: Document = serde_json::from_value(other).expect("a document");
            let planned = Job::read(&document).and_then(|job| plan(&job));
            all.extend(
                planned
                    .iter()
                    .flat_map(|plan| &plan.findings)
                    .map(|finding| serde_json::to_value(finding).expect("JSON")),
            );
        }
    }
    all
}

/// Says faults and findings as the page does, in both languages, each once; gives all sentences.
async fn said(browser: &Browser, faults: &[Value], findings: &[Value]) -> Result<BTreeSet<String>> {
    let say = "(async (faults, findings) => {
        const at = (name) => import(new URL(`app/${name}`, document.baseURI));
        const [{ Session }, { Sheet }, { faultSentence }, { loadStrings }, { loadCore }, { foundWords, doWords }] =
            await Promise.all(['session.js', 'sheet.js', 'faults.js', 'strings.js', 'core.js', 'findings.js'].map(at));
        const core = await loadCore(), said = new Set();
        for (const tag of ['en', 'es-MX']) for (const system of ['metric', 'us']) {
            const strings = await loadStrings(tag);
            const job = document.querySelector('pintle-calculator').job;
            // As the list of jobs says faults of a document that is not on show, and as the form says those of the one that is.
            const none = { entries: new Map(), system };
            for (const session of [none, new Session(core, job, [], system)]) {
                const sheet = new Sheet(core, strings, session, { operators: [] }, () => {});
                for (const fault of faults) said.add(faultSentence(sheet, fault));
                for (const finding of findings) for (const words of [foundWords, doWords]) said.add(words(sheet, finding));
            }
        }
        return [...said];
    })";
    // Handed over in pieces: a script has its limits.
    let mut all = BTreeSet::new();
    for (faults, findings) in faults.chunks(2000).map(|some| (some, &[][..])).chain([(&[][..], findings)]) {
        let sentences = browser.value(&format!("{say}({}, {})", json!(faults), json!(findings))).await?;
        all.extend(sentences.as_array().into_iter().flatten().filter_map(Value::as_str).map(str::to_owned));
    }
    Ok(all)
}

/// What shows that a value was missing.
fn hole(sentence: &str) -> Option<&'static str> {
    let words = [
        "undefined",
        "NaN",
        "[object",
        "{",
        "}",
        "found .",
        "found ,",
        ": .",
        "“”",
        "«»",
        "  ",
        " .",
        " ,",
        "..",
        "faults.",
        "findings.",
        "actions.",
        ": array.",
        ": string.",
        ": boolean.",
        ": object.",
    ];
    let starts = sentence.starts_with([':', '.', ',', ' ']) || sentence.trim().is_empty();
    let ends = !sentence.ends_with(['.', '?', '!']);
    words.into_iter().find(|word| sentence.contains(word)).or(starts.then_some("start")).or(ends.then_some("end"))
}

#[tokio::test]
async fn no_sentence_has_a_hole() -> Result<()> {
    assert!(hole(": found Error: nested. Wanted: . Example: .").is_some() && hole("Leaf: found .").is_some());
    let real: Vec<Value> = faults().into_values().collect();
    let arisen: BTreeSet<&str> = real.iter().filter_map(|fault| fault["code"].as_str()).collect();
    let all = codes(&describe::faults_schema(), "/properties/errors/items/properties/code");
    let not_met: Vec<&str> = all.iter().map(|(code, _)| code.as_str()).filter(|code| !arisen.contains(code)).collect();
    println!(
        "{} faults of {} of {} codes; only in the shapes of their type: {not_met:?}",
        real.len(),
        arisen.len(),
        all.len()
    );
    assert!(not_met.len() < 6, "{not_met:?}");
    in_browser(async |browser| {
        let site = Site::start(&setting::modules()?, "/")?;
        open(&browser, &site.address).await?;
        let mut sentences = said(&browser, &real, &findings()).await?;
        sentences.extend(said(&browser, &shapes(), &[]).await?);
        // What no tree of plain values is, the core says of itself.
        let strange = browser
            .value(
                "(async () => { const core = await (await import(new URL('app/core.js', document.baseURI))).loadCore();
                   const ring = {}; ring.ring = ring; const faults = [];
                   let deep = 1; for (let level = 0; level < 100; level += 1) deep = [deep];
                   for (const job of [ring, deep, { deep }, () => 1, Symbol('s'), 5n, undefined, null, 7, 'job', [], true])
                     for (const judge of [core.open_job, (job) => new core.Calculation(job)])
                       try { judge(job); } catch (error) { faults.push(...error.errors); }
                   return faults; })()",
            )
            .await?;
        let strange = strange.as_array().cloned().unwrap_or_default();
        assert!(strange.len() >= 20, "{strange:?}");
        sentences.extend(said(&browser, &strange, &[]).await?);
        println!("{} sentences", sentences.len());
        let holes: Vec<_> = sentences.iter().filter_map(|sentence| Some((hole(sentence)?, sentence))).take(40).collect();
        assert!(holes.is_empty(), "{holes:#?}");
        Ok(())
    })
    .await
}
