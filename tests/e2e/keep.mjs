// What the tests of durability share: entries written by the builders' page, the store as it lies.
import { rmSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { after, before } from "node:test";
import { ready } from "./flow.mjs";
import { openBrowser, startSite, temporaryFolder } from "./site.mjs";

/**
 * The site of a test file and its browsers, all of them closed at its end: one left open by a test
 * that failed would keep the file from ending.
 */
export function devices() {
  const [site, opened] = [{}, []];
  before(async () => Object.assign(site, await startSite()));
  after(async () => {
    // The killed ones are gone already.
    await Promise.all(opened.map((context) => context.close().catch(() => {})));
    await site.stop?.();
  });
  const device = async (profile = temporaryFolder()) => {
    const context = await openBrowser(profile);
    opened.push(context);
    return { context, page: context.pages()[0], profile };
  };
  return { site, device };
}

/** Opens the page that writes invented entries; collects what it says was acknowledged. */
export async function writing(page, url, { job, count, bytes = 0 }) {
  const told = { acknowledged: [], refused: [], ended: false };
  page.on("console", (message) => {
    const text = message.text();
    if (text.startsWith("acknowledged ")) told.acknowledged.push(text.split(" ").slice(1));
    else if (text.startsWith("refused ")) told.refused.push(text.slice("refused ".length));
    else if (text === "ended") told.ended = true;
  });
  await page.goto(`${url}/states/writing#${job}&${count}&${bytes}`);
  return told;
}

export async function until(holds, most = 60000) {
  const started = Date.now();
  while (!(await holds())) {
    if (Date.now() - started > most) throw new Error(`not within ${most} ms`);
    await new Promise((go) => setTimeout(go, 20));
  }
}

/** The store as it lies: ids of entries, the photos they name, the photos there are with their sizes. */
export function stored(page) {
  return page.evaluate(() => new Promise((resolve, reject) => {
    const open = indexedDB.open("shimwright");
    open.onerror = () => reject(open.error);
    open.onsuccess = () => {
      const base = open.result;
      const all = base.transaction(["entries", "photos"]);
      const lines = all.objectStore("entries").getAll();
      const photos = all.objectStore("photos").getAllKeys();
      const blobs = all.objectStore("photos").getAll();
      all.oncomplete = () => {
        const entries = lines.result.map((line) => JSON.parse(line));
        const named = entries.map((entry) => entry.fact.captured?.value?.photo).filter(Boolean);
        base.close();
        resolve({ ids: entries.map((entry) => entry.id), named, photos: photos.result, sizes: blobs.result.map((blob) => blob.size) });
      };
    };
  }));
}

/** A photo beside a job, as a step keeps it: in one transaction with its entry. */
export function keepPhoto(page, job) {
  return page.evaluate(async (job) => {
    const open = indexedDB.open("shimwright");
    const base = await new Promise((done) => { open.onsuccess = () => done(open.result); });
    const canvas = Object.assign(document.createElement("canvas"), { width: 64, height: 48 });
    canvas.getContext("2d").fillRect(8, 8, 20, 20);
    const picture = await new Promise((done) => canvas.toBlob(done, "image/jpeg"));
    const act = base.transaction(["entries", "photos"], "readwrite");
    const fact = { captured: { step: "b01", label: "invented", value: { photo: "photo-1" } } };
    const entry = { v: 2, book: `job:${job}`, id: "photo.0", n: 50, device: "other", at: Date.now() - 60_000, fact };
    act.objectStore("entries").add(JSON.stringify(entry), [entry.book, entry.n, entry.device]);
    act.objectStore("photos").add(picture, "photo-1");
    await new Promise((done) => { act.oncomplete = done; });
    base.close();
  }, job);
}

/** The ids of all entries in the store, as it lies; none where there is no store. */
export function entryIds(page) {
  return page.evaluate(async () => {
    if (!(await indexedDB.databases()).some(({ name }) => name === "shimwright")) return [];
    return new Promise((resolve, reject) => {
      const open = indexedDB.open("shimwright");
      open.onerror = () => reject(open.error);
      open.onsuccess = () => {
        const lines = open.result.transaction("entries").objectStore("entries").getAll();
        lines.onerror = () => reject(lines.error);
        lines.onsuccess = () => { open.result.close(); resolve(lines.result.map((line) => JSON.parse(line).id)); };
      };
    });
  });
}

/** In the page, before the app: the browser refuses the n-th write as it does where room runs out. */
export function refuseAt(number) {
  const begin = IDBDatabase.prototype.transaction;
  let writes = 0;
  IDBDatabase.prototype.transaction = function (stores, mode, options) {
    const transaction = begin.call(this, stores, mode, options);
    if (this.name !== "shimwright" || mode !== "readwrite" || (writes += 1) !== number) return transaction;
    const full = new DOMException("The test has no room.", "QuotaExceededError");
    Object.defineProperty(transaction, "error", { get: () => full });
    queueMicrotask(() => transaction.abort());
    return transaction;
  };
}

/** What is wrong between what was acknowledged and what lies in the store. */
export function faults(acknowledged, store) {
  const [ids, photos, named] = [new Set(store.ids), new Set(store.photos), new Set(store.named)];
  return {
    lost: acknowledged.filter(([entry, photo]) => !ids.has(entry) || (photo && !photos.has(photo))).length,
    torn: store.named.filter((photo) => !photos.has(photo)).length + store.photos.filter((photo) => !named.has(photo)).length + store.sizes.filter((size) => size === 0).length,
  };
}

/** Kills a browser's whole process tree at once: the processes whose command names its profile. */
export function killTree(profile) {
  const pids = readdirSync("/proc").filter((name) => /^\d+$/.test(name)).map(Number);
  const facts = pids.map((pid) => {
    try {
      const command = readFileSync(`/proc/${pid}/cmdline`, "utf8");
      const parent = Number(readFileSync(`/proc/${pid}/stat`, "utf8").replace(/^.*\) \S+ /s, "").split(" ")[0]);
      return { pid, command, parent };
    } catch {
      return { pid, command: "", parent: 0 };
    }
  });
  // The browser itself first: it has the profile and no type; then all below it.
  const tree = facts.filter(({ command }) => command.includes(`--user-data-dir=${profile}`) && !command.includes("--type=")).map(({ pid }) => pid);
  for (const pid of tree) tree.push(...facts.filter(({ parent }) => parent === pid).map(({ pid: child }) => child));
  for (const pid of tree) {
    try {
      process.kill(pid, "SIGKILL");
    } catch {
      // It ended with its parent.
    }
  }
  return tree;
}

/** Whether a process is still there; one that is only waited for has let go of everything. */
export function lives(pid) {
  try {
    return !/^\d+ \(.*\) [ZX]/s.test(readFileSync(`/proc/${pid}/stat`, "utf8"));
  } catch {
    return false;
  }
}

/** A profile that a killed browser left locked. */
export function unlock(profile) {
  for (const name of ["SingletonLock", "SingletonCookie", "SingletonSocket"]) rmSync(join(profile, name), { force: true });
}

/** Presses what hands a file over; answers its text. */
export async function downloaded(page, press) {
  const coming = page.waitForEvent("download");
  await press();
  const download = await coming;
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), "utf8") };
}

/** Chooses a file on the bring-in screen and waits until it was read or refused. */
export async function choose(page, text, name = "backup.jsonl") {
  await page.setInputFiles("input[type=file]", { name, mimeType: "application/x-ndjson", buffer: Buffer.from(text) });
  await page.locator("h2", { hasText: "What changes" }).or(page.locator(".msg--refused")).first().waitFor();
}

export async function open(page, address) {
  await page.goto(address);
  await ready(page);
}
