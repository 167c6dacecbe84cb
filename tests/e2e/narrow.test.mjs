// No screen scrolls sideways: at 320 px, and on a phone whose text is set to 200 %.
// WCAG 2.2, 1.4.10 Reflow (320 CSS px) and 1.4.4 Resize Text (200 %).
import assert from "node:assert/strict";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { ready } from "./flow.mjs";
import { OF_THE_JOB, OTHERS } from "./places.mjs";
import { openBrowser, startSite, temporaryFolder } from "./site.mjs";

/** The practice job with a scope, in a browser of a width and text size; closes itself with the suite. */
async function practice(site, width, text) {
  const folder = temporaryFolder();
  mkdirSync(join(folder, "Default"));
  // The browser's own setting for the size of text, as a person sets it.
  const preferences = { webkit: { webprefs: { default_font_size: text } } };
  writeFileSync(join(folder, "Default", "Preferences"), JSON.stringify(preferences));
  const context = await openBrowser(folder, { viewport: { width, height: 740 } });
  after(() => context.close());
  const page = context.pages()[0];
  await page.goto(site.url);
  await ready(page);
  await page.getByRole("button", { name: "Lay out the practice job" }).click();
  await page.locator(".job").first().click();
  await page.waitForURL(/\/job\/[^/]+$/);
  await page.locator("label").filter({ hasText: "Gear set" }).first().click();
  await page.locator(".dock .btn--main").click();
  await page.getByRole("status").getByText("Scope: gear set.").waitFor();
  return page;
}

/** What reaches past the right edge of the screen, over every place; Spanish has the longer words. */
async function reaching(page, language) {
  await page.evaluate((language) => localStorage.setItem("shimwright.language", JSON.stringify(language)), language);
  const { origin, pathname: job } = new URL(page.url());
  const found = [];
  for (const place of [...OF_THE_JOB.map((place) => job + place), ...OTHERS]) {
    await page.evaluate(() => localStorage.removeItem("shimwright.screen"));
    await page.goto(origin + place);
    await ready(page);
    await page.locator("main h1, main h2").first().waitFor();
    found.push(...await page.evaluate((place) => {
      const width = document.documentElement.clientWidth;
      const by = document.documentElement.scrollWidth - width;
      const wide = [...document.querySelectorAll("main *, .plate *, .dock *")].filter((at) => at.getBoundingClientRect().right > width + 1);
      const named = wide.slice(0, 4).map((at) => `${at.tagName}.${at.getAttribute("class")} ${at.textContent.slice(0, 30)}`);
      return by > 0 ? [`${place} by ${by} px: ${named.join(" | ")}`] : [];
    }, place.replace(job, "/job/J")).then((lines) => lines.map((line) => line.replace(job, ""))));
  }
  return found;
}

describe("narrow screens and large text", () => {
  let site;
  before(async () => { site = await startSite(); });
  after(() => site.stop());

  test("320 px wide", async () => {
    const page = await practice(site, 320, 16);
    assert.deepEqual(await reaching(page, "en"), []);
  });

  for (const language of ["en", "es"]) {
    test(`text at 200 %, ${language}`, async () => {
      const page = await practice(site, 360, 32);
      assert.equal(await page.evaluate(() => getComputedStyle(document.body).fontSize), "34px");
      assert.deepEqual(await reaching(page, language), []);
    });
  }
});
