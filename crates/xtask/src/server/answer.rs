//! Which file answers a request, and with which headers.

use std::fs;
use std::path::Path;

use super::media;
use super::request::{Refusal, Request};
use crate::headers;

/// What is sent back.
#[derive(Debug)]
pub struct Answer {
    status: &'static str,
    headers: Vec<(String, String)>,
    pub body: Vec<u8>,
}

impl Answer {
    /// A plain sentence instead of a file.
    pub fn refusal(refusal: Refusal) -> Self {
        let (status, sentence) = match refusal {
            Refusal::NotUnderstood => ("400 Bad Request", "This request was not understood.\n"),
            Refusal::OnlyReading => ("405 Method Not Allowed", "Only GET and HEAD work here.\n"),
            Refusal::NotFound => ("404 Not Found", "There is no such file here.\n"),
        };
        let mut headers = vec![header("Content-Type", media::of(".txt"))];
        headers.push(header("X-Content-Type-Options", "nosniff"));
        if refusal == Refusal::OnlyReading {
            headers.push(header("Allow", "GET, HEAD"));
        }
        Self { status, headers, body: sentence.into() }
    }

    /// The status line and headers as they go over the wire.
    pub fn head(&self) -> String {
        let mut head = format!("HTTP/1.1 {}\r\n", self.status);
        for (name, value) in &self.headers {
            head.push_str(&format!("{name}: {value}\r\n"));
        }
        head.push_str(&format!("Content-Length: {}\r\nConnection: close\r\n\r\n", self.body.len()));
        head
    }
}

fn header(name: &str, value: &str) -> (String, String) {
    (name.to_owned(), value.to_owned())
}

/// The answer to a request. Every screen's address is answered with the page; the app routes it.
pub fn answer(dist: &Path, request: &Request) -> Answer {
    let last = request.path.rsplit('/').next().unwrap_or_default();
    let path = if last.contains('.') { request.path.as_str() } else { "/index.html" };
    let is_private = path == "/_headers" || path.ends_with(".br") || path.ends_with(".gz");
    let name = path.trim_start_matches('/');
    let plain = dist.join(name);
    if is_private || !plain.is_file() {
        return Answer::refusal(Refusal::NotFound);
    }

    let packed = [("br", "br"), ("gzip", "gz")].into_iter().find_map(|(encoding, ending)| {
        let wanted = accepts(&request.encodings, encoding);
        let bytes = fs::read(dist.join(format!("{name}.{ending}")));
        wanted.then(|| bytes.ok().map(|bytes| (encoding, bytes)))?
    });
    let mut headers =
        vec![header("Content-Type", media::of(name)), header("Vary", "Accept-Encoding")];
    let body = match packed {
        Some((encoding, bytes)) => {
            headers.push(header("Content-Encoding", encoding));
            bytes
        }
        None => fs::read(&plain).unwrap_or_default(),
    };
    let rules = fs::read_to_string(dist.join(headers::FILE)).unwrap_or_default();
    headers.extend(
        headers::for_path(&rules, path).into_iter().map(|(name, value)| header(name, value)),
    );
    if !headers.iter().any(|(name, _)| name == "Cache-Control") {
        headers.push(header("Cache-Control", "no-cache"));
    }
    Answer { status: "200 OK", headers, body }
}

/// Whether an Accept-Encoding value asks for this encoding, `q=0` meaning that it does not.
fn accepts(value: &str, encoding: &str) -> bool {
    value.split(',').any(|choice| {
        let mut parts = choice.split(';').map(str::trim);
        let named = parts.next().is_some_and(|name| name.eq_ignore_ascii_case(encoding));
        named && !parts.any(|part| matches!(part, "q=0" | "q=0.0" | "q=0.00" | "q=0.000"))
    })
}

#[cfg(test)]
mod tests {
    use std::path::PathBuf;

    use super::*;

    /// A small site in a folder of its own.
    fn site(name: &str) -> PathBuf {
        let dist = std::env::temp_dir().join(format!("site-{name}-{}", std::process::id()));
        fs::create_dir_all(&dist).unwrap();
        let rules = headers::write("default-src 'none'", ["/a-1.wasm"].into_iter());
        for (name, text) in [
            ("index.html", "page"),
            ("a-1.wasm", "plain"),
            ("a-1.wasm.br", "br"),
            ("a-1.wasm.gz", "gz"),
            ("sw.js", "worker"),
            (headers::FILE, &rules),
        ] {
            fs::write(dist.join(name), text).unwrap();
        }
        dist
    }

    fn ask(dist: &Path, path: &str, encodings: &str) -> (String, String) {
        let request = Request { head_only: false, path: path.into(), encodings: encodings.into() };
        let answer = answer(dist, &request);
        (answer.head(), String::from_utf8(answer.body).unwrap())
    }

    #[test]
    fn files_carry_their_type_and_cache_rule() {
        let dist = site("types");
        let (head, body) = ask(&dist, "/a-1.wasm", "");
        assert_eq!(body, "plain");
        assert!(head.contains("Content-Type: application/wasm\r\n"), "{head}");
        assert!(head.contains("immutable"), "{head}");
        assert!(head.contains("frame-ancestors 'none'"), "{head}");
        let (head, _) = ask(&dist, "/sw.js", "");
        assert!(
            head.contains("text/javascript") && head.contains("Cache-Control: no-cache"),
            "{head}"
        );
        fs::remove_dir_all(dist).unwrap();
    }

    #[test]
    fn the_best_accepted_encoding_is_sent() {
        let dist = site("encodings");
        for (accepted, body) in [
            ("gzip, deflate, br", "br"),
            ("gzip", "gz"),
            ("br;q=0, gzip;q=0.5", "gz"),
            ("identity", "plain"),
        ] {
            assert_eq!(ask(&dist, "/a-1.wasm", accepted).1, body, "{accepted}");
        }
        fs::remove_dir_all(dist).unwrap();
    }

    #[test]
    fn screens_get_the_page_and_unknown_files_get_none() {
        let dist = site("routes");
        for screen in ["/", "/new-job", "/job/7/reading"] {
            assert_eq!(ask(&dist, screen, "").1, "page", "{screen}");
        }
        for file in ["/none.js", "/a-1.wasm.br", "/_headers.txt"] {
            assert!(ask(&dist, file, "").0.starts_with("HTTP/1.1 404"), "{file}");
        }
        fs::remove_dir_all(dist).unwrap();
    }
}
