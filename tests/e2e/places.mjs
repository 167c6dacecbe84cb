// The addresses of every screen, for tests that walk all of them.

/** Below a job of layout (b) with a scope. */
export const OF_THE_JOB = ["", "/step/b04", "/step/b09", "/step/b22", "/steps", "/map", "/ladder", "/inspect", "/consent", "/tools", "/freeze", "/setup", "/influence", "/read/depth", "/read/lash-forward", "/check", ...["leak", "runout", "drag", "torque", "fit", "press", "play", "oring", "seal", "pattern", "locker", "anode", "land", "lube"].map((kind) => `/check/${kind}`), "/record", "/send", "/archive"];

/** Of the device. */
export const OTHERS = ["/", "/first", "/new-job", "/tin", "/tools", "/settings", "/bring-in", "/guide", "/board", "/find", "/practice", "/check"];
