// What must work before the app's own code and without it: offline, update, crash card.
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { copyOfDist, openBrowser, startSite } from "./site.mjs";

/** The worker answers the page from now on. */
const controlled = (page) => page.waitForFunction(() => navigator.serviceWorker.controller !== null);

/** Puts another version into a copy of dist: a changed page, and the worker's list to match. */
function release(folder, first, name) {
  const page = first.replace("<html ", `<html data-release="${name}" `);
  const digest = createHash("sha256").update(page).digest("base64");
  const worker = readFileSync(join(folder, "sw.js"), "utf8")
    .replace(/const VERSION = ".*";/, `const VERSION = "${name}";`)
    .replace(/\["\/", "sha256-[^"]*"/, `["/", "sha256-${digest}"`);
  for (const [name, text] of [["index.html", page], ["sw.js", worker]]) {
    for (const ending of [".br", ".gz"]) rmSync(join(folder, name + ending), { force: true });
    writeFileSync(join(folder, name), text);
  }
}

/** The version a page is of; none for the one that was built. */
const releaseOf = (page) => page.evaluate(() => document.documentElement.dataset.release);

/** Takes files out of a copy of dist, with their compressed forms. */
function remove(folder, part) {
  for (const name of readdirSync(folder, { recursive: true }).filter((name) => name.includes(part))) rmSync(join(folder, name));
}

describe("first visit", () => {
  let site, context, page;
  before(async () => {
    const folder = copyOfDist();
    remove(folder, "split_work");
    site = await startSite({ from: folder });
    context = await openBrowser();
    page = context.pages()[0];
    await page.goto(site.url);
    await page.waitForSelector("html[data-ready]");
  });
  after(async () => { await context?.close(); await site?.stop(); });

  test("the first screen stands without the rest of the app", async () => {
    assert.equal(await page.textContent("h1"), "Right shims, first time");
  });

  test("a press for which the rest has not come says so, and nothing breaks", async () => {
    await page.getByRole("button", { name: "Lay out the practice job" }).click();
    await page.waitForSelector("text=The rest of the app has not come");
    await page.getByRole("link", { name: "Start a real job" }).first().click();
    await page.waitForSelector("text=The rest of the app has not come");
    assert.equal(await page.textContent("h1"), "Right shims, first time");
  });

  test("an address of a screen that has not come says so", async () => {
    await page.goto(`${site.url}/tin`);
    await page.waitForSelector("text=This screen has not come yet.");
  });
});

describe("offline", () => {
  let site, context, page;
  const strangers = [], complaints = [];
  before(async () => {
    site = await startSite();
    context = await openBrowser();
    page = context.pages()[0];
    context.on("request", (request) => { if (!request.url().startsWith(site.url) && !request.url().startsWith("blob:")) strangers.push(request.url()); });
    page.on("console", (message) => { if (["error", "warning"].includes(message.type())) complaints.push(message.text()); });
    await page.goto(site.url);
    await controlled(page);
    await site.stop();
  });
  after(() => context?.close());

  test("every screen's address opens with the server gone", async () => {
    // A screen names the page once its code has come.
    for (const [path, name] of [["/", /^Shimwright$/], ["/new-job", /^(New job · )?Shimwright$/], ["/job/7?from=bench", /Shimwright$/]]) {
      const response = await page.goto(site.url + path);
      assert.equal(response.status(), 200, path);
      assert.ok(response.fromServiceWorker(), path);
      assert.match(await page.title(), name, path);
    }
  });

  test("nothing was asked of any other place, and the browser had no complaint", () => {
    assert.deepEqual(strangers, []);
    assert.deepEqual(complaints, []);
  });
});

describe("update", () => {
  let site, context, page, folder, first;
  before(async () => {
    folder = copyOfDist();
    first = readFileSync(join(folder, "index.html"), "utf8");
    site = await startSite({ from: folder });
    context = await openBrowser();
    page = context.pages()[0];
    await page.goto(site.url);
    await controlled(page);
  });
  after(async () => { await context?.close(); await site?.stop(); });

  const look = () => page.evaluate(async () => { await (await navigator.serviceWorker.getRegistration()).update(); });
  const waiting = () => page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).waiting !== null);

  test("a version with one damaged file is not taken", async () => {
    release(folder, first, "Damaged");
    writeFileSync(join(folder, "index.html"), "half a pa");
    await look().catch(() => {});
    await page.waitForTimeout(500);
    assert.equal(await waiting(), false);
    assert.deepEqual(await page.evaluate(async () => (await caches.keys()).length), 1);
    await page.reload();
    assert.equal(await releaseOf(page), undefined);
  });

  test("a new version waits, stays out of the way of typing, and comes when it is wanted", async () => {
    await page.goto(site.url + "/new-job");
    release(folder, first, "Second");
    await page.locator("#unit").fill("half a na");
    await look();
    await page.waitForSelector("#notices .update", { state: "attached" });
    assert.equal(await page.isVisible("#notices .update"), false, "hidden while a field holds text");
    await page.locator("#unit").fill("");
    await page.locator("#unit").blur();
    await page.waitForSelector("#notices .update", { state: "visible" });
    assert.equal(await releaseOf(page), undefined, "the old version stays until then");

    await Promise.all([page.waitForEvent("load"), page.getByRole("button", { name: "Use it now" }).click()]);
    assert.equal(await releaseOf(page), "Second");
    assert.equal(new URL(page.url()).pathname, "/new-job");
    assert.equal(await page.evaluate(async () => (await caches.keys()).length), 1, "the old files are gone");
  });
});

describe("crash card", () => {
  let site, context, page;
  before(async () => {
    const folder = copyOfDist();
    remove(folder, ".wasm");
    site = await startSite({ from: folder });
    context = await openBrowser();
    page = context.pages()[0];
    await page.goto(site.url);
    await page.waitForSelector("#crash");
  });
  after(async () => { await context?.close(); await site?.stop(); });

  test("an app that does not start says so and offers to reload and to export, never to clear", async () => {
    assert.equal(await page.textContent("#crash h1"), "The app could not start");
    const controls = await page.locator("#crash").locator("button, a, input").allTextContents();
    assert.deepEqual(controls, ["Export everything", "Copy this text", "Reload"]);
  });

  test("with no store there is nothing to export, and none is made", async () => {
    await page.getByRole("button", { name: "Export everything" }).click();
    await page.waitForSelector("text=no job is kept on this device");
    assert.deepEqual(await page.evaluate(async () => (await indexedDB.databases()).length), 0);
  });

  test("everything in the store goes into the file as it lies", async () => {
    await page.evaluate(() => new Promise((resolve, reject) => {
      const open = indexedDB.open("shimwright", 3);
      open.onupgradeneeded = () => {
        const entries = open.result.createObjectStore("entries", { autoIncrement: true });
        entries.add({ id: "a", typed: "0,30 mm" });
        entries.add('{"id":"b"}');
      };
      open.onerror = () => reject(open.error);
      open.onsuccess = () => { open.result.close(); resolve(); };
    }));
    const coming = page.waitForEvent("download");
    await page.getByRole("button", { name: "Export everything" }).click();
    const download = await coming;
    assert.match(download.suggestedFilename(), /^shimwright-\d{4}-\d\d-\d\d\.jsonl$/);
    const [head, ...lines] = readFileSync(await download.path(), "utf8").split("\n");
    assert.equal(JSON.parse(head).entries, 2);
    assert.deepEqual(lines.slice(0, 2), ['{"id":"a","typed":"0,30 mm"}', '{"id":"b"}']);
    assert.equal(JSON.parse(lines[2]).end.lines, 3);
    await page.waitForSelector("text=Entries: 2, photos: 0.");
  });

  test("an app that starts after all takes its place back", async () => {
    await page.evaluate(() => { document.documentElement.dataset.ready = ""; });
    await page.waitForSelector("#crash", { state: "detached" });
  });

  test("a trap in the running app brings the card, a stray fault does not", async () => {
    await page.evaluate(() => { setTimeout(() => { throw new TypeError("an extension tripped"); }); });
    await page.waitForTimeout(100);
    assert.equal(await page.locator("#crash").count(), 0);
    await page.evaluate(() => { setTimeout(() => { throw new WebAssembly.RuntimeError("unreachable"); }); });
    await page.waitForSelector("#crash");
    assert.equal(await page.textContent("#crash h1"), "The app has stopped");
  });
});
