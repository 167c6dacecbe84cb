// The shop's board and the kiosk: lanes, idle return with a half-typed value kept, waking on the board.
// All data invented.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { violationsInBothThemes } from "./access.mjs";
import { act, controlled, enterDemo, press, ready } from "./flow.mjs";
import { openBrowser, startSite } from "./site.mjs";

describe("shop board", () => {
  const complaints = [];
  let site, context, page, job;

  before(async () => {
    site = await startSite();
    context = await openBrowser();
    page = context.pages()[0];
    page.on("console", (message) => { if (["error", "warning"].includes(message.type())) complaints.push(message.text()); });
    page.on("pageerror", (error) => complaints.push(String(error)));
    await enterDemo(page, site.url);
    job = /\/job\/([^/]+)/.exec(page.url())[1];
    await controlled(page);
    await site.stop();
  });
  after(() => context.close());
  const open = async (path) => { await page.goto(site.url + path); await ready(page); };

  test("a job without a scope stands there as not begun, then with its stage and next step", async () => {
    await open("/board");
    const lane = page.locator(".lane");
    await lane.getByText("Grey Heron").waitFor();
    await lane.getByText("Not begun").waitFor();
    await lane.click();
    await page.waitForURL(/\/job\/[^/]+$/);
    await page.locator("label").filter({ hasText: "Gear set" }).first().click();
    await press(page, /^Start: gear set/);
    await page.getByRole("status").getByText("Scope: gear set.").waitFor();
    await open("/board");
    await lane.getByText(/^Look · 0 of \d+$/).waitFor();
    await lane.getByText("To do", { exact: true }).waitFor();
    await lane.getByText("No parts due").waitFor();
    for (const [width, height] of [[360, 740], [1280, 800]]) {
      await page.setViewportSize({ width, height });
      assert.deepEqual(await violationsInBothThemes(page), [], `board at ${width}`);
      assert.equal(await page.evaluate(() => document.documentElement.scrollWidth > innerWidth), false);
    }
  });

  test("the bench shows the same stages, and its blue button is the next step", async () => {
    await page.setViewportSize({ width: 360, height: 740 });
    await page.evaluate(() => localStorage.removeItem("shimwright.screen"));
    await open("/");
    await page.locator(".job").getByRole("img", { name: /^Stages: Look here/ }).waitFor();
    await act(page).click();
    await page.waitForURL(/\/job\/[^/]+\/step\//);
  });

  test("a kiosk opens on the board and goes back to it, and nothing half typed is lost", async () => {
    await open("/settings");
    await page.locator("label").filter({ hasText: "Shop kiosk" }).click();
    assert.deepEqual(await violationsInBothThemes(page), [], "settings");
    await open("/");
    await page.waitForURL(/\/board$/);
    await page.clock.install();
    await open(`/job/${job}/read/depth`);
    await page.locator("#slot-0").fill("0.6");
    await page.clock.runFor("02:50");
    assert.match(page.url(), /read\/depth$/);
    await page.clock.runFor("00:20");
    await page.waitForURL(/\/board$/);
    await open(`/job/${job}/read/depth`);
    await page.waitForFunction(() => document.querySelector("#slot-0")?.value === "0.6");
    assert.deepEqual(complaints, []);
  });
});
