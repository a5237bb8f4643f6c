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
const MAP: &str = "r.querySelector('.setout-opens').open = true";
const MAPPED: &str = "r.querySelector('.setout-opens').open && r.querySelector('.waiting').hidden && r.querySelector('.set-outs table') !== null";

const STATES: &[State] = &[
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
    state("fault of the whole arm", "type('arm-crank_m', '200')", "!r.querySelector('[part=errors]').hidden"),
    state(
        "ambiguous entry",
        "type('leaf-mass_kg', '1,234')",
        "!r.querySelector('[data-path=\"leaf.mass_kg\"] .meant').hidden",
    ),
    state("over the rating", "type('leaf-wind_area_m2', '20')", "c.plan?.rating.verdict === 'over'"),
    state(
        "ratings typed",
        "r.querySelector('[name=operator][value=\"\"]').click()",
        "c.operator === null && c.plan !== null",
    ),
    state(
        "the leaf by its parts",
        "r.querySelector('[name=\"leaf.by\"][value=parts]').click()",
        "r.querySelector('.member') !== null",
    ),
    state("every folded group open", FOLDED, UNFOLDED),
    State { prefers: DARK, ..state("every folded group open, dark", FOLDED, UNFOLDED) },
    State { prefers: FORCED, ..state("every folded group open, forced colours", FOLDED, UNFOLDED) },
    State { width: 320, ..state("every folded group open, 320 px", FOLDED, UNFOLDED) },
    State { width: 1440, ..state("every folded group open, wide", FOLDED, UNFOLDED) },
    State { width: 1024, ..state("map", MAP, MAPPED) },
    State { width: 1024, prefers: DARK, ..state("map, dark", MAP, MAPPED) },
    State { width: 320, ..state("map, 320 px", MAP, MAPPED) },
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
];

/// What the states' scripts work with: the calculator, its tree, and a way to type as a person does, the field left at the end.
const HANDS: &str = "const c = document.querySelector('pintle-calculator'), r = c.shadowRoot;
    const type = (id, text, leave = true) => {
        const input = r.getElementById(`field-${id}`);
        for (let group = input.closest('details'); group; group = group.parentElement.closest('details')) group.open = true;
        input.focus(); input.value = text; input.dispatchEvent(new Event('input'));
        if (leave) input.blur();
    };";

/// Two browsers share the work: every other state is the other one's.
async fn look(half: usize) -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        // What is typed as a page goes is held in the tab, and clearing an origin leaves the tab's own storage alone.
        before_the_page(&browser, "if (location.protocol === 'http:') sessionStorage.clear();").await?;
        let mut found = Vec::new();
        for State { name, width, prefers, done, stands } in STATES.iter().skip(half).step_by(2) {
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
                .wait_for(&format!("(() => {{ {HANDS} return {stands}; }})()"))
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
