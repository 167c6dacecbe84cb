//! The layouts a gearcase can have, with their shim positions.
