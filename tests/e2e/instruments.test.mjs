// The bench checks at phone size, with the server gone: runout and leak, in a job and alone.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { violationsInBothThemes } from "./access.mjs";
import { act, controlled, press, ready, SHEET, startSheet, type } from "./flow.mjs";
import { openBrowser, startSite, temporaryFolder } from "./site.mjs";

// NIST/SEMATECH e-Handbook 2.3.4.4; run with numpy 2.4.6 linalg.lstsq: e 0.032865, u(e) 0.000597.
const TURN = ["0.000", "0.021", "0.045", "0.058", "0.049", "0.030", "0.004", "-0.009"];

describe("the bench checks, offline", () => {
  const complaints = [];
  let site, context, page, job;

  const said = () => page.locator("main").innerText();
  const fill = (id, text) => page.locator(`#check-${id}`).fill(text);
  const choose = (group, word) => page.locator(`[role=radiogroup][aria-label="${group}"] label`, { hasText: new RegExp(`^${word}$`) }).click();
  async function go(path) {
    await page.goto(site.url + path);
    await ready(page);
  }
  async function accessible(what) {
    await page.setViewportSize({ width: 360, height: 6000 });
    const found = await violationsInBothThemes(page);
    await page.setViewportSize({ width: 360, height: 740 });
    assert.deepEqual(found, [], what);
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), true, what);
  }

  before(async () => {
    site = await startSite();
    context = await openBrowser(temporaryFolder());
    page = context.pages()[0];
    page.on("pageerror", (error) => complaints.push(error.message));
    await go("/new-job");
    await controlled(page);
    await startSheet(page, "Unit 14/21");
    for (const [id, text] of SHEET) await type(page, id, text);
    await go("/new-job");
    await page.locator("#boat").fill("Grey Heron");
    await press(page, /^Open job/);
    await page.waitForURL(/\/job\/[^/]+$/);
    job = new URL(page.url()).pathname;
    await go(`${job}/check`);
    await page.getByRole("heading", { name: "Bench checks" }).waitFor();
    await site.stop();
    await context.setOffline(true);
  });
  after(async () => {
    await context?.close();
    await site?.stop();
  });

  test("runout is judged while it is typed, survives a reload, and is kept", async () => {
    await accessible("list");
    await page.getByRole("link", { name: "Open Runout" }).click();
    await page.getByRole("heading", { level: 1, name: "Runout" }).waitFor();
    for (const [at, text] of TURN.entries()) await fill(`readings-${at}`, text);
    await fill("limit", "0.13");
    await page.getByText("0.0329 ± 0.0012 mm").first().waitFor();
    await page.reload();
    await page.getByText("0.0329 ± 0.0012 mm").first().waitFor();
    assert.match(await said(), /In band/);
    await accessible("runout");
    await press(page, /^Keep runout/);
    await page.getByText("Runout kept.").first().waitFor();
    await page.getByRole("heading", { name: "Kept" }).waitFor();
    assert.equal(await page.locator("#check-readings-0").inputValue(), "");
  });

  test("a leak test has no verdict before the shafts were turned", async () => {
    await go(`${job}/check/leak`);
    await page.getByRole("heading", { level: 1, name: "Leak test" }).waitFor();
    await choose("Stage", "working");
    for (const [id, text] of [["limit", "90"], ["pressure", "95"], ["time", "10"], ["most-lost", "5"], ["volume", "1200"]]) await fill(id, text);
    for (const [line, at, gauge, temperature] of [[0, "0", "70.000", "22.00"], [1, "10", "68.200", "20.50"]]) {
      await fill(`at-${line}`, at);
      await fill(`gauge-${line}`, gauge);
      await fill(`case-${line}`, temperature);
    }
    await fill("barometer-0", "101.325");
    await page.locator("#check-pressure-says .msg--refused").waitFor();
    assert.equal(await page.locator("#check-pressure").inputValue(), "95");
    await fill("pressure", "70");
    await page.getByText("No verdict yet.").first().waitFor();
    await choose("Shafts turned", "yes");
    await choose("Shift rod moved", "yes");
    await choose("Soap on every joint", "none");
    await page.getByText("Held for the whole time while turning").first().waitFor();
    await accessible("leak");
    await press(page, /^Keep leak test/);
    await page.getByText("Leak test kept.").first().waitFor();
  });

  test("alone, it reckons and says that nothing is kept", async () => {
    await go("/check/runout");
    await page.getByText("Nothing is kept here.").waitFor();
    for (const [at, text] of TURN.entries()) await fill(`readings-${at}`, text);
    await page.getByText("0.0329 ± 0.0012 mm").first().waitFor();
    assert.equal(await act(page).count(), 0);
    await accessible("alone");
    assert.deepEqual(complaints, []);
  });
});
