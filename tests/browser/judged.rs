//! Green means nothing is wrong, on the page, on the sheet and in a host's basket; and a mark typed back as built is no difference.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};

use crate::page::{
    READY, at_step, choose, computed, element, open_group, part, press, starting_job, take_operator, text, type_into,
};

/// JavaScript for a part inside the sheet, which has a tree of its own.
fn on_paper(selector: &str) -> String {
    format!("{}.shadowRoot.querySelector(`{selector}`)", part("[data-pintle-paper]"))
}

async fn open_sheet(browser: &Browser) -> Result<()> {
    at_step(browser, "hand_over").await?;
    computed(browser).await?;
    press(browser, ".show-sheet").await?;
    let pages = format!("{}?.shadowRoot?.querySelectorAll('.page').length", part("[data-pintle-paper]"));
    browser.wait_for(&format!("({pages} ?? 0) > 5")).await
}

/// The demonstration job with torque to spare.
fn within() -> Value {
    let mut job = starting_job();
    job["operator"]["rated_torque_n_m"] = json!(900);
    job["operator"]["peak_torque_n_m"] = json!(1200);
    job
}

async fn give(browser: &Browser, job: &Value) -> Result<()> {
    let calculator = "document.querySelector('pintle-calculator')";
    browser.value(&format!("void ({calculator}.job = {job}) ?? true")).await?;
    browser.wait_for(&format!("{calculator}.job?.operator.rated_torque_n_m === 900 && {READY}")).await?;
    computed(browser).await
}

/// A wall typed into the middle of the swing, as somebody at the gate types it.
async fn type_wall(browser: &Browser) -> Result<()> {
    open_group(browser, "room").await?;
    choose(browser, "obstacles.looked_at", "yes").await?;
    press(browser, "[data-list=obstacles] > .move").await?;
    for (side, typed) in [("x_m.0", "900"), ("x_m.1", "1100"), ("y_m.0", "900"), ("y_m.1", "1100")] {
        type_into(browser, &format!("obstacles.0.{side}"), typed).await?;
    }
    browser.wait_for("document.querySelector('pintle-calculator').plan?.overall.stops > 0").await?;
    computed(browser).await
}

async fn state(browser: &Browser) -> Result<(String, bool, String)> {
    let line = part("[part=verdict]");
    let state = browser.value(&format!("{line}.dataset.verdict")).await?;
    let drawn = browser.value(&format!("{line}.querySelector('.mark.within') !== null")).await?;
    let said = text(browser, "[part=verdict] .said-words").await?;
    Ok((state.as_str().unwrap_or_default().into(), drawn == true, said))
}

#[tokio::test]
async fn a_wall_in_the_swing_is_never_green() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        let mut job = within();
        job["site"] = json!({});
        give(&browser, &job).await?;
        assert_eq!(state(&browser).await?, ("within".into(), true, "Within: torque and arm; not judged: people".into()));
        type_wall(&browser).await?;
        assert_eq!(state(&browser).await?, ("over".into(), false, "Stop: clearances".into()));
        // The torque's own figure stays, and says whose it is.
        assert!(text(&browser, "[part=verdict] .figures").await?.starts_with("torque alone: reserve"));
        // The stop itself stands where it is judged, and in the list that the verdict opens.
        at_step(&browser, "place").await?;
        let stops = text(&browser, "[data-step=place] [part=findings]").await?;
        assert!(stops.contains("Do not build:") && stops.contains("The leaf runs 171"), "{stops}");
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        press(&browser, "[part=verdict] .says").await?;
        let listed = text(&browser, "[part=judgements] [data-about=clearances]").await?;
        assert!(listed.contains("over") && listed.contains("The leaf runs 171"), "{listed}");
        press(&browser, "[part=judgements] .close").await?;
        browser.wait_for(&format!("{}.textContent.startsWith('Stop: clearances')", part(".status"))).await?;
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        let overflow = browser.value("document.documentElement.scrollWidth - innerWidth").await?;
        assert!(overflow.as_i64().expect("a number") <= 0, "{overflow} px beyond");

        // On paper the stop stands on the first sheet, and nothing to look at comes after the names.
        open_sheet(&browser).await?;
        let first = on_paper(".page");
        let said = browser.value(&format!("{first}.textContent")).await?;
        let said = said.as_str().expect("text");
        assert!(said.contains("The leaf runs 171") && said.contains("Stop: clearances"), "{said}");
        assert!(!said.contains("Within:"), "{said}");
        assert_eq!(browser.value(&format!("{first}.querySelector('.mark.within')")).await?, Value::Null);
        let order = browser
            .value(&format!(
                "(() => {{ const all = [...{}.shadowRoot.querySelectorAll('.body > *')];
                    const at = (find) => all.findIndex(find);
                    return [at((one) => one.matches('.stops')), at((one) => one.textContent === 'To check before anybody signs'),
                        at((one) => one.matches('.signatures')), all.findLastIndex((one) => one.textContent.includes('The leaf runs 171'))]; }})()",
                part("[data-pintle-paper]")
            ))
            .await?;
        let order: Vec<i64> = serde_json::from_value(order)?;
        assert!(order[0] >= 0 && order[0] < order[1] && order[1] < order[2] && order[3] < order[2], "{order:?}");
        let signing = browser.value(&format!("{}.previousElementSibling.previousElementSibling.textContent", on_paper(".signatures"))).await?;
        assert!(signing.as_str().is_some_and(|text| text.contains("not to be used")), "{signing}");

        // Out of the swing it is green again.
        type_into(&browser, "obstacles.0.x_m.0", "-3000").await?;
        type_into(&browser, "obstacles.0.x_m.1", "-2000").await?;
        browser.wait_for("document.querySelector('pintle-calculator').plan?.overall.stops === 0").await?;
        computed(&browser).await?;
        assert_eq!(state(&browser).await?.0, "within");
        // While something typed cannot be read, no shape stands for the old result.
        type_into(&browser, "obstacles.0.x_m.0", "wall").await?;
        let (state, green, _) = state(&browser).await?;
        assert_eq!((state.as_str(), green), ("none", false));
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_hosts_basket_says_what_the_whole_says() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(1024, 768, 1.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&format!("{}embed.html", site.address)).await?;
        browser.wait_for(READY).await?;
        let mut job = starting_job();
        job["obstacles"] = json!([{ "x_m": [0.9, 1.1], "y_m": [0.9, 1.1] }]);
        browser.value(&format!("void (document.querySelector('pintle-calculator').job = {job}) ?? true")).await?;
        browser.wait_for(&format!("document.querySelector('pintle-calculator').job?.obstacles != null && {READY}")).await?;
        // The strongest of the list: torque to spare, and the wall still there.
        at_step(&browser, "operator").await?;
        let all = "[...document.querySelector('pintle-calculator').shadowRoot.querySelectorAll('input[name=operator]')]";
        let strongest = browser.value(&format!("{all}.filter((one) => one.value).at(-1).value")).await?;
        let strongest = strongest.as_str().expect("an operator").to_owned();
        take_operator(&browser, &strongest).await?;
        browser.wait_for("document.querySelector('pintle-calculator').plan?.rating.verdict === 'within'").await?;
        computed(&browser).await?;
        let shown = "[...document.querySelectorAll('[data-verdict]')].filter((one) => !one.hidden).map((one) => one.dataset.verdict)";
        assert_eq!(browser.value(shown).await?, json!(["over"]));
        let worst = "document.querySelector('[data-verdict=over] [data-worst]').textContent";
        assert_eq!(browser.value(worst).await?, json!("clearances"));
        // Without the wall it is within, and names all that was judged; a part that is begun is never within.
        let mut clear = within();
        browser.value(&format!("void (document.querySelector('pintle-calculator').job = {clear}) ?? true")).await?;
        browser.wait_for(&format!("document.querySelector('pintle-calculator').job?.site == null && {READY}")).await?;
        take_operator(&browser, &strongest).await?;
        browser.wait_for("document.querySelector('pintle-calculator').plan?.overall.state === 'within'").await?;
        computed(&browser).await?;
        assert_eq!(browser.value(shown).await?, json!(["within"]));
        let named = "document.querySelector('[data-verdict=within] [data-judged]').textContent";
        assert_eq!(browser.value(named).await?, json!("torque, arm"));
        clear["storm"] = json!({});
        browser.value(&format!("void (document.querySelector('pintle-calculator').job = {clear}) ?? true")).await?;
        browser.wait_for("document.querySelector('pintle-calculator').job?.storm != null").await?;
        browser.wait_for(READY).await?;
        take_operator(&browser, &strongest).await?;
        browser.wait_for("document.querySelector('pintle-calculator').plan?.overall.state === 'not_judged'").await?;
        computed(&browser).await?;
        assert_eq!(browser.value(shown).await?, json!(["not_judged"]));
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn parts_of_which_nothing_is_typed_give_no_verdict() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(1024, 768, 1.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        choose(&browser, "leaf.by", "parts").await?;
        assert_eq!(browser.value("document.querySelector('pintle-calculator').plan").await?, Value::Null);
        let (said_state, green, said) = state(&browser).await?;
        assert!(!green && said_state == "none" && said.starts_with("No result yet"), "{said_state} {said}");
        let line = text(&browser, "[part=verdict]").await?;
        assert!(line.contains("The leaf’s parts") && !line.contains("reserve"), "{line}");
        assert!(text(&browser, "[data-member='0'] summary").await?.contains("not counted yet"));
        assert_eq!(text(&browser, "[data-total=mass_kg]").await?, "–");
        // A second part of which nothing is typed changes nothing; the first that is typed counts alone.
        press(&browser, ".members > .move").await?;
        assert_eq!(browser.value("document.querySelector('pintle-calculator').plan").await?, Value::Null);
        type_into(&browser, "leaf.members.1.face_m", "60").await?;
        browser.wait_for(READY).await?;
        let members = "document.querySelector('pintle-calculator').job.leaf.members";
        assert_eq!(browser.value(&format!("{members}.map((one) => one.face_m)")).await?, json!([0.06]));
        // What is wrong with it is told at the part where it stands, not at the one before.
        type_into(&browser, "leaf.members.1.wall_m", "40").await?;
        element(&browser, "#field-leaf-members-1-wall_m").await?.send_keys(thirtyfour::Key::Tab + "").await?;
        browser.wait_for(&format!("!{}.hidden", part("#field-leaf-members-1-wall_m-error"))).await?;
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

/// Where the marks stand.
const FIT: &str = "[data-step=mark_out] .fit";

/// The marks as the screen shows them: an offset of a place's card, or a length by its name.
async fn mark(browser: &Browser, of: &str, offset: Option<usize>) -> Result<String> {
    let shown = match offset {
        Some(at) => format!(
            "(({{ lastElementChild: said }}) => [...said.children].map((one) => one.textContent).join(', '))({}.querySelectorAll('[data-mark={of}] .offset')[{at}])",
            part(FIT)
        ),
        None => format!(
            "[...{}.querySelectorAll('dt')].find((one) => one.textContent === '{of}').nextElementSibling.textContent",
            part(FIT)
        ),
    };
    Ok(browser.value(&shown).await?.as_str().unwrap_or_default().to_owned())
}

#[tokio::test]
async fn the_marks_typed_back_are_no_difference() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        for units in ["us", "metric"] {
            browser.open(&site.address).await?;
            browser.wait_for(READY).await?;
            let mut job = within();
            // A face one inch proud of the axis line.
            job["leaf"]["face_m"] = json!(0.0254);
            browser.value(&format!("void document.querySelector('pintle-calculator').setAttribute('units', '{units}') ?? true")).await?;
            give(&browser, &job).await?;
            // The very same marks stand beside what was found.
            at_step(&browser, "place").await?;
            browser.wait_for(&format!("{} !== null", part(".set-outs table"))).await?;
            at_step(&browser, "mark_out").await?;
            let fit = text(&browser, FIT).await?;
            for line in ["along, from the hinge line", "square, from the axis line", "square, from the leaf’s face"] {
                assert!(fit.contains(line), "{line} in {fit}");
            }
            // No decimals where a tape is used.
            let decimal = format!("[{}, {}, {}].flatMap((part) => part.textContent.match(/\\d[.]\\d+\\s(in|mm)/g) ?? [])",
                part(FIT), part(".set-outs"), part(".reading"));
            if units == "us" {
                assert_eq!(browser.value(&decimal).await?, json!([]));
                assert_eq!(mark(&browser, "Leaf’s face, from the axis line", None).await?, "1\", on the opening side");
            }
            let typed = [
                ("shaft_x_m", mark(&browser, "S", Some(0)).await?),
                ("shaft_y_m", mark(&browser, "S", Some(1)).await?),
                ("bracket_u_m", mark(&browser, "Bracket pin along the closed leaf, from the hinge line", None).await?),
                ("bracket_v_m", mark(&browser, "Bracket pin square to the closed leaf, from the axis line", None).await?),
                ("crank_m", mark(&browser, "Crank, pivot to pivot", None).await?),
                ("link_m", mark(&browser, "Link, pivot to pivot", None).await?),
            ];
            assert!(typed[0].1.ends_with(", away from the latch"), "{}", typed[0].1);
            assert!(typed[1].1.ends_with(", on the opening side"), "{}", typed[1].1);
            // A mark has a side and no minus, whatever is told of it.
            let minus = format!(r#"[{}, {}, {}].flatMap((part) => part.textContent.match(/−[\d' \/-]+("|\s(mm|in))/g) ?? [])"#,
                part(FIT), part(".set-outs"), part(".reading"));
            assert_eq!(browser.value(&minus).await?, json!([]));
            // On a phone a place is a card: nothing is reached by scrolling sideways.
            for (step, found) in [("place", ".fit .scroll"), ("mark_out", ".mark-card")] {
                at_step(&browser, step).await?;
                let there = part(&format!(".step[data-step={step}]:not([hidden])"));
                browser.value(&format!("[...{there}.querySelectorAll('details')].forEach((one) => (one.open = true)) ?? true")).await?;
                let wide = format!("[...{there}.querySelectorAll('{found}')].map((one) => one.scrollWidth - one.clientWidth)");
                let wide: Vec<i64> = serde_json::from_value(browser.value(&wide).await?)?;
                assert!(!wide.is_empty() && wide.iter().all(|over| *over <= 0), "{step}: {wide:?}");
                let over = browser.value("document.documentElement.scrollWidth - innerWidth").await?;
                assert!(over.as_i64().is_some_and(|over| over <= 0), "{step}: {over} px beyond");
            }
            open_group(&browser, "as_built").await?;
            choose(&browser, "as_built.looked_at", "yes").await?;
            for (name, length) in &typed {
                // A no-break space is not typed; the side stands beside the field, as it was planned.
                let number = length.split(", ").next().unwrap_or_default().replace('\u{a0}', " ");
                type_into(&browser, &format!("as_built.{name}"), &number).await?;
            }
            // Beside each stands what was planned, from the same line: the very mark.
            assert_eq!(browser.complaints().await?, Vec::<String>::new());
            let field = part("[data-path='as_built.shaft_y_m']");
            browser.wait_for(&format!("{field}.textContent.includes(`Planned: {}`)", typed[1].1)).await?;
            assert!(text(&browser, "[data-path='as_built.shaft_y_m']").await?.contains("from the axis line"));
            let built = "document.querySelector('pintle-calculator').job.as_built";
            assert_eq!(browser.value(&format!("{built}.from")).await?, "hinge_axis");
            assert_eq!(browser.value(&format!("{built}.shaft_x_m < 0")).await?, true, "the document keeps the sign");
            at_step(&browser, "hand_over").await?;
            let rows = browser
                .value(&format!(
                    "[...{}.rows].filter((row) => row.cells[0].textContent.startsWith('Built')).map((row) => row.className)",
                    part(".compared table")
                ))
                .await?;
            assert_eq!(rows, json!(vec!["pass"; 6]), "{units}: {typed:?}");
            // The other side of the line is another place, and is told so; back again it is none.
            let side = part("[data-path='as_built.shaft_x_m'] .side");
            for (chosen, verdict) in [("plus", "look_again"), ("minus", "pass")] {
                at_step(&browser, "mark_out").await?;
                browser
                    .value(&format!("(() => {{ {side}.value = '{chosen}'; {side}.dispatchEvent(new Event('change')); return true; }})()"))
                    .await?;
                at_step(&browser, "hand_over").await?;
                let row = format!("[...{}.rows].find((row) => row.cells[0].textContent.includes('shaft along')).className", part(".compared table"));
                browser.wait_for(&format!("{row} === '{verdict}'")).await?;
            }
            // Whoever types a minus is understood; left, the field says the side in its stead.
            type_into(&browser, "as_built.shaft_x_m", "-10").await?;
            element(&browser, "#field-as_built-shaft_x_m").await?.send_keys(thirtyfour::Key::Tab + "").await?;
            computed(&browser).await?;
            let left = format!("[{}.value, {side}.value, {built}.shaft_x_m < 0]", part("#field-as_built-shaft_x_m"));
            assert_eq!(browser.value(&left).await?, json!(["10", "minus", true]));
            // One structure, whichever units its numbers are in.
            if units == "us" {
                assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
            }
        }
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}
