// The record of a well-filled job: on the screen, as tagged PDF, and as a file that is byte for
// byte what the command line makes of the job's own export. The job is invented.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { after, before, describe, test } from "node:test";
import { violationsInBothThemes } from "./access.mjs";
import { act, enterDemo, near, ready } from "./flow.mjs";
import { fillJob } from "./opening.mjs";
import { PAPERS } from "./papers.mjs";
import { openBrowser, saveTo, startSite, temporaryFolder } from "./site.mjs";

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
    // What a device with a share sheet has, a printer, and a clipboard that was allowed.
    await context.grantPermissions(["clipboard-read", "clipboard-write"], { origin: site.url });
    await context.addInitScript(() => {
      window.told = { shared: [], printed: 0, close: false };
      navigator.canShare = (data) => data.files?.every((file) => /^text\/(plain|html)$/.test(file.type)) ?? false;
      navigator.share = async ({ files: [file] }) => {
        if (window.told.close) throw new DOMException("closed", "AbortError");
        window.told.shared.push({ name: file.name, type: file.type, text: await file.text() });
      };
      window.print = () => { window.told.printed += 1; };
    });
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

  const saved = (button, name) => saveTo(page, page.getByRole("button", { name: button, exact: true }), join(folder, name));

  test("it shows torques, photos, counts and captures, and why it is a draft", async () => {
    await page.goto(`${site.url}/job/${job}/record`);
    await ready(page);
    await page.locator(".photos img").nth(36).waitFor();
    const text = await page.locator("article").innerText();
    for (const words of ["Draft. This job is not finished.", "Torques", "Pinion nut", "30 N·m", "Pinion rollers: 1 out, 1 in.", "Photos", "Captured, step by step", "Freeze the packs", "Time, parts and consumables", "In plain words", "Received by owner", "Seal map", "Who agreed and signed", "Agreed: Gear set, New bearings", "Said no to: New carrier", "Used again, to watch: Taper bearings"]) {
      assert.ok(text.includes(words), words);
    }
    for (const picture of ["Signature of M. Lind, owner.", /^Pressure against time/, /^Seal map/]) {
      await page.locator("article").getByRole("img", { name: picture }).first().waitFor();
    }
    assert.deepEqual(await violationsInBothThemes(page), []);
    for (const width of [320, 360, 1280]) {
      await page.setViewportSize({ width, height: 740 });
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), `${width} px`);
    }
    await page.setViewportSize({ width: 820, height: 1180 });
  });

  // Page sizes in points: ISO 216 for A4, ANSI/ASME Y14.1 for Letter; the browser rounds to its own pixels.
  test("on a phone, a tablet and a kiosk the paper comes first, and what hands it over is one press away", async () => {
    for (const [width, height] of [[360, 740], [1280, 800], [820, 1180]]) {
      await page.setViewportSize({ width, height });
      await page.evaluate(() => scrollTo(0, 0));
      const top = (selector) => page.locator(selector).evaluate((it) => it.getBoundingClientRect().top);
      assert.ok(await top("article") < height / 2, `the paper at ${width} px`);
      assert.ok(await top("#hand-over") > height, `what hands it over at ${width} px`);
      await page.getByRole("link", { name: "Hand over", exact: true }).click();
      await page.waitForFunction(() => document.activeElement.id === "hand-over");
      await page.getByRole("button", { name: "Save the record as a file" }).click({ trial: true });
    }
  });

  for (const [paper, width, height] of [["A4", 595.28, 841.89], ["US Letter", 612, 792]]) {
    test(`it prints on ${paper} as a tagged PDF whose text is text, always in sun inks`, async () => {
      await page.locator('[aria-label="Paper"] label').filter({ hasText: paper }).click();
      await page.emulateMedia({ colorScheme: "dark" });
      const [tools, printed] = [await context.newCDPSession(page), { preferCSSPageSize: true, printBackground: true, generateTaggedPDF: true }];
      const pdf = Buffer.from((await tools.send("Page.printToPDF", printed)).data, "base64").toString("latin1");
      await page.emulateMedia({ media: "print", colorScheme: "dark" });
      const inks = await page.locator(".leaf").first().evaluate((leaf) => [getComputedStyle(leaf).color, getComputedStyle(leaf.parentElement).backgroundColor]);
      await page.emulateMedia({ media: null, colorScheme: null });
      assert.deepEqual(inks, ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]);
      for (const mark of ["/Marked true", "/StructTreeRoot", "/Lang"]) assert.ok(pdf.includes(mark), mark);
      const sizes = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
      assert.ok(sizes.length > 2, "leaves");
      for (const [, wide, high] of sizes) {
        near(Number(wide), width, 1, paper);
        near(Number(high), height, 1, paper);
      }
      // Each font says which letters its glyphs stand for (ISO 32000-1, 9.10.2): so it is searchable.
      const fonts = pdf.match(/\/Subtype\s*\/Type0/g)?.length ?? 0;
      const maps = pdf.match(/\/ToUnicode \d+ 0 R/g)?.length ?? 0;
      assert.ok(fonts > 0 && maps >= fonts, `${fonts} fonts, ${maps} maps`);
    });
  }

  test("it is shared as the file it is saved as, copied, saved as a table, printed", async () => {
    const told = () => page.evaluate(() => window.told);
    const button = (words) => page.getByRole("button", { name: words, exact: true });
    const saves = readFileSync(await saved("Save the record as a file", "shared.html"), "utf8");
    await button("Share the record").click();
    await page.getByText("Shared: job-1-grey-heron-2026-01-20.html.").waitFor();
    const [shared] = (await told()).shared;
    assert.deepEqual([shared.name, shared.type], ["job-1-grey-heron-2026-01-20.html", "text/html"]);
    assert.ok(shared.text === saves, "the same file");
    await page.evaluate(() => { window.told.close = true; });
    await button("Share the record").click();
    await page.getByText("The share sheet was closed, so no file was kept. Press again.").waitFor();

    const copied = async (words) => {
      await button(words).click();
      await page.getByText("Copied. Paste it where you want it.").waitFor();
      return page.evaluate(() => navigator.clipboard.readText());
    };
    const owner = await copied("Copy the owner’s words");
    assert.match(owner, /^What was wrong\n- /);
    for (const line of await page.locator(".rec__told li").allInnerTexts()) assert.ok(owner.includes(line), line);
    await page.evaluate(() => navigator.clipboard.writeText(""));
    const invoice = await copied("Copy invoice lines");
    assert.match(invoice, /^Job 1: Grey Heron\. Unit 14\/21\.\n- /);

    // CSV as RFC 4180 has it: lines end with CR LF, the first names the columns.
    const table = readFileSync(await saved("Save invoice lines as a table", "invoice.csv"), "utf8");
    const rows = table.split("\r\n");
    assert.equal(rows.pop(), "");
    assert.match(rows[0], /^job,kind,/);
    assert.equal(rows.length - 1, invoice.trim().split("\n").length - 2, "a row for each line that is copied");
    assert.ok(rows.slice(1).every((row) => /^1,(time|part|consumable),/.test(row)), table);

    await act(page).click();
    assert.equal((await told()).printed, 1);
  });

  test("a clipboard that is not allowed is said, and names the other way", async () => {
    await context.clearPermissions();
    await page.evaluate(() => { navigator.clipboard.writeText = () => Promise.reject(new DOMException("no", "NotAllowedError")); });
    await page.getByRole("button", { name: "Copy the owner’s words" }).click();
    await page.getByText("The browser did not allow copying. Save the record as a file instead.").waitFor();
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
