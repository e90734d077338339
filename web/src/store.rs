//! The browser's own storage: one database, one store, one document.
//!
//! The document is written after every change, one write at a time and always the newest. What cannot
//! be read is copied aside before anything is written over it.

use std::cell::RefCell;
use std::rc::Rc;

use biteband_bench::state::{Damage, Found, Notice, Saved, document, read};
use idb::{Database, DatabaseEvent, Error, Factory, ObjectStoreParams, TransactionMode};
use js_sys::JSON;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::JsValue;
use yew::Callback;

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
    writer: Option<Rc<Writer>>,
}

impl PartialEq for Opened {
    fn eq(&self, other: &Self) -> bool {
        self.saved == other.saved
            && self.notice == other.notice
            && self.unreadable == other.unreadable
            && self.writer.is_some() == other.writer.is_some()
    }
}

impl Opened {
    /// Storage that cannot be used.
    pub(crate) fn refused() -> Self {
        Self { saved: None, notice: Some(Notice::StorageRefused), unreadable: None, writer: None }
    }

    /// Writes the state; `failed` is told when it could not be.
    pub(crate) fn save(&self, saved: &Saved, failed: &Callback<Notice>) {
        if let Some(writer) = &self.writer {
            match to_json(saved) {
                Some(document) => writer.write(document, failed),
                None => failed.emit(Notice::StorageFull),
            }
        }
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
        serde_wasm_bindgen::from_value(self.0.clone()).ok()
    }

    fn convert<T: DeserializeOwned>(value: serde_json::Value) -> Option<T> {
        let object = value.serialize(&Serializer::json_compatible()).ok()?;
        serde_wasm_bindgen::from_value(object).ok()
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
    let writer = Rc::new(Writer { database, waiting: RefCell::default() });
    let mut opened =
        Opened { saved: None, notice: None, unreadable: None, writer: Some(Rc::clone(&writer)) };
    let Some(text) = found else { return Ok(opened) };
    match from_json(&text) {
        Ok(saved) => opened.saved = Some(saved),
        Err(Damage::Newer(found)) => {
            // Left untouched: the newer program will want it back as it is.
            opened.notice = Some(Notice::StoredNewer(found));
            opened.writer = None;
        }
        Err(Damage::Unreadable) => {
            put(&writer.database, ASIDE, &text).await?;
            opened.notice = Some(Notice::StoredDamaged);
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

async fn put(database: &Database, key: &str, document: &str) -> Result<(), Error> {
    let transaction = database.transaction(&[STORE], TransactionMode::ReadWrite)?;
    let store = transaction.object_store(STORE)?;
    let key = JsValue::from_str(key);
    store.put(&JsValue::from_str(document), Some(&key))?.await?;
    transaction.commit()?.await?;
    Ok(())
}

/// The newest document that still has to be written, and whether a write is under way.
#[derive(Default)]
struct Waiting {
    newest: Option<String>,
    busy: bool,
}

struct Writer {
    database: Database,
    waiting: RefCell<Waiting>,
}

impl Writer {
    fn write(self: &Rc<Self>, document: String, failed: &Callback<Notice>) {
        let mut waiting = self.waiting.borrow_mut();
        waiting.newest = Some(document);
        if waiting.busy {
            return;
        }
        waiting.busy = true;
        let (writer, failed) = (Rc::clone(self), failed.clone());
        wasm_bindgen_futures::spawn_local(async move {
            while let Some(document) = writer.take() {
                if put(&writer.database, CURRENT, &document).await.is_err() {
                    failed.emit(Notice::StorageFull);
                }
            }
        });
    }

    /// The next document to write; without one the writer rests.
    fn take(&self) -> Option<String> {
        let mut waiting = self.waiting.borrow_mut();
        let next = waiting.newest.take();
        waiting.busy = next.is_some();
        next
    }
}
