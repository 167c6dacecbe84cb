//! Which way a part faced, in the unit's own words: to the nose, aft, up, down.

use words::{key, t};

/// A way a part can face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// To the nose of the gearcase.
    Nose,
    /// To the propeller.
    Aft,
    /// To the powerhead.
    Up,
    /// To the skeg.
    Down,
}

/// What is asked of a part whose words name no way.
const OTHER_WAY: &str = "the other way round";

/// What is written down where nobody saw which way it faced.
pub const NOT_SURE: &str = key!("not sure");

/// Words that name a way, as people write them, in every language of the app.
const NAMED: [(Way, &[&str]); 4] = [
    (Way::Nose, &["nose", "forward", "front", "fore", "morro", "proa", "delante"]),
    (Way::Aft, &["aft", "propeller", "rear", "back", "popa", "hélice", "atrás"]),
    (Way::Up, &["up", "upward", "upwards", "top", "arriba"]),
    (Way::Down, &["down", "downward", "downwards", "bottom", "abajo"]),
];

impl Way {
    /// Every way, as they are offered.
    pub const ALL: [Way; 4] = [Way::Nose, Way::Aft, Way::Up, Way::Down];

    /// How it ends what is written down: "to the nose". [`faced`] turns that.
    pub fn words(self) -> &'static str {
        match self {
            Way::Nose => "to the nose",
            Way::Aft => key!("aft"),
            Way::Up => key!("up"),
            Way::Down => key!("down"),
        }
    }

    /// The way that words speak of, the last one where they name several; `None`: none.
    ///
    /// ```
    /// use job::guide::Way;
    /// assert_eq!(Way::of("oil grooves aft"), Some(Way::Aft));
    /// assert_eq!(Way::of("open coil outside"), None);
    /// ```
    pub fn of(words: &str) -> Option<Way> {
        let words = words.to_lowercase();
        let mut names = words.split(|letter: char| !letter.is_alphabetic());
        names.rfind(|name| way(name).is_some()).and_then(way)
    }

    fn opposite(self) -> Way {
        match self {
            Way::Nose => Way::Aft,
            Way::Aft => Way::Nose,
            Way::Up => Way::Down,
            Way::Down => Way::Up,
        }
    }
}

fn way(name: &str) -> Option<Way> {
    NAMED.iter().find(|row| row.1.contains(&name)).map(|row| row.0)
}

/// What faced which way: "oil grooves aft". A way that ends the words gives way to another.
pub fn facing(what: &str, way: Option<Way>) -> String {
    let what = what.trim();
    let Some(way) = way.filter(|way| Way::of(what) != Some(*way)) else { return what.to_owned() };
    let said = Way::of(what).and_then(|said| what.strip_suffix(said.words()));
    let what = said.unwrap_or(what).trim();
    if what.is_empty() { way.words().to_owned() } else { format!("{what} {}", way.words()) }
}

/// The same part the other way round: "oil grooves to the nose".
pub fn turned(facing: &str) -> String {
    let way = Way::of(facing).and_then(|way| Some((facing.strip_suffix(way.words())?, way)));
    match way {
        Some((what, way)) => format!("{what}{}", way.opposite().words()),
        None => OTHER_WAY.to_owned(),
    }
}

/// What was written down of the way a part faced, as it is shown.
pub fn faced(facing: &str) -> String {
    let way = Way::of(facing).and_then(|way| Some((facing.strip_suffix(way.words())?, way)));
    match way {
        Some((what, way)) if !what.trim().is_empty() => {
            format!("{} {}", t(what.trim()), t(way.words()))
        }
        _ => t(facing).to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_name_a_way_and_its_opposite() {
        let said = facing("oil grooves", Some(Way::Aft));
        assert_eq!(said, "oil grooves aft");
        assert_eq!(turned(&said), "oil grooves to the nose");
        assert_eq!(turned(&turned(&said)), said);
        assert_eq!(facing("", Some(Way::Nose)), "to the nose");
        assert_eq!(facing(" UP mark at 12 h ", None), "UP mark at 12 h");
        assert_eq!(Way::of("UP mark at 12 h"), Some(Way::Up));
        assert_eq!(turned("UP mark at 12 h"), "the other way round");
        assert_eq!(facing("teeth aft", Some(Way::Aft)), "teeth aft", "said once");
        assert_eq!(facing("teeth to the nose", Some(Way::Aft)), "teeth aft", "changed");
        assert_eq!(facing("aft", Some(Way::Up)), "up");
        assert_eq!(Way::of("thick edge from the top to the nose"), Some(Way::Nose), "the last one");
        assert_eq!(Way::of("cup and shaft"), None, "no part of another word");
    }
}
