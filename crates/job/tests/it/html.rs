//! A strict reader of the little HTML that a record is written in.

/// A tag or a text of HTML.
#[derive(Debug)]
pub enum Piece {
    Open { name: String, attributes: Vec<(String, String)>, is_closed: bool },
    Close(String),
    Text(String),
}

/// A strict reader of the little HTML that is written: every attribute is quoted.
pub fn pieces(html: &str) -> Vec<Piece> {
    let (mut pieces, mut rest) = (Vec::new(), html);
    while let Some((before, after)) = rest.split_once('<') {
        pieces.push(Piece::Text(unescaped(before)));
        if let Some(style) = after.strip_prefix("style>") {
            rest = style.split_once("</style>").unwrap().1;
            continue;
        }
        let (mut tag, mut quoted) = (String::new(), false);
        let end = after.char_indices().find(|(_, letter)| {
            quoted ^= *letter == '"';
            !quoted && *letter == '>'
        });
        let end = end.unwrap().0;
        tag.push_str(&after[..end]);
        rest = &after[end + 1..];
        if let Some(name) = tag.strip_prefix('/') {
            pieces.push(Piece::Close(name.to_owned()));
        } else {
            let is_closed = tag.ends_with('/');
            let (name, list) = tag.trim_end_matches('/').split_once(' ').unwrap_or((&tag, ""));
            let name = name.trim_end_matches('/').to_owned();
            pieces.push(Piece::Open { name, attributes: attributes(list), is_closed });
        }
    }
    pieces.push(Piece::Text(unescaped(rest)));
    pieces
}

fn attributes(mut list: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    while let Some((name, after)) = list.split_once("=\"") {
        let (value, more) = after.split_once('"').unwrap();
        found.push((name.trim().to_owned(), unescaped(value)));
        list = more;
    }
    found
}

fn unescaped(text: &str) -> String {
    let text = text.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"");
    text.replace("&#39;", "'").replace("&amp;", "&")
}

pub fn text(html: &str) -> String {
    let texts = pieces(html).into_iter().filter_map(|piece| match piece {
        Piece::Text(text) => Some(text),
        _ => None,
    });
    texts.collect::<Vec<_>>().join(" ")
}

/// Tags and attributes that may be there, and nothing that runs or asks.
pub fn harmless(html: &str) {
    const TAGS: [&str; 38] = [
        "!doctype",
        "html",
        "head",
        "meta",
        "title",
        "body",
        "main",
        "section",
        "header",
        "div",
        "p",
        "b",
        "br",
        "h1",
        "h2",
        "h3",
        "ul",
        "li",
        "dl",
        "dt",
        "dd",
        "table",
        "thead",
        "tbody",
        "tr",
        "th",
        "td",
        "span",
        "small",
        "figure",
        "figcaption",
        "img",
        "svg",
        "path",
        "text",
        "circle",
        "rect",
        "defs",
    ];
    const ATTRIBUTES: [&str; 38] = [
        "lang",
        "charset",
        "http-equiv",
        "content",
        "name",
        "class",
        "scope",
        "data-as",
        "src",
        "alt",
        "viewBox",
        "width",
        "height",
        "role",
        "aria-label",
        "aria-hidden",
        "d",
        "x",
        "y",
        "cx",
        "cy",
        "r",
        "text-anchor",
        "fill",
        "stroke",
        "stroke-width",
        "id",
        "patternUnits",
        "patternTransform",
        "opacity",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
        "",
    ];
    let mut open: Vec<String> = Vec::new();
    for piece in pieces(html) {
        match piece {
            Piece::Text(_) => {}
            Piece::Open { name, attributes, is_closed } => {
                assert!(TAGS.contains(&name.as_str()) || name == "pattern", "<{name}>");
                for (attribute, value) in attributes {
                    assert!(ATTRIBUTES.contains(&attribute.as_str()), "{attribute} of <{name}>");
                    assert!(attribute != "src" || value.starts_with("data:image/"), "{value}");
                }
                if !is_closed && !["!doctype", "meta", "br", "img"].contains(&name.as_str()) {
                    open.push(name);
                }
            }
            Piece::Close(name) => assert_eq!(open.pop().as_deref(), Some(name.as_str())),
        }
    }
    assert_eq!(open, [] as [String; 0]);
}
