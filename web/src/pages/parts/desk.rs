//! The component behind the page and the choice of a part: it holds what was read from storage.

use std::rc::Rc;

use biteband_bench::card::Card;
use biteband_bench::state::{App, Page};
use biteband_bench::view::part_in_hand;
use biteband_bench::words::{PartsPage as P, Ui};
use gloo::timers::callback::Timeout;
use yew::prelude::*;

use super::state::{Hand, Open, Panel, Shown, State, Told, leave, left};
use super::{acts, browser, card, chooser, files, keeper, list, say};
use crate::app::{Dispatch, LANGUAGE, label};
use crate::parts::text::p;

/// Cards that change one after the other are read once, so many milliseconds after the last change.
const CALM: u32 = 300;

/// The page and the choice of a part.
pub(super) struct Desk {
    state: State,
    hand: Hand,
    /// The card of the part in hand, worked out once for everything that shows it.
    own: Option<Card>,
    panel: Panel,
    calm: Option<Timeout>,
    /// Whether the choice was open when this was last drawn.
    chose: bool,
    /// Whether nothing had the focus before this was drawn.
    lost: bool,
}

#[derive(Clone, PartialEq, Properties)]
pub(super) struct Props {
    pub(super) app: Rc<App>,
    pub(super) dispatch: Dispatch,
}

/// A change of what is held.
pub(super) struct Change(pub(super) Box<dyn FnOnce(&mut State)>);

impl Component for Desk {
    type Message = Option<Change>;
    type Properties = Props;

    fn create(ctx: &Context<Self>) -> Self {
        let hand = Hand(ctx.link().clone());
        let looks = hand.clone();
        keeper::look(Some(Rc::new(move || looks.0.send_message(None))));
        acts::read(&hand);
        let mut desk = Self {
            state: left(),
            hand,
            own: None,
            panel: Panel::default(),
            calm: None,
            chose: false,
            lost: true,
        };
        desk.work_out(&ctx.props().app);
        desk
    }

    fn update(&mut self, ctx: &Context<Self>, change: Option<Change>) -> bool {
        self.lost = browser::is_lost();
        let Some(Change(does)) = change else {
            let hand = self.hand.clone();
            self.calm = Some(Timeout::new(CALM, move || acts::read(&hand)));
            return false;
        };
        does(&mut self.state);
        self.work_out(&ctx.props().app);
        true
    }

    fn changed(&mut self, ctx: &Context<Self>, old: &Props) -> bool {
        self.lost = browser::is_lost();
        if old.app.saved.part.id() != ctx.props().app.saved.part.id() {
            self.state.open = Open::default();
        }
        self.work_out(&ctx.props().app);
        true
    }

    fn view(&self, ctx: &Context<Self>) -> Html {
        let Props { app, dispatch } = ctx.props();
        let Self { state, hand, own, panel, .. } = self;
        let (kept, own) = (&*state.cards.kept, own.as_ref());
        let shown = Shown { app, dispatch, state, hand, kept, own, panel };
        html! {
            <>
                <div class="notices" role="status">{ for self.state.told.iter().map(|told| notice(&shown, told)) }</div>
                if app.session.choosing { { chooser::chooser(&shown) } }
                if app.saved.page == Page::Parts { { page(&shown) } }
            </>
        }
    }

    fn rendered(&mut self, ctx: &Context<Self>, _first: bool) {
        let Props { app, .. } = ctx.props();
        let chooses = app.session.choosing;
        if chooses && !self.chose {
            browser::focus(".chooser button");
        } else if self.chose && !chooses {
            chooser::back();
        }
        self.chose = chooses;
        // What had the focus went with what was drawn before.
        if !self.lost && browser::is_lost() {
            browser::focus("main h1");
        }
        acts::fetch_photos(&self.hand, app, &self.state);
    }

    fn destroy(&mut self, ctx: &Context<Self>) {
        keeper::look(None);
        if self.chose {
            chooser::back();
        }
        let mut state = std::mem::take(&mut self.state);
        state.open.named_first.take();
        acts::sweep(&ctx.props().app, &mut state);
        leave(state);
    }
}

impl Desk {
    fn work_out(&mut self, app: &App) {
        self.own = part_in_hand(app, &self.state.cards.kept, self.own.as_ref(), LANGUAGE);
    }
}

fn notice(shown: &Shown<'_>, told: &Told) -> Html {
    let gone = {
        let hand = shown.hand.clone();
        Callback::from(move |_: MouseEvent| hand.change(|state| state.told = None))
    };
    let undo = told.undo.clone().map(|(title, undo)| {
        let (hand, app, dispatch) =
            (shown.hand.clone(), Rc::clone(shown.app), shown.dispatch.clone());
        let back =
            Callback::from(move |_: MouseEvent| acts::undo(&hand, &app, &dispatch, undo.clone()));
        html! { <button type="button" class="strong" onclick={back}>{ title }</button> }
    });
    html! {
        <div class={classes!("notice", told.trouble.then_some("trouble"))}>
            { p(&told.text) }
            <div class="actions">
                { for undo }
                <button type="button" onclick={gone}>{ say(P::Dismiss) }</button>
            </div>
        </div>
    }
}

fn page(shown: &Shown<'_>) -> Html {
    let own = card::card(shown);
    html! {
        <main id="content" class={if own.is_some() { "wide split" } else { "wide" }}>
            <h1 tabindex="-1" class="unseen">{ label(Ui::Parts) }</h1>
            <div class="col asked unsheet">{ list::list(shown) }</div>
            if let Some(own) = own { { own } }
            <div class="col more unsheet">{ files::files(shown) }{ list::aside(shown) }</div>
        </main>
    }
}
