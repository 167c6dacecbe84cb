//! The browser the tests drive.

use std::process::Command;

use crate::run::{self, Outcome};

/// Chromium and its driver, from the Debian packages of those names.
pub fn ensure() -> Outcome {
    let missing: Vec<&str> = [("chromium", "chromium"), ("chromedriver", "chromium-driver")]
        .into_iter()
        .filter(|(program, _)| run::answer(Command::new(program).arg("--version")).is_none())
        .map(|(_, package)| package)
        .collect();
    if missing.is_empty() {
        return Ok(());
    }
    let packages = missing.join(" ");
    let by_hand = format!(
        "The browser tests need {packages}. Type: \
         sudo apt-get update && sudo apt-get install --yes --no-install-recommends {packages}"
    );
    let is_root = run::answer(Command::new("id").arg("-u")).as_deref() == Some("0");
    if !is_root || run::answer(Command::new("apt-get").arg("--version")).is_none() {
        return Err(by_hand);
    }
    println!("Installing {packages} …");
    let log = super::tool::log("apt")?;
    run::succeed_logged(Command::new("apt-get").arg("update"), &log)
        .and_then(|()| {
            let install = ["install", "--yes", "--no-install-recommends"];
            run::succeed_logged(
                Command::new("apt-get")
                    .env("DEBIAN_FRONTEND", "noninteractive")
                    .args(install)
                    .args(&missing),
                &log,
            )
        })
        .map_err(|sentence| format!("{sentence}\n{by_hand}"))
}
