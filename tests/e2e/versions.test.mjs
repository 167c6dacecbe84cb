// Stores of older and newer versions: copied before they are changed, only looked at where they
// cannot be, never damaged by a page of another version.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { after, before, describe, test } from "node:test";
import { fileURLToPath } from "node:url";
import { violationsInBothThemes } from "./access.mjs";
import { enterDemo, press, ready } from "./flow.mjs";
import { choose, devices, downloaded, open, stored } from "./keep.mjs";

const golden = (name) => readFileSync(fileURLToPath(new URL(`../wire/${name}`, import.meta.url)), "utf8").trimEnd().split("\n");
/** What lay in the store of each older version: entries of every kind; photos came with the second. */
const OLDER = [
  { version: 1, lines: golden("entries-v1.jsonl"), photos: [] },
  { version: 2, lines: [...golden("entries-v1.jsonl"), ...golden("entries-v1-layouts.jsonl"), ...golden("entries-v2.jsonl")], photos: ["p1", "p2"] },
];

const { site, device } = devices();

/** In the page: a store as an older version made it, held open as a page of that version holds it. */
function make({ version, lines, photos }) {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open("shimwright", version);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("entries");
      if (version > 1) request.result.createObjectStore("photos");
    };
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const base = request.result;
      base.onversionchange = () => base.close();
      window.older = base;
      const all = base.transaction([...base.objectStoreNames], "readwrite");
      const places = new Set();
      for (const line of lines) {
        const { book, n, device } = JSON.parse(line);
        const place = [book, n, device];
        // A place that is taken: the line itself completes the key.
        all.objectStore("entries").add(line, places.has(`${place}`) ? [...place, line] : place);
        places.add(`${place}`);
      }
      for (const id of photos) all.objectStore("photos").add(new Blob([new Uint8Array([255, 216, 255, 224, 1])], { type: "image/jpeg" }), id);
      all.oncomplete = resolve;
      all.onabort = () => reject(all.error);
    };
  });
}

/** A database as it lies: version, lines, ids of photos. */
const lies = (page, name) => page.evaluate((name) => new Promise((resolve, reject) => {
  const request = indexedDB.open(name);
  request.onupgradeneeded = () => request.transaction.abort();
  request.onerror = () => resolve(null);
  request.onsuccess = () => {
    const base = request.result;
    const all = base.transaction([...base.objectStoreNames]);
    const lines = all.objectStore("entries").getAll();
    const photos = base.objectStoreNames.contains("photos") ? all.objectStore("photos").getAllKeys() : { result: [] };
    all.onabort = () => reject(all.error);
    all.oncomplete = () => {
      base.close();
      resolve({ version: base.version, lines: lines.result.toSorted(), photos: photos.result });
    };
  };
}), name);

for (const older of OLDER) {
  describe(`a store of version ${older.version}`, () => {
    const lines = older.lines.toSorted();
    let context, page;
    before(async () => {
      ({ context, page } = await device());
      await page.goto(`${site.url}/licences.txt`);
      await page.evaluate(make, older);
    });
    after(() => context?.close());

    test("is copied, counted, and only then changed; a page of that version lets go of it", async () => {
      const now = await context.newPage();
      await open(now, `${site.url}/settings`);
      await now.getByRole("heading", { name: "Copy of the older store" }).waitFor();
      assert.deepEqual(await violationsInBothThemes(now), [], "settings with a copy");
      assert.deepEqual(await lies(now, "shimwright"), { version: 3, lines, photos: older.photos });
      assert.deepEqual(await lies(now, "shimwright-copy"), { version: 1, lines, photos: older.photos });
      const late = await page.evaluate(() => {
        try { window.older.transaction("entries", "readwrite"); return "taken"; } catch (thrown) { return thrown.name; }
      });
      assert.equal(late, "InvalidStateError", "what the older page would write now is refused to it");
      await now.close();
    });

    test("its copy is a backup that another device brings in", async () => {
      await open(page, `${site.url}/settings`);
      const { text } = await downloaded(page, () => page.getByRole("button", { name: "Save the copy" }).click());
      const written = text.trimEnd().split("\n").slice(1, -1);
      assert.deepEqual(written.filter((line) => !line.startsWith("{\"photo\":")).toSorted(), lines);
      const other = await device();
      await open(other.page, `${site.url}/bring-in`);
      await choose(other.page, text);
      await press(other.page, /^Keep/);
      await other.page.getByRole("heading", { name: "Brought in" }).waitFor();
      assert.equal((await stored(other.page)).photos.length, older.photos.length);
      await other.context.close();
    });

    test("its copy goes with the next backup, or when a person removes it", async () => {
      const heading = page.getByRole("heading", { name: "Copy of the older store" });
      await heading.waitFor();
      if (older.version === 1) await page.getByRole("button", { name: "Remove the copy" }).click();
      else await downloaded(page, () => press(page, "Back up now"));
      await heading.waitFor({ state: "detached" });
      assert.equal(await lies(page, "shimwright-copy"), null);
      assert.deepEqual((await lies(page, "shimwright")).lines, lines);
    });
  });
}

test("an older store that cannot be copied stays as it is, is shown, and is changed once it can be", async () => {
  const { context, page } = await device();
  const [, older] = OLDER;
  await page.goto(`${site.url}/licences.txt`);
  await page.evaluate(make, older);
  const now = await context.newPage();
  await now.addInitScript(() => {
    const begin = IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = function (...words) {
      if (this.name === "shimwright-copy") throw new DOMException("The test has no room.", "QuotaExceededError");
      return begin.apply(this, words);
    };
  });
  await open(now, `${site.url}/settings`);
  await now.getByText("The store of this device is still in its older form").waitFor();
  const before = await lies(now, "shimwright");
  assert.deepEqual(before, { version: 2, lines: older.lines.toSorted(), photos: older.photos });
  // Everything can still be taken off the device.
  const { text } = await downloaded(now, () => press(now, "Back up now"));
  assert.equal(JSON.parse(text.split("\n")[0]).entries, older.lines.length);
  await now.goto(`${site.url}/new-job`);
  await ready(now);
  await now.getByRole("button", { name: "Start a new sheet" }).click();
  await now.locator("#unit").fill("Written too early");
  await now.getByRole("button", { name: "Start this sheet" }).click();
  await now.getByText("So nothing is saved.").first().waitFor();
  assert.equal(await now.locator("#unit").inputValue(), "Written too early");
  assert.deepEqual(await lies(now, "shimwright"), before);
  await now.close();
  await open(page, `${site.url}/settings`);
  await page.getByRole("heading", { name: "Copy of the older store" }).waitFor();
  assert.equal((await lies(page, "shimwright")).version, 3);
  await context.close();
});

test("a page that a newer version overtakes lets go, writes no more, and damages nothing", async () => {
  const { context, page } = await device();
  await enterDemo(page, site.url);
  await page.locator("#found-B1").fill("0.50");
  const newer = await context.newPage();
  await newer.goto(`${site.url}/licences.txt`);
  // A newer version with another shape: what this one does not know must stay as it is.
  await newer.evaluate(() => new Promise((resolve, reject) => {
    const request = indexedDB.open("shimwright", 9);
    request.onblocked = () => reject(new Error("the older page did not let go"));
    request.onerror = () => reject(request.error);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("later").put("of a newer version", 1);
      request.transaction.objectStore("entries").put("of a newer version", ["job:later", 1, "newer"]);
    };
    request.onsuccess = () => { request.result.close(); resolve(); };
  }));
  const before = await lies(newer, "shimwright");
  await page.getByText("A newer version of the app is open in another tab").waitFor();
  await press(page, /^Write down/);
  await page.getByText("A newer version of the app has been at work").first().waitFor();
  assert.equal(await page.locator("#found-B1").inputValue(), "0.50");
  assert.deepEqual(await lies(newer, "shimwright"), before);
  assert.equal(before.version, 9);
  await context.close();
});
