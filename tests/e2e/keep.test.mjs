// Nothing is lost: backup, bring in, two devices, stores that are not as they should be, hostile text.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { violationsInBothThemes } from "./access.mjs";
import { act, enterDemo, openJob, press, ready, startSheet, writeFound } from "./flow.mjs";
import { choose, devices, downloaded, open, stored } from "./keep.mjs";

const { site, device } = devices();

/** A file's entry lines with one changed. */
const lines = (text) => text.trimEnd().split("\n");
/** A bare list of entries, which no last line holds together. */
const bare = (entries) => entries.map((entry) => `${JSON.stringify(entry)}\n`).join("");

describe("backup and bring in", () => {
  let one, two, backup;
  before(async () => {
    [one, two] = [await device(), await device()];
    await enterDemo(one.page, site.url);
    await writeFound(one.page, { B1: "0.50 + 0.10" });
    await one.page.getByRole("status").getByText("B1 found").waitFor();
  });
  after(async () => { await one?.context.close(); await two?.context.close(); });

  test("a backup is one file, and the bench tells its date", async () => {
    const { page } = one;
    await open(page, `${site.url}/settings`);
    await page.getByText("Backup due").waitFor();
    assert.deepEqual(await violationsInBothThemes(page), [], "settings");
    backup = await downloaded(page, () => press(page, "Back up now"));
    assert.match(backup.name, /^shimwright-\d{4}-\d\d-\d\d\.jsonl$/);
    await page.getByText("Backed up", { exact: true }).waitFor();
    const [head, ...rest] = lines(backup.text).map((line) => JSON.parse(line));
    assert.equal(head.entries, rest.length - 1);
    assert.equal(rest.at(-1).end.lines, rest.length);
    await open(page, site.url);
    await page.getByText("Last backup just now. Nothing written since.").waitFor();
  });

  test("on a new device it shows what it changes, is kept, and is lifted out again", async () => {
    const { page } = two;
    await open(page, site.url);
    await page.getByRole("link", { name: /^Bring in a backup/ }).click();
    await page.getByRole("heading", { name: "Bring in a file" }).waitFor();
    assert.deepEqual(await violationsInBothThemes(page), [], "bring in, empty");
    await choose(page, backup.text, backup.name);
    await page.getByText("as a new job, number 1").waitFor();
    assert.deepEqual(await violationsInBothThemes(page), [], "bring in, before");
    assert.equal((await stored(page)).ids.length, 0);
    await press(page, /^Keep \d+ entries/);
    await page.getByRole("heading", { name: "Brought in" }).waitFor();
    assert.deepEqual(await violationsInBothThemes(page), [], "bring in, after");
    const count = lines(backup.text).length - 2;
    assert.equal((await stored(page)).ids.length, count);
    await page.getByRole("button", { name: "Undo all" }).click();
    await page.getByRole("heading", { name: "Before it is kept" }).waitFor();
    assert.equal((await stored(page)).ids.length, 0);
    await press(page, /^Keep/);
    await page.getByRole("heading", { name: "Brought in" }).waitFor();
    await open(page, site.url);
    await page.locator(".job h3").getByText("Grey Heron").waitFor();
  });

  test("the same file again changes nothing", async () => {
    const { page } = two;
    await open(page, `${site.url}/bring-in`);
    await choose(page, backup.text);
    await page.getByRole("link", { name: "Go to the bench" }).waitFor();
    assert.equal(await page.locator(".row .state").filter({ hasText: "Same" }).count(), await page.locator(".row--3").count());
  });

  test("what two devices wrote side by side is judged by a person, and both end up the same", async () => {
    const entries = lines(backup.text).slice(1, -1).map((line) => JSON.parse(line));
    const pack = entries.find((entry) => entry.fact["pack-fitted"]);
    const n = Math.max(...entries.filter((entry) => entry.book === pack.book).map((entry) => entry.n)) + 1;
    const fitted = (device, net) => ({
      ...pack, id: `${device}.0`, n, device,
      fact: { "pack-fitted": { slot: "B2", shims: [{ measured: { typed: net, unit: "mm" } }], as_found: false } },
    });
    // Each device wrote its own; the other's comes as a file.
    const [phone, tablet] = [fitted("phone", "0.697"), fitted("tablet", "0.648")];
    for (const [{ page }, own] of [[one, phone], [two, tablet]]) {
      await open(page, `${site.url}/bring-in`);
      await choose(page, bare([own]));
      await press(page, /^Keep 1 entry/);
      await page.getByRole("heading", { name: "Brought in" }).waitFor();
    }
    await open(one.page, `${site.url}/bring-in`);
    await choose(one.page, bare([tablet]));
    await one.page.getByRole("heading", { name: "Written side by side" }).waitFor();
    assert.deepEqual(await violationsInBothThemes(one.page), [], "bring in, to judge");
    assert.equal(await act(one.page).getAttribute("aria-disabled"), "true");
    await one.page.locator(".choice").filter({ hasText: "Written here" }).click();
    await press(one.page, /^Keep/);
    await one.page.getByRole("heading", { name: "Brought in" }).waitFor();
    await open(one.page, `${site.url}/settings`);
    const after = await downloaded(one.page, () => press(one.page, "Back up now"));
    await open(two.page, `${site.url}/bring-in`);
    await choose(two.page, after.text);
    assert.equal(await two.page.getByText("Written side by side").count(), 0);
    await press(two.page, /^Keep/);
    await two.page.getByRole("heading", { name: "Brought in" }).waitFor();
    assert.deepEqual((await stored(one.page)).ids.sort(), (await stored(two.page)).ids.sort());
  });

  test("a file that is damaged, too deep, too large or another program’s is refused in a sentence", async () => {
    const { page } = two;
    await open(page, `${site.url}/bring-in`);
    const entry = lines(backup.text)[1];
    for (const [text, sentence] of [
      ["hello", "The file begins with “hello”"],
      [`${entry}\n${"[".repeat(100)}`, "Line 2 is nested deeper"],
      [`${entry}\n${"x".repeat(2_000_000)}`, "Line 2 is longer"],
      [entry.replace(/"n":\d+/, '"n":9007199254740991'), "claims place 9007199254740991"],
    ]) {
      await choose(page, text);
      await page.locator(".msg--refused").getByText(sentence).waitFor();
    }
    await page.evaluate(() => {
      const input = document.querySelector("input[type=file]");
      const large = new File([new Blob(Array(200).fill(new Uint8Array(1024 * 1024)))], "large.jsonl");
      const chosen = new DataTransfer();
      chosen.items.add(large);
      input.files = chosen.files;
      input.dispatchEvent(new Event("change"));
    });
    await page.locator(".msg--refused").getByText("over 192 MB").waitFor();
    // Cut off, it is told, not refused.
    await choose(page, lines(backup.text).slice(0, -1).join("\n"));
    await page.getByText("The file was cut off.").waitFor();
  });

  test("entries of a newer version are kept and go out as they came", async () => {
    const { page } = two;
    const newer = { v: 99, book: "job:far", id: "z.0", n: 3, device: "newer", at: 0, fact: { "thing-done": {} } };
    await open(page, `${site.url}/bring-in`);
    await choose(page, `${bare([newer])}not JSON at all\n`);
    await page.getByText("2 entries could not be read by this version").waitFor();
    await press(page, /^Keep 2 entries/);
    await page.getByRole("heading", { name: "Brought in" }).waitFor();
    await open(page, `${site.url}/settings`);
    await page.getByText("2 cannot be shown here").waitFor();
    const { text } = await downloaded(page, () => press(page, "Back up now"));
    assert.ok(lines(text).includes(JSON.stringify(newer)) && lines(text).includes("not JSON at all"));
  });

  test("a unit sheet goes out as a code and comes in from the address", async () => {
    const { page } = one;
    const id = await page.evaluate(() => new Promise((resolve) => {
      const request = indexedDB.open("shimwright");
      request.onsuccess = () => {
        const keys = request.result.transaction("entries").objectStore("entries").getAllKeys();
        keys.onsuccess = () => { request.result.close(); resolve(keys.result.find(([book]) => book.startsWith("sheet:"))[0].slice("sheet:".length)); };
      };
    }));
    await open(page, `${site.url}/sheet/${id}/send`);
    await page.getByRole("img", { name: /^Code of the unit sheet/ }).waitFor();
    assert.deepEqual(await violationsInBothThemes(page), [], "send a sheet");
    const { text } = await downloaded(page, () => press(page, "Save as a file"));
    assert.ok(lines(text).slice(1, -1).every((line) => JSON.parse(line).book === `sheet:${id}`));
    await open(two.page, `${site.url}/bring-in#sheet=1&b&From%20a%20code&forward-low=0.20mm&pinion-teeth=14`);
    await two.page.getByText("From a code").first().waitFor();
    await press(two.page, /^Keep 3 entries/);
    await two.page.getByRole("heading", { name: "Brought in" }).waitFor();
    await two.page.reload();
    await ready(two.page);
    await two.page.getByRole("link", { name: "Go to the bench" }).waitFor();
  });
});

describe("a store that is not as it should be", () => {
  let one;
  before(async () => {
    one = await device();
    await enterDemo(one.page, site.url);
  });
  after(() => one?.context.close());

  test("of a newer version it is shown, and takes nothing, with the reason", async () => {
    const { page } = one;
    await page.goto(`${site.url}/licences.txt`);
    await page.evaluate(() => new Promise((resolve, reject) => {
      const request = indexedDB.open("shimwright", 7);
      request.onerror = reject;
      request.onsuccess = () => { request.result.close(); resolve(); };
    }));
    await open(page, site.url);
    await page.getByText("A newer version of the app made the store").waitFor();
    // It wakes where one stopped: at the set-up.
    await page.locator(".plate").getByText("Grey Heron").waitFor();
    await page.locator("#found-B1").fill("0.50");
    await press(page, /^Write down/);
    await page.getByText("A newer version of the app has been at work").first().waitFor();
    await open(page, `${site.url}/settings`);
    const { text } = await downloaded(page, () => press(page, "Back up now"));
    assert.equal(JSON.parse(lines(text)[0]).entries, lines(text).length - 2);
  });

  /** The browser drops the store, as it does where the disk is full: it asks no page before. */
  const drop = async (page) => {
    const session = await page.context().newCDPSession(page);
    await session.send("Storage.clearDataForOrigin", { origin: site.url, storageTypes: "indexeddb" });
    await session.detach();
  };

  test("dropped by the browser, what was written since the last backup is put back", async () => {
    const other = await device();
    const { page } = other;
    await enterDemo(page, site.url);
    const before = (await stored(page)).ids.sort();
    await page.goto(`${site.url}/licences.txt`);
    await drop(page);
    await open(page, site.url);
    await page.getByText("is put back from a second copy").waitFor();
    await page.locator(".plate").getByText("Grey Heron").waitFor();
    assert.deepEqual((await stored(page)).ids.sort(), before);
    // What is in a backup needs no second copy.
    await open(page, `${site.url}/settings`);
    await downloaded(page, () => press(page, "Back up now"));
    await page.getByText("Backed up", { exact: true }).waitFor();
    await page.goto(`${site.url}/licences.txt`);
    await drop(page);
    await open(page, site.url);
    await page.getByText("The browser has cleared the store").waitFor();
    await page.getByRole("link", { name: "Settings and backup" }).click();
    await page.getByRole("link", { name: /^Bring in a file/ }).click();
    await page.getByRole("heading", { name: "Bring in a file" }).waitFor();
    await other.context.close();
  });

  test("dropped while a page is open, that page writes no more and says so; a reload puts back", async () => {
    const other = await device();
    const { page } = other;
    await enterDemo(page, site.url);
    const before = (await stored(page)).ids.sort();
    await drop(page);
    await page.locator("#found-B1").fill("0.50");
    await press(page, /^Write down/);
    await page.getByText("The browser has cleared the store while this page was open").first().waitFor();
    assert.equal(await page.locator("#found-B1").inputValue(), "0.50");
    assert.deepEqual((await stored(page)).ids, []);
    await page.reload();
    await ready(page);
    await page.getByText("is put back from a second copy").waitFor();
    assert.deepEqual((await stored(page)).ids.sort(), before);
    await other.context.close();
  });
});

describe("hostile text", () => {
  const TEXTS = [
    "<img src=x onerror=alert(1)><script>alert(2)</script>",
    "\u202Egnirts \u2066evil\u2069",
    "=HYPERLINK(\"http://x\",\"y\")",
    "@SUM(1+1)*cmd|' /C calc'!A0",
    "n".repeat(100 * 1024),
  ];
  test("stays text in fields, export, import, print and table", { timeout: 300000 }, async () => {
    let last;
    const [from, to] = [await device(), await device()];
    const alarms = [];
    for (const { context, page } of [from, to]) {
      page.on("dialog", (dialog) => { alarms.push(dialog.message()); dialog.dismiss(); });
      page.on("pageerror", (error) => alarms.push(String(error)));
      context.on("request", (request) => { if (!request.url().startsWith(site.url) && !request.url().startsWith("blob:")) alarms.push(request.url()); });
    }
    const { page } = from;
    for (const [at, text] of TEXTS.entries()) {
      await open(page, `${site.url}/new-job`);
      if (at > 0) await page.getByRole("button", { name: "Start a new sheet" }).click();
      await startSheet(page, text);
      await page.goto(`${site.url}/new-job`);
      await ready(page);
      await openJob(page, text);
      last = new URL(page.url()).pathname.replace(/\/setup$/, "");
      const jobs = page.url().replace(/setup$/, "record");
      await page.emulateMedia({ media: "print" });
      await open(page, jobs);
      assert.ok((await page.locator(".paper").innerText()).length > 0, `record ${at}`);
      await page.emulateMedia({ media: "screen" });
    }
    // From the record that one stopped at.
    await page.evaluate(() => localStorage.removeItem("shimwright.screen"));
    await open(page, site.url);
    assert.equal(await page.locator(".job").count(), TEXTS.length);
    await open(page, `${site.url}/settings`);
    const table = await downloaded(page, () => page.getByRole("button", { name: "Table (CSV)" }).click());
    assert.match(table.name, /\.csv$/);
    assert.doesNotMatch(table.text, /(^|,|\n|")[=@]/);
    const backup = await downloaded(page, () => press(page, "Back up now"));
    for (const text of TEXTS) assert.ok(lines(backup.text).some((line) => line.startsWith("{\"v\"") && JSON.parse(line).fact["job-opened"]?.boat === text));
    await open(to.page, `${site.url}/bring-in`);
    await choose(to.page, backup.text);
    assert.equal(await to.page.locator(".row--3 bdi").filter({ hasText: "onerror" }).count() > 0, true);
    await press(to.page, /^Keep/);
    await to.page.getByRole("heading", { name: "Brought in" }).waitFor();
    await open(to.page, site.url);
    assert.equal(await to.page.locator(".job").count(), TEXTS.length);
    // The last job's names are 100 kB of letters without a blank.
    const wide = [];
    for (const place of ["/", "/board", "/new-job", last, ...["setup", "record", "send", "influence", "steps", "check"].map((screen) => `${last}/${screen}`)]) {
      await to.page.evaluate(() => localStorage.removeItem("shimwright.screen"));
      await open(to.page, site.url + place);
      const by = await to.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      if (by > 0) wide.push(`${place.replace(last, "/job/…")} by ${by} px`);
    }
    assert.deepEqual(wide, [], "nothing pushes a page wide");
    assert.deepEqual(alarms, []);
    await from.context.close();
    await to.context.close();
  });
});
