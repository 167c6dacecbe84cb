//! What the app is and is not.

use leptos::prelude::*;
use words::t;

use crate::parts::{Facts, Glyph, Icon, Row};

#[component]
pub fn About() -> impl IntoView {
    let version = env!("CARGO_PKG_VERSION").to_owned();
    let facts = vec![(t("Version"), version), (t("Sends anything out"), "never".to_owned())];
    view! {
        <div class="sheet sheet--quiet">
            <h2>{t("About and cautions")}</h2>
            <ul class="flow">
                <li>
                    <b>{t("The limits are yours.")}</b>
                    {t(" The app has none built in.")}
                </li>
                <li>
                    <b>{t("A print-out is no permit.")}</b>
                    {t(" Who signs, answers for the work.")}
                </li>
                <li>
                    <b>{t("Hot case, stored pressure, blades:")}</b>
                    {t(" your manual and local rules go first.")}
                </li>
            </ul>
            <Facts facts/>
            <Row title=t("Short guide") note=t("the whole job in a few pages, to print") href="/guide">
                <Icon glyph=Glyph::Go/>
            </Row>
            // Not a screen: the router is passed by.
            <a class="row" href="/licences.txt" target="_blank" rel="external">
                <p>
                    <b>{t("Licences")}</b>
                </p>
                <Icon glyph=Glyph::Go/>
            </a>
        </div>
    }
}
