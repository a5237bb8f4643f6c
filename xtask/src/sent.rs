//! How files are sent: how long a browser may keep them, and packed.

use std::collections::HashMap;
use std::sync::{Arc, Mutex, PoisonError};

use axum::body::{Body, Bytes, to_bytes};
use axum::extract::{Request, State};
use axum::http::{HeaderValue, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use sha2::{Digest, Sha256};

use crate::names::plain;
use crate::sizes;

/// A year, and no question meanwhile: the name means this content.
const FOR_GOOD: HeaderValue = HeaderValue::from_static("public, max-age=31536000, immutable");
/// Kept, and asked about each time.
const ASKED: HeaderValue = HeaderValue::from_static("no-cache");
/// More than any file of a page has.
const MOST: usize = 1 << 26;

/// Says how long an answer may be kept, and tags it by its content: a time would take two builds of one second for the same.
pub async fn kept(mut request: Request, next: Next) -> Response {
    let is_hashed = plain(request.uri().path()).is_some();
    let known = request.headers().get(header::IF_NONE_MATCH).cloned();
    request.headers_mut().remove(header::IF_MODIFIED_SINCE);
    let (mut head, body) = next.run(request).await.into_parts();
    let found = head.status == StatusCode::OK;
    head.headers.insert(header::CACHE_CONTROL, if is_hashed && found { FOR_GOOD } else { ASKED });
    head.headers.remove(header::LAST_MODIFIED);
    if !found {
        return Response::from_parts(head, body);
    }
    let Ok(content) = to_bytes(body, MOST).await else { return StatusCode::INTERNAL_SERVER_ERROR.into_response() };
    let hash: String = Sha256::digest(&content).iter().take(16).map(|byte| format!("{byte:02x}")).collect();
    let Ok(tag) = HeaderValue::from_str(&format!("\"{hash}\"")) else {
        return StatusCode::INTERNAL_SERVER_ERROR.into_response();
    };
    let is_known = known.as_ref() == Some(&tag);
    head.headers.insert(header::ETAG, tag);
    if is_known {
        head.status = StatusCode::NOT_MODIFIED;
        head.headers.remove(header::CONTENT_LENGTH);
        return Response::from_parts(head, Body::empty());
    }
    Response::from_parts(head, Body::from(content))
}

/// Some hundredths larger than the smallest, and there at once.
const QUALITY: u32 = 9;

/// Files packed so far, by their tags; `None` where they travel as they are.
#[derive(Clone, Default)]
pub struct Packed(Option<Arc<Mutex<HashMap<HeaderValue, Bytes>>>>);

impl Packed {
    /// Packs what is asked for.
    pub fn on() -> Self {
        Self(Some(Arc::default()))
    }
}

/// Sends a file packed, where that is wanted.
pub async fn packed(State(Packed(packed)): State<Packed>, request: Request, next: Next) -> Response {
    let accepted = request.headers().get(header::ACCEPT_ENCODING).and_then(|value| value.to_str().ok());
    let is_accepted = accepted.is_some_and(|value| value.split(',').any(|one| one.trim() == "br"));
    let answer = next.run(request).await;
    let (Some(known), true, StatusCode::OK) = (packed, is_accepted, answer.status()) else { return answer };
    let (mut head, body) = answer.into_parts();
    let Some(tag) = head.headers.get(header::ETAG).cloned() else { return Response::from_parts(head, body) };
    let Ok(content) = to_bytes(body, MOST).await else { return StatusCode::INTERNAL_SERVER_ERROR.into_response() };
    let mut known = known.lock().unwrap_or_else(PoisonError::into_inner);
    let small = match known.get(&tag) {
        Some(small) => small.clone(),
        None => match sizes::packed(&content, QUALITY) {
            Ok(small) => known.entry(tag).or_insert(Bytes::from(small)).clone(),
            Err(_) => return StatusCode::INTERNAL_SERVER_ERROR.into_response(),
        },
    };
    if small.len() >= content.len() {
        return Response::from_parts(head, Body::from(content));
    }
    head.headers.remove(header::CONTENT_LENGTH);
    head.headers.insert(header::CONTENT_ENCODING, HeaderValue::from_static("br"));
    head.headers.insert(header::VARY, HeaderValue::from_static("accept-encoding"));
    Response::from_parts(head, Body::from(small))
}
