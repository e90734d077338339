//! The plain elements that pages are full of: one function each, because a macro spells its code out at
//! every place where it stands.

use yew::prelude::*;

/// A paragraph.
#[inline(never)]
pub(crate) fn p(text: &str) -> Html {
    para("", text)
}

/// A paragraph with a class.
#[inline(never)]
pub(crate) fn para(class: &'static str, text: &str) -> Html {
    let text = AttrValue::from(text.to_owned());
    html! { <p class={(!class.is_empty()).then_some(class)}>{ text }</p> }
}

/// A paragraph for each text.
pub(crate) fn ps<'a>(texts: impl IntoIterator<Item = &'a String>) -> Html {
    texts.into_iter().map(|text| p(text)).collect()
}

/// A part of the page with a class.
#[inline(never)]
pub(crate) fn section(class: &'static str, inside: Vec<Html>) -> Html {
    html! { <section {class}>{ inside }</section> }
}

/// A block with a class.
#[inline(never)]
pub(crate) fn block(class: &'static str, inside: Vec<Html>) -> Html {
    html! { <div {class}>{ inside }</div> }
}

/// A heading inside a part.
#[inline(never)]
pub(crate) fn heading(title: &'static str) -> Html {
    html! { <h2>{ title }</h2> }
}

/// A row of a table of readings: what, and the number.
#[inline(never)]
pub(crate) fn row(name: &str, shown: &str) -> Html {
    let (name, shown) = (AttrValue::from(name.to_owned()), AttrValue::from(shown.to_owned()));
    html! { <tr><th scope="row">{ name }</th><td>{ shown }</td></tr> }
}
