// The shop's PIN: set, given, wrong, forgotten; what it guards and what it does not. Offline.
// The job and its owner are invented.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { accessible } from "./access.mjs";
import { act, controlled, press, ready } from "./flow.mjs";
import { choose, downloaded, entryIds, keepPhoto, stored } from "./keep.mjs";
import { openBrowser, startSite } from "./site.mjs";

/** A job whose owner agreed, as lines of a file. */
const FACTS = [
  ["sheet:s", 1, { "sheet-opened": { name: "Unit 14/21", layout: "b" } }],
  ["job:j", 1, { "job-opened": { boat: "Grey Heron", complaint: "Whines astern", sheet: "s", number: 1 } }],
  ["job:j", 2, { "procedure-pinned": { layout: "b", revision: 1 } }],
  ["job:j", 2, { "scope-chosen": { scope: "reseal", reason: "" } }],
  ["job:j", 2, { "consent-signed": { step: "b08", by: "M. Lind", how: "phone", work: ["Seals only"], declined: [], price: "", limit: "1 300", stops: ["A crack in the case"], excluded: "Hidden corrosion.", initials: "JK", drawn: [] } }],
];
/** Another job of that unit, from another device. */
const OTHER = [["job:k", 1, { "job-opened": { boat: "Puffin", complaint: "", sheet: "s", number: 2 } }]];
const lines = (facts, act) => facts.map(([book, v, fact], at) => JSON.stringify({ v, book, id: `${act}.${at}`, n: at + 1, device: "phone", at: 1778580000000, fact })).join("\n");
const GUARDED = ["/job/j/record", "/job/j/consent", "/job/j/send", "/sheet/s/send"];

describe("the shop's PIN", () => {
  const complaints = [];
  let site, context, page;

  const open = async (path) => { await page.goto(site.url + path); await ready(page); };
  const button = (name) => page.getByRole("button", { name, exact: true });
  const says = (words) => page.locator(".msg").getByText(words).waitFor();
  const kept = () => page.evaluate(() => localStorage.getItem("shimwright.pin"));
  /** On the locked screen, by keyboard alone: digits, Enter to the blue button, Enter. */
  async function give(pin) {
    await page.getByLabel("Shop PIN").fill(pin);
    await page.keyboard.press("Enter");
    await page.keyboard.press("Enter");
  }

  before(async () => {
    site = await startSite();
    context = await openBrowser(undefined, { acceptDownloads: true });
    page = context.pages()[0];
    page.on("console", (message) => { if (message.type() === "error") complaints.push(message.text()); });
    page.on("pageerror", (error) => complaints.push(String(error)));
    await open("/bring-in");
    await controlled(page);
    await choose(page, lines(FACTS, "a"));
    await press(page, /^Keep/);
    await page.getByRole("heading", { name: "Brought in" }).waitFor();
    for (const path of ["/settings", "/job/j/record", "/job/j"]) await open(path);
    await site.stop();
    await page.clock.install();
  });
  after(async () => {
    await context?.close();
    await site?.stop();
  });

  test("without one, nothing asks for it", async () => {
    for (const path of GUARDED) {
      await open(path);
      assert.equal(await page.getByText("Give the shop’s PIN").count(), 0, path);
    }
    await open("/settings");
    await page.getByText("Not set").waitFor();
    const backup = await downloaded(page, () => act(page).click());
    assert.match(backup.text, /M\. Lind/);
    assert.equal(await kept(), null);
  });

  test("one that cannot be taken is refused at its field, and one that can is never kept itself", async () => {
    await open("/settings");
    for (const [first, again, words] of [["48", "48", "Those are 2 digits."], ["48a1", "48a1", "There is more than digits in it."], ["4821", "4812", "The two are not the same."]]) {
      await page.locator("#pin-new").fill(first);
      await page.locator("#pin-again").fill(again);
      await button("Set the PIN").click();
      await says(words);
      assert.equal(await page.locator("#pin-new").getAttribute("aria-invalid"), "true");
      assert.equal(await page.locator("#pin-new").inputValue(), first);
    }
    await page.locator("#pin-again").fill("4821");
    await button("Set the PIN").click();
    await says("The PIN is set.");
    assert.match(await kept(), /^"1 600000 \S{24} \S{44} 0 0 0"$/);
    assert.doesNotMatch(await page.evaluate(() => JSON.stringify(localStorage)), /4821/);
    await accessible(page, "settings with a PIN", [320]);
  });

  test("after a reload it guards every way out, and the owner's name", async () => {
    for (const path of GUARDED) {
      await open(path);
      await page.getByRole("heading", { name: "Give the shop’s PIN" }).waitFor();
      assert.doesNotMatch(await page.content(), /M\. Lind/, path);
    }
    await accessible(page, "behind the PIN", [320]);
    for (const path of ["/board", "/job/j", "/job/j/setup"]) {
      await open(path);
      await page.locator("main").waitFor();
      assert.doesNotMatch(await page.content(), /M\. Lind/, path);
    }
    await open("/settings");
    for (const name of ["Table (CSV)", "Plain text", "Share a backup", "Back up now"]) assert.equal(await button(name).count(), 0, name);
    await press(page, /^PIN before a backup/);
    await page.locator("#pin:focus").waitFor();
    await accessible(page, "settings, shut", [320]);
  });

  test("wrong ones make wait, over a reload too, and the right one opens until nobody is there", async () => {
    await open("/job/j/record");
    for (const pin of ["1111", "2222"]) {
      await give(pin);
      await says("That is not the PIN. Type it again.");
    }
    await give("3333");
    await says("3 wrong tries. The next is taken in 30 s.");
    await page.reload();
    await ready(page);
    await says("3 wrong tries.");
    await give("4821");
    await says("The next is taken in");
    await page.clock.runFor("00:31");
    await give("4821");
    await page.locator("article").getByText("M. Lind").first().waitFor();
    await page.clock.runFor("02:50");
    await page.keyboard.press("Shift");
    await page.clock.runFor("02:50");
    assert.equal(await page.getByText("Give the shop’s PIN").count(), 0);
    await page.clock.runFor("00:20");
    await page.getByText("Give the shop’s PIN").waitFor();
    assert.doesNotMatch(await page.content(), /M\. Lind/);
  });

  test("what came in from a file is lifted out again only with it", async () => {
    const here = async () => (await entryIds(page)).includes("k.0");
    await open("/bring-in");
    await choose(page, lines(OTHER, "k"));
    await press(page, /^Keep/);
    await page.getByRole("heading", { name: "Take it all back?" }).waitFor();
    assert.equal(await button("Undo all").count(), 0);
    await accessible(page, "lifting out, shut", [320]);
    await page.getByLabel("Shop PIN").fill("1111");
    await button("Give the PIN").click();
    await says("That is not the PIN.");
    assert.equal(await button("Undo all").count(), 0);
    assert.ok(await here());
    await page.getByLabel("Shop PIN").fill("4821");
    await button("Give the PIN").click();
    await button("Undo all").waitFor();
    // Nobody was there for three minutes: it is asked for anew.
    await page.clock.runFor("03:01");
    await page.getByLabel("Shop PIN").waitFor();
    assert.equal(await button("Undo all").count(), 0);
    await page.getByLabel("Shop PIN").fill("4821");
    await button("Give the PIN").click();
    await button("Undo all").click();
    await page.getByRole("heading", { name: "Before it is kept" }).waitFor();
    assert.equal(await here(), false);
  });

  test("photos leave the device only with it", async () => {
    const photos = async () => (await stored(page)).photos;
    const take = button("Take the photos off this device");
    await keepPhoto(page, "j");
    await open("/settings");
    await page.getByText(/^PIN before a backup/).first().waitFor();
    await page.getByLabel("Shop PIN").fill("4821");
    await button("Give the PIN").click();
    await downloaded(page, () => press(page, "Back up now"));
    await open("/job/j/archive");
    await page.getByRole("heading", { name: "Give the shop’s PIN" }).waitFor();
    await give("4821");
    await press(page, "Put it away");
    await page.getByLabel(/^I have the backup of/).check();
    // Shut again before the last tap: the photos are out of reach.
    await page.clock.runFor("03:01");
    await page.getByRole("heading", { name: "Give the shop’s PIN" }).waitFor();
    assert.equal(await take.count(), 0);
    await give("1111");
    await says("That is not the PIN.");
    assert.deepEqual(await photos(), ["photo-1"]);
    await give("4821");
    await page.getByLabel(/^I have the backup of/).check();
    await take.click();
    await page.getByText("None on this device.").waitFor();
    assert.deepEqual(await photos(), []);
    await press(page, "Back on the bench");
    await page.getByRole("heading", { name: "On the bench" }).waitFor();
  });

  test("it is changed and taken away by who knows it", async () => {
    await open("/settings");
    await page.getByText("Change or remove it").click();
    await page.locator("#pin-now").fill("0000");
    await button("Remove the PIN").click();
    await says("That is not the PIN.");
    await page.locator("#pin-now").fill("4821");
    await page.locator("#pin-new").fill("90909");
    await page.locator("#pin-again").fill("90909");
    await button("Change the PIN").click();
    await says("The PIN is another one now.");
    await open("/job/j/record");
    await give("4821");
    await says("That is not the PIN.");
    await give("90909");
    await page.locator("article").waitFor();
    await open("/settings");
    await page.getByText("Change or remove it").click();
    await page.locator("#pin-now").fill("90909");
    await button("Remove the PIN").click();
    await says("There is no PIN any more.");
    assert.equal(await kept(), null);
  });

  test("a forgotten one can be taken away a day later, and nothing is lost", async () => {
    await page.locator("#pin-new").fill("7777");
    await page.locator("#pin-again").fill("7777");
    await button("Set the PIN").click();
    await says("The PIN is set.");
    await open("/settings");
    const forgotten = () => page.getByText("Forgotten?", { exact: true }).click();
    await forgotten();
    await button("The PIN is forgotten").click();
    await page.getByText("It can be taken away here in 24 h 0 min").waitFor();
    assert.equal(await button("Take the PIN away").count(), 0);
    await accessible(page, "a forgotten PIN", [320]);
    await page.clock.fastForward("24:00:30");
    await open("/settings");
    await forgotten();
    await button("Take the PIN away").click();
    await page.getByText("Not set").waitFor();
    await open("/job/j/record");
    await page.locator("article").getByText("M. Lind").first().waitFor();
    assert.deepEqual(complaints, []);
  });
});
