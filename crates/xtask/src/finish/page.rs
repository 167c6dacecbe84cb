//! The content policy of the page, and what asks for the app.

use crate::code;
use crate::run::Outcome;

/// Everything the page may do. What is not named is refused, and nothing inline runs.
pub const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; \
     style-src 'self'; img-src 'self' blob:; connect-src 'self'; manifest-src 'self'; \
     worker-src 'self'; base-uri 'none'; form-action 'none'; object-src 'none'";

/// The page, asking for the pieces of code in `folder`.
pub fn with_code(page: &str, folder: &str) -> Outcome<String> {
    let marks = page.split_once("<!-- code:").and_then(|(before, rest)| {
        let (_, after) = rest.split_once("-->")?;
        Some((before, after))
    });
    let (before, after) =
        marks.ok_or("web/page/index.html has no <!-- code: … -->, where the app is asked for.")?;
    Ok(format!("{before}{}{after}", code::asked_for(folder)))
}

/// The policy runs no inline script, so a page that has one would be broken.
pub fn forbid_inline(page: &str) -> Outcome {
    match inline_scripts(page).len() {
        0 => Ok(()),
        count => Err(format!(
            "The built page has {count} inline scripts, which the content policy refuses. \
             Move them into files."
        )),
    }
}

/// The page with its policy before anything it could apply to, and its version.
pub fn with_policy(page: &str, version: &str) -> Outcome<String> {
    let anchor = "<meta charset=\"utf-8\">";
    let (before, after) = page.split_once(anchor).ok_or_else(|| {
        format!("web/page/index.html has no {anchor}, after which the policy is put.")
    })?;
    let before = before.replace("data-version=\"dev\"", &format!("data-version=\"{version}\""));
    let meta = format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{POLICY}\">");
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
        <script src=\"/boot.js\"></script><!-- code: here. -->";

    #[test]
    fn the_policy_comes_before_every_script() {
        let page = with_policy(PAGE, "1.2.3").unwrap();
        assert!(page.find("http-equiv").unwrap() < page.find("<script").unwrap());
        assert!(page.contains("data-version=\"1.2.3\""));
    }

    #[test]
    fn the_app_is_asked_for_where_the_page_says() {
        let page = with_code(PAGE, "code-1").unwrap();
        assert!(page.ends_with("<script type=\"module\" src=\"/code-1/start.js\"></script>"));
        assert!(with_code("<html>", "code-1").unwrap_err().contains("<!-- code:"));
    }

    #[test]
    fn an_inline_script_is_refused() {
        assert_eq!(forbid_inline(PAGE), Ok(()));
        let sentence = forbid_inline("<script>abc</script>").unwrap_err();
        assert!(sentence.contains("1 inline scripts"), "{sentence}");
    }
}
