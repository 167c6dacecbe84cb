//! Unit sheets, the shim tin, the job log and its fold.
