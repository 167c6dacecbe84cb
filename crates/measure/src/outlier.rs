//! A hint that a reading may be a slip; never a deletion.
