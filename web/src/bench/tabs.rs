//! Word between the tabs of this device: which books have something new.

use wasm_bindgen::prelude::*;
use web_sys::{BroadcastChannel, MessageEvent};

const CHANNEL: &str = "shimwright";

/// The line to the other tabs. Dropping it hangs up.
pub(super) struct Tabs {
    /// Missing in old browsers: then the books are read again when the tab is looked at.
    channel: Option<BroadcastChannel>,
    _heard: Closure<dyn FnMut(MessageEvent)>,
}

impl Tabs {
    /// Calls `heard` with the names of the books in which another tab wrote; with none where all
    /// is to be read anew.
    pub(super) fn listen(mut heard: impl FnMut(Vec<String>) + 'static) -> Tabs {
        let heard = Closure::new(move |message: MessageEvent| {
            let names = message.data().as_string().unwrap_or_default();
            heard(names.lines().map(str::to_owned).collect());
        });
        let channel = BroadcastChannel::new(CHANNEL).ok();
        if let Some(channel) = &channel {
            channel.set_onmessage(Some(heard.as_ref().unchecked_ref()));
        }
        Tabs { channel, _heard: heard }
    }

    /// Tells the other tabs that something was written in these books.
    pub(super) fn tell(&self, books: &[String]) {
        if let Some(channel) = &self.channel {
            // Unheard, the others read again when they are looked at.
            channel.post_message(&books.join("\n").into()).ok();
        }
    }
}

impl Drop for Tabs {
    fn drop(&mut self) {
        if let Some(channel) = &self.channel {
            channel.close();
        }
    }
}
