//! Values that are written by their id.

/// Writes a type by its `id`, and reads it by its `named`.
macro_rules! by_id {
    ($type:ident) => {
        impl serde::Serialize for $type {
            fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.id())
            }
        }

        impl<'de> serde::Deserialize<'de> for $type {
            fn deserialize<D: serde::Deserializer<'de>>(reader: D) -> Result<$type, D::Error> {
                let id = String::deserialize(reader)?;
                $type::named(&id).ok_or_else(|| serde::de::Error::custom("not known here"))
            }
        }
    };
}
pub(crate) use by_id;
