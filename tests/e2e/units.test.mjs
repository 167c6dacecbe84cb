// Units per person and per field, decimal comma: at phone size, on a device whose language has the
// comma. What is typed is kept as typed; what is shown is converted. All values are invented.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { accessible } from "./access.mjs";
import { enterDemo, press, ready } from "./flow.mjs";
import { openBrowser, startSite, temporaryFolder } from "./site.mjs";

describe("units", () => {
  const complaints = [];
  let site, context, page, job;

  async function go(path) {
    await page.goto(site.url + path);
    await ready(page);
  }
  const setting = (title, unit) => page.locator(`[role=radiogroup][aria-label="Unit: ${title}"] label`, { hasText: new RegExp(`^${unit}$`) });
  const key = (unit) => page.getByRole("button", { name: unit, exact: true });
  const chosen = () => page.locator("[role=radiogroup][aria-label^='Unit: '] input:checked").evaluateAll((all) => all.map((it) => it.parentElement.innerText.trim()));
  /** The last entry of the job's book, as it lies in the store. */
  const last = () => page.evaluate(async (job) => {
    const open = indexedDB.open("shimwright");
    const base = await new Promise((done) => { open.onsuccess = () => done(open.result); });
    const all = base.transaction("entries").objectStore("entries").getAll();
    const found = await new Promise((done) => { all.onsuccess = () => done(all.result); });
    base.close();
    return found.map((line) => JSON.parse(line)).filter((line) => line.book === `job:${job}`).at(-1).fact;
  }, job);

  before(async () => {
    site = await startSite();
    context = await openBrowser(temporaryFolder(), { locale: "de-DE" });
    page = context.pages()[0];
    page.on("pageerror", (error) => complaints.push(error.message));
    await enterDemo(page, site.url);
    job = /\/job\/([^/]+)/.exec(page.url())[1];
  });
  after(async () => {
    await context?.close();
    await site?.stop();
  });

  test("a person chooses one for each quantity, and it stays", async () => {
    await go("/settings");
    await setting("Lube", "ml").waitFor();
    assert.deepEqual(await chosen(), ["mm", "N·m", "kPa", "°C", "ml"]);
    for (const [title, unit] of [["Torque", "lbf·ft"], ["Pressure and vacuum", "psi"], ["Temperature", "°F"]]) await setting(title, unit).click();
    await accessible(page, "settings", [320]);
    await go("/settings");
    await setting("Lube", "ml").waitFor();
    assert.deepEqual(await chosen(), ["mm", "lbf·ft", "psi", "°F", "ml"]);
  });

  test("digits alone are in it; a key of the pad takes another for one field and keeps the digits", async () => {
    await go(`/job/${job}/check/leak`);
    await page.getByLabel("Never beyond, manual, psi").waitFor();
    assert.equal(await page.getByRole("radio", { name: "psi" }).isChecked(), true);
    await page.locator("[role=radiogroup][aria-label=Stage] label", { hasText: /^working$/ }).click();
    const limit = page.locator("#check-limit");
    await limit.fill("15,5");
    await page.getByText("Hand pump only. Stop at 15,5 psi.").waitFor();
    assert.equal(await key("psi").getAttribute("aria-pressed"), "true");
    await accessible(page, "unit keys", [320]);
    await limit.focus();
    await key("kPa").click();
    assert.equal(await limit.inputValue(), "15,5 kPa");
    assert.equal(await key("kPa").getAttribute("aria-pressed"), "true");
    // The caret stays at the digits: typing goes on.
    await page.getByRole("button", { name: "Delete last digit" }).click();
    await page.getByRole("button", { name: "7", exact: true }).click();
    assert.equal(await limit.inputValue(), "15,7 kPa");
    await page.getByText("Hand pump only. Stop at 15,7 kPa.").waitFor();
    // A key before the digits.
    await page.locator("#check-pressure").focus();
    await key("inHg").click();
    for (const digit of ["4", "decimal mark", "5"]) await page.getByRole("button", { name: digit, exact: true }).click();
    assert.equal(await page.locator("#check-pressure").inputValue(), "4,5 inHg");
    // Half typed, it means what it meant, whatever is chosen since.
    await page.locator("#check-pressure").fill("12");
    await go("/settings");
    await setting("Pressure and vacuum", "kPa").click();
    await go(`/job/${job}/check/leak`);
    await page.getByLabel("Test pressure or vacuum, psi").waitFor();
    assert.equal(await page.locator("#check-pressure").inputValue(), "12");
  });

  test("a reading in inches on a bench in millimetres is kept as typed and shown converted", async () => {
    await go(`/job/${job}/read/depth`);
    const slot = (at) => page.locator(`#slot-${at}`);
    await slot(2).waitFor();
    const count = await page.locator(".slot input").count();
    for (let at = 0; at < count; at += 1) {
      await slot(at).fill("0,0256");
      await page.getByRole("button", { name: "Unit: mm. Press for in" }).click();
      assert.equal(await slot(at).inputValue(), "0,0256 in");
      await page.getByRole("button", { name: "Unit: in. Press for mm" }).waitFor();
    }
    await press(page, /^Keep/);
    await page.waitForURL(/setup$|read\/lash/);
    assert.deepEqual((await last())["reading-taken"].values[0], { typed: "0,0256", unit: "in" });
    // 0.0256 in = 0.65024 mm, 1 in being 25.4 mm exactly.
    await go(`/job/${job}/record`);
    assert.match(await page.locator(".tbl--checks").innerText(), /Limits 0,62 to 0,68/);
    assert.match(await page.locator(".tbl--checks").innerText(), /0,65 ± /);
    await page.getByText("0,0256").first().waitFor();
    await page.getByRole("button", { name: /Press for inches/ }).click();
    await page.locator(".tbl--checks").getByText("0,0256", { exact: false }).first().waitFor();
  });

  test("a pack found is a sum: the pad types a mark in each number, and a key gives all of them the unit", async () => {
    await go("/settings");
    await setting("Lash, depth, shims", "mm").click();
    await go(`/job/${job}/setup`);
    const found = page.locator("#found-B1");
    await found.focus();
    for (const digit of ["0", "decimal mark", "0", "2"]) await key(digit).click();
    await key("Another shim in B1").click();
    await key("in").click();
    for (const digit of ["0", "decimal mark", "decimal mark", "0", "1"]) await key(digit).click();
    assert.equal(await found.inputValue(), "0,02 in + 0,01");
    assert.equal(await key("in").getAttribute("aria-pressed"), "true");
    // 0.03 in = 0.762 mm, 1 in being 25.4 mm exactly.
    await page.locator(".dock .btn--main").getByText("Write down B1: 0,762").waitFor();
    await key("mm").click();
    assert.equal(await found.inputValue(), "0,02 mm + 0,01 mm");
    await page.locator(".dock .btn--main").getByText("Write down B1: 0,030").waitFor();
    await key("Clear").click();
  });

  test("marks of new parts begin in the unit chosen, and keep it with their digits over a reload", async () => {
    const digit = (words) => page.locator("[role=radiogroup][aria-label='One digit is'] label", { hasText: new RegExp(`^${words}$`) });
    const open = async () => {
      await go(`/job/${job}/setup`);
      await page.getByText("A new gear, bearing or case went in").click();
    };
    await go("/settings");
    await setting("Lash, depth, shims", "in").click();
    await open();
    await digit("in").locator("input:checked").waitFor();
    await digit("0.01 mm").click();
    await page.locator("#parts-old").fill("-2");
    await open();
    await digit("0.01 mm").locator("input:checked").waitFor();
    assert.equal(await page.locator("#parts-old").inputValue(), "-2");
    await page.locator("#parts-old").fill("");
  });

  test("the decimal mark is the device’s until a person chooses one, and stays", async () => {
    const mark = (words) => page.locator("[role=radiogroup][aria-label='Decimal mark shown'] label", { hasText: new RegExp(`^${words}$`) });
    const shows = async (words) => {
      await go(`/job/${job}/record`);
      await page.locator(".tbl--checks").getByText(words).first().waitFor();
      await go(`/job/${job}/setup`);
      await page.getByText(words).first().waitFor();
      await go("/settings");
    };
    await go("/settings");
    await mark("Auto").locator("input:checked").waitFor();
    await mark("0\\.38").click();
    await accessible(page, "settings, decimal point", [320]);
    await shows(/0\.024[0-9]/);
    // The mark as it was typed stays.
    await go(`/job/${job}/record`);
    await page.locator("article").getByText("0,0256").first().waitFor();
    await go(`/job/${job}/check/leak`);
    await page.locator("#check-pressure").focus();
    await page.getByRole("button", { name: "decimal mark", exact: true }).getByText(".", { exact: true }).waitFor();
    await go("/settings");
    await mark("0,38").click();
    await shows(/0,024[0-9]/);
    await mark("Auto").click();
  });

  test("without the app’s pad the units are there all the same", async () => {
    await go("/settings");
    await page.locator("[role=radiogroup][aria-label='Number entry'] label", { hasText: "Phone’s" }).click();
    await go(`/job/${job}/check/torque`);
    await page.locator("[id^='check-'][data-number]").first().focus();
    await key("lbf·ft").waitFor();
    assert.equal(await page.getByRole("button", { name: "decimal mark" }).count(), 0);
    await accessible(page, "unit keys alone", [320]);
  });

  test("the browser had no complaint", () => assert.deepEqual(complaints, []));
});
