//! The content policy of the page.

use crate::digest;
use crate::run::Outcome;

/// Everything the page may do. What is not named is refused.
///
/// The digest belongs to the one inline script, which Trunk writes to start the app.
pub fn policy(page: &str) -> Outcome<String> {
    let scripts = inline_scripts(page);
    let [script] = scripts.as_slice() else {
        return Err(format!(
            "The built page has {} inline scripts where one was expected; \
             the content policy names exactly one. Move the others into files.",
            scripts.len()
        ));
    };
    let digest = digest::integrity(script.as_bytes());
    Ok(format!(
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval' '{digest}'; style-src 'self'; \
         img-src 'self' blob:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; \
         base-uri 'none'; form-action 'none'; object-src 'none'"
    ))
}

/// The page with its policy before anything it could apply to, and its version.
pub fn with_policy(page: &str, policy: &str, version: &str) -> Outcome<String> {
    let anchor = "<meta charset=\"utf-8\">";
    let (before, after) = page
        .split_once(anchor)
        .ok_or_else(|| format!("web/index.html has no {anchor}, after which the policy is put."))?;
    let before = before.replace("data-version=\"dev\"", &format!("data-version=\"{version}\""));
    let meta = format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">");
    Ok(format!("{before}{anchor}\n{meta}{after}"))
}

/// The text of every script that has no `src`.
fn inline_scripts(page: &str) -> Vec<&str> {
    page.split("<script")
        .skip(1)
        .filter_map(|rest| {
            let (attributes, rest) = rest.split_once('>')?;
            let (text, _) = rest.split_once("</script>")?;
            (!attributes.contains("src=")).then_some(text)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "<html data-version=\"dev\"><meta charset=\"utf-8\">\
        <script src=\"/boot.js\"></script><script type=\"module\">abc</script>";

    #[test]
    fn the_policy_carries_the_digest_of_the_inline_script() {
        let policy = policy(PAGE).unwrap();
        assert!(policy.contains("'sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0='"));
    }

    #[test]
    fn the_policy_comes_before_every_script() {
        let page = with_policy(PAGE, "default-src 'none'", "1.2.3").unwrap();
        assert!(page.find("http-equiv").unwrap() < page.find("<script").unwrap());
        assert!(page.contains("data-version=\"1.2.3\""));
    }

    #[test]
    fn a_second_inline_script_is_refused() {
        let sentence = policy(&PAGE.repeat(2)).unwrap_err();
        assert!(sentence.contains("2 inline scripts"), "{sentence}");
    }
}
