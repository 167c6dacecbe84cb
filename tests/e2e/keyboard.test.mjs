// The main job by keyboard alone, and with a gauge that types digits and Enter; every control is
// found by its role and spoken name, as with a screen reader. No pointer, no id, no address but the
// first. The unit, the readings and the shims are invented; the numbers are those of flow.mjs.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { FOUND, SHIMS, controlled, ready } from "./flow.mjs";
import { openBrowser, startSite } from "./site.mjs";

const MOST_TABS = 150;
/** The unit sheet: the group it stands in, its name, what is typed. */
const SHEET = [
  ["Pinion depth gap", "Low", "0.62"], ["Pinion depth gap", "High", "0.68"],
  ["Forward backlash", "Low", "0.20"], ["Forward backlash", "High", "0.35"], ["Forward backlash", "At radius, mm", "22"],
  ["Reverse backlash", "Low", "0.30"], ["Reverse backlash", "High", "0.55"], ["Reverse backlash", "At radius, mm", "22"],
  [null, "Pinion teeth", "14"], [null, "Forward gear teeth", "21"], [null, "Reverse gear teeth", "21"], [null, "Pinion mean pitch radius, mm", "24"],
  [null, "Normal pressure angle, °", "20"], [null, "Spiral angle, °", "35"], [null, "Arm radius, mm", "30"],
];
/** Choices: the group they stand in, their name, how many arrows down. */
const CHOICES = [
  ["Pinion depth gap", "Gauge is on", 0], ["Forward backlash", "On", 0], ["Reverse backlash", "On", 0], [null, "Arm is on", 0],
  [null, /^Where does the pinion depth pack lie/, 0], [null, /^Does the pack lie behind the reverse gear/, 0], [null, /^Is there a selectable thrust washer/, 1],
  [null, "Which way does B1 push?", 0], [null, "Which way does B2 push?", 0], [null, "Which way does B3 push?", 0],
];
/** Checks in the order they are read, by the heading of their screen: as found, and as left. */
const READINGS = [
  ["Pinion depth gap", ["0.71", "0.72", "0.71"], ["0.66", "0.66", "0.67"]],
  ["Forward backlash", ["0.56", "0.57", "0.56", "0.56"], ["0.39", "0.40", "0.39", "0.39"]],
  ["Reverse backlash", ["0.72", "0.71", "0.73", "0.72"], ["0.64", "0.65", "0.64", "0.65"]],
];

describe("the main job by keyboard and spoken names alone", () => {
  let site, context, page;
  before(async () => {
    site = await startSite();
    context = await openBrowser();
    page = context.pages()[0];
    await page.goto(`${site.url}/new-job`);
    await ready(page);
    await controlled(page);
    await site.stop();
  });
  after(() => context?.close());

  const named = (role, name, within = page) => within.getByRole(role, { name, exact: typeof name === "string" });
  const heading = (name) => named("heading", name).waitFor();
  const dock = () => named("navigation", "Thumb dock");
  /** The dock's next act, a button or a link. */
  const next = (name) => named("button", name, dock()).or(named("link", name, dock()));
  const inside = (group) => (group === null ? page : named("group", group));
  /** Tabs on until the focus is there, or in there. */
  async function reach(what) {
    await what.waitFor({ state: "attached" });
    for (let tabs = 0; tabs < MOST_TABS; tabs += 1) {
      if (await what.evaluate((at) => at.contains(document.activeElement))) return;
      await page.keyboard.press("Tab");
    }
    assert.fail(`${what} is not reached by ${MOST_TABS} tabs`);
  }
  /** Digits and Enter, as a gauge sends them. */
  async function send(text) {
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
  }
  async function press(what) {
    await reach(what);
    await page.keyboard.press("Enter");
  }
  async function jump(place) {
    await press(page.getByText("Jump", { exact: true }));
    await press(named("link", place));
  }
  async function readAll(at) {
    for (const [check, ...series] of READINGS) {
      const here = page.getByRole("heading", { name: check, level: 1, exact: true });
      const onward = next(/^Read/);
      await here.or(onward).first().waitFor();
      if (await here.count() === 0) await press(onward);
      await here.waitFor();
      await reach(named("textbox", /^Reading/).first());
      for (const value of series[at]) await send(value);
      await press(next(/^Keep/));
    }
    await heading("Fit the packs");
  }

  test("the unit sheet", async () => {
    await reach(named("textbox", "Name of the unit"));
    await send("Unit 14/21");
    await heading("Unit 14/21");
    for (const [group, name, text] of SHEET) {
      await reach(named("textbox", name, inside(group)));
      await send(text);
    }
    for (const [group, name, down] of CHOICES) {
      await reach(named("radiogroup", name, inside(group)));
      await page.keyboard.press("Space");
      for (let step = 0; step < down; step += 1) await page.keyboard.press("ArrowDown");
    }
    await next(/Back|Start|Go to set-up/).waitFor();
  });

  test("the tin", async () => {
    await jump(/^Shim tin/);
    await reach(named("textbox", "Zero, mm"));
    await send("0.002");
    let family = "B1";
    for (const [at, [of, one, other]] of SHIMS.entries()) {
      if (of !== family) {
        await reach(named("radiogroup", "Family"));
        await page.keyboard.press("ArrowRight");
        family = of;
      }
      await reach(named("textbox", "Place 1, mm"));
      await send(one);
      await reach(named("textbox", "Place 2, mm"));
      await send(other);
      await press(next(/in the tin$/));
      await page.getByRole("banner").getByText(at === 0 ? "1 shim" : `${at + 1} shims`, { exact: true }).waitFor();
    }
  });

  test("the job, its packs, and the readings from a gauge", async () => {
    await press(named("link", "Bench", dock()));
    await press(named("link", /new job|real job/i).first());
    await reach(named("textbox", "Boat"));
    await page.keyboard.type("Grey Heron");
    await press(next(/^Open job/));
    await heading("How much of it is done?");
    await jump(/^Set-up/);
    for (const [slot, text] of Object.entries(FOUND)) {
      await reach(named("textbox", `${slot} as found, mm`));
      await page.keyboard.type(text);
    }
    await press(next(/^Write down/));
    await readAll(0);
  });

  test("the advice, fitted, and read again in band", async () => {
    await named("heading", /Fit next/).or(page.getByText("Fit next")).first().waitFor();
    await press(next(/fitted/));
    await readAll(1);
    const said = await page.getByRole("main").innerText();
    assert.ok((said.match(/in band/gi) ?? []).length >= 3, said);
  });

  test("the record", async () => {
    await jump(/^Record/);
    await next("Print or save PDF").waitFor();
    const said = await page.getByRole("article").innerText();
    for (const word of ["Grey Heron", "Unit 14/21", "0.71", "0.66", "0.56", "0.39", "0.72", "0.651", "0.700", "0.550"]) assert.ok(said.includes(word), `${word} in: ${said}`);
  });
});
