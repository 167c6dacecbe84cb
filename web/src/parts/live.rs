//! The few shapes that everything live on a screen is made of.
//!
//! The framework compiles whatever stands in a view by its type, and every closure is a type of its
//! own: some two kilobytes each. Behind these boxes all of them share one.

use leptos::ev::MouseEvent;
use leptos::prelude::*;

/// A piece of a view that is drawn anew whenever something it reads changes.
pub fn live(view: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    let view: Box<dyn Fn() -> AnyView + Send> = Box::new(view);
    view.into_any()
}

/// Words, or a class, that follow what they read.
pub fn words(words: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    Signal::derive(words)
}

/// A yes or no that follows what it reads.
pub fn whether(is: impl Fn() -> bool + Send + Sync + 'static) -> Signal<bool> {
    Signal::derive(is)
}

/// An attribute that is there with the value "true", or not there.
pub fn mark(is: impl Fn() -> bool + Send + Sync + 'static) -> Signal<Option<String>> {
    Signal::derive(move || is().then(|| "true".to_owned()))
}

/// What a press does.
pub fn press(does: Callback<()>) -> Box<dyn FnMut(MouseEvent)> {
    Box::new(move |_| does.run(()))
}
