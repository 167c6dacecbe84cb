//! Reading a request head.

/// A request that can be answered.
#[derive(Debug, PartialEq, Eq)]
pub struct Request {
    /// HEAD: the same answer without its body.
    pub head_only: bool,
    /// The path on the site, decoded, without its query; it starts with `/` and climbs nowhere.
    pub path: String,
    /// The value of Accept-Encoding.
    pub encodings: String,
}

/// Why a request is not answered with a file.
#[derive(Debug, PartialEq, Eq, Clone, Copy)]
pub enum Refusal {
    NotUnderstood,
    OnlyReading,
    NotFound,
}

/// Reads the first line and the headers that matter.
pub fn parse(head: &str) -> Result<Request, Refusal> {
    let mut lines = head.lines();
    let mut words = lines.next().unwrap_or_default().split(' ');
    let (Some(method), Some(target), Some("HTTP/1.1" | "HTTP/1.0"), None) =
        (words.next(), words.next(), words.next(), words.next())
    else {
        return Err(Refusal::NotUnderstood);
    };
    if method != "GET" && method != "HEAD" {
        return Err(Refusal::OnlyReading);
    }
    let path = target.split(['?', '#']).next().unwrap_or_default();
    let path = decode(path).ok_or(Refusal::NotUnderstood)?;
    if !path.starts_with('/') {
        return Err(Refusal::NotUnderstood);
    }
    if !is_inside(&path) {
        return Err(Refusal::NotFound);
    }
    let encodings = lines
        .filter_map(|line| line.split_once(':'))
        .find(|(name, _)| name.eq_ignore_ascii_case("accept-encoding"))
        .map_or_else(String::new, |(_, value)| value.trim().to_owned());
    Ok(Request { head_only: method == "HEAD", path, encodings })
}

/// Hidden files, `..` and other systems' separators never leave the folder because they never enter.
fn is_inside(path: &str) -> bool {
    !path.contains(['\\', '\0']) && path.split('/').all(|part| !part.starts_with('.'))
}

fn decode(path: &str) -> Option<String> {
    let mut bytes = Vec::new();
    let mut rest = path.bytes();
    while let Some(byte) = rest.next() {
        if byte != b'%' {
            bytes.push(byte);
            continue;
        }
        let digit = |byte: Option<u8>| char::from(byte?).to_digit(16);
        let (high, low) = (digit(rest.next())?, digit(rest.next())?);
        bytes.push(u8::try_from(high * 16 + low).ok()?);
    }
    String::from_utf8(bytes).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn path(target: &str) -> Result<String, Refusal> {
        parse(&format!("GET {target} HTTP/1.1\r\n\r\n")).map(|request| request.path)
    }

    #[test]
    fn the_parts_that_matter_are_read() {
        let request =
            parse("HEAD /a%20b?x=1 HTTP/1.1\r\nHost: x\r\naccept-ENCODING: gzip, br\r\n\r\n");
        let wanted = Request { head_only: true, path: "/a b".into(), encodings: "gzip, br".into() };
        assert_eq!(request, Ok(wanted));
    }

    #[test]
    fn climbing_out_is_refused_in_every_spelling() {
        for target in [
            "/../Cargo.toml",
            "/icons/../../Cargo.toml",
            "/%2e%2e/Cargo.toml",
            "/..%2fCargo.toml",
            "/..%5cCargo.toml",
            "/.git/config",
            "/a%00b",
        ] {
            assert_eq!(path(target), Err(Refusal::NotFound), "{target}");
        }
    }

    #[test]
    fn only_reading_is_allowed_and_nonsense_is_not_understood() {
        assert_eq!(parse("POST / HTTP/1.1\r\n\r\n"), Err(Refusal::OnlyReading));
        for head in ["", "GET", "GET /", "GET / SPDY/3", "GET / HTTP/1.1 extra"] {
            assert_eq!(parse(head), Err(Refusal::NotUnderstood), "{head}");
        }
        for target in ["/%zz", "/%", "http://other/", "/%ff"] {
            assert_eq!(path(target), Err(Refusal::NotUnderstood), "{target}");
        }
    }
}
