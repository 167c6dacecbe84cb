//! What two screens share.
