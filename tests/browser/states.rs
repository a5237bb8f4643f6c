//! axe-core, the size of targets included, in every state the page can be in: one table, one line a state.

use pintle_tests::harness::{Result, Site, in_browser, setting};

use serde_json::json;

use crate::jobs::before_the_page;
use crate::page::{READY, computed};

/// A state of the page: what the system prefers, how wide the screen is, what is done (JavaScript), and what is true once it stands.
struct State {
    name: &'static str,
    width: u32,
    prefers: &'static [(&'static str, &'static str)],
    done: &'static str,
    stands: &'static str,
}

const fn state(name: &'static str, done: &'static str, stands: &'static str) -> State {
    State { name, width: 360, prefers: &[], done, stands }
}

const DARK: &[(&str, &str)] = &[("prefers-color-scheme", "dark")];
const FORCED: &[(&str, &str)] = &[("forced-colors", "active")];
const RESULT: &str = "c.plan !== null";
const FOLDED: &str = "[...r.querySelectorAll('details')].forEach((group) => (group.open = true))";
const UNFOLDED: &str = "[...r.querySelectorAll('details.group')].every((group) => group.open)";
/// What stands at the place once the map is drawn and the search is over; what the answer brings folded is opened then.
const MAPPED: &str = "there('place') && r.querySelector('.waiting').hidden && r.querySelector('.set-outs table') !== null && (unfolded() || unfold())";

/// A step with everything in it open, as wide as a phone and as a desk.
macro_rules! step {
    ($name:literal) => {
        step!($name, concat!("there('", $name, "') && unfolded()"))
    };
    ($name:literal, $stands:expr) => {
        [
            State { width: 360, ..state(concat!($name, ", 360 px"), concat!("go('", $name, "')"), $stands) },
            State { width: 1440, ..state(concat!($name, ", 1440 px"), concat!("go('", $name, "')"), $stands) },
        ]
    };
}

/// Each step as it comes from the demonstration job, folds open.
static OF_STEPS: [[State; 2]; 7] = [
    step!("survey"),
    step!("operator"),
    step!("place", MAPPED),
    step!("mark_out"),
    step!("movement"),
    step!("protection"),
    step!("hand_over"),
];

static STATES: &[State] = &[
    state("results", "", RESULT),
    state("results in US units", "c.setAttribute('units', 'us')", RESULT),
    state("results in Spanish", "c.setAttribute('lang', 'es')", "r.querySelector('.sheet').lang === 'es'"),
    state(
        "empty form",
        "for (const path of ['mass_kg', 'length_m', 'wind_area_m2']) type(`leaf-${path}`, '')",
        "c.errors.length === 3",
    ),
    state("half a number typed", "type('leaf-mass_kg', '0.', false)", "c.plan === null"),
    state("fault", "type('leaf-mass_kg', '0.5')", "!r.querySelector('#field-leaf-mass_kg-error').hidden"),
    state(
        "fault of the whole arm",
        "go('place', () => type('arm-crank_m', '200'))",
        "there('place') && !r.querySelector('[part=errors]').hidden",
    ),
    state(
        "ambiguous entry",
        "type('leaf-mass_kg', '1,234')",
        "!r.querySelector('[data-path=\"leaf.mass_kg\"] .meant').hidden",
    ),
    state("over the rating", "type('leaf-wind_area_m2', '20')", "c.plan?.rating.verdict === 'over'"),
    state(
        "what was judged, over the rating",
        "type('leaf-wind_area_m2', '20'); setTimeout(() => r.querySelector('[part=verdict] .says').click(), 500)",
        "r.querySelector('[part=judgements]').open && c.plan?.rating.verdict === 'over'",
    ),
    State {
        width: 1440,
        ..state(
            "what was judged, wide",
            "r.querySelector('[part=verdict] .says').click()",
            "r.querySelector('[part=judgements]').open",
        )
    },
    state(
        "ratings typed",
        "go('operator', () => r.querySelector('[name=operator][value=\"\"]').click())",
        "there('operator') && c.operator === null && c.plan !== null",
    ),
    state(
        "the leaf by its parts",
        "r.querySelector('[name=\"leaf.by\"][value=parts]').click()",
        "r.querySelector('.member') !== null",
    ),
    state("cautions asked for", "r.querySelector('.cautions-named').click()", "!r.querySelector('.cautions').hidden"),
    state("every folded group open", FOLDED, UNFOLDED),
    State { prefers: DARK, ..state("every folded group open, dark", FOLDED, UNFOLDED) },
    State { prefers: FORCED, ..state("every folded group open, forced colours", FOLDED, UNFOLDED) },
    State { width: 320, ..state("every folded group open, 320 px", FOLDED, UNFOLDED) },
    State { width: 1440, ..state("every folded group open, wide", FOLDED, UNFOLDED) },
    State { width: 1024, ..state("map", "go('place')", MAPPED) },
    State { width: 1024, prefers: DARK, ..state("map, dark", "go('place')", MAPPED) },
    State { width: 320, ..state("map, 320 px", "go('place')", MAPPED) },
    State {
        prefers: DARK,
        ..state("fault, dark", "type('leaf-mass_kg', '0.5')", "c.plan === null && c.errors.length === 1")
    },
    State {
        prefers: FORCED,
        ..state("fault, forced colours", "type('leaf-mass_kg', '0.5')", "c.plan === null && c.errors.length === 1")
    },
    state(
        "field layout, every group open",
        "c.setAttribute('layout', 'field'); [...r.querySelectorAll('details')].forEach((group) => (group.open = true))",
        UNFOLDED,
    ),
    State {
        prefers: FORCED,
        width: 320,
        ..state("field layout, forced colours, 320 px", "c.setAttribute('layout', 'field')", RESULT)
    },
    State { width: 1024, ..state("projector", "c.setAttribute('layout', 'projector')", RESULT) },
    State {
        width: 1024,
        ..state(
            "projector, asked",
            "c.setAttribute('layout', 'projector'); r.querySelector('.questions').click()",
            "r.querySelector('.asks.aside') !== null",
        )
    },
];

/// What the states' scripts work with: the calculator, its tree, and a way to type as a person does, the field left at the end.
const HANDS: &str = "const c = document.querySelector('pintle-calculator'), r = c.shadowRoot;
    const type = (id, text, leave = true) => {
        const input = r.getElementById(`field-${id}`);
        for (let group = input.closest('details'); group; group = group.parentElement.closest('details')) group.open = true;
        input.focus(); input.value = text; input.dispatchEvent(new Event('input'));
        if (leave) input.blur();
    };
    const there = (name) => r.querySelector(`.step[data-step=${name}]:not([hidden])`);
    const folds = () => [...r.querySelectorAll('.step:not([hidden]) details, .stage details')];
    const unfolded = () => folds().every((one) => one.open);
    const unfold = () => { for (const one of folds()) one.open = true; };
    const go = async (name, then = unfold) => {
        c.setAttribute('step', name);
        while (!there(name)) await new Promise((done) => setTimeout(done, 20));
        then();
    };";

/// Two browsers share the work: every other state is the other one's.
async fn look(half: usize) -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        // What is typed as a page goes is held in the tab, and clearing an origin leaves the tab's own storage alone.
        before_the_page(&browser, "if (location.protocol === 'http:') sessionStorage.clear();").await?;
        let mut found = Vec::new();
        for State { name, width, prefers, done, stands } in
            OF_STEPS.iter().flatten().chain(STATES).skip(half).step_by(2)
        {
            browser.resize(*width, 740, 1.0).await?;
            let all = ["prefers-color-scheme", "forced-colors"];
            let asked = |feature| prefers.iter().find(|(name, _)| *name == feature).map_or("", |(_, value)| value);
            browser.prefer(&all.map(|feature| (feature, asked(feature)))).await?;
            // What the last state left behind is kept by the page: each begins with an empty browser.
            browser.open("about:blank").await?;
            let all = json!({ "origin": site.address.trim_end_matches('/'), "storageTypes": "all" });
            browser.driver.cdp().send_raw("Storage.clearDataForOrigin", all).await?;
            browser.open(&site.address).await?;
            browser.wait_for(READY).await.map_err(|error| error.context(*name))?;
            browser.value(&format!("(() => {{ {HANDS} {done}; return true; }})()")).await?;
            browser
                .wait_for(&format!("(() => {{ {HANDS} return Boolean({stands}); }})()"))
                .await
                .map_err(|error| error.context(*name))?;
            computed(&browser).await?;
            let over = browser.value("document.documentElement.scrollWidth - innerWidth").await?;
            if over.as_i64().is_none_or(|over| over > 0) {
                found.push(format!("{name}: {over} px wider than the screen"));
            }
            found.extend(browser.accessibility_faults().await?.into_iter().map(|fault| format!("{name}: {fault}")));
        }
        assert_eq!(found, Vec::<String>::new());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn every_state_is_accessible_one_half() -> Result<()> {
    look(0).await
}

#[tokio::test]
async fn every_state_is_accessible_other_half() -> Result<()> {
    look(1).await
}
