//! The browser's own storage: one database, one store, one document.
//!
//! The document is written at every change. A write is handed over whole, without waiting for the one
//! before it: the browser keeps their order, and finishes them even when the page is left at once. What
//! cannot be read is copied aside before anything is written over it.

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

use crate::object::Stored;

const DATABASE: &str = "biteband";
/// Version of the database's own layout; the document inside has its schema of its own.
const LAYOUT: u32 = 1;
const STORE: &str = "documents";
/// The state of the page.
const CURRENT: &str = "page";
/// A document that could not be read, as it was found.
const ASIDE: &str = "page-unreadable";

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
        let Some(database) = &self.database else { return };
        let failed = failed.clone();
        let written = to_json(saved).and_then(|document| put(database, CURRENT, &document).ok());
        wasm_bindgen_futures::spawn_local(async move {
            if !done(written).await {
                failed.emit(Notice::StorageFull);
            }
        });
    }
}

/// The document as JSON text, by the browser's own writer.
fn to_json(saved: &Saved) -> Option<String> {
    let object = document(saved).serialize(&Serializer::json_compatible()).ok()?;
    JSON::stringify(&object).ok()?.as_string()
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
        if let Ok(database) = event.database()
            && !database.store_names().iter().any(|name| name == STORE)
        {
            // A failure here fails the opening as a whole, which is told as refused storage.
            let _ = database.create_object_store(STORE, ObjectStoreParams::new());
        }
    });
    let database = request.await?;
    let found = get(&database, CURRENT).await?;
    let database = Rc::new(database);
    let mut opened = Opened {
        saved: None,
        notice: None,
        unreadable: None,
        database: Some(Rc::clone(&database)),
    };
    let Some(text) = found else { return Ok(opened) };
    match from_json(&text) {
        Ok(saved) => opened.saved = Some(saved),
        Err(Damage::Newer(found)) => {
            // Left untouched: the newer program will want it back as it is.
            opened.notice = Some(Notice::StoredNewer(found));
            opened.database = None;
        }
        Err(Damage::Unreadable) => {
            if done(put(&database, ASIDE, &text).ok()).await {
                opened.notice = Some(Notice::StoredDamaged);
            } else {
                // Without the copy nothing may be written over the original.
                opened.notice = Some(Notice::StorageRefused);
                opened.database = None;
            }
            opened.unreadable = Some(text);
        }
    }
    Ok(opened)
}

async fn get(database: &Database, key: &str) -> Result<Option<String>, Error> {
    let transaction = database.transaction(&[STORE], TransactionMode::ReadOnly)?;
    let store = transaction.object_store(STORE)?;
    let value: Option<JsValue> = store.get(JsValue::from_str(key))?.await?;
    Ok(value.map(|value| {
        // Anything but a text was not written by this page; it is shown for what it is.
        value.as_string().or_else(|| JSON::stringify(&value).ok()?.as_string()).unwrap_or_default()
    }))
}

/// Hands a write over to the browser; it is done when the transaction is.
fn put(database: &Database, key: &str, document: &str) -> Result<TransactionFuture, Error> {
    let transaction = database.transaction(&[STORE], TransactionMode::ReadWrite)?;
    let store = transaction.object_store(STORE)?;
    let key = JsValue::from_str(key);
    store.put(&JsValue::from_str(document), Some(&key))?;
    // Closed at once, so that it no longer needs this page to end.
    Ok(transaction.commit()?.into_future())
}

/// Whether a write came to its end; a full disk may show only there.
async fn done(written: Option<TransactionFuture>) -> bool {
    match written {
        Some(written) => written.await.is_ok_and(|end| end.is_committed()),
        None => false,
    }
}
