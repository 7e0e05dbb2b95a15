//! Columns, one after the other, as a Parquet file.

use super::Geo;
use parquet::basic::{Compression, LogicalType, Repetition, TimeUnit, ZstdLevel};
use parquet::data_type::{ByteArrayType, DataType};
use parquet::errors::ParquetError;
use parquet::file::metadata::KeyValue;
use parquet::file::properties::{EnabledStatistics, WriterProperties};
use parquet::file::writer::{SerializedFileWriter, SerializedRowGroupWriter};
use parquet::schema::types::{ColumnPath, Type, TypePtr};
use std::sync::Arc;

type Group<'g> = SerializedRowGroupWriter<'g, Vec<u8>>;
/// Writes one column.
type WriteColumn<'a> = Box<dyn FnOnce(&mut Group<'_>) -> Result<(), ParquetError> + 'a>;

/// The meaning of a column's whole numbers: microseconds UTC.
pub(super) fn time() -> Option<LogicalType> {
    Some(LogicalType::timestamp(true, TimeUnit::MICROS))
}

/// Columns of equal length in the order of the file. Values are collected when their column is written.
#[derive(Default)]
pub(super) struct TableWriter<'a> {
    fields: Vec<TypePtr>,
    columns: Vec<WriteColumn<'a>>,
}

impl<'a> TableWriter<'a> {
    /// A column with a value in every row.
    pub(super) fn column<T: DataType>(
        &mut self,
        name: &str,
        values: impl IntoIterator<Item = T::T> + 'a,
    ) -> Result<(), ParquetError> {
        self.put::<T>(name, None, false, values.into_iter().map(Some))
    }

    /// A column in which a row may have no value.
    pub(super) fn nullable<T: DataType>(
        &mut self,
        name: &str,
        values: impl IntoIterator<Item = Option<T::T>> + 'a,
    ) -> Result<(), ParquetError> {
        self.put::<T>(name, None, true, values)
    }

    /// The shapes of the rows, if they have geographic coordinates.
    pub(super) fn shapes(&mut self, geo: Option<Geo>) -> Result<(), ParquetError> {
        match geo {
            Some(geo) => self.column::<ByteArrayType>("geometry", geo.wkb),
            None => Ok(()),
        }
    }

    /// A column of any kind.
    pub(super) fn put<T: DataType>(
        &mut self,
        name: &str,
        logical: Option<LogicalType>,
        is_nullable: bool,
        rows: impl IntoIterator<Item = Option<T::T>> + 'a,
    ) -> Result<(), ParquetError> {
        let repetition = match is_nullable {
            true => Repetition::OPTIONAL,
            false => Repetition::REQUIRED,
        };
        let field = Type::primitive_type_builder(name, T::get_physical_type())
            .with_repetition(repetition)
            .with_logical_type(logical)
            .build()?;
        self.fields.push(Arc::new(field));
        self.columns.push(Box::new(move |group| {
            let (mut values, mut levels) = (Vec::new(), Vec::new());
            for row in rows {
                if is_nullable {
                    levels.push(i16::from(row.is_some()));
                }
                values.extend(row);
            }
            let mut column = group
                .next_column()?
                .ok_or_else(|| ParquetError::General("schema has too few columns".to_owned()))?;
            let levels = is_nullable.then_some(&levels[..]);
            column.typed::<T>().write_batch(&values, levels, None)?;
            column.close()
        }));
        Ok(())
    }

    /// The file.
    pub(super) fn written(self, name: &str, pairs: Vec<KeyValue>) -> Result<Vec<u8>, ParquetError> {
        let properties = WriterProperties::builder()
            .set_compression(Compression::ZSTD(ZstdLevel::try_new(3)?))
            .set_created_by("tussock".to_owned())
            .set_key_value_metadata(Some(pairs))
            // The smallest and largest bytes of a shape help nobody.
            .set_column_statistics_enabled(ColumnPath::from("geometry"), EnabledStatistics::None)
            .set_column_dictionary_enabled(ColumnPath::from("geometry"), false)
            .build();
        let schema = Type::group_type_builder(name).with_fields(self.fields).build()?;
        let mut file = SerializedFileWriter::new(Vec::new(), Arc::new(schema), Arc::new(properties))?;
        let mut group = file.next_row_group()?;
        for write in self.columns {
            write(&mut group)?;
        }
        group.close()?;
        file.into_inner()
    }
}
