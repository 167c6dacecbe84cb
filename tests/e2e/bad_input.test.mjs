// What cannot be read is answered at the field: a sentence, the text stays, nothing is stored.
// The sentences themselves are asserted word by word in crates/job and crates/measure.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { openJob, press, ready, startSheet, type, fillSheet, writeFound, jump } from "./flow.mjs";
import { violations } from "./access.mjs";
import { openBrowser, startSite } from "./site.mjs";

const count = (page) => page.evaluate(() => new Promise((resolve, reject) => {
  const open = indexedDB.open("shimwright");
  open.onerror = () => reject(open.error);
  open.onsuccess = () => {
    const asked = open.result.transaction("entries").objectStore("entries").count();
    asked.onsuccess = () => { open.result.close(); resolve(asked.result); };
  };
}));

describe("bad input", () => {
  let site, context, page;
  before(async () => {
    site = await startSite();
    context = await openBrowser();
    page = context.pages()[0];
    await page.goto(`${site.url}/new-job`);
    await ready(page);
    await startSheet(page, "Unit 14/21");
  });
  after(async () => { await context?.close(); await site?.stop(); });

  /** Types, and sees the text kept, a sentence at the field that names `says`, and no entry. */
  async function refused(id, text, says) {
    const before = await count(page);
    await type(page, id, text);
    await page.locator(`#${id}-says`).filter({ hasText: says }).waitFor();
    assert.equal(await page.locator(`#${id}`).inputValue(), text, `${id}: the text stays`);
    assert.equal(await page.locator(`#${id}`).getAttribute("aria-invalid"), "true", id);
    assert.equal(await count(page), before, `${id}: nothing is stored`);
  }

  test("a field says what was found and what to type", async () => {
    for (const [id, text, says] of [
      ["depth-low", "thick", "thick"],
      ["depth-low", "1,250.0", "mark"],
      ["depth-low", "0.3.8", "Two decimal marks in 0.3.8. Type one."],
      ["depth-low", "-0.2", "-0.2"],
      ["depth-low", "1/32", "0.03125"],
      ["depth-low", "3 psi", "psi"],
      ["arm-radius", "0", "0"],
      ["pinion-teeth", "14.5", "14.5"],
    ]) await refused(id, text, says);
    assert.deepEqual(await violations(page), []);
  });

  test("limits that contradict each other are refused together and kept once they agree", async () => {
    await type(page, "depth-low", "0.68");
    await page.locator(".undo").filter({ hasText: "0.68" }).locator("button:not([disabled])").waitFor();
    await refused("depth-high", "0.62", "0.6");
    await refused("depth-high", "0.68", "0.68");
    await type(page, "depth-high", "0.74");
    await page.locator("#depth-high:not([aria-invalid=true])").waitFor();
    assert.equal(await page.locator("#depth-high").inputValue(), "0.74");
  });

  test("inches in a millimetre field are kept, and doubted", async () => {
    await type(page, "reverse-low", "0.012");
    await page.locator("#reverse-low-says").filter({ hasText: "0.012 mm looks like inches" }).waitFor();
    assert.equal(await page.locator("#reverse-low").inputValue(), "0.012");
  });

  test("more shims than the tin holds cannot be taken out", async () => {
    await fillSheet(page);
    await jump(page, "Shim tin");
    await type(page, "zero", "0.002");
    await type(page, "place-1", "0.152");
    await type(page, "place-2", "0.154");
    await press(page, /in the tin$/);
    await page.getByRole("button", { name: "Take one 0.151 out" }).click();
    await page.getByText("none left").waitFor();
    const before = await count(page);
    await page.getByRole("button", { name: "Take one 0.151 out" }).click({ force: true });
    await page.getByText("No 0.151 left in the tin. Fit another, or count the tin.").waitFor();
    assert.equal(await count(page), before, "nothing is stored");
  });

  test("an uneven shim is not offered", async () => {
    await page.locator("#place-1").fill("0.150");
    await page.locator("#place-2").fill("0.180");
    await page.getByText(/0\.03/).first().waitFor();
    assert.equal(await page.locator(".dock .btn--main").getAttribute("aria-disabled"), "true");
  });

  test("a job waits until it can be opened, and a reading until it can be read", async () => {
    await page.goto(`${site.url}/new-job`);
    await ready(page);
    assert.equal(await page.locator(".dock .btn--main").getAttribute("aria-disabled"), "true");
    await openJob(page, "Grey Heron");
    await writeFound(page);
    await press(page, "Read depth");
    const before = await count(page);
    await page.locator("#slot-0").fill("0.7.1");
    await page.locator("#slot-0-says").filter({ hasText: "Two decimal marks" }).waitFor();
    assert.equal(await page.locator(".dock .btn--main").getAttribute("aria-disabled"), "true");
    assert.equal(await count(page), before);
  });
});
