// Spanish, whole: a job written down in English is read in Spanish on every screen, nothing English
// is left, each screen is clean for axe in both themes, and the record as a file is what the command
// line writes. The job is invented.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { after, before, describe, test } from "node:test";
import { violationsInBothThemes } from "./access.mjs";
import { enterDemo, ready } from "./flow.mjs";
import { fillJob } from "./opening.mjs";
import { PAPERS } from "./papers.mjs";
import { OF_THE_JOB, OTHERS } from "./places.mjs";
import { openBrowser, saveTo, startSite, temporaryFolder } from "./site.mjs";

const root = fileURLToPath(new URL("../../", import.meta.url));
const target = process.env.CARGO_TARGET_DIR ?? join(root, "target");

// Words of English that are none of Spanish, so that a sentence glued from pieces is found as well.
const ENGLISH = /\b(the|of|and|are|was|not|to|with|from|yet|this|what|which|that|for|at|its|then|before|after|first|next|read|keep|type|shims?|packs?|gauge|lash|bench|job|unit|sheet|step|seals?|bearings?|gears?|pinion|depth|play|torque|found|left|low|high|yes|none|both|more|less|over|under|out|thicker|thinner|open|shut|done|missing)\b/i;

/** The texts of the catalogue, English and Spanish. */
function catalogue() {
  const texts = ["page", "door", "app", "steps"].map((part) => readFileSync(join(root, `crates/words/po/es-${part}.po`), "utf8"));
  const pairs = texts.join("\n").matchAll(/^msgid (".*")\nmsgstr (".*")$/gm);
  return new Map([...pairs].map(([, english, spanish]) => [JSON.parse(english), JSON.parse(spanish)]));
}

/** Every text of the page, seen or spoken. */
const texts = (page) => page.evaluate(() => {
  document.querySelectorAll("details").forEach((part) => { part.open = true; });
  const all = new Set([document.title]);
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    if (!walk.currentNode.parentElement.closest("script, style, [lang=en]")) all.add(walk.currentNode.data.trim());
  }
  for (const name of ["aria-label", "placeholder", "title", "alt"]) {
    document.querySelectorAll(`[${name}]`).forEach((at) => all.add(at.getAttribute(name)));
  }
  return [...all].filter(Boolean);
});

/** What people typed, as it lies in the store, but for the words that the app gave them to choose. */
const typed = async (page, known) => {
  const entries = await page.evaluate(async () => {
    const base = await new Promise((done) => { const open = indexedDB.open("shimwright"); open.onsuccess = () => done(open.result); });
    const all = base.transaction("entries").objectStore("entries").getAll();
    return new Promise((done) => { all.onsuccess = () => { base.close(); done(all.result); }; });
  });
  const found = new Set();
  entries.forEach((entry) => JSON.parse(entry, (_, value) => { if (typeof value === "string") found.add(value); return value; }));
  return [...found].filter((text) => /[a-z]{2}/i.test(text) && !known.has(text)).sort((one, other) => other.length - one.length);
};

describe("in Spanish", () => {
  const complaints = [], folder = temporaryFolder();
  const known = catalogue();
  let site, context, page, job, words;

  before(async () => {
    execFileSync("cargo", ["build", "--quiet", "--package", "shimwright-cli"], { cwd: root, stdio: "inherit" });
    site = await startSite();
    context = await openBrowser(undefined, { acceptDownloads: true, timezoneId: "UTC" });
    page = context.pages()[0];
    page.on("console", (message) => { if (["error", "warning"].includes(message.type())) complaints.push(message.text()); });
    page.on("pageerror", (error) => complaints.push(String(error)));
    await page.clock.setFixedTime(new Date("2026-01-20T12:00:00Z"));
    await enterDemo(page, site.url);
    job = await fillJob(page, PAPERS);
    words = await typed(page, known);
  });
  after(async () => {
    await context?.close();
    await site?.stop();
  });

  /** Opens a screen as a bookmark does. */
  async function go(place) {
    await page.evaluate(() => localStorage.removeItem("shimwright.screen"));
    await page.goto(site.url + place);
    await ready(page);
    await page.locator("main h1, main h2").first().waitFor();
  }

  test("it is chosen in the settings, and spoken from then on, also with no server", async () => {
    await go("/settings");
    await page.locator('[aria-label="Language"] label').filter({ hasText: "Español" }).click();
    await page.getByRole("heading", { name: "Ajustes", level: 1 }).waitFor();
    assert.equal(await page.locator("html").getAttribute("lang"), "es");
    await site.stop();
    await page.reload();
    await page.getByRole("heading", { name: "Ajustes", level: 1 }).waitFor();
  });

  test("no English is left, axe finds nothing in either theme, and nothing scrolls sideways", async () => {
    const left = [], violations = [], wide = [];
    for (const place of [...OF_THE_JOB.map((place) => `/job/${job}${place}`), ...OTHERS]) {
      await go(place);
      const short = place.replace(`/job/${job}`, "…");
      for (const text of await texts(page)) {
        const bare = words.reduce((text, typed) => text.replaceAll(typed, " "), text);
        const is_key = known.has(text) && known.get(text) !== text;
        if (is_key || ENGLISH.test(bare)) left.push(`${short}: ${text}`);
      }
      await page.setViewportSize({ width: 320, height: 740 });
      if (await page.evaluate(() => document.documentElement.scrollWidth > innerWidth)) wide.push(short);
      await page.setViewportSize({ width: 360, height: 740 });
      violations.push(...(await violationsInBothThemes(page)).map((line) => `${short}: ${line}`));
    }
    assert.deepEqual(left, []);
    assert.deepEqual(violations, []);
    assert.deepEqual(wide, [], "sideways at 320 px");
  });

  test("the record as a file is what the command line writes", async () => {
    const saved = (button, name) => saveTo(page, button, join(folder, name));
    await go(`/job/${job}/send`);
    const exported = await saved(page.locator(".dock .btn--main"), "job.jsonl");
    await go(`/job/${job}/record`);
    const record = readFileSync(await saved(page.getByRole("button", { name: "Guardar el registro como archivo" }), "record.html"), "utf8");
    const made = execFileSync(join(target, "debug/shimwright"), ["report", exported, "--language", "es"], { maxBuffer: 1 << 28, encoding: "utf8" });
    assert.ok(made.includes('<html lang="es">'));
    assert.ok(record === made, "byte for byte");
  });

  test("nothing was said on the console", () => assert.deepEqual(complaints, []));
});

describe("a device that speaks Spanish", () => {
  let site, context, page;
  before(async () => {
    site = await startSite();
    context = await openBrowser(undefined, { locale: "es-ES" });
    page = context.pages()[0];
    await page.goto(site.url);
    await ready(page);
  });
  after(async () => {
    await context?.close();
    await site?.stop();
  });

  test("is met in Spanish on the first page, and by the practice job behind it", async () => {
    assert.equal(await page.locator("html").getAttribute("lang"), "es");
    const first = catalogue().get("Lay out the practice job");
    await page.getByRole("button", { name: first }).click();
    await page.locator(".job").first().click();
    await page.waitForURL(/\/job\/[^/]+$/);
    assert.deepEqual((await texts(page)).filter((text) => /\b(the|of|and|not)\b/.test(text)), []);
  });

  test("speaks English where that was chosen", async () => {
    await page.goto(`${site.url}/settings`);
    await ready(page);
    await page.locator('[aria-label="Idioma"] label').filter({ hasText: "English" }).click();
    await page.getByRole("heading", { name: "Settings", level: 1 }).waitFor();
    assert.equal(await page.locator("html").getAttribute("lang"), "en");
  });
});
