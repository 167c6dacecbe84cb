// Nothing is lost: backup, bring in, two devices, two tabs, killed browsers, full stores, hostile text.
// `SOAK=1` runs the long form: 100 kills, 20 steps of a full store.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { violationsInBothThemes } from "./access.mjs";
import { act, controlled, enterDemo, openJob, press, ready, startSheet, writeFound } from "./flow.mjs";
import { choose, downloaded, faults, killTree, lives, open, stored, unlock, until, writing } from "./keep.mjs";
import { openBrowser, startSite, temporaryFolder } from "./site.mjs";

const LONG = Boolean(process.env.SOAK);
let site;
before(async () => { site = await startSite(); });
/** Every browser of this file: one left open by a test that failed would keep the file from ending. */
const opened = [];
after(async () => {
  // The killed ones are gone already.
  for (const context of opened) await context.close().catch(() => {});
  await site?.stop();
});

async function device(profile = temporaryFolder()) {
  const context = await openBrowser(profile);
  opened.push(context);
  return { context, page: context.pages()[0], profile };
}

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

  test("cleared by the browser it says so, and how to get the backup in", async () => {
    const other = await device();
    await enterDemo(other.page, site.url);
    await other.page.goto(`${site.url}/licences.txt`);
    await other.page.evaluate(() => new Promise((resolve, reject) => {
      const request = indexedDB.deleteDatabase("shimwright");
      request.onsuccess = resolve;
      request.onerror = reject;
    }));
    await open(other.page, site.url);
    await other.page.getByText("The browser has cleared the store").waitFor();
    await other.page.getByRole("link", { name: "Settings and backup" }).click();
    await other.page.getByRole("link", { name: /^Bring in a file/ }).click();
    await other.page.getByRole("heading", { name: "Bring in a file" }).waitFor();
    await other.context.close();
  });
});

describe("killed in the middle", () => {
  const kills = LONG ? 100 : 10;
  test(`${kills} kills lose nothing that was acknowledged`, { timeout: kills * 60000 }, async (t) => {
    const profile = temporaryFolder();
    const acknowledged = [];
    let between = 0;
    for (let kill = 0; kill < kills; kill += 1) {
      const { context, page } = await device(profile);
      const bytes = kill % 2 ? 200_000 : 20_000;
      const told = await writing(page, site.url, { job: "kill", count: 100_000, bytes });
      await until(() => told.acknowledged.length > 0 || told.refused.length > 0);
      await new Promise((go) => setTimeout(go, Math.random() * 800));
      const killed = killTree(profile);
      assert.ok(killed.length > 3, "the browser and what it started");
      assert.deepEqual(told.refused, []);
      acknowledged.push(...told.acknowledged.map((it) => Object.assign(it, { kill })));
      await context.close().catch(() => {});
      // A browser that is still dying must not meet the next one in the same folder.
      await until(() => !killed.some(lives));
      unlock(profile);
      between += told.acknowledged.length;
    }
    const { context, page } = await device(profile);
    await open(page, `${site.url}/settings`);
    const store = await stored(page);
    const { lost, torn } = faults(acknowledged, store);
    const missing = acknowledged.filter(([entry]) => !store.ids.includes(entry)).map(({ kill }) => kill);
    if (lost) t.diagnostic(`lost of each kill: ${Array.from({ length: kills }, (_, kill) => missing.filter((at) => at === kill).length).join(" ")}; the page says: ${await page.locator("[role=alert]").allInnerTexts()}`);
    t.diagnostic(`${kills} kills, ${between} acknowledged, ${store.ids.length} in the store: ${lost} lost, ${torn} torn`);
    assert.deepEqual({ lost, torn }, { lost: 0, torn: 0 });
    await context.close();
  });
});

describe("two tabs at once", () => {
  test("500 entries each: 1,000 kept, the same order in both", { timeout: 240000 }, async (t) => {
    const { context, page } = await device();
    const other = await context.newPage();
    const told = await Promise.all([page, other].map((tab) => writing(tab, site.url, { job: "both", count: 500 })));
    await until(() => told.every(({ ended }) => ended), 200000);
    assert.deepEqual(told.map(({ refused }) => refused), [[], []]);
    const order = (tab) => tab.locator("#order").evaluate((node) => node.textContent.trim().split("\n"));
    await until(async () => (await order(page)).length === 1001 && (await order(other)).length === 1001);
    const [here, there] = [await order(page), await order(other)];
    const { ids } = await stored(page);
    t.diagnostic(`${told.map(({ acknowledged }) => acknowledged.length).join(" + ")} acknowledged, ${ids.length} in the store with the opening`);
    assert.deepEqual(here, there);
    assert.deepEqual(here, ids);
    assert.equal(new Set(ids).size, 1001);
    await context.close();
  });
});

describe("a full store", () => {
  const steps = LONG ? 20 : 5;
  test(`at ${steps} steps nothing acknowledged is lost and every failure is said`, { timeout: 600000 }, async (t) => {
    const { context, page } = await device();
    await open(page, site.url);
    const session = await context.newCDPSession(page);
    const acknowledged = [];
    let failures = 0;
    for (let step = 1; step <= steps; step += 1) {
      const { usage } = await page.evaluate(() => navigator.storage.estimate());
      await session.send("Storage.overrideQuotaForOrigin", { origin: site.url, quotaSize: Math.round(usage + step * 60_000) });
      const tab = await context.newPage();
      const told = await writing(tab, site.url, { job: `full-${step}`, count: 5_000, bytes: step % 3 ? 40_000 : 0 });
      await until(() => told.ended, 120000);
      acknowledged.push(...told.acknowledged);
      failures += told.refused.length;
      assert.equal(told.refused.length, 1, `step ${step}`);
      assert.match(told.refused[0], /^The device has no room left, so this was not saved\./);
      assert.equal(await tab.locator("#refused").innerText(), told.refused[0]);
      await tab.close();
    }
    await session.send("Storage.overrideQuotaForOrigin", { origin: site.url });
    const { lost, torn } = faults(acknowledged, await stored(page));
    t.diagnostic(`${steps} steps, ${acknowledged.length} acknowledged, ${failures} failures said: ${lost} lost, ${torn} torn`);
    assert.deepEqual({ lost, torn }, { lost: 0, torn: 0 });
    await context.close();
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
