// The guided job when things do not go as planned: a photo of 60 megapixels, a camera that gives
// none, a store that is full, a clock set back, a step left out; and the shop's own steps.
// Phone size, the server gone after the first visit. All data invented.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { violationsInBothThemes } from "./access.mjs";
import { act, controlled, press, ready } from "./flow.mjs";
import { doStep, jpeg, stepOf, workTo } from "./guided.mjs";
import { openBrowser, startSite } from "./site.mjs";

describe("detours of the guided job", () => {
  const complaints = [];
  let site, context, page, job, picture;
  const open = async (path) => { await page.goto(site.url + path); await ready(page); };
  const options = () => ({ picture });
  async function carryOn() {
    await open(job);
    await act(page).click();
    await page.waitForURL(/\/step\/[^/]+$/);
    await act(page).waitFor();
  }

  before(async () => {
    site = await startSite();
    context = await openBrowser();
    page = context.pages()[0];
    page.on("pageerror", (error) => complaints.push(String(error)));
    await page.goto(site.url);
    await ready(page);
    await controlled(page);
    picture = await jpeg(page);
    await page.getByRole("button", { name: "Lay out the practice job" }).click();
    await page.locator(".job").first().click();
    await page.waitForURL(/\/job\/[^/]+$/);
    job = new URL(page.url()).pathname;
    await page.locator("label").filter({ hasText: "Gear set" }).first().click();
    await press(page, /^Start: gear set/);
    await page.getByRole("status").getByText("Scope: gear set.").waitFor();
    await site.stop();
  });
  after(() => context.close());

  test("the shop adds a step of its own, leaves one out and moves one; what hangs together stays", async () => {
    await page.getByRole("link", { name: "Steps of this unit" }).click();
    await page.getByRole("heading", { name: "Steps of this unit" }).waitFor();
    const choose = (words) => page.locator(".choice").filter({ hasText: words }).first().click();
    await choose("Agree scope");
    await press(page, "Add the step");
    await page.locator("main .msg--refused").filter({ hasText: /Nothing typed for the act/ }).waitFor();
    await page.getByLabel("The act").fill("Photograph the trailer hitch");
    await page.getByLabel("Why", { exact: true }).fill("it came bent once");
    await page.locator("#captures label, [aria-label='What is captured'] label").filter({ hasText: /^Photo$/ }).click();
    assert.deepEqual(await violationsInBothThemes(page), [], "own steps");
    await press(page, "Add the step");
    await page.locator(".choice").filter({ hasText: "Photograph the trailer hitch" }).getByText("Own", { exact: true }).waitFor();
    // A step that takes parts off cannot be left out for good.
    await choose("Propeller off");
    await page.locator("[aria-label='What is done to it'] label").filter({ hasText: "Leave out" }).click();
    await page.getByLabel("Why not on this unit").fill("never");
    await press(page, "Leave it out");
    await page.locator("main .msg--refused").filter({ hasText: "takes off or fits parts" }).waitFor();
    assert.equal(await page.getByLabel("Why not on this unit").inputValue(), "never");
    await page.getByRole("link", { name: "Job", exact: true }).first().click();
    await page.getByText("Photograph the trailer hitch").first().waitFor();
  });

  test("a photo of 60 megapixels is made smaller, and no photo is said", async () => {
    await carryOn();
    await workTo(page, "b04", options());
    await doStep(page, { ...options(), until: /^Photo: jar at once/ });
    const slot = page.locator("#rec-4-photo");
    await slot.dispatchEvent("cancel");
    await page.getByText("No photo came. Where the camera is refused").waitFor();
    const large = await page.evaluate(async () => {
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [9000, 6700];
      const pen = canvas.getContext("2d");
      pen.fillStyle = "#567";
      pen.fillRect(0, 0, 9000, 6700);
      const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.5));
      return [...new Uint8Array(await blob.arrayBuffer())];
    });
    await slot.setInputFiles({ name: "large.jpg", mimeType: "image/jpeg", buffer: Buffer.from(large) });
    const kept = page.locator("#rec-4 img[alt*='jar at once']");
    await kept.waitFor();
    assert.ok(await kept.evaluate((image) => image.decode().then(() => Math.max(image.naturalWidth, image.naturalHeight))) <= 1600);
    await page.locator(".undo").getByRole("button", { name: "Undo" }).click();
    await act(page).filter({ hasText: "Photo: jar at once" }).waitFor();
  });

  test("a full store says so at the photo, which waits and is kept once there is room", async () => {
    // As a browser answers that has no room for a picture left.
    await page.evaluate(() => {
      const { add } = IDBObjectStore.prototype;
      window.makeRoom = () => { IDBObjectStore.prototype.add = add; };
      IDBObjectStore.prototype.add = function (...row) {
        if (this.name === "photos") throw new DOMException("", "QuotaExceededError");
        return add.apply(this, row);
      };
    });
    await page.locator("#rec-4-photo").setInputFiles(picture);
    await page.getByText("The device has no room left, so this was not saved.").first().waitFor();
    const again = page.getByRole("button", { name: "Keep this photo" });
    await again.waitFor();
    await page.evaluate(() => window.makeRoom());
    await again.click();
    await page.locator("#rec-4 img[alt*='jar at once']").waitFor();
    await doStep(page, options());
  });

  test("a clock set back is said, and no wait ends early by it", async () => {
    await page.locator(".clock").getByText("Jar stands").waitFor();
    const left = async () => Number(/(\d+) min/.exec(await page.locator(".clock").filter({ hasText: "Jar stands" }).innerText())[1]);
    const before = await left();
    const later = await context.newPage();
    await later.addInitScript(() => { const now = Date.now; Date.now = () => now() - 3_600_000; });
    page = later;
    page.on("pageerror", (error) => complaints.push(String(error)));
    await open(job);
    await page.getByText("Look at the clock.").waitFor();
    assert.ok(await left() >= before - 1, "nothing of the wait is lost");
    await page.close();
    page = context.pages()[0];
  });

  test("a step is left out only with a reason, and what needs it opens", async () => {
    await carryOn();
    await workTo(page, "b06", options());
    const here = stepOf(page);
    await page.getByText("Leave it out", { exact: true }).click();
    await page.getByRole("button", { name: "Leave this step out" }).click();
    await page.locator("#step-end .msg--refused").filter({ hasText: /reason/i }).waitFor();
    await page.getByLabel("Why it is left out").fill("gauge at the other shop");
    await page.getByRole("button", { name: "Leave this step out" }).click();
    await page.getByRole("status").getByText(/left out: gauge at the other shop/).waitFor();
    await carryOn();
    assert.notEqual(stepOf(page), here);
    assert.deepEqual(complaints, []);
  });
});
