//! What storage and the service worker have to say.

use biteband_bench::state::{Action, Notice, SCHEMA};
use biteband_bench::words::{Phrase, Ui};
use yew::prelude::*;

use super::chips::press;
use crate::app::{Dispatch, LANGUAGE, label};

/// Everything that is to be told; `unreadable` is the stored text that could not be read.
pub(crate) fn notices(list: &[Notice], unreadable: Option<&str>, dispatch: &Dispatch) -> Html {
    html! {
        <div class="notices" role="status">
            { for list.iter().map(|notice| one(*notice, unreadable, dispatch)) }
        </div>
    }
}

fn one(notice: Notice, unreadable: Option<&str>, dispatch: &Dispatch) -> Html {
    let phrase = match notice {
        Notice::OfflineReady | Notice::UpdateWaiting => None,
        Notice::StoredDamaged => Some(Phrase::StoredDamaged),
        Notice::StoredNewer(found) => Some(Phrase::StoredNewer { found, known: SCHEMA }),
        Notice::StorageRefused => Some(Phrase::StorageRefused),
        Notice::StorageFull => Some(Phrase::StorageFull),
    };
    let waiting = notice == Notice::UpdateWaiting;
    let news = if waiting { label(Ui::UpdateWaiting) } else { label(Ui::OfflineReady) };
    let text = phrase.map_or(news.into(), |phrase| LANGUAGE.say(phrase));
    let trouble = !waiting && notice != Notice::OfflineReady;
    let dismiss = press(dispatch, Action::Dismiss(notice));
    html! {
        <div class={classes!("notice", trouble.then_some("trouble"))}>
            <p>{ text }</p>
            if notice == Notice::StoredDamaged {
                if let Some(text) = unreadable {
                    <details>
                        <summary>{ label(Ui::ShowStored) }</summary>
                        <textarea readonly=true rows="4" aria-label={label(Ui::ShowStored)} value={text.to_owned()} />
                    </details>
                }
            }
            <div class="actions">
                if waiting {
                    <button type="button" class="strong" onclick={Callback::from(|_: MouseEvent| update_now())}>{ label(Ui::UpdateNow) }</button>
                }
                <button type="button" onclick={dismiss}>{ if waiting { label(Ui::UpdateLater) } else { label(Ui::Dismiss) } }</button>
            </div>
        </div>
    }
}

/// Asks the start script for the new version; every change was written when it was made.
fn update_now() {
    if let Ok(event) = web_sys::CustomEvent::new("biteband:update-now") {
        // Nobody can cancel this event, so what comes back says nothing.
        let _ = gloo::utils::window().dispatch_event(&event);
    }
}
