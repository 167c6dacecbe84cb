// The bench checks at phone size, with the server gone: runout and leak, in a job and alone.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { accessible } from "./access.mjs";
import { act, beginJob, controlled, press, ready, SHEET, startSheet, type } from "./flow.mjs";
import { openBrowser, startSite, temporaryFolder } from "./site.mjs";

// NIST/SEMATECH e-Handbook 2.3.4.4; run with numpy 2.4.6 linalg.lstsq: e 0.032865, u(e) 0.000597.
const TURN = ["0.000", "0.021", "0.045", "0.058", "0.049", "0.030", "0.004", "-0.009"];

describe("the bench checks, offline", () => {
  const complaints = [];
  let site, context, page, job, sheet;

  const said = () => page.locator("main").innerText();
  const fill = (id, text) => page.locator(`#check-${id}`).fill(text);
  const choose = (group, word) => page.locator(`[role=radiogroup][aria-label="${group}"] label`, { hasText: new RegExp(`^${word}$`) }).click();
  const unfold = (words) => page.locator("summary", { hasText: words }).click();
  async function go(path) {
    await page.goto(site.url + path);
    await ready(page);
  }
  const held = (what) => accessible(page, what);

  before(async () => {
    site = await startSite();
    context = await openBrowser(temporaryFolder());
    page = context.pages()[0];
    page.on("pageerror", (error) => complaints.push(error.message));
    await go("/new-job");
    await controlled(page);
    await startSheet(page, "Unit 14/21");
    for (const [id, text] of SHEET) await type(page, id, text);
    sheet = new URL(page.url()).pathname;
    await go("/new-job");
    job = `/job/${await beginJob(page, "Grey Heron")}`;
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
    await held("list");
    await page.getByRole("link", { name: "Open Runout" }).click();
    await page.getByRole("heading", { level: 1, name: "Runout" }).waitFor();
    for (const [at, text] of TURN.entries()) await fill(`readings-${at}`, text);
    await fill("limit", "0.13");
    await page.getByText("0.0329 ± 0.0012 mm").first().waitFor();
    await page.reload();
    await page.getByText("0.0329 ± 0.0012 mm").first().waitFor();
    assert.match(await said(), /In band/);
    await held("runout");
    await press(page, /^Keep runout/);
    await page.getByText("Runout kept.").first().waitFor();
    await page.getByRole("heading", { name: "Kept" }).waitFor();
    assert.equal(await page.locator("#check-readings-0").inputValue(), "");
  });

  test("a leak test has no verdict before the shafts were turned", async () => {
    await go(`${job}/check/leak`);
    await page.getByRole("heading", { level: 1, name: "Leak test" }).waitFor();
    await choose("Stage", "working");
    for (const [id, text] of [["limit", "90"], ["pressure", "95"], ["time", "10"], ["most-lost", "5"]]) await fill(id, text);
    await unfold("Hose into a blank, volume of air");
    await fill("volume", "1200");
    for (const [line, at, gauge, temperature] of [[0, "0", "70.000", "22.00"], [1, "10", "68.200", "20.50"]]) {
      await fill(`at-${line}`, at);
      await fill(`gauge-${line}`, gauge);
      await fill(`case-${line}`, temperature);
    }
    await fill("barometer-0", "101.325");
    await page.locator("#check-pressure-says", { hasText: "found 95 kPa, expected 90 kPa at most; stand clear of plugs and let it down now." }).waitFor();
    assert.equal(await page.locator("#check-pressure").inputValue(), "95");
    await fill("pressure", "70");
    await page.locator(".gate--shut", { hasText: "No verdict yet. Turn the shafts." }).waitFor();
    await unfold("Turned and moved without the clock");
    await choose("Shafts turned", "yes");
    await choose("Shift rod moved", "yes");
    await choose("Soap on every joint", "none");
    await page.getByText("Held for the whole time while turning").first().waitFor();
    await held("leak");
    await press(page, /^Keep leak test/);
    await page.getByText("Leak test kept.").first().waitFor();
    // The stage that was kept says so under its word.
    await page.locator("[role=radiogroup][aria-label=Stage] label", { hasText: /^working\s*held$/ }).waitFor();
  });

  test("a stage that the unit sheet has fills the test of a job, and what is typed there stands", async () => {
    await go(sheet);
    const stands = async (id, text, says) => {
      await type(page, id, text);
      await page.locator(`#${id}-says`, { hasText: says ?? /^$/ }).waitFor({ state: "attached" });
    };
    // Folded away, the stages are passed by: the last number leads to the blue button.
    await page.locator("#arm-radius").press("Enter");
    await act(page).and(page.locator(":focus")).waitFor();
    await unfold("Working pressure");
    await stands("leak-working-limit", "90");
    await stands("leak-working-pressure", "95", "Test pressure 95 kPa, never beyond 90 kPa: the test goes beyond its own limit. Read the page again.");
    assert.equal(await page.locator("#leak-working-pressure").inputValue(), "95");
    await stands("leak-working-pressure", "0.84 bar");
    await stands("leak-working-time", "10");
    await stands("leak-working-most-lost", "7");
    await unfold("Vacuum");
    await stands("leak-vacuum-because", "one-way input seal");
    await stands("leak-source", "own manual, p. 40");
    await held("sheet with its leak stages");
    await page.reload();
    await ready(page);
    assert.equal(await page.locator("#leak-working-pressure").inputValue(), "0.84");
    await go(`${job}/check/leak`);
    await choose("Stage", "vacuum\\s*not on this unit");
    await page.getByText("The unit sheet says that this unit has no such stage: one-way input seal.").waitFor();
    await choose("Stage", "working\\s*0.84 bar.*");
    for (const [id, text] of [["limit", "90 kPa"], ["pressure", "0.84 bar"], ["time", "10 min"], ["most-lost", "7 kPa"], ["source", "unit sheet, own manual, p. 40"]]) {
      assert.equal(await page.locator(`#check-${id}`).inputValue(), text);
    }
    await fill("pressure", "80");
    await page.locator("#check-pressure-says", { hasText: "The unit sheet says 0.84 bar." }).waitFor();
    await page.locator("#check-source").waitFor({ state: "hidden" });
    await held("leak from the sheet");
    await page.reload();
    assert.equal(await page.locator("#check-pressure").inputValue(), "80");
    for (const id of ["limit", "pressure", "time", "most-lost"]) await fill(id, "");
  });

  test("a tap takes the time of a line, and the clock runs on through a reload", async () => {
    await go(`${job}/check/leak`);
    await page.getByRole("button", { name: "Start the clock" }).click();
    await page.getByRole("timer").waitFor();
    await page.getByRole("button", { name: "Time of line 1 is now" }).click();
    assert.match(await page.locator("#check-at-0").inputValue(), /^\d+\.\d\d$/);
    await page.reload();
    await page.getByRole("timer").waitFor();
    await page.getByRole("button", { name: "Time of line 2 is now" }).waitFor();
    await page.getByRole("button", { name: "Shift rod moved: Done now" }).click();
    await page.getByText(/^at \d+\.\d\d min$/).waitFor();
    await held("leak with its clock");
    await page.getByRole("button", { name: "Shift rod moved: Take back" }).click();
    await fill("at-0", "");
    await page.getByRole("button", { name: "Put the clock away" }).click();
    await page.getByRole("button", { name: "Start the clock" }).waitFor();
  });

  // US Army TM 9-254, figure 46: 80, 400 and 50 at 45°: 73.5032; 25 lbf·ft = 33.895449 N·m (scipy.constants 1.17.1).
  test("torque follows the lever, in the unit of the wrench", async () => {
    await go(`${job}/check/torque`);
    await page.getByRole("heading", { level: 1, name: "Torque" }).waitFor();
    for (const [id, text] of [["wanted-0", "80"], ["wrench", "50"], ["head", "50"], ["angle", "180"]]) await fill(id, text);
    await choose("The manual's value is for", "dry");
    await choose("Yours are", "oil");
    await page.locator("#check-angle-says", { hasText: "found L + E·cos a = 0 mm, expected more than zero; turn the head forward or take a longer wrench." }).waitFor();
    await fill("wrench", "400");
    await choose("Head angle: 0 straight ahead, 180 back over the handle", "45°\\s*74");
    assert.equal(await page.locator("#check-angle").inputValue(), "45");
    await page.getByText("Wet threads clamp harder").waitFor();
    assert.match(await page.locator(".headline").innerText(), /^73\.50/);
    await choose("The wrench reads", "lbf·ft");
    await fill("wanted-0", "25");
    await fill("angle", "90");
    await page.reload();
    await page.getByText("for 25 lbf·ft at the fastener").waitFor();
    assert.match(await page.locator(".headline").innerText(), /^25\.0/);
    await held("torque");
    await press(page, /^Keep torque/);
    await page.getByText("Torque kept.").first().waitFor();
    await page.getByText("for 25 lbf·ft at the fastener").waitFor();
  });

  // 60, 120 and 200 with 400 and 60 mm at 45°: 54.2, 108.5, 180.8 (own arithmetic).
  test("a torque is ticked off stage by stage, through a reload, and kept", async () => {
    const states = () => page.locator(".stage .state").allInnerTexts();
    await go(`${job}/check/torque`);
    await choose("The wrench reads", "N·m");
    for (const [id, text] of [["wanted-0", "60"], ["wanted-1", "120"], ["wanted-2", "200"], ["wrench", "400"], ["head", "60"], ["angle", "45"], ["line", "1"]]) await fill(id, text);
    await choose("The manual's value is for", "dry");
    await choose("Yours are", "dry");
    await press(page, /^Stage 1 clicked at 54 N·m$/);
    await page.getByRole("status").getByText("Stage 1 clicked at 54 N·m.").waitFor();
    assert.deepEqual(await states(), ["Done", "Now", "Next"]);
    assert.match(await page.locator(".headline").innerText(), /^108/);
    await page.reload();
    await press(page, /^Stage 2 clicked at 108 N·m$/);
    await page.getByRole("button", { name: "Take back Stage 2" }).click();
    assert.deepEqual(await states(), ["Done", "Now", "Next"]);
    // What was ticked at another number is to be done again.
    await fill("wanted-0", "80");
    await page.getByText("Ticked at 54 N·m, asked now is 72 N·m: do it again.").waitFor();
    assert.deepEqual(await states(), ["Now", "Next", "Next"]);
    await held("torque with its stages");
    for (const words of [/^Stage 1 clicked at 72/, /^Stage 2 clicked at 108/, /^Stage 3 clicked at 181/]) await press(page, words);
    await page.getByText("All stages done.").waitFor();
    await press(page, /^Keep torque/);
    await page.getByText("Torque kept.").first().waitFor();
    await page.getByRole("heading", { name: "Kept" }).waitFor();
    assert.deepEqual(await states(), ["Done", "Done", "Done"]);
    await go("/check/torque");
    for (const [id, text] of [["wanted-0", "60"], ["wanted-1", "120"]]) await fill(id, text);
    await choose("The manual's value is for", "dry");
    await choose("Yours are", "dry");
    await press(page, /^Stage 1 clicked at 60/);
    assert.deepEqual(await states(), ["Done", "Now"]);
    assert.equal(await page.getByRole("button", { name: "Keep it as it stands" }).count(), 0, "nothing is kept here");
  });

  test("heat, press and play are worked out alone", async () => {
    // Callister, table B.6; 0.08 mm on 72 mm of cast aluminium: 51.680 K (run).
    await go("/check/fit");
    await page.getByRole("heading", { level: 1, name: "Heat or cold" }).waitFor();
    await choose("Which part", "outer part heated");
    for (const [id, text] of [["diameter", "72.000"], ["interference", "0.050"], ["clearance", "0.030"], ["room", "20.0"]]) await fill(id, text);
    await choose("Outer part is of", "aluminium");
    await choose("Inner part is of", "steel");
    await choose("What is heated or cooled", "case");
    await page.getByText("No verdict: type what its maker allows").waitFor();
    assert.match(await page.locator(".headline").innerText(), /^71\.7/);
    await page.getByText("Common practice, no source: such a part is taken no hotter than 120 °C.").waitFor();
    await fill("hottest", "-300");
    await page.locator("#check-hottest-says", { hasText: "found -300 °C, expected no less than absolute zero, -273.15 °C; check sign and unit." }).waitFor();
    await fill("hottest", "125");
    await page.getByText("without one there is no verdict").waitFor();
    await fill("thermometer-0", "60");
    await page.getByText("Not there yet.").waitFor();
    await fill("read-at-0", "2");
    await fill("read-at-1", "5");
    await fill("thermometer-1", "90");
    await page.getByText("The thermometer proves it").waitFor();
    await held("fit");
    await go("/check/play");
    await fill("pulled-0", "0.200");
    await unfold("The pack for a setting");
    await fill("wanted", "-0.050");
    await page.getByText("0.25000 ± 0.00082 mm").or(page.getByText(/^0\.250/)).first().waitFor();
    await held("play");
    // Oil rests by the same clock, on true time.
    await go("/check/lube");
    await fill("rest", "30");
    await page.getByRole("button", { name: "Start the clock" }).click();
    await page.getByText("of 30 min").waitFor();
    await page.getByRole("button", { name: "Rested so far is now" }).click();
    assert.match(await page.locator("#check-rested-0").inputValue(), /^0\.\d\d$/);
    await held("lube");
    await go("/check/press");
    await page.getByRole("heading", { level: 1, name: "Press fit" }).waitFor();
    await held("press");
  });

  test("what cannot be is refused with what was found, expected and to do", async () => {
    const refused = async (kind, field, fields, sentence) => {
      await go(`/check/${kind}`);
      for (const [id, text] of fields) await fill(id, text);
      await page.locator(`#check-${field}-says`, { hasText: sentence }).waitFor();
      assert.equal(await page.locator(`#check-${field}`).getAttribute("aria-invalid"), "true", kind);
    };
    const oring = [["bottom", "25.50"], ["depth", "2.85"], ["section", "3.53"], ["inside", "26.00"]];
    await refused("oring", "inside", oring, "Groove diameter: found 25.5 mm, expected more than the ring inside diameter, 26 mm; take a smaller ring or measure both again.");
    await go(`${job}/check/runout`);
    for (const [at, angle] of ["0", "90", "180", "450"].entries()) {
      if (at === 0) await unfold("Other places than these hours");
      await fill(`angle-${at}`, angle);
      await fill(`at-angle-${at}`, "0.01");
    }
    await page.getByText("Angles: found 90 ° twice, expected each angle once; take one of them out.").waitFor();
    // Nothing typed is lost by a refusal.
    assert.equal(await page.locator("#check-angle-3").inputValue(), "450");
    await held("refused");
  });

  test("alone, it reckons and says that nothing is kept", async () => {
    await go("/check/runout");
    await page.getByText("Nothing is kept here.").waitFor();
    for (const [at, text] of TURN.entries()) await fill(`readings-${at}`, text);
    await page.getByText("0.0329 ± 0.0012 mm").first().waitFor();
    assert.equal(await act(page).count(), 0);
    await held("alone");
    assert.deepEqual(complaints, []);
  });
});
