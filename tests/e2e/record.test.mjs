// The record of a well-filled job: on the screen, as tagged PDF, and as a file that is byte for
// byte what the command line makes of the job's own export. The job is invented.
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
import { openBrowser, startSite, temporaryFolder } from "./site.mjs";

const root = fileURLToPath(new URL("../../", import.meta.url));
const target = process.env.CARGO_TARGET_DIR ?? join(root, "target");
// 30 minutes past no whole hour of UTC, and not the day of UTC for the last hours of it.
const ZONE = { timezoneId: "America/St_Johns", offset: "-210" };

describe("the record", () => {
  const complaints = [], folder = temporaryFolder();
  let site, context, page, job;

  before(async () => {
    execFileSync("cargo", ["build", "--quiet", "--package", "shimwright-cli"], { cwd: root, stdio: "inherit" });
    site = await startSite();
    context = await openBrowser(undefined, { acceptDownloads: true, timezoneId: ZONE.timezoneId, viewport: { width: 820, height: 1180 } });
    page = context.pages()[0];
    page.on("console", (message) => { if (["error", "warning"].includes(message.type())) complaints.push(message.text()); });
    page.on("pageerror", (error) => complaints.push(String(error)));
    // One moment for export and record; the day is written on both.
    await page.clock.setFixedTime(new Date("2026-01-20T12:00:00Z"));
    await enterDemo(page, site.url);
    job = await fillJob(page, PAPERS);
  });
  after(async () => {
    await context?.close();
    await site?.stop();
  });

  async function saved(button, name) {
    const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: button, exact: true }).click()]);
    const path = join(folder, name);
    await download.saveAs(path);
    return path;
  }

  test("it shows torques, photos, counts and captures, and why it is a draft", async () => {
    await page.goto(`${site.url}/job/${job}/record`);
    await ready(page);
    await page.locator(".photos img").nth(36).waitFor();
    const text = await page.locator("article").innerText();
    for (const words of ["Draft. This job is not finished.", "Torques", "Pinion nut", "30 N·m", "Pinion rollers: 1 out, 1 in.", "Photos", "Captured, step by step", "Freeze the packs", "Time, parts and consumables", "In plain words", "Received by owner"]) {
      assert.ok(text.includes(words), words);
    }
    assert.deepEqual(await violationsInBothThemes(page), []);
  });

  test("it prints as a tagged PDF whose text is text", async () => {
    const pdf = (await page.pdf({ preferCSSPageSize: true, tagged: true })).toString("latin1");
    for (const mark of ["/Marked true", "/StructTreeRoot", "/Lang"]) assert.ok(pdf.includes(mark), mark);
    // Each font says which letters its glyphs stand for (ISO 32000-1, 9.10.2): so it is searchable.
    const fonts = pdf.match(/\/Subtype\s*\/Type0/g)?.length ?? 0;
    const maps = pdf.match(/\/ToUnicode \d+ 0 R/g)?.length ?? 0;
    assert.ok(fonts > 0 && maps >= fonts, `${fonts} fonts, ${maps} maps`);
  });

  test("the file is what the command line makes of the job’s export", async () => {
    const record = await saved("Save the record as a file", "record.html");
    await page.goto(`${site.url}/job/${job}/send`);
    await ready(page);
    const exported = await saved("Save as a file", "job.jsonl");
    const program = join(target, "debug/shimwright");
    const made = execFileSync(program, ["report", exported, "--offset", ZONE.offset, "--unit", "mm"], { maxBuffer: 1 << 28 });
    assert.ok(made.equals(readFileSync(record)), "byte for byte");
  });

  test("the file opens alone, runs nothing and asks for nothing", async () => {
    const alone = await context.newPage();
    const asked = [], refused = [];
    alone.on("request", (request) => { if (!/^(file|data):/.test(request.url())) asked.push(request.url()); });
    alone.on("console", (message) => refused.push(message.text()));
    await alone.goto(`file://${join(folder, "record.html")}`);
    assert.equal(await alone.locator(".photos img").evaluateAll((all) => all.filter((it) => it.naturalWidth > 0).length), 37);
    assert.equal(await alone.locator(".paper").evaluate((it) => getComputedStyle(it).maxWidth), "860px", "its style is let in");
    for (const width of [320, 820]) {
      await alone.setViewportSize({ width, height: 740 });
      assert.ok(await alone.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `${width} px`);
    }
    assert.deepEqual([asked, refused], [[], []]);
    await alone.close();
  });

  test("the browser had no complaint", () => assert.deepEqual(complaints, []));
});
