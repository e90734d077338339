//! The browser's own storage: one database; in one store the state of the page, one document for each tab that is open.
//!
//! The document is written at every change. A write is handed over whole, without waiting for the one
//! before it: the browser keeps their order, and finishes them even when the page is left at once. What
//! cannot be read is copied aside before anything is written over it.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use biteband_bench::state::{Damage, Found, Notice, Saved, document, read};
use idb::{
    Database, DatabaseEvent, Error, Factory, ObjectStoreParams, TransactionFuture, TransactionMode,
};
use js_sys::JSON;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::JsValue;
use yew::Callback;

use crate::app::said_of_page;
use crate::object::Stored;

const DATABASE: &str = "biteband";
/// Version of the database's own layout; what is inside has schemas of its own.
const LAYOUT: u32 = 2;
/// What the page itself remembers.
pub(crate) const DOCUMENTS: &str = "documents";
/// Cards, cards that were deleted, and photographs.
pub(crate) const STORES: [&str; 4] = [DOCUMENTS, "cards", "deleted", "photos"];
/// The state of the page, in the first tab.
const CURRENT: &str = "page";
/// Behind the key of a document that could not be read, as it was found.
const ASIDE: &str = "-unreadable";

thread_local! {
    static OPEN: RefCell<Option<Rc<Database>>> = const { RefCell::new(None) };
    static BESIDE: Cell<Option<fn(&Saved)>> = const { Cell::new(None) };
}

/// The database, where there is one.
pub(crate) fn database() -> Option<Rc<Database>> {
    OPEN.with_borrow(Clone::clone)
}

/// Names what is to be done beside every write of the state: the cards have a part of their own.
pub(crate) fn beside(does: fn(&Saved)) {
    // Opaque, because the optimiser sees that there is but one and would call it by its name: the first module would
    // then hold the cards and all that they need.
    BESIDE.set(Some(std::hint::black_box(does)));
}

/// The key of what this tab keeps: each open tab has a number, and the first one none.
pub(crate) fn key_of_tab(name: &str) -> String {
    match said_of_page("data-tab") {
        Some(number) => format!("{name}-{number}"),
        None => name.to_owned(),
    }
}

/// What was found in storage, and the way back in.
#[derive(Clone)]
pub(crate) struct Opened {
    /// The state as it was left, when there is one.
    pub(crate) saved: Option<Saved>,
    /// What is to be told about it.
    pub(crate) notice: Option<Notice>,
    /// The text that could not be read.
    pub(crate) unreadable: Option<String>,
    database: Option<Rc<Database>>,
}

impl PartialEq for Opened {
    fn eq(&self, other: &Self) -> bool {
        self.saved == other.saved
            && self.notice == other.notice
            && self.unreadable == other.unreadable
            && self.database.is_some() == other.database.is_some()
    }
}

impl Opened {
    /// Storage that cannot be used.
    pub(crate) fn refused() -> Self {
        Self { saved: None, notice: Some(Notice::StorageRefused), unreadable: None, database: None }
    }

    /// Writes the state; `failed` is told when it could not be.
    pub(crate) fn save(&self, saved: &Saved, failed: &Callback<Notice>) {
        if let Some(database) = &self.database {
            let failed = failed.clone();
            let key = key_of_tab(CURRENT);
            let written =
                to_json(&document(saved)).and_then(|document| put(database, &key, &document).ok());
            wasm_bindgen_futures::spawn_local(async move {
                if !done(written).await {
                    failed.emit(Notice::StorageFull);
                }
            });
        }
        if let Some(beside) = BESIDE.get() {
            beside(saved);
        }
    }
}

impl Opened {
    /// From here on nothing is written.
    fn close(&mut self) {
        self.database = None;
        OPEN.set(None);
    }
}

/// A JSON text, by the browser's own writer.
pub(crate) fn to_json(thing: &impl Serialize) -> Option<String> {
    let object = thing.serialize(&Serializer::json_compatible()).ok()?;
    JSON::stringify(&object).ok()?.as_string()
}

/// What a JSON text of ours holds, by the browser's own reader.
pub(crate) fn of_json<T: DeserializeOwned>(text: &str) -> Option<T> {
    Object(JSON::parse(text).ok()?).read()
}

/// A document as an object of the browser.
struct Object(JsValue);

impl Found for Object {
    fn read<T: DeserializeOwned>(&self) -> Option<T> {
        T::deserialize(Stored(self.0.clone())).ok()
    }

    fn convert<T: DeserializeOwned>(value: serde_json::Value) -> Option<T> {
        let object = value.serialize(&Serializer::json_compatible()).ok()?;
        T::deserialize(Stored(object)).ok()
    }
}

fn from_json(text: &str) -> Result<Saved, Damage> {
    let object = JSON::parse(text).map_err(|_| Damage::Unreadable)?;
    read(&Object(object))
}

/// Opens the database and reads the state.
pub(crate) async fn open() -> Opened {
    match look().await {
        Ok(opened) => opened,
        Err(_) => Opened::refused(),
    }
}

async fn look() -> Result<Opened, Error> {
    let factory = Factory::new()?;
    let mut request = factory.open(DATABASE, Some(LAYOUT))?;
    request.on_upgrade_needed(|event| {
        if let Ok(database) = event.database() {
            let there = database.store_names();
            for store in STORES {
                if !there.iter().any(|name| name == store) {
                    // A failure here fails the opening as a whole, which is told as refused storage.
                    let _ = database.create_object_store(store, ObjectStoreParams::new());
                }
            }
        }
    });
    let mut database = request.await?;
    // A newer version in another tab waits for this one to let go; every change is written, so it can start anew.
    database.on_version_change(|_| {
        let _ = gloo::utils::window().location().reload();
    });
    let database = Rc::new(database);
    let key = key_of_tab(CURRENT);
    let found = get(&database, &key).await?;
    let mut opened = Opened {
        saved: None,
        notice: None,
        unreadable: None,
        database: Some(Rc::clone(&database)),
    };
    OPEN.set(Some(database.clone()));
    let Some(text) = found else { return Ok(opened) };
    match from_json(&text) {
        Ok(saved) => opened.saved = Some(saved),
        Err(Damage::Newer(found)) => {
            // Left untouched: the newer program will want it back as it is.
            opened.notice = Some(Notice::StoredNewer(found));
            opened.close();
        }
        Err(Damage::Unreadable) => {
            if done(put(&database, &(key + ASIDE), &text).ok()).await {
                opened.notice = Some(Notice::StoredDamaged);
            } else {
                // Without the copy nothing may be written over the original.
                opened.notice = Some(Notice::StorageRefused);
                opened.close();
            }
            opened.unreadable = Some(text);
        }
    }
    Ok(opened)
}

async fn get(database: &Database, key: &str) -> Result<Option<String>, Error> {
    let transaction = database.transaction(&[DOCUMENTS], TransactionMode::ReadOnly)?;
    let store = transaction.object_store(DOCUMENTS)?;
    let value: Option<JsValue> = store.get(JsValue::from_str(key))?.await?;
    Ok(value.map(|value| {
        // Anything but a text was not written by this page; it is shown for what it is.
        value.as_string().or_else(|| JSON::stringify(&value).ok()?.as_string()).unwrap_or_default()
    }))
}

/// Hands a write over to the browser; it is done when the transaction is.
fn put(database: &Database, key: &str, document: &str) -> Result<TransactionFuture, Error> {
    let transaction = database.transaction(&[DOCUMENTS], TransactionMode::ReadWrite)?;
    let store = transaction.object_store(DOCUMENTS)?;
    let key = JsValue::from_str(key);
    store.put(&JsValue::from_str(document), Some(&key))?;
    // Closed at once, so that it no longer needs this page to end.
    Ok(transaction.commit()?.into_future())
}

/// Whether a write came to its end; a full disk may show only there.
pub(crate) async fn done(written: Option<TransactionFuture>) -> bool {
    match written {
        Some(written) => written.await.is_ok_and(|end| end.is_committed()),
        None => false,
    }
}
