//! Photographs of the part.

use biteband_bench::card::Photo;
use biteband_bench::card::file::{MOST_NOTES, MOST_PHOTOS};
use biteband_bench::state::PartAction;
use biteband_bench::words::{PartsPage as P, PartsSays};
use yew::prelude::*;

use super::card::Own;
use super::{acts, browser, say};
use crate::app::LANGUAGE;
use crate::parts::text::{p, para};

/// The photos, folded away where there are none.
pub(super) fn photos(own: &Own<'_>) -> Html {
    let all = &own.card.photos;
    let add = {
        let (hand, dispatch) = (own.shown.hand.clone(), own.shown.dispatch.clone());
        Callback::from(move |event: Event| {
            if let Some(file) = browser::chosen(&event) {
                acts::add_photo(&hand, &dispatch, file);
            }
        })
    };
    let rows = all.iter().enumerate().map(|(index, photo)| one(own, index + 1, photo));
    html! {
        <details class="card" open={!all.is_empty()}>
            <summary>{ say(P::Photos) }</summary>
            <ul class="photos">{ for rows }</ul>
            if all.len() < MOST_PHOTOS {
                <label class="pick">{ say(P::TakePhoto) }
                    <input type="file" accept="image/*" capture="environment" onchange={add} />
                </label>
                { para("small", say(P::PhotoHint)) }
            } else {
                { para("hint", say(P::PhotosFull)) }
            }
        </details>
    }
}

fn one(own: &Own<'_>, number: usize, photo: &Photo) -> Html {
    let shown = own.shown;
    let name = LANGUAGE.parts(PartsSays::PhotoOf { name: &own.view.name, number });
    let text = photo.text.trim();
    let alt = if text.is_empty() { name.clone() } else { text.to_owned() };
    let picture = match shown.state.photos.get(&photo.id) {
        Some(Some(address)) => html! {
            <img src={address.clone()} {alt} width={photo.width.to_string()} height={photo.height.to_string()} />
        },
        Some(None) => p(say(P::PhotoMissing)),
        None => Html::default(),
    };
    let id = format!("photo-{}", photo.id);
    let said = {
        let (dispatch, photo) = (shown.dispatch.clone(), photo.id.clone());
        Callback::from(move |event: InputEvent| {
            if let Some(text) = browser::value(&event) {
                dispatch.emit(PartAction::NamePhoto(photo.clone(), text).into());
            }
        })
    };
    let gone = {
        let (hand, dispatch, photo) = (shown.hand.clone(), shown.dispatch.clone(), photo.clone());
        Callback::from(move |_: MouseEvent| acts::remove_photo(&hand, &dispatch, photo.clone()))
    };
    let remove = LANGUAGE.parts(PartsSays::RemoveOf { what: &name });
    html! {
        <li key={photo.id.clone()}>
            { picture }
            <div class="field">
                <label for={id.clone()}>{ say(P::PhotoText) }</label>
                <input {id} type="text" autocomplete="off" maxlength={MOST_NOTES.to_string()} value={photo.text.clone()} oninput={said} />
            </div>
            <button type="button" aria-label={remove} onclick={gone}>{ say(P::Remove) }</button>
        </li>
    }
}
