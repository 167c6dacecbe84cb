// The main job by keyboard alone, and with a gauge that types digits and Enter. No pointer is used.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { CHOICES, FOUND, SHEET, SHIMS, controlled, ready } from "./flow.mjs";
import { openBrowser, startSite } from "./site.mjs";

const MOST_TABS = 150;

describe("the main job by keyboard alone", () => {
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

  const isOn = (selector, words) =>
    page.evaluate(([at, said]) => {
      const active = document.activeElement;
      return active.matches(at) && (said === null || active.textContent.includes(said));
    }, [selector, words]);
  /** Tabs on until the focus is there. */
  async function reach(selector, words = null) {
    await page.locator(selector).filter(words === null ? {} : { hasText: words }).first().waitFor();
    for (let tabs = 0; tabs < MOST_TABS; tabs += 1) {
      if (await isOn(selector, words)) return;
      await page.keyboard.press("Tab");
    }
    assert.fail(`${selector} ${words ?? ""} is not reached by ${MOST_TABS} tabs`);
  }
  /** Digits and Enter, as a gauge sends them. */
  async function send(text) {
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
  }
  async function act(words) {
    await reach(".dock .btn--main", words);
    await page.keyboard.press("Enter");
  }
  async function answer(group, at) {
    await reach(`#${group} input`);
    await page.keyboard.press("Space");
    for (let step = 0; step < at; step += 1) await page.keyboard.press("ArrowDown");
  }

  test("the unit sheet", async () => {
    await reach("#unit");
    await send("Unit 14/21");
    await page.locator("#depth-low").waitFor();
    for (const [id, text] of SHEET) {
      await reach(`#${id}`);
      await send(text);
    }
    for (const [group, words] of CHOICES) await answer(group, words === "None" ? 1 : 0);
    for (const slot of ["B1", "B2", "B3"]) await answer(`way-${slot}`, 0);
    await page.locator(".dock .btn--main").filter({ hasText: /Back|Start|Go to set-up/ }).waitFor();
  });

  test("the tin", async () => {
    await reach(".jump > summary");
    await page.keyboard.press("Enter");
    await reach(".jump__menu a", "Shim tin");
    await page.keyboard.press("Enter");
    await reach("#zero");
    await send("0.002");
    let family = "B1";
    for (const [at, [of, one, other]] of SHIMS.entries()) {
      if (of !== family) {
        await reach(".families input");
        await page.keyboard.press("ArrowRight");
        family = of;
      }
      await reach("#place-1");
      await send(one);
      await reach("#place-2");
      await send(other);
      await act("in the tin");
      await page.locator(".plate").getByText(at === 0 ? "1 shim" : `${at + 1} shims`, { exact: true }).waitFor();
    }
  });

  test("the job, its packs, and the readings from a gauge", async () => {
    await page.goto(`${site.url}/new-job`);
    await ready(page);
    await reach("#boat");
    await page.keyboard.type("Grey Heron");
    await act("Open job");
    await page.waitForURL(/\/job\/[^/]+$/);
    await page.goto(`${page.url()}/setup`);
    await ready(page);
    for (const [slot, text] of Object.entries(FOUND)) {
      await reach(`#found-${slot}`);
      await page.keyboard.type(text);
    }
    await act("Write down");
    await act("Read");
    await page.waitForURL(/read\/depth$/);
    for (const [check, values] of [["depth", ["0.71", "0.72", "0.71"]], ["lash-forward", ["0.56", "0.57", "0.56", "0.56"]], ["lash-reverse", ["0.72", "0.71", "0.73", "0.72"]]]) {
      await page.waitForURL(new RegExp(`(setup|read/${check})$`));
      if (page.url().endsWith("setup")) await act("Read");
      await page.waitForURL(new RegExp(`read/${check}$`));
      await reach("#slot-0");
      for (const value of values) await send(value);
      await act("Keep");
    }
    await page.waitForURL(/setup$/);
    await page.locator("#advice").getByText("Fit next").waitFor();
    await act("fitted");
    await page.waitForURL(/read\/depth$/);
  });
});
