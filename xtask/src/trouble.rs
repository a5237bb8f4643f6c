//! A network as it is at a gate: files that come late, and files that fail. Whoever runs the host asks for it, a line at a time.

use std::collections::{HashMap, HashSet};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Duration;

use anyhow::{Result, bail};
use axum::extract::{Request, State};
use axum::http::StatusCode;
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

/// What is in the way of the next requests; nothing at first.
#[derive(Clone, Default)]
pub struct Trouble(Arc<Mutex<Asked>>);

#[derive(Default)]
struct Asked {
    /// How much later each answer comes.
    delay: Duration,
    /// How many more requests of a file fail, by the end of its address.
    failing: HashMap<String, usize>,
    /// Where each file fails the first time it is asked for: those that have.
    each: Option<HashSet<String>>,
}

impl Trouble {
    /// Takes one line:
    ///
    /// - `delay MS`: each answer comes that much later;
    /// - `fail END TIMES`: that many requests of addresses that end so fail;
    /// - `fail-each`: from now on every file fails the first time;
    /// - `calm`: no trouble any more.
    ///
    /// # Errors
    /// For any other line.
    pub fn ask(&self, line: &str) -> Result<()> {
        let mut asked = self.lock();
        match line.split_whitespace().collect::<Vec<_>>()[..] {
            ["delay", ms] => asked.delay = Duration::from_millis(ms.parse()?),
            ["fail", end, times] => _ = asked.failing.insert(end.to_owned(), times.parse()?),
            ["fail-each"] => asked.each = Some(HashSet::new()),
            ["calm"] => *asked = Asked::default(),
            _ => bail!("no trouble called {line:?}"),
        }
        Ok(())
    }

    /// How long a request waits, and whether it then fails.
    fn meet(&self, path: &str) -> (Duration, bool) {
        let mut asked = self.lock();
        let first = asked.each.as_mut().is_some_and(|seen| seen.insert(path.to_owned()));
        let named = asked.failing.iter_mut().find(|(end, left)| path.ends_with(*end) && **left > 0);
        let named = named.map(|(_, left)| *left -= 1).is_some();
        (asked.delay, first || named)
    }

    fn lock(&self) -> MutexGuard<'_, Asked> {
        // Whoever panicked with it in hand left numbers that are as good as any.
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Lets a request through as the trouble has it.
pub async fn met(State(trouble): State<Trouble>, request: Request, next: Next) -> Response {
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
