//! A network as it is at a gate: files that come late, and files that fail. Whoever runs the host asks for it, a line at a time.

use std::collections::{BTreeMap, HashMap, HashSet};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Duration;

use anyhow::{Result, bail};
use axum::extract::{Request, State};
use axum::http::StatusCode;
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use crate::names::plain;

/// What is in the way of the next requests; nothing at first.
#[derive(Clone, Default)]
pub struct Trouble(Arc<Mutex<Asked>>);

#[derive(Default)]
struct Asked {
    /// How much later each answer comes.
    delay: Duration,
    /// How many more requests are answered before the host dies.
    left: Option<usize>,
    /// How often each address was asked for.
    asked: BTreeMap<String, usize>,
    /// How many more requests of a file fail, by the end of its address.
    failing: HashMap<String, usize>,
    /// Where each file fails the first time it is asked for: those that have.
    each: Option<HashSet<String>>,
}

impl Trouble {
    /// Takes one line:
    ///
    /// - `delay MS`: each answer comes that much later;
    /// - `fail END TIMES`: that many requests of addresses that end so fail, whatever hash is in the name;
    /// - `fail-each`: from now on every file fails the first time;
    /// - `die-after TIMES`: that many more requests are answered, and with the next one the host is gone;
    /// - `calm`: no trouble any more;
    /// - `asked`: no trouble, but what was asked for so far, and how often, as JSON.
    ///
    /// Gives the line to answer.
    ///
    /// # Errors
    /// For any other line.
    pub fn ask(&self, line: &str) -> Result<String> {
        let mut asked = self.lock();
        match line.split_whitespace().collect::<Vec<_>>()[..] {
            ["delay", ms] => asked.delay = Duration::from_millis(ms.parse()?),
            ["fail", end, times] => _ = asked.failing.insert(end.to_owned(), times.parse()?),
            ["fail-each"] => asked.each = Some(HashSet::new()),
            ["die-after", times] => asked.left = Some(times.parse()?),
            ["calm"] => *asked = Asked { asked: std::mem::take(&mut asked.asked), ..Asked::default() },
            ["asked"] => return Ok(serde_json::to_string(&asked.asked)?),
            _ => bail!("no trouble called {line:?}"),
        }
        Ok("done".to_owned())
    }

    /// How long a request waits, and whether it then fails.
    fn meet(&self, path: &str) -> (Duration, bool) {
        let mut asked = self.lock();
        *asked.asked.entry(path.to_owned()).or_default() += 1;
        let without = plain(path);
        let first = asked.each.as_mut().is_some_and(|seen| seen.insert(path.to_owned()));
        let named = asked.failing.iter_mut().find(|(end, left)| {
            **left > 0 && [Some(path), without.as_deref()].iter().flatten().any(|path| path.ends_with(*end))
        });
        let named = named.map(|(_, left)| *left -= 1).is_some();
        (asked.delay, first || named)
    }

    /// Whether the host is still there for one more request.
    fn lives(&self) -> bool {
        let mut asked = self.lock();
        let lives = asked.left != Some(0);
        asked.left = asked.left.map(|left| left.saturating_sub(1));
        lives
    }

    fn lock(&self) -> MutexGuard<'_, Asked> {
        // Whoever panicked with it in hand left numbers that are as good as any.
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Lets a request through as the trouble has it.
pub async fn met(State(trouble): State<Trouble>, request: Request, next: Next) -> Response {
    if !trouble.lives() {
        // As a host that is killed: no answer, open connections break, new ones are refused.
        std::process::exit(0);
    }
    let (delay, fails) = trouble.meet(request.uri().path());
    tokio::time::sleep(delay).await;
    if fails { (StatusCode::SERVICE_UNAVAILABLE, "no answer").into_response() } else { next.run(request).await }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fails(trouble: &Trouble, path: &str) -> bool {
        trouble.meet(path).1
    }

    #[test]
    fn a_file_fails_as_often_as_asked() {
        let trouble = Trouble::default();
        trouble.ask("fail app/dom.js 2").unwrap();
        let met = ["/app/dom.js", "/app/other.js", "/app/dom.js", "/app/dom.js"].map(|path| fails(&trouble, path));
        assert_eq!(met, [true, false, true, false]);
        trouble.ask("fail app/dom.js 1").unwrap();
        assert!(fails(&trouble, "/app/dom-ba7816bf8f.js"), "the hash in a name does not matter");
    }

    #[test]
    fn a_host_lives_as_long_as_asked_and_tells_what_was_asked_for() {
        let trouble = Trouble::default();
        assert!(trouble.lives());
        trouble.ask("die-after 2").unwrap();
        assert_eq!([trouble.lives(), trouble.lives(), trouble.lives()], [true, true, false]);
        for path in ["/a", "/b", "/a"] {
            trouble.meet(path);
        }
        trouble.ask("calm").unwrap();
        assert!(trouble.lives());
        assert_eq!(trouble.ask("asked").unwrap(), r#"{"/a":2,"/b":1}"#);
    }

    #[test]
    fn each_file_fails_once_and_calm_ends_it() {
        let trouble = Trouble::default();
        trouble.ask("fail-each").unwrap();
        trouble.ask("delay 30").unwrap();
        assert_eq!(["/a", "/b", "/a"].map(|path| fails(&trouble, path)), [true, true, false]);
        assert_eq!(trouble.meet("/a").0, Duration::from_millis(30));
        trouble.ask("calm").unwrap();
        assert_eq!(trouble.meet("/c"), (Duration::ZERO, false));
    }

    #[test]
    fn an_unknown_line_is_an_error() {
        for line in ["", "delay", "delay soon", "fail x", "storm"] {
            assert!(Trouble::default().ask(line).is_err(), "{line}");
        }
    }
}
