// A job gets tags, goes into the archive, is found there by its words, makes room by letting its
// photos go once a backup has them, and gets them back from that backup. Offline; boats are invented.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { accessible } from "./access.mjs";
import { act, beginJob, controlled, jump, press, ready, startSheet } from "./flow.mjs";
import { keepPhoto, until } from "./keep.mjs";
import { openBrowser, startSite, temporaryFolder } from "./site.mjs";

describe("find and archive, offline", () => {
  const complaints = [];
  let site, context, page, heron, backup;

  async function go(path) {
    await page.goto(site.url + path);
    await ready(page);
  }
  const held = (what) => accessible(page, what, [320]);
  const found = () => page.locator(".row b").allInnerTexts();
  const chip = (words) => page.locator(".chip").filter({ hasText: words });

  async function openJob(boat) {
    await go("/new-job");
    await page.locator("main label").filter({ hasText: "Twin, invented" }).click();
    return beginJob(page, boat);
  }

  before(async () => {
    site = await startSite();
    context = await openBrowser(temporaryFolder());
    page = context.pages()[0];
    page.on("pageerror", (error) => complaints.push(error.message));
    await go("/new-job");
    await controlled(page);
    await startSheet(page, "Twin, invented");
    heron = await openJob("Grey Heron");
    await openJob("Puffin");
    await keepPhoto(page, heron);
    await site.stop();
    await context.setOffline(true);
  });
  after(async () => {
    await context?.close();
    await site?.stop();
  });

  test("a tag is put on, taken off by Undo, and put on again", async () => {
    await go(`/job/${heron}/archive`);
    await page.getByText("No tag yet.").waitFor();
    await page.getByRole("button", { name: "Put the tag on" }).click();
    const tag = page.getByLabel("Another tag");
    await page.locator("#tag-says .msg--refused").waitFor();
    assert.equal(await tag.getAttribute("aria-describedby"), "tag-says");
    assert.equal(await tag.getAttribute("aria-invalid"), "true");
    await held("no tag typed");
    await tag.fill("Winter lay-up");
    await page.locator("#tag-says .msg--refused").waitFor({ state: "detached" });
    assert.notEqual(await tag.getAttribute("aria-invalid"), "true");
    await page.reload();
    await ready(page);
    assert.equal(await page.getByLabel("Another tag").inputValue(), "Winter lay-up");
    await page.getByRole("button", { name: "Put the tag on" }).click();
    await chip("Winter lay-up").waitFor();
    assert.equal(await page.getByLabel("Another tag").inputValue(), "");
    await page.getByRole("button", { name: "Undo" }).first().click();
    await page.getByText("No tag yet.").waitFor();
    await page.getByRole("button", { name: "Put back" }).first().click();
    await chip("Winter lay-up").waitFor();
    await held("tags");
  });

  test("photos stay while the job is on the bench, and until a backup has them", async () => {
    await page.getByText("1 on this device").waitFor();
    await page.getByText("Put it in the archive first.").waitFor();
    await press(page, "Put it away");
    await page.getByRole("heading", { name: "In the archive" }).waitFor();
    await page.getByText("No backup was made on this device").waitFor();
    await held("archived");
  });

  test("put away, it is off the bench and the board, and is found by any of its words", async () => {
    await jump(page, /^Bench/);
    await page.locator(".job h3").first().waitFor();
    assert.deepEqual(await page.locator(".job h3").allInnerTexts(), ["Puffin"]);
    await page.getByRole("link", { name: /^Find a job/ }).click();
    await page.getByLabel("Boat, unit, number, day or tag").waitFor();
    assert.deepEqual((await found()).sort(), ["Grey Heron", "Puffin"]);
    await held("find");
    for (const [typed, boats] of [["lay-up", ["Grey Heron"]], ["HERON twin", ["Grey Heron"]], ["2", ["Puffin"]], [String(new Date().getFullYear()), ["Grey Heron", "Puffin"]], ["albatross", []]]) {
      await page.getByLabel("Boat, unit, number, day or tag").fill(typed);
      await until(async () => JSON.stringify((await found()).sort()) === JSON.stringify(boats));
    }
    await page.getByText("No job has all of these words.").first().waitFor();
    await page.getByLabel("Boat, unit, number, day or tag").fill("heron");
    await page.getByRole("link", { name: /in the archive/ }).click();
    await page.waitForURL(`**/job/${heron}`);
    await go("/board");
    await page.getByText("Puffin").first().waitFor();
    assert.equal(await page.getByText("Grey Heron").count(), 0);
  });

  test("the photos leave once the backup is held, and come back from it", async () => {
    await go("/settings");
    const coming = page.waitForEvent("download");
    await press(page, "Back up now");
    backup = await (await coming).path();
    await go(`/job/${heron}/archive`);
    const take = page.getByRole("button", { name: "Take the photos off this device" });
    await take.waitFor();
    assert.ok(await take.isDisabled());
    await page.getByLabel(/^I have the backup of/).check();
    await held("photos may leave");
    await take.click();
    await page.getByText("None on this device.").waitFor();
    await page.reload();
    await ready(page);
    await page.getByText("None on this device.").waitFor();
    await go("/bring-in");
    await page.locator("input[type=file]").setInputFiles(backup);
    await page.getByRole("heading", { name: "What changes" }).waitFor();
    await press(page, /^Keep/);
    await page.getByText("Kept", { exact: true }).first().waitFor();
    await go(`/job/${heron}/archive`);
    await page.getByText("1 on this device").waitFor();
  });

  test("it comes back to the bench", async () => {
    await press(page, "Back on the bench");
    await page.getByRole("heading", { name: "On the bench" }).waitFor();
    await jump(page, /^Bench/);
    await page.locator(".job h3").first().waitFor();
    assert.deepEqual((await page.locator(".job h3").allInnerTexts()).sort(), ["Grey Heron", "Puffin"]);
    assert.deepEqual(complaints, []);
  });
});
