//! What the words must say and must not: a text that sends a hand near names mains and battery, nothing is promised that nobody checked, and
//! the cautions are whole wherever they stand.
//!
//! The rules are of the trade and of the standards named beside them, not of this product's code. A battery keeps an operator live when the
//! mains is off: common practice, no source. That a loop finds vehicles and not people, and that a clutch is no protection: common practice.

use std::fs;
use std::path::Path;

use crate::table::{LANGUAGES, Table};

/// Texts that send a hand to the leaf or the arm, or say who may, and why each is listed. A number at the end is a place in a list.
const SENDS_A_HAND_NEAR: [(&str, &str); 19] = [
    ("groups.tried.note", "stands over the steps that are tried at the arm"),
    ("groups.hinges.note", "has the arm disconnected and the leaf pulled by hand"),
    ("choices.hinges_kind.how.measured.0", "has the arm disconnected"),
    ("choices.record_isolation_tried.label", "is signed: what was tried must be both"),
    ("choices.record_lock_off_tried.label", "is signed: what was tried must be both"),
    ("fields.record_pull_open_n.hint", "has the leaf pulled by hand"),
    ("fields.record_slip_open_n.hint", "has the leaf pushed by hand"),
    ("check.breakaway.how.0", "comes before the leaf is pushed by hand"),
    ("check.limits.note", "has the leaf moved by hand at its stops"),
    ("handover.paper.push.note", "has the leaf pushed by hand"),
    ("handover.paper.maintenance.rows.1.what", "has the owner move the leaf by hand"),
    ("handover.paper.maintenance.rows.2.what", "has bolts, pins and hinges taken in hand"),
    ("handover.paper.owner.sections.2.lines.0", "has the owner reach into the way of the leaf"),
    ("handover.paper.owner.sections.2.lines.1", "leaves a faulty gate standing where people are"),
    ("handover.paper.owner.sections.3.lines.0", "comes before the leaf is held"),
    ("handover.paper.owner.sections.3.after.1", "ends the work by hand"),
    ("handover.paper.owner.sections.4.lines.0", "says when nobody may reach into the arm"),
    ("page.caution_shear", "says when a hand may reach into the arm"),
    ("page.caution_mains", "says what is dead before a cover comes off"),
];

/// Beginnings of words that cut a drive off, by language: whoever says one says what is cut off.
const CUTS_OFF: [&[&str]; 2] = [
    &[
        "isolat",
        "lock off",
        "lock it off",
        "lock both off",
        "lock them off",
        "locked off",
        "lock-off",
        "switch off",
        "supply off",
        "disconnect",
    ],
    &[
        "seccionador",
        "desconect",
        "bloquee",
        "bloqueada",
        "bloquearon",
        "bloqueo:",
        "corte red",
        "corte y ",
        "corte la",
        "corte antes",
        "corte:",
        "cortadas",
        "haber cortado",
    ],
];

/// Texts that have such a word and ask for nothing at the gate, and why.
const ASKS_NOTHING: [(&str, &str); 3] = [
    ("findings.hand_force_high", "says at what state of the arm a force was calculated"),
    ("actions.lean_drift", "says what comes before anything is disconnected: the leaf is propped"),
    ("check.limits.hand", "says at what state of the arm a force was calculated"),
];

/// What feeds a drive: the battery, and the mains by any of its names.
const BATTERY: [&str; 2] = ["battery", "batería"];
const MAINS: [&[&str]; 2] = [&["mains", "supply"], &["red", "corriente", "alimentación"]];

/// Words no text may have: a promise nobody can keep, or a source nobody opened told as if it were one.
const NOWHERE: [&[&str]; 2] = [
    &[
        "from memory",
        "compliant",
        "complies",
        "compliance",
        "approved",
        "certainly",
        "safe",
        "safely",
        "harmless",
        "foolproof",
    ],
    &[
        "de memoria",
        "cumple con",
        "conforme",
        "homologado",
        "homologada",
        "aprobado",
        "seguro",
        "segura",
        "seguros",
        "inofensivo",
    ],
];

/// Words that would make a comparison of forces a mark of approval.
const APPROVES: [&[&str]; 2] =
    [&["pass", "passes", "passed", "fail", "ok", "good"], &["bien", "apto", "apta", "aprueba", "correcto"]];

/// Where forces are compared.
const COMPARES_FORCES: [&str; 5] =
    ["handover.verdicts.", "handover.columns.", "handover.differs.", "check.people.", "check.provenance."];

/// Hazards the cautions name, by the key of the caution, in English and in Spanish.
const HAZARDS: [(&str, [&str; 2]); 6] = [
    ("crush", ["crushing", "aplastamiento"]),
    ("shear", ["shearing", "cizallamiento"]),
    ("lift", ["lifting", "izado"]),
    ("mains", ["mains", "red "]),
    ("mains", ["battery", "batería"]),
    ("stored", ["stored energy", "energía acumulada"]),
];

/// The tables with their places in the lists above.
fn tables() -> impl Iterator<Item = (usize, &'static str, Table)> {
    LANGUAGES.iter().enumerate().map(|(at, language)| (at, *language, Table::read(language)))
}

/// Whether a text has a word, with neither letter before nor behind it.
fn has_word(text: &str, word: &str) -> bool {
    text.match_indices(word).any(|(at, _)| is_whole(text, at, word))
}

/// Whether a word begins so.
fn has_start(text: &str, start: &str) -> bool {
    text.match_indices(start).any(|(at, _)| !text[..at].chars().next_back().is_some_and(char::is_alphabetic))
}

fn of<'t>(table: &'t Table, key: &str) -> &'t str {
    table.at(key).unwrap_or_else(|| panic!("no text at {key}"))
}

fn text_of(name: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(name)).expect(name)
}

#[test]
fn words_are_found_whole() {
    assert!(
        has_word("is it safe?", "safe") && !has_word("a safety edge", "safe") && !has_word("vehicle loops", "loop")
    );
    assert!(
        has_start("then isolated", "isolat")
            && !has_start("desbloquee", "bloquee")
            && has_start("«corte red»", "corte red")
    );
}

#[test]
fn who_sends_a_hand_near_has_mains_and_battery_off() {
    let mut wanting = Vec::new();
    for (at, language, table) in tables() {
        for (key, reason) in SENDS_A_HAND_NEAR {
            let text = of(&table, key).to_lowercase();
            if !has_start(&text, BATTERY[at]) || !MAINS[at].iter().any(|word| has_word(&text, word)) {
                wanting.push(format!("{language}: {key} {reason}: {text}"));
            }
        }
    }
    assert!(wanting.is_empty(), "{wanting:#?}");
}

#[test]
fn whoever_cuts_a_drive_off_names_the_battery() {
    let (mut found, mut wanting) = (0, Vec::new());
    for (at, language, table) in tables() {
        for key in table.keys().filter(|key| ASKS_NOTHING.iter().all(|(free, _)| free != key)) {
            let text = of(&table, key).to_lowercase();
            if CUTS_OFF[at].iter().any(|start| has_start(&text, start)) {
                found += 1;
                if !has_start(&text, BATTERY[at]) {
                    wanting.push(format!("{language}: {key}: {text}"));
                }
            }
        }
        // An exception that has become none is taken off the list.
        for (key, _) in ASKS_NOTHING {
            let text = of(&table, key).to_lowercase();
            assert!(CUTS_OFF[at].iter().any(|start| has_start(&text, start)), "{language}: {key}: {text}");
        }
    }
    assert!(wanting.is_empty(), "{wanting:#?}");
    assert!(found > 30, "{found} found");
}

#[test]
fn nothing_is_promised_that_nobody_checked() {
    let mut found = Vec::new();
    for (at, language, table) in tables() {
        for key in table.keys() {
            let text = of(&table, key).to_lowercase();
            let words = NOWHERE[at].iter().filter(|word| has_word(&text, word));
            found.extend(words.map(|word| format!("{language}: {key}: “{word}” in: {text}")));
            if COMPARES_FORCES.iter().any(|start| key.starts_with(start)) {
                let words = APPROVES[at].iter().filter(|word| has_word(&text, word));
                found.extend(words.map(|word| format!("{language}: {key}: “{word}” beside forces: {text}")));
            }
        }
    }
    for name in ["www/index.html", "www/embed.html"] {
        let text = text_of(name).to_lowercase();
        let words = NOWHERE.iter().flat_map(|words| words.iter()).chain(["enough"].iter());
        found.extend(words.filter(|word| has_word(&text, word)).map(|word| format!("{name}: “{word}”")));
    }
    assert!(found.is_empty(), "{found:#?}");
}

/// A loop finds vehicles, a clutch lets go late: whoever names one among means of protection says that it is none.
#[test]
fn neither_loop_nor_breakaway_protects_anybody() {
    let none = [["not one", "not a breakaway"], ["no lo es", "no un limitador de par"]];
    let (loops, slips) = (["loop", "lazo"], [["clutch", "breakaway"], ["embrague", "limitador de par"]]);
    let mut kinds = 0;
    for (at, language, table) in tables() {
        for key in table.keys() {
            let text = of(&table, key).to_lowercase();
            assert!(!has_start(&text, loops[at]) || text.contains(none[at][0]), "{language}: {key}: {text}");
            if key.starts_with("choices.site_means_kind.") && slips[at].iter().any(|word| text.contains(word)) {
                kinds += 1;
                assert!(text.contains(none[at][1]), "{language}: {key}: {text}");
            }
        }
        let counted = of(&table, "check.site.means_note");
        assert!(counted.contains(["never counts a breakaway", "nunca cuenta un limitador de par"][at]), "{counted}");
        let built_in = of(&table, "choices.site_means_kind.inherent_force");
        assert!(built_in.contains(["certified by the maker", "certificada por el fabricante"][at]), "{built_in}");
    }
    assert_eq!(kinds, LANGUAGES.len());
    let schema = text_of("www/schema/job.json").to_lowercase();
    let loops: Vec<_> = schema.lines().filter(|line| has_start(line, "loop")).collect();
    assert!(loops.len() == 1 && loops[0].contains("not one"), "{loops:?}");
}

/// A drive that is locked off has no current to be limited.
#[test]
fn a_push_is_not_said_to_try_a_current_limit() {
    for (at, language, table) in tables() {
        for key in ["check.breakaway.how.3", "handover.paper.push.note", "fields.record_slip_open_n.hint"] {
            let text = of(&table, key);
            let said = ["cannot try a current limit", "no puede probar un límite de corriente"][at];
            assert!(text.contains(said), "{language}: {key}: {text}");
        }
    }
}

/// Findings that defer to an edition in force say of what; figures that changed their numbers name the editions.
#[test]
fn standards_are_named() {
    for (at, language, table) in tables() {
        let editions = ["edition in force", "edición vigente"][at];
        for key in table.keys().filter(|key| key.starts_with("findings.") && of(&table, key).contains(editions)) {
            let text = of(&table, key);
            assert!(
                ["ISO ", "ASTM ", "EN ", "UL "].iter().any(|body| text.contains(body)),
                "{language}: {key}: {text}"
            );
        }
        for (key, name) in [
            ("findings.arm_crushes", "ISO 13854"),
            ("findings.elbow_nears_leaf", "ISO 13854"),
            ("findings.hinge_gap_closes", "ISO 13854"),
            ("findings.open_gap_small", "ASTM F2200"),
            ("findings.hand_force_high", "EN 12604"),
            // The figure and its standard come with the zone, from the core.
            ("zones.wide", "{free}"),
            ("zones.wide", "{source}"),
            ("handover.differs.record_rod_ohm", "(NEC)"),
        ] {
            assert!(of(&table, key).contains(name), "{language}: {key} without {name}");
        }
        for key in ["outcomes.shape.asce7_wall", "outcomes.shape.asce7_open"] {
            for edition in ["7-05", "7-10", "7-16", "7-22"] {
                assert!(of(&table, key).contains(edition), "{language}: {key} without {edition}");
            }
        }
        for key in ["handover.paper.settings.class", "check.site.class"] {
            assert!(of(&table, key).contains(["US class", "EE. UU."][at]), "{language}: {key}");
        }
    }
}

/// On the page, in the element, at the head of both, on the shop's page and in the README.
#[test]
fn the_cautions_are_whole_wherever_they_stand() {
    let module = text_of("www/app/cautions.js");
    let frame = text_of("www/app/shell/frame.js");
    for shown in ["cautions.named", "cautions.root", "cautions.follow(step)"] {
        assert!(frame.contains(shown), "the element shows no cautions: {shown}");
    }
    // They are spelled out in every step that leads to work on the gate.
    let steps = text_of("www/app/steps/index.js");
    for name in ["mark_out", "movement", "protection", "hand_over"] {
        let step = steps.split_once(&format!("name: \"{name}\"")).map_or("", |(_, rest)| rest);
        let step = step.split_once("name: \"").map_or(step, |(own, _)| own);
        assert!(step.contains("works: true"), "{name} does not spell the hazards out");
    }
    for (at, language, table) in tables() {
        for (key, names) in HAZARDS {
            let named = of(&table, "page.cautions_named").to_lowercase();
            assert!(named.contains(names[at].trim()), "{language}: {} is not named", names[at]);
            let spelt = of(&table, &format!("page.caution_{key}")).to_lowercase();
            assert!(spelt.contains(names[at]), "{language}: {key}: {spelt}");
        }
        // Each caution there is stands in the element.
        for key in table.keys().filter_map(|key| key.strip_prefix("page.caution_")) {
            assert!(module.contains(&format!("\"{key}\"")), "the element leaves out {key}");
        }
    }
    let page = text_of("www/index.html");
    for key in Table::read("en").keys().filter(|key| key.starts_with("page.caution_")) {
        let name = key.trim_start_matches("page.");
        assert!(page.contains(&format!("data-string=\"{name}\"")), "without scripts, the page leaves out {name}");
    }
    for name in ["README.md", "www/embed.html"] {
        let text = text_of(name).to_lowercase();
        for hazard in ["crush", "shear", "mains", "battery", "stored energy"] {
            assert!(text.contains(hazard), "{name} does not name {hazard}");
        }
    }
}

/// Mexico writes points where Spain writes commas: a number in a sentence has `{decimal}` for its mark.
#[test]
fn decimal_marks_are_left_to_the_region() {
    let table = Table::read("es");
    for key in table.keys() {
        let text: Vec<char> = of(&table, key).chars().collect();
        let hard =
            text.windows(3).any(|three| three[1] == ',' && three[0].is_ascii_digit() && three[2].is_ascii_digit());
        assert!(!hard, "{key}: {}", of(&table, key));
    }
    assert!(table.keys().filter(|key| of(&table, key).contains("{decimal}")).count() > 6);
}

/// Words that were given up for another, which has to stand alone for its thing. What is said of the drawing of a set-out has words of its own.
const GIVEN_UP: [&[(&str, &str)]; 2] = [
    &[
        ("reckon", "calculated, planned for"),
        ("the drive", "the operator"),
        ("leaf and drive", "leaf and operator"),
        ("deciding", "worst"),
        ("hardest blow", "worst impact"),
        ("free edge", "latch edge"),
        ("closing edge", "latch edge"),
        ("at the edge", "at the latch edge"),
        ("blow of", "impact of"),
        ("looked at", "considered, included"),
        ("to look at", "to check"),
        ("hanging leaf", "sagging leaf"),
        ("from memory", "not checked against the printed standard"),
    ],
    &[
        ("accionamiento", "automatismo"),
        ("que decide", "peor"),
        ("se mira", "se considera"),
        ("se miran", "se consideran"),
        ("que mirar", "que comprobar"),
        ("alto:", "no montar:"),
        ("altos", "avisos de no montar"),
        ("hoja caída", "hoja descolgada"),
        ("solo se arrastra", "apenas avanza"),
        ("barrera de luz", "fotocélula"),
        ("zona lenta", "tramo lento"),
        ("recta del motor", "curva par-velocidad"),
        ("con red o sin ella", "con conexión o sin ella"),
        ("oficio autorizado", "profesional habilitado"),
        ("hoja de entrega", "acta de entrega"),
        ("detrás del veredicto", "detalle del resultado"),
        ("aparato", "dispositivo"),
        ("perno", "bulón"),
        ("collar", "arandela de empuje"),
        ("arrastre respecto", "otras resistencias"),
        ("velocidad del borde ", "velocidad del borde libre"),
        ("golpe del borde", "impacto del borde libre"),
    ],
];

/// Where such words are still the right ones, and why.
const STILL_SAID: [(&str, &str); 4] = [
    ("fields.contact_stiffness_n_per_m.label", "what is met is met by a blow, whatever its force"),
    ("cursor.", "a leaf that is looked at from somewhere"),
    ("handover.paper.maintenance", "a blow to the gate is an accident, not a calculated impact"),
    ("setout.", "the words of the set-out are kept with its drawing"),
];

#[test]
fn a_word_that_was_given_up_does_not_come_back() {
    let mut found = Vec::new();
    for (at, language, table) in tables() {
        for key in table.keys().filter(|key| STILL_SAID.iter().all(|(free, _)| !key.starts_with(free))) {
            let text = format!("{} ", of(&table, key).to_lowercase());
            let words = GIVEN_UP[at]
                .iter()
                .filter(|(word, _)| has_start(&text, word) && !text.contains("velocidad del borde libre"));
            found.extend(words.map(|(word, now)| format!("{language}: {key}: “{word}”, not “{now}”: {text}")));
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}

/// One word for one thing: the end of travel is an end limit; in Spanish the shaft is no axis, and the machine no person.
#[test]
fn one_word_is_for_one_thing() {
    for (at, language, table) in tables() {
        for key in table.keys() {
            let text = of(&table, key).to_lowercase();
            if at == 0 {
                let travel = ["open limit", "closed limit", "the two limits", "set the limits"];
                assert!(travel.iter().all(|words| !text.contains(words)), "{language}: {key}: {text}");
                continue;
            }
            for (place, _) in text.match_indices("eje").filter(|(place, _)| is_whole(&text, *place, "eje")) {
                let behind = &text[place + "eje".len()..];
                let which = [" de salida", " de bisagra"].iter().any(|which| behind.starts_with(which));
                assert!(which, "{language}: {key}: which axis or shaft: {text}");
            }
            assert!(!has_word(&text.replace("(operador)", ""), "operador"), "{language}: {key}: {text}");
            assert!(!has_start(&text, "racha"), "{language}: {key}: a gust is a ráfaga: {text}");
        }
    }
}

fn is_whole(text: &str, place: usize, word: &str) -> bool {
    let letter = |end: Option<char>| end.is_some_and(char::is_alphabetic);
    !letter(text[..place].chars().next_back()) && !letter(text[place + word.len()..].chars().next())
}
