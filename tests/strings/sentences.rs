//! Nothing people read stands in code: not in modules, the service worker, style sheets or attributes; what the page's HTML says before a
//! script runs is what the English table says. The shop's page around the embedded calculator speaks for the shop, in its own words.

use std::fs;
use std::path::{Path, PathBuf};

use crate::table::{LANGUAGES, Table};

fn page() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../www")
}

/// Files of a kind below a folder.
fn files(folder: &Path, ending: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            found.extend(files(&path, ending));
        } else if path.extension().is_some_and(|own| own == ending) {
            found.push(path);
        }
    }
    found
}

/// Literal texts of a script, comments left out, each with what stands before it on its line.
fn literals(script: &str) -> Vec<(String, String)> {
    let (mut found, mut line) = (Vec::new(), String::new());
    let mut rest = script.chars().peekable();
    while let Some(character) = rest.next() {
        match (character, rest.peek()) {
            ('/', Some('/')) => while rest.next_if(|next| *next != '\n').is_some() {},
            ('/', Some('*')) => {
                let mut last = ' ';
                rest.find(|next| std::mem::replace(&mut last, *next) == '*' && *next == '/');
            }
            ('"' | '\'' | '`', _) => {
                let mut text = String::new();
                while let Some(next) = rest.next_if(|next| *next != character) {
                    text.push(next);
                    if next == '\\' {
                        text.extend(rest.next());
                    }
                }
                rest.next();
                found.push((line.clone(), text));
            }
            ('\n', _) => line.clear(),
            _ => line.push(character),
        }
    }
    found
}

/// Whether a text is made to be read by people: words with a capital at the start or a stop at the end.
fn is_sentence(text: &str) -> bool {
    let text = text.split("${").map(|part| part.split_once('}').map_or(part, |(_, rest)| rest)).collect::<String>();
    let words = text.split(' ').filter(|word| word.chars().filter(|letter| letter.is_alphabetic()).count() > 1).count();
    let capital = text.chars().next().is_some_and(char::is_uppercase);
    words > 1 && (capital || text.ends_with(['.', '?', '!', ':', '…']))
}

/// Attributes whose text is read out or shown.
const READ_OUT: [&str; 6] = ["aria-label", "aria-description", "aria-roledescription", "title", "placeholder", "alt"];

#[test]
fn no_script_holds_a_sentence() {
    assert!(is_sentence("Add an area") && is_sentence("not yet.") && !is_sentence("setout-pair wide"));
    let scripts: Vec<_> = files(&page().join("app"), "js").into_iter().chain([page().join("sw.js")]).collect();
    assert!(scripts.len() > 50, "{} scripts", scripts.len());
    let mut found = Vec::new();
    for script in scripts {
        let literals = literals(&fs::read_to_string(&script).expect("a script"));
        // What is thrown or logged is for whoever mends the page.
        let told = |before: &str| before.contains("Error(") || before.contains("console.");
        found.extend(
            literals
                .iter()
                .filter(|(before, text)| !told(before) && is_sentence(text))
                .map(|(_, text)| format!("{}: {text}", script.display())),
        );
        for attributes in literals.windows(2) {
            let [(before, name), (after, text)] = attributes else { continue };
            let value = after.strip_prefix(before.as_str()).is_some_and(|between| between.trim() == ":");
            if value
                && READ_OUT.contains(&name.as_str())
                && text.chars().any(char::is_alphabetic)
                && !text.contains("${")
            {
                found.push(format!("{}: {name}: {text}", script.display()));
            }
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn no_style_sheet_says_anything() {
    for sheet in files(&page(), "css") {
        let text = fs::read_to_string(&sheet).expect("a style sheet");
        let said: Vec<_> = text.lines().filter(|line| line.trim_start().starts_with("content:")).collect();
        assert!(
            // What an attribute says comes from the string tables, as its element does.
            said.iter().all(|line| line.contains("\"\"") || line.contains("none") || line.contains("attr(data-head)")),
            "{}: {said:?}",
            sheet.display()
        );
    }
}

/// A place for a text in HTML: the attributes of its element, and the text.
fn texts(html: &str) -> Vec<(&str, &str)> {
    html.split('<').filter_map(|piece| piece.split_once('>')).map(|(tag, text)| (tag, text.trim())).collect()
}

fn attribute<'t>(tag: &'t str, name: &str) -> Option<&'t str> {
    tag.split_once(&format!("{name}=\""))?.1.split_once('"').map(|(value, _)| value)
}

#[test]
fn the_page_says_what_the_english_table_says() {
    let html = fs::read_to_string(page().join("index.html")).expect("the page");
    let english = Table::read("en");
    let (head, body) = html.split_once("<body>").expect("a body");
    let mut named = 0;
    for (tag, text) in texts(body).into_iter().filter(|(_, text)| !text.is_empty()) {
        if let Some(key) = attribute(tag, "data-string") {
            named += 1;
            assert_eq!(english.at(&format!("page.{key}")), Some(text), "{key}");
        } else {
            // Names are the same in every language; without scripts there is no table to ask.
            let name = ["Pintle", "English", "Español"].contains(&text);
            assert!(name || Some(text) == english.at("page.failed"), "<{tag}> says {text:?} without a key");
        }
    }
    assert!(named > 8, "{named} texts with a key");
    for (tag, _) in texts(body) {
        let key = attribute(tag, "data-label");
        let label = attribute(tag, "aria-label");
        assert_eq!(label, key.and_then(|key| english.at(&format!("page.{key}"))), "<{tag}>");
        assert!(attribute(tag, " title").is_none() && attribute(tag, "placeholder").is_none(), "<{tag}>");
    }
    let title = texts(head).into_iter().find(|(tag, _)| *tag == "title").map(|(_, text)| text);
    assert_eq!(title, english.at("page.title"));
    for language in LANGUAGES {
        assert!(Table::read(language).at("page.title").is_some());
    }
}

/// An installed app is named by one word, which is no sentence.
#[test]
fn the_manifest_has_a_name_and_no_sentence() {
    let text = fs::read_to_string(page().join("manifest.webmanifest")).expect("the manifest");
    let manifest: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    for (key, value) in manifest.as_object().expect("an object") {
        assert!(value.as_str().is_none_or(|text| !is_sentence(text)), "{key}: {value}");
    }
    assert!(manifest.get("description").is_none(), "a description would speak one language");
}

/// Words that are the same in both languages are few: names, symbols, loanwords. A sentence left in English would be seen here.
#[test]
fn no_sentence_is_left_in_english() {
    let (english, spanish) = (Table::read("en"), Table::read("es"));
    let same: Vec<_> = english
        .keys()
        .filter(|key| english.at(key) == spanish.at(key))
        .filter(|key| {
            let text = english.at(key).expect("a sentence");
            let own: String = text.split('{').map(|part| part.split_once('}').map_or(part, |(_, rest)| rest)).collect();
            own.split(' ').filter(|word| word.chars().filter(|letter| letter.is_alphabetic()).count() > 2).count() > 2
        })
        .collect();
    assert!(same.is_empty(), "{same:?}");
}
