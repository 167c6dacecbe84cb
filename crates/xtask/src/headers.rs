//! The response headers of the site, in the `_headers` form that static hosts read.
//!
//! A line without indent names a path or `/*`; the indented lines after it are its headers.
//! The same file drives our own server, so what is tested is what is deployed.

/// Its name in `dist/`.
pub const FILE: &str = "_headers";

/// For every response. Only the camera is let in, for photos of a step.
const ALWAYS: [(&str, &str); 6] = [
    ("X-Content-Type-Options", "nosniff"),
    ("X-Frame-Options", "DENY"),
    ("Referrer-Policy", "no-referrer"),
    ("Cross-Origin-Opener-Policy", "same-origin"),
    ("Cross-Origin-Resource-Policy", "same-origin"),
    (
        "Permissions-Policy",
        "camera=(self), microphone=(), geolocation=(), payment=(), usb=(), serial=()",
    ),
];

/// What must always be asked for again, so that a new version is noticed.
const FRESH: [&str; 4] = ["/", "/index.html", "/sw.js", "/version.json"];

/// The file's text for a policy and the files whose names change with their content.
pub fn write<'a>(policy: &str, hashed: impl Iterator<Item = &'a str>) -> String {
    // Only a header can forbid framing; the page's own copy of the policy cannot.
    let mut text = format!("/*\n  Content-Security-Policy: {policy}; frame-ancestors 'none'\n");
    for (name, value) in ALWAYS {
        text.push_str(&format!("  {name}: {value}\n"));
    }
    for path in FRESH {
        text.push_str(&format!("{path}\n  Cache-Control: no-cache\n"));
    }
    for path in hashed {
        text.push_str(&format!("{path}\n  Cache-Control: public, max-age=31536000, immutable\n"));
    }
    text
}

/// The headers that `text` gives to `path`, in order.
pub fn for_path<'a>(text: &'a str, path: &str) -> Vec<(&'a str, &'a str)> {
    let mut applies = false;
    let mut headers = Vec::new();
    for line in text.lines() {
        if !line.starts_with(' ') {
            applies = line == "/*" || line == path;
        } else if let (true, Some(header)) = (applies, line.trim().split_once(": ")) {
            headers.push(header);
        }
    }
    headers
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_is_read_back_for_the_right_path() {
        let text = write("default-src 'none'", ["/app-1.css"].into_iter());
        let cache = |path| {
            let found =
                for_path(&text, path).into_iter().find(|(name, _)| *name == "Cache-Control");
            found.map(|(_, value)| value)
        };
        assert_eq!(cache("/sw.js"), Some("no-cache"));
        assert_eq!(cache("/app-1.css"), Some("public, max-age=31536000, immutable"));
        assert_eq!(cache("/licences.txt"), None);
        let policy = for_path(&text, "/licences.txt").into_iter().next();
        let wanted = "default-src 'none'; frame-ancestors 'none'";
        assert_eq!(policy, Some(("Content-Security-Policy", wanted)));
    }
}
