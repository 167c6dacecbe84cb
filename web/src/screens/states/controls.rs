//! Docks, buttons and the focus on every ground.

use leptos::prelude::*;

use super::{Samples, nothing};
use crate::parts::{Act, Back, Chip, Choice, Door, Glyph, Icon, Pick, PictureCard, Seg, Tag, Tick};
use crate::pictures::Picture;
use crate::pictures::layouts::Layout;

#[component]
pub fn Docks() -> impl IntoView {
    let styled = |class: &'static str| {
        view! {
            <div class="dock">
                <Back href="/" words="Job"/>
                <button class=format!("btn btn--main {class}") type="button">"Read position 4"</button>
            </div>
        }
    };
    view! {
        <Samples title="Dock: the blue button">
            <p class="label">"Ready: names the act"</p>
            <div class="dock">
                <Back href="/" words="Job"/>
                <Act words="Read position 4" href="/states"/>
            </div>
            <p class="label">"Waits: says what for"</p>
            <div class="dock">
                <Back href="/" words="Job"/>
                <Act words="Read 270° first" waits=true on_press=nothing()/>
            </div>
            <p class="label">"Pressed"</p>
            {styled("force-press")}
            <p class="label">"Focus"</p>
            {styled("force-focus")}
            <p class="label">"Saving: only over 300 ms"</p>
            <div class="dock">
                <Back href="/" words="Job"/>
                <Act words="Saving" busy=true glyph=Glyph::Clock on_press=nothing()/>
            </div>
        </Samples>
    }
}

#[component]
pub fn Buttons() -> impl IntoView {
    let chosen = RwSignal::new(Some(0));
    let choose = Callback::new(move |at| chosen.set(Some(at)));
    let answer = RwSignal::new(true);
    let on = RwSignal::new(true);
    let turn = Callback::new(move |()| on.update(|it| *it = !*it));
    let shut = Pick { shut: true, ..Pick::from("Not here") };
    view! {
        <Samples title="Buttons">
            <div class="btns">
                <button class="btn" type="button">"Route"</button>
                <button class="btn btn--plain" type="button">"Plain"</button>
                <button class="btn force-focus" type="button">"Focus"</button>
                <button class="btn" type="button" aria-disabled="true">"Not yet"</button>
            </div>
            <div class="chips">
                <Chip pressed=on on_press=turn>"12 h: no"</Chip>
                <Chip pressed=false on_press=nothing()>"9 h: try it"</Chip>
                <Chip pressed=false on_press=nothing() disabled=true>"6 h"</Chip>
            </div>
            <Seg
                id="sample-seg"
                label="Sample"
                picks=vec!["Chosen".into(), "Other".into(), shut]
                chosen
                on_choose=choose
            />
            <Tick title="Ticked" ticked=true on_turn=Callback::new(|_| {})/>
            <Tick title="Not ticked" ticked=false on_turn=Callback::new(|_| {})/>
            <div>
                <Choice
                    group="sample"
                    title="Chosen answer"
                    note="What it means."
                    chosen=answer
                    on_choose=Callback::new(move |()| answer.set(true))
                />
                <Choice
                    group="sample"
                    title="Other answer"
                    chosen=Signal::derive(move || !answer.get())
                    on_choose=Callback::new(move |()| answer.set(false))
                />
                <Door
                    glyph=Glyph::Plus
                    title="Start a real job"
                    note="Layout, sheet, boat."
                    href="/new-job"
                />
            </div>
            <PictureCard
                title="Forward and reverse"
                words="One pinion, two gears, sliding dog."
                chosen=true
                on_choose=nothing()
            >
                <Picture drawing=Layout::B.draw("Forward and reverse")/>
            </PictureCard>
            <PictureCard
                title="Single driven gear"
                words="Not built yet."
                chosen=false
                shut=true
                on_choose=nothing()
            >
                <Picture drawing=Layout::A.draw("Single driven gear")/>
            </PictureCard>
        </Samples>
    }
}

#[component]
pub fn Grounds() -> impl IntoView {
    view! {
        <Samples title="Focus on every ground">
            <div class="swatch">
                <button class="btn force-focus" type="button">"on sheet"</button>
            </div>
            <div class="swatch swatch--ground">
                <button class="btn btn--plain force-focus" type="button">"on bench"</button>
            </div>
            <div class="swatch swatch--plate">
                <button class="unit force-focus" type="button">
                    <span aria-current="true">"mm"</span>
                    <span>"in"</span>
                </button>
            </div>
            <div class="swatch swatch--brass">
                <a class="btn force-focus" href="/states">"on brass"</a>
                <Tag words="B1"/>
            </div>
            <div class="swatch swatch--tint">
                <a class="btn btn--main force-focus" href="/states">
                    <Icon glyph=Glyph::Go/>
                    "on tint"
                </a>
            </div>
        </Samples>
    }
}
