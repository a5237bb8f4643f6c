//! A plain static host: serves a folder under a base path as any host of static files would, with the headers that the element's page
//! (`www/app/README.md`) advises.

use std::io;
use std::net::Ipv4Addr;
use std::path::Path;
use std::str::FromStr;

use anyhow::{Context, Result, ensure};
use axum::Router;
use axum::http::{HeaderName, HeaderValue, StatusCode, header};
use axum::middleware::{from_fn, from_fn_with_state};
use axum::response::Redirect;
use axum::routing::{any, get};
use tokio::net::TcpListener;
use tokio::runtime::Runtime;
use tokio::task::JoinHandle;
use tower_http::services::ServeDir;
use tower_http::set_header::SetResponseHeaderLayer;

use crate::sent::{self, Packed};
use crate::trouble::{self, Trouble};

/// The path under which the files appear: begins and ends with a slash.
#[derive(Clone, Debug, PartialEq)]
pub struct Base(String);

impl FromStr for Base {
    type Err = anyhow::Error;

    fn from_str(text: &str) -> Result<Self> {
        ensure!(text.starts_with('/') && text.ends_with('/'), "a base begins and ends with a slash, such as /a/b/");
        ensure!(!text.contains(['{', '}', '?', '#', '%']) && !text.contains("//"), "a base is plain folder names");
        Ok(Self(text.to_owned()))
    }
}

/// A running host. Answers until it is dropped.
pub struct Host {
    /// The page's address.
    pub address: String,
    runtime: Runtime,
    server: JoinHandle<io::Result<()>>,
}

impl Host {
    /// Listens on this machine's loopback address only.
    pub fn start(folder: &Path, port: u16, base: &Base) -> Result<Self> {
        Self::start_in(&Trouble::default(), folder, port, base, &Packed::default())
    }

    /// The same behind a network in trouble.
    fn start_in(trouble: &Trouble, folder: &Path, port: u16, base: &Base, packed: &Packed) -> Result<Self> {
        ensure!(folder.is_dir(), "there is no folder {}", folder.display());
        let runtime = Runtime::new()?;
        let listener = runtime.block_on(TcpListener::bind((Ipv4Addr::LOCALHOST, port)));
        let listener = listener.with_context(|| format!("cannot listen on port {port}: choose another with --port"))?;
        let address = format!("http://{}{}", listener.local_addr()?, base.0);
        let files = files(folder, base)
            .layer(from_fn_with_state(packed.clone(), sent::packed))
            .layer(from_fn_with_state(trouble.clone(), trouble::met));
        let server = runtime.spawn(async { axum::serve(listener, files).await });
        Ok(Self { address, runtime, server })
    }

    /// Waits as long as the host answers.
    pub fn wait(self) -> Result<()> {
        Ok(self.runtime.block_on(self.server)??)
    }
}

/// Serves a folder for another program: the address is the first line, and the end of standard input is the end. A line that comes in
/// asks for trouble, or for what was asked for ([`Trouble::ask`]), and is answered by a line. `packs`: files travel packed.
pub fn run(folder: &Path, port: u16, base: &Base, packs: bool) -> Result<()> {
    let trouble = Trouble::default();
    let packed = if packs { Packed::on() } else { Packed::default() };
    let host = Host::start_in(&trouble, folder, port, base, &packed)?;
    println!("{}", host.address);
    for line in io::stdin().lines() {
        println!("{}", trouble.ask(&line?)?);
    }
    Ok(())
}

/// The folder's files under the base, and nothing else.
fn files(folder: &Path, base: &Base) -> Router {
    let files = ServeDir::new(folder).fallback(any(missing));
    let router = match base.0.as_str() {
        "/" => Router::new().fallback_service(files),
        path => {
            // Without its last slash, the page's relative addresses would lead astray.
            let target = path.to_owned();
            let slash = get(move || async move { Redirect::permanent(&target) });
            Router::new().nest_service(path, files).route(path.trim_end_matches('/'), slash).fallback(missing)
        }
    };
    router.layer(from_fn(sent::kept)).layer(set(header::X_CONTENT_TYPE_OPTIONS, "nosniff"))
}

async fn missing() -> (StatusCode, &'static str) {
    (StatusCode::NOT_FOUND, "not found")
}

fn set(name: HeaderName, value: &'static str) -> SetResponseHeaderLayer<HeaderValue> {
    SetResponseHeaderLayer::overriding(name, HeaderValue::from_static(value))
}

#[cfg(test)]
mod tests {
    use std::fs;

    use axum::body::{Body, to_bytes};
    use axum::http::request::Builder;
    use axum::http::{Request, Response};
    use tower::ServiceExt;

    use super::*;

    /// Asks for an address of a folder whose files hold their own names, with a secret beside it.
    fn ask(base: &str, url: &str) -> Response<Body> {
        ask_as(base, Request::get(url))
    }

    fn ask_as(base: &str, request: Builder) -> Response<Body> {
        let outer = tempfile::tempdir().unwrap();
        let dist = outer.path().join("dist");
        fs::create_dir_all(dist.join("app")).unwrap();
        fs::write(outer.path().join("secret"), "secret").unwrap();
        for name in [
            "index.html",
            "a b.js",
            "app/part.js",
            "core.wasm",
            "en.json",
            "page.webmanifest",
            "icon.svg",
            "app/part-ba7816bf8f.js",
        ] {
            fs::write(dist.join(name), name).unwrap();
        }
        let request = request.body(Body::empty()).unwrap();
        let answer = async {
            let (head, body) = files(&dist, &base.parse().unwrap()).oneshot(request).await.unwrap().into_parts();
            // Read while the folder is still there.
            Response::from_parts(head, Body::from(to_bytes(body, 1000).await.unwrap()))
        };
        Runtime::new().unwrap().block_on(answer)
    }

    fn text(answer: Response<Body>) -> String {
        let body = Runtime::new().unwrap().block_on(to_bytes(answer.into_body(), 1000)).unwrap();
        String::from_utf8(body.to_vec()).unwrap()
    }

    #[test]
    fn finds_files_under_the_base() {
        for (base, url, file) in [
            ("/", "/", "index.html"),
            ("/", "/index.html?x=1", "index.html"),
            ("/a/b/", "/a/b/", "index.html"),
            ("/a/b/", "/a/b/app/part.js", "app/part.js"),
            ("/", "/a%20b.js", "a b.js"),
        ] {
            let answer = ask(base, url);
            assert_eq!(answer.status(), StatusCode::OK, "{base} {url}");
            assert_eq!(answer.headers()[header::CACHE_CONTROL], "no-cache");
            assert_eq!(text(answer), file, "{base} {url}");
        }
    }

    #[test]
    fn finds_nothing_else() {
        for (base, url) in [
            ("/", "/missing.js"),
            ("/", "/app/"),
            ("/a/b/", "/"),
            ("/a/b/", "/index.html"),
            ("/a/b/", "/a/b/missing.js"),
            ("/", "/../secret"),
            ("/", "/%2e%2e/secret"),
            ("/", "/app/..%2f..%2fsecret"),
            ("/", "/%2fetc/passwd"),
            ("/", "/%00"),
        ] {
            assert_eq!(ask(base, url).status(), StatusCode::NOT_FOUND, "{base} {url}");
        }
    }

    /// A name with a hash never means another file (RFC 8246); all others are asked about each time (RFC 9111 5.2.2.4), and then do not
    /// travel again unless they are others (RFC 9110 13.1.2).
    #[test]
    fn a_hashed_file_is_kept_for_good_and_any_other_is_asked_about() {
        let hashed = ask("/", "/app/part-ba7816bf8f.js");
        assert_eq!(hashed.headers()[header::CACHE_CONTROL], "public, max-age=31536000, immutable");
        let first = ask("/", "/app/part.js");
        assert_eq!(first.headers()[header::CACHE_CONTROL], "no-cache");
        assert!(!first.headers().contains_key(header::LAST_MODIFIED), "two builds may have the same second");
        let tag = &first.headers()[header::ETAG];
        let again = ask_as("/", Request::get("/app/part.js").header(header::IF_NONE_MATCH, tag));
        assert_eq!((again.status(), text(again)), (StatusCode::NOT_MODIFIED, String::new()));
        let other = ask_as("/", Request::get("/index.html").header(header::IF_NONE_MATCH, tag));
        assert_eq!(other.status(), StatusCode::OK, "another content has another tag");
        let missing = ask("/", "/missing-ba7816bf8f.js");
        assert_eq!(missing.headers()[header::CACHE_CONTROL], "no-cache", "what is missing may come");
    }

    #[test]
    fn the_base_without_its_slash_leads_to_it() {
        let answer = ask("/a/b/", "/a/b");
        assert_eq!(
            (answer.status(), &answer.headers()[header::LOCATION]),
            (StatusCode::PERMANENT_REDIRECT, &"/a/b/".parse().unwrap())
        );
    }

    /// The types that browsers insist on: HTML Living Standard (module scripts), WebAssembly Web API (streaming
    /// compilation), Web Application Manifest (manifest links).
    #[test]
    fn types_are_those_browsers_insist_on() {
        for (name, expected) in [
            ("index.html", "text/html"),
            ("app/part.js", "text/javascript"),
            ("core.wasm", "application/wasm"),
            ("en.json", "application/json"),
            ("page.webmanifest", "application/manifest+json"),
            ("icon.svg", "image/svg+xml"),
        ] {
            assert_eq!(ask("/", &format!("/{name}")).headers()[header::CONTENT_TYPE], expected);
        }
    }

    #[test]
    fn a_base_has_both_slashes() {
        for text in ["", "a/b/", "/a/b", "/a//b/", "/{x}/"] {
            assert!(text.parse::<Base>().is_err(), "{text}");
        }
    }
}
