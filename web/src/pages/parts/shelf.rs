//! Where cards lie: the browser's database, or the page's own memory where there is none.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

use idb::{Database, Error, Query, Transaction, TransactionMode};
use js_sys::JSON;
use wasm_bindgen::JsValue;

use crate::store::{DOCUMENTS, STORES, database, done};

/// Cards, by their id.
pub(super) const CARDS: &str = "cards";
/// Cards that were deleted, by their id.
pub(super) const DELETED: &str = "deleted";
/// Photographs, by their id.
pub(super) const PHOTOS: &str = "photos";
/// What the page itself remembers.
pub(super) const PAGE: &str = DOCUMENTS;

thread_local! {
    /// What is kept until the page is closed, where nothing can be stored.
    static MEMORY: RefCell<BTreeMap<(&'static str, String), String>> = RefCell::default();
}

/// One thing to write or to take away.
#[derive(Clone, Debug)]
pub(super) struct Change {
    store: &'static str,
    key: String,
    text: Option<String>,
}

impl Change {
    /// The key under which it writes in a store.
    pub(super) fn adds(&self, store: &str) -> Option<&str> {
        (self.store == store && self.text.is_some()).then_some(self.key.as_str())
    }
}

/// Writes a text under a key.
pub(super) fn put(store: &'static str, key: impl Into<String>, text: String) -> Change {
    Change { store, key: key.into(), text: Some(text) }
}

/// Takes away what lies under a key.
pub(super) fn gone(store: &'static str, key: impl Into<String>) -> Change {
    Change { store, key: key.into(), text: None }
}

/// What lies under a key; nothing also where it cannot be read.
pub(super) async fn read(store: &'static str, key: &str) -> Option<String> {
    let Some(database) = database() else {
        return MEMORY.with_borrow(|all| all.get(&(store, key.to_owned())).cloned());
    };
    let transaction = database.transaction(&[store], TransactionMode::ReadOnly).ok()?;
    get(&transaction, store, key).await.ok()?
}

/// Everything in a store.
pub(super) async fn read_all(store: &'static str) -> Vec<(String, String)> {
    listed(store, true).await
}

/// The keys of everything in a store; what lies under them is not taken in.
pub(super) async fn keys(store: &'static str) -> Vec<String> {
    listed(store, false).await.into_iter().map(|(key, _)| key).collect()
}

/// The keys of a store, each with what lies under it or with nothing.
async fn listed(store: &'static str, whole: bool) -> Vec<(String, String)> {
    match database() {
        None => MEMORY.with_borrow(|all| {
            let own = all.iter().filter(|((of, _), _)| *of == store);
            own.map(|((_, key), text)| (key.clone(), text.clone())).collect()
        }),
        Some(database) => all(&database, store, whole).await.unwrap_or_default(),
    }
}

async fn all(
    database: &Rc<Database>,
    store: &str,
    whole: bool,
) -> Result<Vec<(String, String)>, Error> {
    let transaction = database.transaction(&[store], TransactionMode::ReadOnly)?;
    let from = transaction.object_store(store)?;
    let keys = from.get_all_keys(None, None)?;
    let values = if whole { Some(from.get_all(None, None)?) } else { None };
    let keys = keys.await?;
    let values = match values {
        Some(values) => values.await?,
        None => Vec::new(),
    };
    let values = values.iter().map(text).chain(std::iter::repeat(String::new()));
    Ok(keys.iter().map(text).zip(values).collect())
}

/// Writes all of it or nothing, and says whether it did.
pub(super) async fn write(changes: Vec<Change>) -> bool {
    write_over(Vec::new(), changes).await == Written::Done
}

/// How a write ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Written {
    /// Everything is stored.
    Done,
    /// What lay there did not allow it.
    Held,
    /// Nothing could be stored.
    Failed,
}

/// Writes where cards lie as they are expected to, or do not lie where none is.
pub(super) async fn write_over(
    expected: Vec<(String, Option<String>)>,
    changes: Vec<Change>,
) -> Written {
    let (ids, texts): (Vec<String>, Vec<Option<String>>) = expected.into_iter().unzip();
    write_if(ids, Box::new(move |found| (found == texts).then_some(changes))).await
}

/// What follows from the cards that were found: what is to be written, or nothing.
type Then = Box<dyn FnOnce(Vec<Option<String>>) -> Option<Vec<Change>>>;

/// Looks at some cards and writes what follows from them, as one step in which no other tab can write.
///
/// What follows is boxed, so that the step is compiled once and not for each that asks.
pub(super) async fn write_if(ids: Vec<String>, then: Then) -> Written {
    let Some(database) = database() else {
        let found = MEMORY
            .with_borrow(|all| ids.into_iter().map(|id| all.get(&(CARDS, id)).cloned()).collect());
        return match then(found) {
            None => Written::Held,
            Some(changes) => {
                changes.into_iter().for_each(remember);
                Written::Done
            }
        };
    };
    let Ok(transaction) = database.transaction(&STORES, TransactionMode::ReadWrite) else {
        return Written::Failed;
    };
    let mut found = Vec::new();
    for id in &ids {
        let Ok(text) = get(&transaction, CARDS, id).await else { return Written::Failed };
        found.push(text);
    }
    let Some(changes) = then(found) else { return Written::Held };
    for change in changes {
        if apply(&transaction, &change).is_err() {
            // What was written of it before is taken back with the transaction.
            let _ = transaction.abort();
            return Written::Failed;
        }
    }
    match transaction.commit() {
        Ok(transaction) => {
            let whole = done(Some(transaction.into_future())).await;
            if whole { Written::Done } else { Written::Failed }
        }
        Err(_) => Written::Failed,
    }
}

fn remember(Change { store, key, text }: Change) {
    MEMORY.with_borrow_mut(|all| match text {
        Some(text) => drop(all.insert((store, key), text)),
        None => drop(all.remove(&(store, key))),
    });
}

fn apply(transaction: &Transaction, change: &Change) -> Result<(), Error> {
    let store = transaction.object_store(change.store)?;
    let key = JsValue::from_str(&change.key);
    match &change.text {
        Some(text) => store.put(&JsValue::from_str(text), Some(&key)).map(drop),
        None => store.delete(Query::Key(key)).map(drop),
    }
}

async fn get(transaction: &Transaction, store: &str, key: &str) -> Result<Option<String>, Error> {
    let from = transaction.object_store(store)?;
    let value: Option<JsValue> = from.get(JsValue::from_str(key))?.await?;
    Ok(value.as_ref().map(text))
}

/// Anything but a text was not written by this page; it is shown for what it is.
fn text(value: &JsValue) -> String {
    let other = || JSON::stringify(value).ok()?.as_string();
    value.as_string().or_else(other).unwrap_or_default()
}
