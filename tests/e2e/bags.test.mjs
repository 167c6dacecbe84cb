// Bags and ladder, inspection, pack list and drawer, and the sign-off of the packs: a reseal of
// layout (b) that turns out to need bearings, at phone size, with the server gone after the first visit.
//
// The unit, the parts and the readings are invented. What a rejected bearing needs (a full strip,
// a set-up, a bearing with its own race) is common practice, no source.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { fileURLToPath } from "node:url";
import { violationsInBothThemes } from "./access.mjs";
import { FOUND, act, controlled, enterDemo, press, read, ready, writeFound } from "./flow.mjs";
import { openBrowser, startSite, temporaryFolder } from "./site.mjs";

const PICTURE = fileURLToPath(new URL("../../public/icons/icon-512.png", import.meta.url));

describe("bags, inspection, tools and sign-off, offline", () => {
  const complaints = [];
  let site, context, page, job;

  const go = async (screen) => {
    await page.goto(`${site.url}/job/${job}/${screen}`);
    await ready(page);
  };
  const choose = (words) => page.locator("main .seg label").filter({ hasText: words }).first().click();
  const heading = (words) => page.getByRole("heading", { level: 1, name: words }).waitFor();
  const said = (words) => page.locator("main .msg--refused").filter({ hasText: words }).waitFor();
  const undo = async () => {
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    await page.getByRole("button", { name: "Put back", exact: true }).waitFor();
  };
  async function accessible(what) {
    assert.deepEqual(await violationsInBothThemes(page), [], what);
  }
  /** Writes facts as the job screen does where the scope is chosen. */
  const write = (facts) => page.evaluate(async ([book, facts]) => {
    const open = indexedDB.open("shimwright");
    const base = await new Promise((done) => { open.onsuccess = () => done(open.result); });
    const store = base.transaction("entries", "readwrite").objectStore("entries");
    const keys = await new Promise((done) => { const all = store.getAllKeys(); all.onsuccess = () => done(all.result); });
    let n = Math.max(...keys.filter((key) => key[0] === book).map((key) => key[1]));
    facts.forEach((fact, at) => {
      n += 1;
      const line = { v: 2, book, id: `scope.${at}`, n, device: "test", at: Date.now(), fact };
      store.add(JSON.stringify(line), [book, n, "test"]);
    });
    await new Promise((done) => { store.transaction.oncomplete = done; });
    base.close();
  }, [`job:${job}`, facts]);

  before(async () => {
    site = await startSite();
    context = await openBrowser(temporaryFolder());
    page = context.pages()[0];
    page.on("console", (message) => {
      if (["error", "warning"].includes(message.type())) complaints.push(message.text());
    });
    page.on("pageerror", (error) => complaints.push(String(error)));
    await enterDemo(page, site.url);
    job = /\/job\/([^/]+)/.exec(page.url())[1];
    await controlled(page);
    await site.stop();
    await write([
      { "procedure-pinned": { layout: "b", revision: 1 } },
      { "scope-chosen": { scope: "reseal", reason: "" } },
    ]);
  });
  after(() => context?.close());

  test("parts come off with number, place, facing and photo", async () => {
    await go("ladder");
    await heading(/^Coming out: 0 of/);
    await accessible("ladder, nothing off");
    await choose(/^Aft$/);
    await page.getByLabel("What faced that way").fill("magnet");
    await page.locator("#photo").setInputFiles(PICTURE);
    await page.getByRole("img", { name: "Taken" }).waitFor();
    await press(page, "1 is off, into bag 1");
    await heading(/^Coming out: 1 of/);
    await page.getByRole("img", { name: "Photo: Drain plug" }).waitFor();
    const first = page.locator(".rung").first();
    assert.match(await first.innerText(), /magnet aft/);

    await press(page, "2 is off, into bag 1");
    await heading(/^Coming out: 2 of/);
    await undo();
    await heading(/^Coming out: 1 of/);
    await page.getByRole("button", { name: "Put back", exact: true }).click();
    await heading(/^Coming out: 2 of/);

    // Half typed, it outlives a reload.
    await page.getByRole("button", { name: "other place" }).click();
    await page.getByLabel("Bag or tray place").fill("tray 2, left");
    await choose(/^To the nose$/);
    await page.getByLabel("What faced that way").fill("bevel");
    await page.reload();
    await ready(page);
    await press(page, "3 is off, into tray 2, left");
    await heading(/^Coming out: 3 of/);
    assert.match(await page.locator(".rung").nth(2).innerText(), /bevel to the nose/);
  });

  test("a rung between, and one put right", async () => {
    await page.getByRole("button", { name: "Add a rung between" }).click();
    await press(page, /^4 is off/);
    await said("Nothing typed for the part.");
    await page.getByLabel("What came off").fill("Heat shield");
    await press(page, /^4 is off/);
    await heading(/^Coming out: 4 of/);
    await page.locator(".rung").nth(3).click();
    await choose(/^Up$/);
    await page.getByLabel("What faced that way").fill("long tab");
    await press(page, "Put 4 right");
    await page.locator(".rung").nth(3).getByText("long tab up").waitFor();
    await accessible("ladder, four off");
  });

  test("going back, the last off goes on first and must face as found", async () => {
    await choose(/^Going back$/);
    await heading("Going back: 0 of 4");
    await act(page).filter({ hasText: "Say how 4 faces" }).waitFor();
    await choose(/^long tab down$/);
    await act(page).filter({ hasText: "Turn 4 round first" }).waitFor();
    await page.getByText("It came out long tab up.").waitFor();
    await choose(/^long tab up$/);
    await press(page, "4 is in, long tab up");
    await heading("Going back: 1 of 4");
    await choose(/^bevel to the nose$/);
    await press(page, "3 is in, bevel to the nose");
    await press(page, "2 is in");
    await heading("Going back: 3 of 4");
    await accessible("ladder, going back");
    await choose(/^magnet aft$/);
    await press(page, "1 is in, magnet aft");
    await page.getByText("Every rung is ticked").waitFor();
  });

  test("a rejected bearing widens the scope and is ordered", async () => {
    await go("inspect");
    await page.getByRole("heading", { level: 1 }).waitFor();
    await accessible("inspection");
    await page.getByRole("button", { name: /^Tapered bearings and races/ }).click();
    await heading("Tapered bearings and races");
    await page.locator(".tick").filter({ hasText: "Stain that wipes off" }).click();
    await page.getByText("Ticks say reuse:").waitFor();
    await page.locator(".tick").filter({ hasText: "Etched lines" }).click();
    await page.getByText("Ticks say reject:").waitFor();
    await page.getByLabel("Reason for the record").fill("");
    await press(page, "Keep verdict: reject");
    await said("Nothing typed for the reason.");
    await page.reload();
    await ready(page);
    await page.getByLabel("Reason for the record").fill("water-etched, rough");
    await page.locator("#photo").setInputFiles(PICTURE);
    await page.getByRole("img", { name: "Taken" }).waitFor();
    await press(page, "Keep verdict: reject");
    await page.getByText("the scope becomes seals and bearings").waitFor();
    await page.getByText("bearing with its own race").first().waitFor();
    await page.getByRole("link", { name: /^Consent/ }).getByText("not given yet").first().waitFor();
    await page.getByRole("button", { name: "Widen the scope: seals and bearings" }).click();
    await page.getByText("set up again the packs beside it").waitFor();
    await accessible("inspection, one rejected");
  });

  test("a tool is found by its alias and by a number that is wrong", async () => {
    await go("tools");
    await heading(/^Pack for/);
    await page.getByRole("group", { name: "Pinion-nut socket" }).waitFor();
    await choose(/^Drawer$/);
    await page.getByRole("button", { name: "Add a tool" }).first().click();
    await press(page, "Put it in the drawer");
    await said("Nothing typed for the tool's name.");
    await page.getByLabel("What the steps call it").fill("long spline tube");
    await page.getByLabel("Number on the tool").fill("31");
    await press(page, "Put it in the drawer");
    await page.getByRole("heading", { level: 2, name: "Long spline tube" }).waitFor();
    await page.getByLabel("Other name or number").fill("pinion-nut socket");
    await page.getByRole("button", { name: "Keep the name" }).click();
    await page.locator(".chip").filter({ hasText: "pinion-nut socket" }).waitFor();
    await page.getByLabel("Number that is wrong").fill("13");
    await page.getByLabel("Correction note").fill("does not enter the spline, 31 fits");
    await press(page, "Keep the correction");
    await page.locator(".fix s").filter({ hasText: "13" }).waitFor();
    await page.getByLabel("Find by name or number").fill("13");
    await page.locator(".tool .fix").filter({ hasText: "13 is wrong: does not enter the spline, 31 fits." }).waitFor();
    await accessible("drawer");

    await choose(/^Van list$/);
    const socket = page.locator(".tick").filter({ hasText: "Pinion-nut socket" });
    assert.match(await socket.innerText(), /no\. 31; 13 is wrong/);
    assert.equal(await page.getByRole("group", { name: "Pinion-nut socket" }).count(), 0, "it is owned");
    await press(page, "Packed: pinion-nut socket");
    await page.locator(".tick:has(:checked)").filter({ hasText: "Pinion-nut socket" }).waitFor();
    await page.getByRole("group", { name: "Ring wrench" }).getByRole("button", { name: "Borrow" }).click();
    await page.getByLabel("From whom, back when").fill("Sam, back by Friday");
    await page.getByRole("button", { name: "Keep", exact: true }).click();
    await page.locator(".tool__from").filter({ hasText: "Sam, back by Friday" }).waitFor();
    await page.locator(".tick").filter({ hasText: "Bearing with its own race" }).waitFor();
    await accessible("van list");
  });

  test("the packs are frozen by two people", async () => {
    await go("setup");
    await writeFound(page, FOUND);
    for (const [check, value] of [["depth", "0.65"], ["lash-forward", "0.38"], ["lash-reverse", "0.58"]]) {
      await go(`read/${check}`);
      await page.locator("#slot-0").waitFor();
      const slots = await page.locator("[id^=slot-]:not([id$=says])").count();
      await read(page, Array(slots).fill(value), /^(Keep|Near)/);
      await page.waitForURL((url) => !url.pathname.endsWith(check));
    }
    await go("freeze");
    await heading("Freeze packs");
    await page.getByText("Every pack is written down. Two people sign.").waitFor();
    await page.getByLabel("Set by").fill("JO");
    await page.getByLabel("Seen by, second person").fill("jo");
    await press(page, "JO saw it: freeze packs");
    await said("JO stands there twice. A second person signs, or say that you work alone.");
    await page.getByLabel("Seen by, second person").fill("SA");
    await press(page, "SA saw it: freeze packs");
    await page.getByText("JO set, SA saw.").waitFor();
    await accessible("signed");
    await page.getByRole("button", { name: "I work alone" }).click();
    await page.getByText("JO set, not seen by a second person.").waitFor();
    assert.deepEqual(complaints, []);
  });
});
