// The main job, at phone size, with the server gone after the first visit.
//
// Expected numbers are worked out apart from the product in hand_check.py (standard library only):
//   band 0.20–0.35 at 22 mm is 0.2727–0.4773 at a 30 mm arm; 0.30–0.55 is 0.4091–0.7500;
//   lash per mm of pack at the arm: 0.9243 for a gear pack, 0.6162 for the pinion pack;
//   packs to fit: B1 0.50 + 0.151, B2 0.40 + 0.300, B3 0.30 + 0.250;
//   then depth 0.6623 ± 0.0193, forward 0.3919 ± 0.0337, reverse 0.6424 ± 0.0329 (± is twice sigma).
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { violationsInBothThemes } from "./access.mjs";
import { act, controlled, fillSheet, fillTin, jump, near, nextReading, numbers, openJob, press, read, ready, startSheet, writeFound } from "./flow.mjs";
import { openBrowser, startSite, temporaryFolder } from "./site.mjs";

describe("the main job, offline", () => {
  const profile = temporaryFolder();
  const strangers = [], complaints = [];
  let site, context, page;

  async function open() {
    context = await openBrowser(profile);
    context.on("request", (request) => {
      if (!request.url().startsWith(site.url) && !request.url().startsWith("blob:")) strangers.push(request.url());
    });
    page = context.pages()[0];
    page.on("console", (message) => {
      if (["error", "warning"].includes(message.type())) complaints.push(message.text());
    });
    page.on("pageerror", (error) => complaints.push(String(error)));
  }
  async function accessible(what) {
    assert.deepEqual(await violationsInBothThemes(page), [], what);
  }

  before(async () => {
    site = await startSite();
    await open();
    await page.goto(site.url);
    await ready(page);
    await controlled(page);
    await site.stop();
    await page.reload();
    await ready(page);
  });
  after(() => context?.close());

  test("a unit sheet is typed from the manual", async () => {
    await accessible("first");
    await page.goto(`${site.url}/new-job`);
    await ready(page);
    await accessible("new job");
    await startSheet(page, "Unit 14/21");
    await accessible("empty sheet");
    await fillSheet(page);
    await page.getByText("Expected lash per mm").waitFor();
    const expected = numbers(await page.getByText("Expected lash per mm").innerText());
    assert.deepEqual(expected, [1.5, 30, 0.62, 0.92, 0.92], "ratio, arm, lash per mm at B1, B2 and B3");
    const band = numbers(await page.locator("#lash-forward").getByText("arm:").innerText());
    assert.deepEqual(band.slice(-2), [0.27, 0.48], "0.2727 and 0.4773 at the arm");
    await accessible("full sheet");
  });

  test("twelve measured shims go in the tin", async () => {
    await jump(page, "Shim tin");
    await accessible("empty tin");
    await fillTin(page);
    await accessible("full tin");
  });

  test("a job is opened and the packs are written down as found", async () => {
    await page.goto(`${site.url}/new-job`);
    await ready(page);
    await openJob(page, "Grey Heron");
    await accessible("set-up before anything is known");
    await writeFound(page);
  });

  test("half-typed digits and the place outlive the browser", async () => {
    await press(page, "Read depth");
    await page.waitForURL(/read\/depth$/);
    await page.locator("#slot-0").fill("0.71");
    await page.locator("#slot-0").press("Enter");
    await page.keyboard.type("0.7");
    const address = page.url();
    await context.close();
    await open();
    await page.goto(site.url);
    await ready(page);
    assert.equal(page.url(), address);
    assert.equal(await page.locator("#slot-0").inputValue(), "0.71");
    assert.equal(await page.locator("#slot-1").inputValue(), "0.7");
    await accessible("reading");
  });

  test("depth and both backlashes are read, one of them in inches with a comma", async () => {
    await read(page, ["0.71", "0.72", "0.71"], /^Keep/);
    await nextReading(page, "lash-forward");
    await read(page, ["0,0220 in", "0,0225 in", "0,0220 in", "0,0220 in"], /^Keep/);
    await nextReading(page, "lash-reverse");
    await read(page, ["0.72", "0.71", "0.73", "0.72"], /^Keep/);
    await page.waitForURL(/setup$/);
  });

  test("the advice names the shims and what each gauge will read", async () => {
    const advice = await page.locator("#advice").innerText();
    for (const shim of ["0.151", "0.300", "0.250"]) assert.ok(advice.includes(shim), `${shim} in: ${advice}`);
    const said = await page.locator("main").innerText();
    for (const [mean, spread] of [["0.66", "0.02"], ["0.39", "0.03"], ["0.64", "0.03"]]) {
      assert.match(said, new RegExp(`${mean}\\s*±\\s*${spread}`), `${mean} ± ${spread}`);
    }
    const checks = await page.locator("main").innerText();
    for (const mean of ["0.71", "0.56"]) assert.ok(checks.includes(mean), mean);
    near(0.562, (0.0220 * 3 + 0.0225) / 4 * 25.4, 0.0005, "forward mean in mm");
    await accessible("advice");
  });

  test("the packs are fitted and the next readings are in band", async () => {
    await press(page, /fitted\. Read/);
    await page.waitForURL(/read\/depth$/);
    await read(page, ["0.66", "0.66", "0.67"], /^Keep/);
    await nextReading(page, "lash-forward");
    await read(page, ["0.39", "0.40", "0.39", "0.39"], /^Keep/);
    await nextReading(page, "lash-reverse");
    await read(page, ["0.64", "0.65", "0.64", "0.65"], /^Keep/);
    await page.waitForURL(/setup$/);
    const said = await page.locator("main").innerText();
    assert.ok((said.match(/in band/gi) ?? []).length >= 3, said);
    await accessible("done");
  });

  test("the record prints to PDF with what was found and what was left", async () => {
    await act(page).click();
    await page.waitForURL(/record$/);
    const text = await page.locator("main").innerText();
    for (const word of ["Grey Heron", "Unit 14/21", "0.71", "0.66", "0.56", "0.39", "0.72", "0.651", "0.700", "0.550"]) {
      assert.ok(text.includes(word), `${word} in: ${text}`);
    }
    await accessible("record");
    const pdf = await page.pdf({ preferCSSPageSize: true, tagged: true });
    assert.equal(pdf.subarray(0, 5).toString(), "%PDF-");
    const pages = (pdf.toString("latin1").match(/\/Type\s*\/Page[^s]/g) ?? []).length;
    assert.ok(pages >= 1 && pages <= 3, `${pages} pages`);
  });

  test("the bench and settings stand", async () => {
    for (const path of ["/?", "/settings", "/states", "/first"]) {
      await page.goto(site.url + path);
      await ready(page);
      await accessible(path);
    }
  });

  test("nothing was asked of any other place, and the browser had no complaint", () => {
    assert.deepEqual(strangers, []);
    assert.deepEqual(complaints, []);
  });
});
