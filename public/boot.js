// Works before the app and without it: theme, crash card, service worker, update notice.
//
// What the app and this script agree on, all on <html>:
//   data-ready  set by the app once it is mounted and usable
//   data-busy   set by the app while a field holds text that is not stored, or the pad is open;
//               the update notice is hidden by the style sheet as long as it stands
//   data-theme  "sun" or "shed"; kept by the app in localStorage under "shimwright.theme"
//
// and on window:
//   shimwrightCrash(seen)  shows the crash card; the app calls it before it stops
//   shimwrightInstall      the browser's offer to install, with an event of that name when it comes
"use strict";
(() => {
  const root = document.documentElement;
  const TOO_LONG_MS = 30000;

  // --- Theme, before the first paint -------------------------------------------------------
  try {
    const kept = /sun|shed/.exec(localStorage.getItem("shimwright.theme") ?? "");
    if (kept) root.dataset.theme = kept[0];
  } catch {
    // Storage is blocked: the device's own theme stands.
  }

  // --- Crash card --------------------------------------------------------------------------
  // After start only a trap in the app's own code is fatal; anything else leaves it working.
  const fatal = (thrown) => !("ready" in root.dataset) || thrown instanceof WebAssembly.RuntimeError;
  const describe = (thrown) => String(thrown?.message ?? thrown ?? "a fault without words");

  addEventListener("error", (event) => {
    if (event.target instanceof HTMLScriptElement) showCrash(`${event.target.src || "the app’s code"} did not load`);
    else if (event instanceof ErrorEvent && fatal(event.error)) showCrash(describe(event.error ?? event.message));
  }, true);
  addEventListener("unhandledrejection", (event) => {
    if (fatal(event.reason)) showCrash(describe(event.reason));
  });
  setTimeout(() => {
    if (!("ready" in root.dataset)) showCrash(`starting took longer than ${TOO_LONG_MS / 1000} seconds`);
  }, TOO_LONG_MS);

  window.shimwrightCrash = showCrash;

  async function showCrash(seen) {
    if (document.readyState === "loading") await new Promise((go) => addEventListener("DOMContentLoaded", go));
    const template = document.getElementById("crash-card");
    if (!template || document.getElementById("crash")) return;
    const started = "ready" in root.dataset;
    const card = template.content.cloneNode(true).firstElementChild;
    const part = (name) => card.querySelector(`[data-${name}]`);
    const when = new Date().toISOString();
    if (started) part("heading").textContent = "The app has stopped";
    part("seen").textContent = `${started ? "Work" : "Starting"} stopped at: ${seen}.`;
    part("version-shown").textContent = root.dataset.version;
    part("when").textContent = new Date().toLocaleString("en-GB", { dateStyle: "medium", timeStyle: "short" });
    part("copy").onclick = () => navigator.clipboard?.writeText(`Shimwright ${root.dataset.version}, ${when}: ${seen}`);
    part("reload").onclick = reload;
    part("export").onclick = async () => { part("exported").textContent = await exportEverything(); };
    document.body.append(card);
    root.dataset.crashed = ""; // The style sheet hides everything else.
    part("heading").focus();
    if (started) return;
    // A slow start may still succeed: then the app takes its place back.
    new MutationObserver((_, watch) => {
      if ("ready" in root.dataset) { watch.disconnect(); card.remove(); delete root.dataset.crashed; }
    }).observe(root, { attributeFilter: ["data-ready"] });
  }

  // Reads the store as it lies, one JSON line per entry, without the app's code.
  async function exportEverything() {
    try {
      const lines = [];
      let unread = 0;
      for (const entry of await readEntries()) {
        try {
          lines.push(typeof entry === "string" ? entry : JSON.stringify(entry));
        } catch {
          unread += 1;
        }
      }
      if (lines.length + unread === 0) return "There is nothing to export: no job is kept on this device.";
      const name = `shimwright-${new Date().toISOString().slice(0, 10)}.jsonl`;
      const link = document.createElement("a");
      link.href = URL.createObjectURL(new Blob([lines.join("\n"), "\n"], { type: "application/x-ndjson" }));
      link.download = name;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 60000);
      const left = unread ? ` ${unread} could not be written out; they stay on this device.` : "";
      return `Saved: ${name}. ${lines.length} ${lines.length === 1 ? "entry" : "entries"}.${left}`;
    } catch (thrown) {
      return `The store did not open (${describe(thrown)}). Leave everything as it is, close other tabs of this app, and try again.`;
    }
  }

  function readEntries() {
    return new Promise((resolve, reject) => {
      const open = indexedDB.open("shimwright");
      // No store yet: make none, or the app would find an empty one of the wrong shape.
      open.onupgradeneeded = () => { open.transaction.abort(); resolve([]); };
      open.onerror = () => reject(open.error);
      open.onsuccess = () => {
        const base = open.result;
        if (!base.objectStoreNames.contains("entries")) { base.close(); resolve([]); return; }
        const all = base.transaction("entries").objectStore("entries").getAll();
        all.onerror = () => { base.close(); reject(all.error); };
        all.onsuccess = () => { base.close(); resolve(all.result); };
      };
    });
  }

  // --- Install offer: it may come before the app is there to take it ------------------------
  addEventListener("beforeinstallprompt", (event) => {
    event.preventDefault();
    window.shimwrightInstall = event;
    dispatchEvent(new Event("shimwrightInstall"));
  });

  // --- Service worker and update notice ----------------------------------------------------
  const worker = navigator.serviceWorker;
  let registration = null;
  let agreed = false;

  // A reload from the crash card takes the newest version that is already on the device.
  async function reload() {
    await registration?.update().catch(() => {});
    if (registration?.waiting) useNewVersion();
    else location.reload();
  }

  function useNewVersion() {
    agreed = true;
    registration.waiting.postMessage("SKIP");
  }

  function offerUpdate() {
    const notices = document.getElementById("notices");
    const template = document.getElementById("update-notice");
    if (!registration.waiting || !worker.controller || !notices || notices.firstElementChild) return;
    const notice = template.content.cloneNode(true).firstElementChild;
    notice.querySelector("[data-use]").onclick = useNewVersion;
    notice.querySelector("[data-later]").onclick = () => notice.remove();
    notices.append(notice);
  }

  if (worker) {
    worker.addEventListener("controllerchange", () => {
      if (agreed) { agreed = false; location.reload(); }
    });
    addEventListener("load", async () => {
      try {
        registration = await worker.register("/sw.js", { updateViaCache: "none" });
      } catch {
        return; // No worker here (private window, policy): the app works while there is a signal.
      }
      registration.addEventListener("updatefound", () => {
        const coming = registration.installing;
        coming?.addEventListener("statechange", () => { if (coming.state === "installed") offerUpdate(); });
      });
      offerUpdate();
      document.addEventListener("visibilitychange", () => {
        if (document.visibilityState !== "visible") return;
        registration.update().catch(() => {}); // No signal: ask again next time.
        offerUpdate();
      });
    });
  }
})();
