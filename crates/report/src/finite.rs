//! Which number of a result is not finite?
//!
//! JSON has no word for NaN, and a null where a number belongs would be an invented gap. This serialiser writes
//! nothing: it walks a value and names the first number that is not finite, with the path to it.
//!
//! Cost: one visit of every field.

use crate::ReportError;
use serde::ser::{self, Impossible, Serialize};
use std::fmt::Display;

/// Names the first number that is not finite.
pub(crate) fn check(value: &impl Serialize) -> Result<(), ReportError> {
    value
        .serialize(&mut Walk { path: Vec::new() })
        .map_err(|found| found.0)
}

/// The error of the walk.
#[derive(Debug)]
pub(crate) struct Found(ReportError);

impl Display for Found {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.0.fmt(f)
    }
}

impl std::error::Error for Found {}

impl ser::Error for Found {
    fn custom<T: Display>(message: T) -> Self {
        Self(ReportError::Json {
            source: <serde_json::Error as ser::Error>::custom(message),
        })
    }
}

enum Step {
    Key(&'static str),
    Text(String),
    Item(usize),
}

pub(crate) struct Walk {
    path: Vec<Step>,
}

impl Walk {
    fn float(&self, value: f64) -> Result<(), Found> {
        if value.is_finite() {
            return Ok(());
        }
        let mut field = String::new();
        for step in &self.path {
            match step {
                Step::Item(index) => field.push_str(&format!("[{index}]")),
                Step::Key(key) => push_key(&mut field, key),
                Step::Text(key) => push_key(&mut field, key),
            }
        }
        Err(Found(ReportError::NotFinite { field, value }))
    }

    fn enter<T: ?Sized + Serialize>(&mut self, step: Step, value: &T) -> Result<(), Found> {
        self.path.push(step);
        value.serialize(&mut *self)?;
        self.path.pop();
        Ok(())
    }
}

fn push_key(field: &mut String, key: &str) {
    if !field.is_empty() {
        field.push('.');
    }
    field.push_str(key);
}

/// A walk inside one sequence, map or struct.
pub(crate) struct Inside<'a> {
    walk: &'a mut Walk,
    next: usize,
    key: String,
}

macro_rules! harmless {
    ($($name:ident($kind:ty)),* $(,)?) => {
        $(fn $name(self, _: $kind) -> Result<(), Found> { Ok(()) })*
    };
}

impl<'a> ser::Serializer for &'a mut Walk {
    type Ok = ();
    type Error = Found;
    type SerializeSeq = Inside<'a>;
    type SerializeTuple = Inside<'a>;
    type SerializeTupleStruct = Inside<'a>;
    type SerializeTupleVariant = Inside<'a>;
    type SerializeMap = Inside<'a>;
    type SerializeStruct = Inside<'a>;
    type SerializeStructVariant = Inside<'a>;

    harmless!(
        serialize_bool(bool),
        serialize_i8(i8),
        serialize_i16(i16),
        serialize_i32(i32),
        serialize_i64(i64),
        serialize_u8(u8),
        serialize_u16(u16),
        serialize_u32(u32),
        serialize_u64(u64),
        serialize_char(char),
        serialize_str(&str),
        serialize_bytes(&[u8]),
        serialize_unit_struct(&'static str),
    );

    fn serialize_f32(self, value: f32) -> Result<(), Found> {
        self.float(f64::from(value))
    }
    fn serialize_f64(self, value: f64) -> Result<(), Found> {
        self.float(value)
    }
    fn serialize_none(self) -> Result<(), Found> {
        Ok(())
    }
    fn serialize_some<T: ?Sized + Serialize>(self, value: &T) -> Result<(), Found> {
        value.serialize(self)
    }
    fn serialize_unit(self) -> Result<(), Found> {
        Ok(())
    }
    fn serialize_unit_variant(self, _: &'static str, _: u32, _: &'static str) -> Result<(), Found> {
        Ok(())
    }
    fn serialize_newtype_struct<T: ?Sized + Serialize>(
        self,
        _: &'static str,
        value: &T,
    ) -> Result<(), Found> {
        value.serialize(self)
    }
    fn serialize_newtype_variant<T: ?Sized + Serialize>(
        self,
        _: &'static str,
        _: u32,
        variant: &'static str,
        value: &T,
    ) -> Result<(), Found> {
        self.enter(Step::Key(variant), value)
    }
    fn serialize_seq(self, _: Option<usize>) -> Result<Inside<'a>, Found> {
        Ok(Inside::of(self))
    }
    fn serialize_tuple(self, _: usize) -> Result<Inside<'a>, Found> {
        Ok(Inside::of(self))
    }
    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Inside<'a>, Found> {
        Ok(Inside::of(self))
    }
    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Inside<'a>, Found> {
        Ok(Inside::of(self))
    }
    fn serialize_map(self, _: Option<usize>) -> Result<Inside<'a>, Found> {
        Ok(Inside::of(self))
    }
    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Inside<'a>, Found> {
        Ok(Inside::of(self))
    }
    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Inside<'a>, Found> {
        Ok(Inside::of(self))
    }
}

impl<'a> Inside<'a> {
    fn of(walk: &'a mut Walk) -> Self {
        Self {
            walk,
            next: 0,
            key: String::new(),
        }
    }

    fn item<T: ?Sized + Serialize>(&mut self, value: &T) -> Result<(), Found> {
        let index = self.next;
        self.next += 1;
        self.walk.enter(Step::Item(index), value)
    }
}

macro_rules! items {
    ($($kind:ident::$method:ident),* $(,)?) => {
        $(impl ser::$kind for Inside<'_> {
            type Ok = ();
            type Error = Found;
            fn $method<T: ?Sized + Serialize>(&mut self, value: &T) -> Result<(), Found> { self.item(value) }
            fn end(self) -> Result<(), Found> { Ok(()) }
        })*
    };
}

items!(
    SerializeSeq::serialize_element,
    SerializeTuple::serialize_element,
    SerializeTupleStruct::serialize_field,
    SerializeTupleVariant::serialize_field,
);

macro_rules! fields {
    ($($kind:ident),* $(,)?) => {
        $(impl ser::$kind for Inside<'_> {
            type Ok = ();
            type Error = Found;
            fn serialize_field<T: ?Sized + Serialize>(
                &mut self,
                key: &'static str,
                value: &T,
            ) -> Result<(), Found> {
                self.walk.enter(Step::Key(key), value)
            }
            fn end(self) -> Result<(), Found> { Ok(()) }
        })*
    };
}

fields!(SerializeStruct, SerializeStructVariant);

impl ser::SerializeMap for Inside<'_> {
    type Ok = ();
    type Error = Found;
    fn serialize_key<T: ?Sized + Serialize>(&mut self, key: &T) -> Result<(), Found> {
        self.key = key.serialize(KeyText)?;
        Ok(())
    }
    fn serialize_value<T: ?Sized + Serialize>(&mut self, value: &T) -> Result<(), Found> {
        let key = std::mem::take(&mut self.key);
        self.walk.enter(Step::Text(key), value)
    }
    fn end(self) -> Result<(), Found> {
        Ok(())
    }
}

/// Takes the text of a map's key; keys here are words.
struct KeyText;

macro_rules! no_key {
    ($($name:ident($kind:ty)),* $(,)?) => {
        $(fn $name(self, value: $kind) -> Result<String, Found> { Ok(value.to_string()) })*
    };
}

impl ser::Serializer for KeyText {
    type Ok = String;
    type Error = Found;
    type SerializeSeq = Impossible<String, Found>;
    type SerializeTuple = Impossible<String, Found>;
    type SerializeTupleStruct = Impossible<String, Found>;
    type SerializeTupleVariant = Impossible<String, Found>;
    type SerializeMap = Impossible<String, Found>;
    type SerializeStruct = Impossible<String, Found>;
    type SerializeStructVariant = Impossible<String, Found>;

    no_key!(
        serialize_bool(bool),
        serialize_i8(i8),
        serialize_i16(i16),
        serialize_i32(i32),
        serialize_i64(i64),
        serialize_u8(u8),
        serialize_u16(u16),
        serialize_u32(u32),
        serialize_u64(u64),
        serialize_f32(f32),
        serialize_f64(f64),
        serialize_char(char),
        serialize_str(&str),
        serialize_unit_struct(&'static str),
    );

    fn serialize_bytes(self, _: &[u8]) -> Result<String, Found> {
        Err(not_a_key())
    }
    fn serialize_none(self) -> Result<String, Found> {
        Err(not_a_key())
    }
    fn serialize_some<T: ?Sized + Serialize>(self, value: &T) -> Result<String, Found> {
        value.serialize(self)
    }
    fn serialize_unit(self) -> Result<String, Found> {
        Err(not_a_key())
    }
    fn serialize_unit_variant(self, _: &'static str, _: u32, variant: &'static str) -> Result<String, Found> {
        Ok(variant.to_owned())
    }
    fn serialize_newtype_struct<T: ?Sized + Serialize>(
        self,
        _: &'static str,
        value: &T,
    ) -> Result<String, Found> {
        value.serialize(self)
    }
    fn serialize_newtype_variant<T: ?Sized + Serialize>(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: &T,
    ) -> Result<String, Found> {
        Err(not_a_key())
    }
    fn serialize_seq(self, _: Option<usize>) -> Result<Self::SerializeSeq, Found> {
        Err(not_a_key())
    }
    fn serialize_tuple(self, _: usize) -> Result<Self::SerializeTuple, Found> {
        Err(not_a_key())
    }
    fn serialize_tuple_struct(self, _: &'static str, _: usize) -> Result<Self::SerializeTupleStruct, Found> {
        Err(not_a_key())
    }
    fn serialize_tuple_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Self::SerializeTupleVariant, Found> {
        Err(not_a_key())
    }
    fn serialize_map(self, _: Option<usize>) -> Result<Self::SerializeMap, Found> {
        Err(not_a_key())
    }
    fn serialize_struct(self, _: &'static str, _: usize) -> Result<Self::SerializeStruct, Found> {
        Err(not_a_key())
    }
    fn serialize_struct_variant(
        self,
        _: &'static str,
        _: u32,
        _: &'static str,
        _: usize,
    ) -> Result<Self::SerializeStructVariant, Found> {
        Err(not_a_key())
    }
}

fn not_a_key() -> Found {
    ser::Error::custom("a key of a map must be text")
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeMap;
    use tussock_types::{Estimate, Grid};

    #[test]
    fn the_path_to_the_first_number_that_is_not_finite_is_named() {
        let rows: BTreeMap<&str, Vec<(f64, Option<Estimate>)>> = BTreeMap::from([
            ("a", vec![(1.0, Some(Estimate::bare(0.5)))]),
            ("b", vec![(1.0, None), (2.0, Some(Estimate::bare(f64::NAN)))]),
        ]);
        let error = check(&rows).unwrap_err();
        assert_eq!(
            error.to_string(),
            "b[1][1].estimate is NaN, expected a finite number"
        );
        assert!(
            check(&Grid {
                east_min_m: 0.0,
                north_min_m: 0.0,
                cell_m: 0.1,
                columns: 1,
                rows: 1
            })
            .is_ok()
        );
        assert!(check(&f32::NEG_INFINITY).is_err());
    }
}
