// The practice unit: a lesson to its end at phone size, with the server gone after the first visit.
// The right decision is found as a person can find it: by what the app tells of a wrong one.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { violationsInBothThemes } from "./access.mjs";
import { act, controlled, press, ready } from "./flow.mjs";
import { openBrowser, startSite } from "./site.mjs";

describe("practice unit", () => {
  const complaints = [];
  let site, context, page;
  const choose = (words) => page.locator(".choice").filter({ hasText: words }).click();
  const heading = (name) => page.getByRole("heading", { name }).waitFor();

  before(async () => {
    site = await startSite();
    context = await openBrowser();
    page = context.pages()[0];
    page.on("console", (message) => { if (["error", "warning"].includes(message.type())) complaints.push(message.text()); });
    page.on("pageerror", (error) => complaints.push(String(error)));
    await page.goto(site.url);
    await ready(page);
    await controlled(page);
    await site.stop();
  });
  after(() => context.close());

  test("a wrong decision is told why, with the clue, the likelier cause and the cost", async () => {
    await page.getByRole("link", { name: /^Find hidden faults/ }).click();
    await heading("Find what is wrong");
    assert.deepEqual(await violationsInBothThemes(page), [], "start");
    await choose(/^Race off its seat/);
    await heading("What do you do next?");
    await page.getByText("Choose one first").waitFor();
    assert.equal(await page.locator(".told").count(), 0, "nothing is told before");
    await choose(/^(Go on|Fit other packs)/);
    await page.getByLabel("Because…").fill("every mean is fine");
    assert.deepEqual(await violationsInBothThemes(page), [], "deciding");
    await press(page, /^Decide: /);
    await heading(/^You chose: (go on|fit other packs)/);
    const told = await page.locator(".told").innerText();
    assert.match(told, /The clue was which readings are off/);
    assert.match(told, /the mistake stays in/);
    assert.match(told, /Try the feeler behind the race at B\d\w? first\. It costs about 5 minutes\. Stripping to the pack costs \d+\./);
    await page.getByText("every mean is fine").waitFor();
    assert.deepEqual(await violationsInBothThemes(page), [], "told");
  });

  test("it wakes where it was left, and the right decision is said to be right", async () => {
    await press(page, /^Try the feeler/);
    await page.getByText("Fault 2 of 3").waitFor();
    await page.reload();
    await ready(page);
    await page.getByText("Fault 2 of 3").waitFor();
    // The fault is a race off its seat: of the feelers offered, the one whose check is off is right.
    const feelers = page.locator(".choice").filter({ hasText: "Try the feeler" });
    await feelers.first().click();
    await press(page, /^Decide: try the feeler/);
    await heading(/^You chose: try the feeler/);
    const found = await page.getByText("The cause", { exact: true }).count();
    assert.equal(await page.getByText("1 of 3 found").count(), found);
    await act(page).click();
    await page.getByText("Fault 3 of 3").waitFor();
    await choose(/^(Go on|Fit other packs)/);
    await act(page).click();
    await act(page).filter({ hasText: /^Try the feeler/ }).click();
    await heading("What you decided");
    assert.equal(await page.getByText("Told", { exact: true }).count() + found, 3);
    assert.deepEqual(await violationsInBothThemes(page), [], "over");
  });

  test("nothing of it reaches a book", async () => {
    const entries = await page.evaluate(() => new Promise((done) => {
      const open = indexedDB.open("shimwright");
      open.onsuccess = () => {
        const count = open.result.transaction("entries").objectStore("entries").count();
        count.onsuccess = () => { done(count.result); open.result.close(); };
      };
    }));
    assert.equal(entries, 0);
    assert.deepEqual(complaints, []);
  });
});
