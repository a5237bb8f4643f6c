//! The page's modules as text: what they import, which sentences they name, which fields they ask for.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use crate::table::{LANGUAGES, Table};
use pintle_core::job::fields;

/// Modules that say what is asked for.
pub const ASKING: [&str; 6] =
    ["groups.js", "around/words.js", "wind-items.js", "member-items.js", "check/groups.js", "handover/items.js"];

fn page() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../www")
}

/// A module's text.
pub fn text(name: &str) -> String {
    std::fs::read_to_string(page().join("app").join(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// Whether the page asks for anything of a block of the job; if so it asks for all of it. Blocks the core knows and the page has no group
/// for stay as a job has them.
pub fn asks_for(path: &str) -> bool {
    let block = path.split('.').next().expect("a name");
    let asked: String = ASKING.iter().map(|name| text(name)).collect();
    [format!("\"{block}\""), format!("\"{block}.")].iter().any(|start| asked.contains(start))
}

/// What stands between an opening and a closing mark, everywhere.
fn between<'t>(text: &'t str, open: &str, close: char) -> Vec<&'t str> {
    text.split(open).skip(1).filter_map(|rest| rest.split_once(close)).map(|(found, _)| found).collect()
}

/// Modules that one imports, by their paths below `app/`, those that come later too; types apart (those stand in comments).
fn imports(name: &str) -> Vec<String> {
    let text = text(name);
    let code: Vec<&str> = text.lines().filter(|line| !line.trim_start().starts_with('*')).collect();
    let folder: Vec<&str> = name.split('/').collect();
    let folder = &folder[..folder.len() - 1];
    ["from \".", "import \".", "import(\"."]
        .into_iter()
        .flat_map(|open| code.iter().flat_map(move |line| between(line, open, '"')))
        .filter_map(|rest| beside(folder, &format!(".{rest}")))
        .filter(|name| name.ends_with(".js") && name != VENDORED)
        .collect()
}

/// A library that the build lays beside the modules; it says nothing.
const VENDORED: &str = "lit-html.js";

/// Where a relative address leads from a folder below `app/`; nowhere where that is above it, as the glue of the core is.
fn beside(folder: &[&str], address: &str) -> Option<String> {
    let mut place = folder.to_vec();
    for part in address.split('/') {
        match part {
            "." => {}
            ".." => drop(place.pop()?),
            name => place.push(name),
        }
    }
    Some(place.join("/"))
}

/// A module and everything it leads to.
fn reached(from: &str) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    let mut ahead = vec![from.to_owned()];
    while let Some(name) = ahead.pop() {
        if found.insert(name.clone()) {
            ahead.extend(imports(&name));
        }
    }
    found
}

/// Every step of the job and what it leads to, at whatever depth, is among the modules whose sentences are looked for.
#[test]
fn every_module_of_the_page_is_reached() {
    assert_eq!(beside(&["steps"], "../check/words.js").as_deref(), Some("check/words.js"));
    assert_eq!(beside(&["steps"], "./survey.js").as_deref(), Some("steps/survey.js"));
    assert_eq!(beside(&[], "../pintle.js"), None);
    let mut all = BTreeSet::new();
    for folder in ["", "around", "check", "handover", "jobs", "setout", "shell", "steps"] {
        for entry in std::fs::read_dir(page().join("app").join(folder)).expect("a folder") {
            let name = entry.expect("an entry").file_name().into_string().expect("a name");
            if name.ends_with(".js") {
                all.insert(if folder.is_empty() { name } else { format!("{folder}/{name}") });
            }
        }
    }
    let mut found = reached("boot.js");
    // What starts by itself: the shop's page, what a host imports, what is asked for ahead, the worker, the guard.
    for start in ["embed.js", "define.js", "ahead.js", "setout/worker.js", "guard.js"] {
        found.extend(reached(start));
    }
    let dead: Vec<_> = all.difference(&found).collect();
    assert!(dead.is_empty(), "{dead:?}");
}

#[test]
fn every_sentence_the_modules_name_is_there() {
    let mut named = 0;
    for name in reached("boot.js") {
        let text = text(&name);
        for key in between(&text, ".say(\"", '"') {
            named += 1;
            // The host's own part of the table: `page.` stands before it in code as well.
            for language in LANGUAGES {
                assert!(Table::read(language).has(key), "{name}: {key} in {language}");
            }
        }
    }
    assert!(named > 40, "{named} found");
}

/// A key whose end changes is at least the beginning of one.
#[test]
fn every_group_of_sentences_the_modules_name_is_there() {
    let mut named = 0;
    for name in reached("boot.js") {
        let text = text(&name);
        for start in between(&text, "sheet.say(`", '`').into_iter().filter_map(|key| key.split_once("${")) {
            named += 1;
            for language in LANGUAGES {
                let known = Table::read(language).keys().any(|key| key.starts_with(start.0));
                assert!(known, "{name}: {}… in {language}", start.0);
            }
        }
    }
    assert!(named > 20, "{named} found");
}

/// Every number of a block is asked for, so that no field of it is out of reach.
#[test]
fn every_field_is_asked_for() {
    let asked: String = ASKING.iter().map(|name| text(name)).collect();
    let is_asked = |path: &str| {
        let last = path.rsplit('.').next().expect("a name");
        let below_place = format!("place.{last}");
        let first_end = format!("{last}.0");
        let spellings = [path.to_owned(), last.to_owned(), below_place, first_end];
        spellings.iter().any(|name| asked.contains(&format!("{name}\"")) || asked.contains(&format!("}}.{name}`")))
    };
    assert!(["leaf.mass_kg", "ground.gap_m", "wind.bearing_deg", "required_reserve"].into_iter().all(asks_for));
    let missing: Vec<_> =
        fields().iter().map(|rule| rule.path).filter(|path| asks_for(path) && !is_asked(path)).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

/// One home for every number: no path of the job stands in two groups, lists or forms of the page, an ask of the set-out for a part of its own
/// block apart (its paths begin with the block).
#[test]
fn no_path_is_asked_for_in_two_places() {
    let mut asked: std::collections::BTreeMap<String, Vec<&str>> = std::collections::BTreeMap::new();
    let rules: BTreeSet<&str> = fields().iter().map(|rule| rule.path).collect();
    for name in ASKING {
        let text = text(name);
        let mut here = BTreeSet::new();
        for path in text.split('"') {
            let path = path.strip_suffix(".0").or_else(|| path.strip_suffix(".1")).unwrap_or(path);
            if rules.contains(path) {
                here.insert(path.to_owned());
            }
        }
        for path in here {
            asked.entry(path).or_default().push(name);
        }
    }
    assert!(asked.len() > 80, "{} found", asked.len());
    let twice: Vec<_> = asked.iter().filter(|(_, places)| places.len() > 1).collect();
    assert!(twice.is_empty(), "{twice:?}");
    // What is said once for everything is no limit of the set-out and no number of the site.
    let [setout, site] = ["setout/usual.js", "check/site-lists.js"].map(text);
    for word in ["keep_out", "arm_half_width_m", "obstacles", "half_thickness"] {
        assert!(!setout.contains(&format!("{word}:")) && !site.contains(word), "{word}");
    }
    for gone in ["room.", "site.obstacles", "site.leaf_half_thickness_m", "setout.keep_out", "setout.arm_half_width_m"]
    {
        assert!(rules.iter().all(|path| !path.starts_with(gone)), "{gone}");
    }
}
