//! Starts the app, and says which of its code comes later: each function here that is marked
//! ends up, with all that only it needs, in a file of its own.

use shimwright_web::code::{Build, NotCome, Open, Piece, Pieces};
use wasm_split_helpers::{SplitLoaderError, wasm_split};

fn main() {
    shimwright_web::start::start(Pieces {
        work: || Box::pin(async { work().await.map_err(|_| NotCome) }),
        other: |piece| Box::pin(async move { other(piece).await.map_err(|_| NotCome) }),
    });
}

async fn other(piece: Piece) -> Result<Build, SplitLoaderError> {
    match piece {
        Piece::Builders => builders().await,
        Piece::Guide => guide().await,
        Piece::Help => help().await,
        Piece::Instruments => instruments().await,
        Piece::Keep => keep().await,
        Piece::Paper => paper().await,
        Piece::Practice => practice().await,
    }
}

#[wasm_split(work, fallible)]
fn work() -> Result<Open, SplitLoaderError> {
    Ok(shimwright_web::app::open)
}

#[wasm_split(builders, fallible)]
fn builders() -> Result<Build, SplitLoaderError> {
    Ok(shimwright_web::screens::states)
}

#[wasm_split(guide, fallible)]
fn guide() -> Result<Build, SplitLoaderError> {
    Ok(shimwright_web::guide::screen)
}

#[wasm_split(help, fallible)]
fn help() -> Result<Build, SplitLoaderError> {
    Ok(shimwright_web::help::screen)
}

#[wasm_split(instruments, fallible)]
fn instruments() -> Result<Build, SplitLoaderError> {
    Ok(shimwright_web::instruments::screen)
}

#[wasm_split(keep, fallible)]
fn keep() -> Result<Build, SplitLoaderError> {
    Ok(shimwright_web::screens::keep)
}

#[wasm_split(paper, fallible)]
fn paper() -> Result<Build, SplitLoaderError> {
    Ok(shimwright_web::paper::screen)
}

#[wasm_split(practice, fallible)]
fn practice() -> Result<Build, SplitLoaderError> {
    Ok(shimwright_web::practice::screen)
}
