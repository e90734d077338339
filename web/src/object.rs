//! Reading a stored document out of an object of the browser.
//!
//! A document is either taken whole or kept aside, so why it cannot be read is said to nobody: the error is empty.
//! With sentences for every field, and numbers printed into them, reading would weigh three times as much.

use std::fmt;

use js_sys::{Array, Object, Reflect};
use serde::de::value::{StringDeserializer, U64Deserializer};
use serde::de::{
    DeserializeSeed, Deserializer, EnumAccess, Error, Expected, IntoDeserializer, MapAccess,
    SeqAccess, Unexpected, VariantAccess, Visitor,
};
use wasm_bindgen::JsValue;

/// It is no such thing.
#[derive(Debug)]
pub(crate) struct Unread;

impl fmt::Display for Unread {
    fn fmt(&self, _: &mut fmt::Formatter<'_>) -> fmt::Result {
        Ok(())
    }
}

impl std::error::Error for Unread {}

impl Error for Unread {
    fn custom<T: fmt::Display>(_: T) -> Self {
        Self
    }

    fn invalid_type(_: Unexpected<'_>, _: &dyn Expected) -> Self {
        Self
    }

    fn invalid_value(_: Unexpected<'_>, _: &dyn Expected) -> Self {
        Self
    }
}

type Read<T> = Result<T, Unread>;

/// A value of the browser, to be read as what a type expects.
pub(crate) struct Stored(pub(crate) JsValue);

/// Up to here the browser counts without gaps.
const WHOLE: f64 = 9_007_199_254_740_992.0;

impl Stored {
    fn is_absent(&self) -> bool {
        self.0.is_null() || self.0.is_undefined()
    }

    #[expect(clippy::cast_possible_truncation, reason = "the number is whole and within range")]
    fn whole(&self) -> Read<i64> {
        let number = self.0.as_f64().ok_or(Unread)?;
        let held = number.abs() <= WHOLE && number - number.floor() == 0.0;
        held.then_some(number as i64).ok_or(Unread)
    }

    fn list(&self) -> Read<List> {
        if !Array::is_array(&self.0) {
            return Err(Unread);
        }
        let values = Array::from(&self.0);
        Ok(List { values, next: 0 })
    }
}

macro_rules! whole_numbers {
    ($($read:ident)*) => {
        $(fn $read<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
            visitor.visit_i64(self.whole()?)
        })*
    };
}

macro_rules! numbers {
    ($($read:ident)*) => {
        $(fn $read<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
            visitor.visit_f64(self.0.as_f64().ok_or(Unread)?)
        })*
    };
}

macro_rules! texts {
    ($($read:ident)*) => {
        $(fn $read<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
            visitor.visit_string(self.0.as_string().ok_or(Unread)?)
        })*
    };
}

/// What no stored type has ever been made of.
macro_rules! never {
    ($($read:ident($($more:ty),*))*) => {
        $(fn $read<V: Visitor<'de>>(self $(, _: $more)*, _: V) -> Read<V::Value> {
            Err(Unread)
        })*
    };
}

impl<'de> Deserializer<'de> for Stored {
    type Error = Unread;

    whole_numbers! {
        deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64
        deserialize_u8 deserialize_u16 deserialize_u32 deserialize_u64
    }
    numbers! { deserialize_f32 deserialize_f64 }
    texts! { deserialize_char deserialize_str deserialize_string deserialize_identifier }
    never! {
        deserialize_bytes() deserialize_byte_buf() deserialize_unit() deserialize_unit_struct(&'static str)
        deserialize_newtype_struct(&'static str) deserialize_tuple(usize)
        deserialize_tuple_struct(&'static str, usize)
    }

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        if self.is_absent() {
            return visitor.visit_unit();
        }
        if let Some(truth) = self.0.as_bool() {
            return visitor.visit_bool(truth);
        }
        if let Ok(number) = self.whole() {
            return visitor.visit_i64(number);
        }
        if let Some(number) = self.0.as_f64() {
            return visitor.visit_f64(number);
        }
        if let Some(text) = self.0.as_string() {
            return visitor.visit_string(text);
        }
        match self.list() {
            Ok(list) => visitor.visit_seq(list),
            Err(Unread) => self.deserialize_map(visitor),
        }
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        visitor.visit_bool(self.0.as_bool().ok_or(Unread)?)
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        if self.is_absent() { visitor.visit_none() } else { visitor.visit_some(self) }
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        visitor.visit_seq(self.list()?)
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        let object = self.0.is_object().then(|| Object::from(self.0)).ok_or(Unread)?;
        visitor.visit_map(Pairs { names: Object::keys(&object), object, next: 0 })
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        names: &'static [&'static str],
        visitor: V,
    ) -> Read<V::Value> {
        if !self.0.is_object() {
            return Err(Unread);
        }
        visitor.visit_map(Fields { object: self.0, names, next: 0, value: JsValue::UNDEFINED })
    }

    /// Every choice that is stored is one of a list of names.
    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        names: &'static [&'static str],
        visitor: V,
    ) -> Read<V::Value> {
        let text = self.0.as_string().ok_or(Unread)?;
        visitor.visit_enum(Choice(place(names, &text)?))
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Read<V::Value> {
        visitor.visit_unit()
    }
}

/// Where a name stands in the list of those that a type knows.
fn place(names: &[&str], name: &str) -> Read<u64> {
    let found = names.iter().position(|known| *known == name).ok_or(Unread)?;
    u64::try_from(found).map_err(|_| Unread)
}

struct List {
    values: Array,
    next: u32,
}

impl<'de> SeqAccess<'de> for List {
    type Error = Unread;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Read<Option<T::Value>> {
        if self.next >= self.values.length() {
            return Ok(None);
        }
        let value = self.values.get(self.next);
        self.next += 1;
        seed.deserialize(Stored(value)).map(Some)
    }
}

/// The fields of a type that the object has, each told by its place, so that no name is compared twice.
struct Fields {
    object: JsValue,
    names: &'static [&'static str],
    next: usize,
    value: JsValue,
}

impl Fields {
    fn advance(&mut self) -> Read<Option<u64>> {
        while let Some(name) = self.names.get(self.next) {
            let place = u64::try_from(self.next).map_err(|_| Unread)?;
            self.next += 1;
            let value = Reflect::get(&self.object, &JsValue::from_str(name)).map_err(|_| Unread)?;
            if !value.is_undefined() {
                self.value = value;
                return Ok(Some(place));
            }
        }
        Ok(None)
    }
}

impl<'de> MapAccess<'de> for Fields {
    type Error = Unread;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Read<Option<K::Value>> {
        match self.advance()? {
            Some(place) => {
                let place: U64Deserializer<Unread> = place.into_deserializer();
                seed.deserialize(place).map(Some)
            }
            None => Ok(None),
        }
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Read<T::Value> {
        seed.deserialize(Stored(std::mem::replace(&mut self.value, JsValue::UNDEFINED)))
    }
}

/// Everything that an object has.
struct Pairs {
    object: Object,
    names: Array,
    next: u32,
}

impl<'de> MapAccess<'de> for Pairs {
    type Error = Unread;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Read<Option<K::Value>> {
        let Some(name) = self.names.get(self.next).as_string() else { return Ok(None) };
        let name: StringDeserializer<Unread> = name.into_deserializer();
        seed.deserialize(name).map(Some)
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Read<T::Value> {
        let value = Reflect::get(&self.object, &self.names.get(self.next)).map_err(|_| Unread)?;
        self.next += 1;
        seed.deserialize(Stored(value))
    }
}

/// A choice by its place in the list of names.
struct Choice(u64);

impl<'de> EnumAccess<'de> for Choice {
    type Error = Unread;
    type Variant = Plain;

    fn variant_seed<V: DeserializeSeed<'de>>(self, seed: V) -> Read<(V::Value, Plain)> {
        let place: U64Deserializer<Unread> = self.0.into_deserializer();
        seed.deserialize(place).map(|choice| (choice, Plain))
    }
}

/// A choice holds nothing besides.
struct Plain;

impl<'de> VariantAccess<'de> for Plain {
    type Error = Unread;

    fn unit_variant(self) -> Read<()> {
        Ok(())
    }

    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, _: T) -> Read<T::Value> {
        Err(Unread)
    }

    fn tuple_variant<V: Visitor<'de>>(self, _: usize, _: V) -> Read<V::Value> {
        Err(Unread)
    }

    fn struct_variant<V: Visitor<'de>>(self, _: &'static [&'static str], _: V) -> Read<V::Value> {
        Err(Unread)
    }
}
