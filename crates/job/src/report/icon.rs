//! States as shape and word.

use crate::CheckState;

const WARN: &str = "<path d=\"M12 2L23 21.5H1Z\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2.6\"/><path d=\"M12 9v6M12 16.8v2.4\" stroke=\"currentColor\" stroke-width=\"3\"/>";

/// Name of a state in classes, and its shape.
fn sign(state: &CheckState) -> (&'static str, &'static str) {
    match state {
        CheckState::InBand => (
            "in",
            "<circle cx=\"12\" cy=\"12\" r=\"10\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"3\"/><path d=\"M6.5 12.5l4 4 7-8\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"3.4\"/>",
        ),
        CheckState::NearLimit | CheckState::CannotProve | CheckState::TightSpot => (
            "near",
            "<path d=\"M12 1.5L22.5 12 12 22.5 1.5 12Z\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"2.6\"/><path d=\"M7 13L13 7M10 16l6-6\" stroke=\"currentColor\" stroke-width=\"2.6\"/>",
        ),
        CheckState::Out => (
            "out",
            "<path d=\"M8 1.5h8L22.5 8v8L16 22.5H8L1.5 16V8Z\" fill=\"currentColor\"/><path d=\"M8 8l8 8M16 8l-8 8\" stroke=\"var(--out)\" stroke-width=\"3\"/>",
        ),
        CheckState::Stale { .. } => (
            "stale",
            "<path d=\"M9 7H7a5 5 0 0 0 0 10h2M15 7h2a5 5 0 0 1 0 10h-2\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"3\"/><path d=\"M11 4l2 4M11 20l2-4\" stroke=\"currentColor\" stroke-width=\"2.4\"/>",
        ),
        CheckState::Locked { .. } => (
            "lock",
            "<rect x=\"4\" y=\"11\" width=\"16\" height=\"11\" fill=\"currentColor\"/><path d=\"M7.5 11V8a4.5 4.5 0 0 1 9 0v3\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"3\"/>",
        ),
        CheckState::Open | CheckState::NoBand => (
            "open",
            "<circle cx=\"12\" cy=\"12\" r=\"9.5\" fill=\"none\" stroke=\"currentColor\" stroke-width=\"3\"/><path d=\"M12 2.5a9.5 9.5 0 0 1 0 19Z\" fill=\"currentColor\"/>",
        ),
    }
}

/// A state as shape, edge and word.
pub fn state(state: &CheckState) -> String {
    let (name, shape) = sign(state);
    format!("<span class=\"state state--{name}\">{}{state}</span>", icon(shape))
}

/// The triangle before cautions.
pub fn warn() -> String {
    icon(WARN)
}

fn icon(shape: &str) -> String {
    format!("<svg class=\"ic\" viewBox=\"0 0 24 24\" aria-hidden=\"true\">{shape}</svg>")
}
