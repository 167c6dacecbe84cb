//! Writes the catalogues anew and says what they lack.

use std::error::Error;
use std::path::Path;
use std::{env, fs};

use catalogue::{LANGUAGES, Part, gather, known, lacks, write};

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
        let lacks = lacks(&gathered.keys, &known);
        for line in &lacks {
            println!("{language}: {line}");
        }
        println!("{language}: {} texts, {} to look at.", gathered.keys.len(), lacks.len());
    }
    Ok(())
}
