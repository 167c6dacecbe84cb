// Works before the app and without it: theme, crash card, service worker, update notice.
//
// What the app and this script agree on, all on <html>:
//   data-ready  set by the app once it is mounted and usable
//   data-busy   set by the app while a field holds text that is not stored, or the pad is open;
//               the update notice is hidden by the style sheet as long as it stands
//   data-theme  "sun" or "shed"; kept by the app in localStorage under "shimwright.theme"
//   lang        the language of the page; the choice is kept under "shimwright.language"
//
// and on window:
//   shimwrightCrash(seen)  shows the crash card; the app calls it before it stops
//   shimwrightInstall      the browser's offer to install, with an event of that name when it comes
"use strict";
(() => {
  const root = document.documentElement;
  const TOO_LONG_MS = 30000;

  // --- Language: the one chosen in the app, or else the device's ---------------------------
  // `cargo xtask` fills these in from the catalogues: by language, by English text.
  const WORDS = {};
  const language = (kept("language", /en|es/) ?? navigator.language).slice(0, 2);
  const known = WORDS[language] ?? {};
  if (language in WORDS) root.lang = language;

  // A text in that language, its {places} filled.
  function t(english, places = {}) {
    return (known[english] ?? english).replace(/{(\w+)}/g, (place, name) => places[name] ?? place);
  }

  // What stands in the page until the app comes, and the cards it may need without the app.
  document.addEventListener("DOMContentLoaded", () => {
    const cards = [...document.querySelectorAll("template")].map((template) => template.content);
    for (const part of language in WORDS ? [document.getElementById("shell"), ...cards] : []) {
      const texts = part ? document.createTreeWalker(part, NodeFilter.SHOW_TEXT) : null;
      while (texts?.nextNode()) {
        const text = texts.currentNode.data.trim();
        if (text) texts.currentNode.data = texts.currentNode.data.replace(text, () => t(text));
      }
      for (const named of part?.querySelectorAll("[aria-label]") ?? []) named.ariaLabel = t(named.ariaLabel);
    }
  });

  // --- Theme, before the first paint -------------------------------------------------------
  const theme = kept("theme", /sun|shed/);
  if (theme) root.dataset.theme = theme;

  // A small preference of the app, where it is one of those known here.
  function kept(name, values) {
    try {
      return values.exec(localStorage.getItem(`shimwright.${name}`) ?? "")?.[0];
    } catch {
      return undefined; // Storage is blocked: the device's own ways stand.
    }
  }

  // --- Crash card --------------------------------------------------------------------------
  // After start only a trap in the app's own code is fatal; anything else leaves it working.
  const fatal = (thrown) => !("ready" in root.dataset) || thrown instanceof WebAssembly.RuntimeError;
  const describe = (thrown) => String(thrown?.message ?? thrown ?? t("a fault without words"));

  addEventListener("error", (event) => {
    if (event.target instanceof HTMLScriptElement) showCrash(t("{file} did not load", { file: event.target.src || "/" }));
    else if (event instanceof ErrorEvent && fatal(event.error)) showCrash(describe(event.error ?? event.message));
  }, true);
  addEventListener("unhandledrejection", (event) => {
    if (fatal(event.reason)) showCrash(describe(event.reason));
  });
  setTimeout(() => {
    if (!("ready" in root.dataset)) showCrash(t("starting took longer than {seconds} seconds", { seconds: TOO_LONG_MS / 1000 }));
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
    if (started) part("heading").textContent = t("The app has stopped");
    part("seen").textContent = started ? t("Work stopped at: {seen}.", { seen }) : t("Starting stopped at: {seen}.", { seen });
    part("version-shown").textContent = root.dataset.version;
    part("when").textContent = new Date().toLocaleString(language === "es" ? "es" : "en-GB", { dateStyle: "medium", timeStyle: "short" });
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

  // Writes a backup of the store as it lies, photos inside, without the app's code: a first line,
  // entries, photos, a last line, as WIRE.md says.
  async function exportEverything() {
    try {
      const base = await openStore();
      const lines = [];
      let unread = 0;
      for (const entry of base ? await asked(base, "entries", "getAll") : []) {
        try {
          lines.push((typeof entry === "string" ? entry : JSON.stringify(entry)).replace(/[\r\n]/g, " "));
        } catch {
          unread += 1;
        }
      }
      const there = new Set(lines);
      lines.push(...secondCopy().filter((line) => !there.has(line)));
      if (lines.length + unread === 0) return t("There is nothing to export: no job is kept on this device.");
      const photos = base?.objectStoreNames.contains("photos") ? await asked(base, "photos", "getAllKeys") : [];
      const head = { shimwright: "backup", format: 1, at: Date.now(), device: "crash card", app: root.dataset.version, holds: "everything", entries: lines.length, photos: photos.length, part: 1, of: 1 };
      const text = [JSON.stringify(head), ...lines, ""].join("\n");
      const parts = [text];
      let count = lines.length + 1;
      for (const id of photos) {
        const picture = await asked(base, "photos", "get", id).then((blob) => blob.arrayBuffer()).catch(() => null);
        if (!picture) { unread += 1; continue; }
        parts.push(new Blob([await photoLine(String(id), new Uint8Array(picture)), "\n"]));
        count += 1;
      }
      base?.close();
      const end = { lines: count, sha256: await sha256(new TextEncoder().encode(text)) };
      parts.push(`${JSON.stringify({ end })}\n`);
      const name = `shimwright-${new Date().toISOString().slice(0, 10)}.jsonl`;
      const link = document.createElement("a");
      link.href = URL.createObjectURL(new Blob(parts, { type: "application/x-ndjson" }));
      link.download = name;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 60000);
      const left = unread ? ` ${t("{unread} could not be written out; they stay on this device.", { unread })}` : "";
      const saved = { name, entries: lines.length, photos: parts.length - 2 };
      return t("Saved: {name}. Entries: {entries}, photos: {photos}.", saved) + left;
    } catch (thrown) {
      return t("The store did not open ({why}). Leave everything as it is, close other tabs of this app, and try again.", { why: describe(thrown) });
    }
  }

  // What the app keeps beside the store, for the case that the browser has dropped the store: book,
  // place, device and entry, a line each.
  function secondCopy() {
    try {
      const own = Object.keys(localStorage).filter((key) => key.startsWith("shimwright.again."));
      return own.map((key) => JSON.parse(localStorage.getItem(key)).split("\n").slice(3).join("\n"));
    } catch {
      return [];
    }
  }

  async function photoLine(photo, bytes) {
    const type = bytes[0] === 0xff ? "image/jpeg" : bytes[0] === 0x89 ? "image/png" : "image/webp";
    let text = "";
    for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
    return JSON.stringify({ photo, type, bytes: bytes.length, sha256: await sha256(bytes), data: btoa(text) });
  }

  async function sha256(bytes) {
    const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
    return Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("");
  }

  // The store in whatever version it has; null where there is none.
  function openStore() {
    return new Promise((resolve, reject) => {
      const open = indexedDB.open("shimwright");
      // No store yet: make none, or the app would find an empty one of the wrong shape.
      open.onupgradeneeded = () => { open.transaction.abort(); resolve(null); };
      open.onerror = () => reject(open.error);
      open.onsuccess = () => {
        if (open.result.objectStoreNames.contains("entries")) resolve(open.result);
        else { open.result.close(); resolve(null); }
      };
    });
  }

  function asked(base, store, how, key) {
    return new Promise((resolve, reject) => {
      const request = base.transaction(store).objectStore(store)[how](key);
      request.onerror = () => reject(request.error);
      request.onsuccess = () => resolve(request.result);
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
