// Consent at phone size with the server gone: drawn with a finger, left half-way, signed by initials
// from the keyboard alone, refused. The names and sums are invented.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { accessible } from "./access.mjs";
import { act, beginJob, controlled, press, ready, startSheet } from "./flow.mjs";
import { openBrowser, startSite, temporaryFolder } from "./site.mjs";

describe("consent, offline", () => {
  const complaints = [];
  let site, context, page, job;

  const heading = (words) => page.getByRole("heading", { level: 1, name: words }).waitFor();
  const gate = () => page.locator(".gate").last().innerText();
  async function go(path) {
    await page.goto(site.url + path);
    await ready(page);
  }
  const held = (what) => accessible(page, what, [320]);
  /** The lines of the job's book, as they lie in the store. */
  const lines = () => page.evaluate(async (book) => {
    const open = indexedDB.open("shimwright");
    const base = await new Promise((done) => { open.onsuccess = () => done(open.result); });
    const all = base.transaction("entries").objectStore("entries").getAll();
    const found = await new Promise((done) => { all.onsuccess = () => done(all.result); });
    base.close();
    return found.map((line) => JSON.parse(line)).filter((line) => line.book === book).map((line) => line.fact);
  }, `job:${job}`);
  /** Draws on the pad as a finger does. */
  async function draw() {
    await page.locator(".signpad").evaluate((pad) => pad.scrollIntoView({ block: "center" }));
    const box = await page.locator(".signpad").boundingBox();
    const at = (x, y) => [box.x + box.width * x, box.y + box.height * y];
    for (const stroke of [[[0.1, 0.7], [0.2, 0.2], [0.3, 0.7], [0.4, 0.4], [0.5, 0.6]], [[0.6, 0.3], [0.7, 0.7], [0.85, 0.4]]]) {
      await page.mouse.move(...at(...stroke[0]));
      await page.mouse.down();
      for (const point of stroke.slice(1)) await page.mouse.move(...at(...point), { steps: 4 });
      await page.mouse.up();
    }
  }

  before(async () => {
    site = await startSite();
    context = await openBrowser(temporaryFolder());
    page = context.pages()[0];
    page.on("pageerror", (error) => complaints.push(error.message));
    await go("/new-job");
    await controlled(page);
    await startSheet(page, "Unit 14/21");
    await go("/new-job");
    job = await beginJob(page, "Grey Heron");
    await page.locator("main label").filter({ hasText: /^Seals only/ }).click();
    await act(page).click();
    await page.getByRole("link", { name: /^Consent/ }).waitFor();
    await site.stop();
    await context.setOffline(true);
  });
  after(async () => {
    await context?.close();
    await site?.stop();
  });

  test("the job says that nobody agreed yet, and what is missing is named one by one", async () => {
    await page.getByRole("link", { name: "Consent not given yet" }).click();
    await heading("Consent before the strip-down");
    await held("empty");
    assert.match(await gate(), /No work is ticked\..*And 3 more\./s);
    await act(page).filter({ hasText: "Tick the work first" }).click({ force: true });
    await page.waitForFunction(() => document.activeElement.id === "work");
    await page.getByLabel("Seals only").check();
    await act(page).filter({ hasText: "Type the limit" }).click({ force: true });
    await page.waitForFunction(() => document.activeElement.id === "limit");
  });

  test("half-way, a reload keeps ticks, words and the drawing", async () => {
    await page.locator("#limit").fill("1 300 invented");
    await page.getByLabel("A part comes later than agreed").uncheck();
    await page.locator("#by").fill("M. Lind, owner");
    await page.locator("#excluded").fill("Cracks in the case.");
    await draw();
    const shape = await page.locator(".signpad path").getAttribute("d");
    await page.reload();
    await ready(page);
    await heading("Consent before the strip-down");
    assert.equal(await page.locator(".signpad path").getAttribute("d"), shape);
    assert.equal(await page.getByLabel("Seals only").isChecked(), true);
    assert.equal(await page.getByLabel("A part comes later than agreed").isChecked(), false);
    assert.equal(await page.locator("#excluded").inputValue(), "Cracks in the case.");
    await held("signed");
  });

  test("kept, it stands with its picture, and the step that asked has its captures", async () => {
    await press(page, "Keep consent");
    await heading("Consent stands");
    await page.getByRole("img", { name: "Signature of M. Lind, owner." }).waitFor();
    await page.getByText("M. Lind, owner agreed here: Seals only, up to 1 300 invented.").first().waitFor();
    await held("stands");
    const facts = await lines();
    const signed = facts.map((fact) => fact["consent-signed"]).find(Boolean);
    assert.equal(signed.drawn.length, 2);
    assert.ok(signed.drawn.flat().every((number) => Number.isInteger(number) && number >= 0 && number <= 1000));
    assert.deepEqual(signed.stops, ["Metal chunks or a broken tooth", "A crack in the case"]);
    const captured = facts.flatMap((fact) => fact.captured ?? []).map((it) => it.label);
    assert.deepEqual(captured, ["authorised limit", "not covered", "consent"]);
  });

  test("asked again, it is signed by initials from the keyboard alone, and a no is kept", async () => {
    const focused = () => page.evaluate(() => document.activeElement.innerText || document.activeElement.labels?.[0]?.innerText || "");
    const tabTo = async (words) => {
      for (let presses = 0; presses < 60; presses += 1) {
        if ((await focused()).trim().startsWith(words)) return;
        await page.keyboard.press("Tab");
      }
      assert.fail(`no way to ${words} by Tab`);
    };
    await tabTo("Ask again");
    await page.keyboard.press("Enter");
    await heading("Consent to the new price");
    await tabTo("New price");
    await page.keyboard.type("1 420 invented");
    await tabTo("When the price passes");
    await page.keyboard.type("1 500 invented");
    await tabTo("Name of who may decide");
    await page.keyboard.type("M. Lind, owner");
    await tabTo("Signs here");
    await page.keyboard.press("ArrowRight");
    await page.getByText("Nobody took the answer. Type your initials.").waitFor();
    await tabTo("Initials of who took the answer");
    await page.keyboard.type("J4");
    await page.getByText("Initials are one to three letters, such as ML. Type them again.").waitFor();
    // Initials that are none are refused at their field, and a no without a name as well.
    await page.getByRole("button", { name: "Owner says no" }).click();
    await page.locator("#initials-says .msg--refused").getByText("Initials are one to three letters").waitFor();
    await page.waitForFunction(() => document.activeElement.id === "initials");
    assert.equal(await page.locator("#initials").getAttribute("aria-invalid"), "true");
    await page.keyboard.press("End");
    await page.keyboard.press("Backspace");
    await page.keyboard.type("k");
    await page.locator("#initials-says .msg--refused").waitFor({ state: "detached" });
    await page.locator("#by").fill("");
    await page.getByRole("button", { name: "Owner says no" }).click();
    await page.locator("#by-says .msg--refused").getByText("No name. Type who may decide.").waitFor();
    await page.waitForFunction(() => document.activeElement.id === "by");
    await page.keyboard.type("M. Lind, owner");
    await tabTo("If the answer is no");
    await page.keyboard.type("Sells the boat in spring.");
    await page.reload();
    await ready(page);
    await tabTo("Owner says no");
    await page.keyboard.press("Enter");
    await page.getByText(/M\. Lind, owner said no by phone, .*: Seals only\. Why: Sells the boat in spring\.$/).first().waitFor();
    assert.equal(await page.locator("#why-not").inputValue(), "");
    assert.equal(await page.locator("#limit").inputValue(), "1 500 invented");
    await tabTo("Keep consent");
    await page.keyboard.press("Enter");
    await heading("Consent stands");
    await page.getByText(/M\. Lind, owner, by phone/).first().waitFor();
    const kinds = (await lines()).map((fact) => Object.keys(fact)[0]);
    assert.equal(kinds.filter((kind) => kind.startsWith("consent-")).join(" "), "consent-signed consent-refused-because consent-signed");
    await held("asked again");
    assert.deepEqual(complaints, []);
  });
});
