//! Tests of the job crate from outside.

#![allow(missing_docs)]

mod bench;
