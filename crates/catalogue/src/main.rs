//! Writes the catalogues anew and says what they lack.

use std::error::Error;
use std::path::Path;
use std::{env, fs};

use catalogue::{LANGUAGES, Part, faults, gather, known, write};

fn main() -> Result<(), Box<dyn Error>> {
    let root = env::args().nth(1).unwrap_or_else(|| ".".to_owned());
    let root = Path::new(&root);
    let gathered = gather(root)?;
    for language in LANGUAGES {
        let known = known(root, language)?;
        for part in Part::ALL {
            let path = root.join("crates/words/po").join(part.file(language));
            fs::write(path, write(language, part, &gathered.keys, &known))?;
        }
        let mut wanting = 0;
        for key in &gathered.keys {
            let turned = known.get(&key.text).map_or("", String::as_str);
            for fault in faults(&key.text, turned) {
                println!("{language}: {}: {:?} {fault}", key.at, key.text);
                wanting += 1;
            }
        }
        let all = gathered.keys.len();
        println!("{language}: {all} texts, {wanting} to look at.");
    }
    Ok(())
}
