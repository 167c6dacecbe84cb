// Help on every screen, and the short guide: on the screen, on A4 and on US Letter. All data invented.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { accessible } from "./access.mjs";
import { controlled, enterDemo, ready } from "./flow.mjs";
import { pages } from "./pdf.mjs";
import { openBrowser, startSite } from "./site.mjs";

describe("help", () => {
  const complaints = [];
  let site, context, page, job, sheet;

  const open = async (path) => { await page.goto(site.url + path); await ready(page); };
  const help = () => page.getByRole("button", { name: "Help", exact: true });
  const panel = () => page.getByRole("complementary", { name: "Help" });

  before(async () => {
    site = await startSite();
    context = await openBrowser();
    page = context.pages()[0];
    page.on("console", (message) => { if (message.type() === "error") complaints.push(message.text()); });
    page.on("pageerror", (error) => complaints.push(String(error)));
  });
  after(async () => {
    await context?.close();
    await site?.stop();
  });

  test("a new device has it too, before the app has come", async () => {
    await open("/");
    await help().click();
    await panel().getByRole("heading", { name: "First opening" }).waitFor();
    await accessible(page, "help of the first opening", [320]);
    await page.keyboard.press("Escape");
    await page.getByRole("link", { name: /Read the short guide/ }).click();
    await page.getByRole("heading", { name: "Re-shimming a gearcase, in short" }).waitFor();
  });

  test("every screen has one same control, two sentences and a picture", async () => {
    await enterDemo(page, site.url);
    job = /\/job\/([^/]+)/.exec(page.url())[1];
    await page.getByText("Jump", { exact: true }).click();
    sheet = /\/sheet\/([^/]+)/.exec(await page.getByRole("link", { name: /^Unit sheet/ }).first().getAttribute("href"))[1];
    await controlled(page);
    const of = (path) => `/job/${job}${path}`;
    const paths = ["/", "/first", "/new-job", of(""), of("/step"), of("/steps"), of("/map"), of("/ladder"), of("/inspect"), of("/consent"), of("/tools"), "/tools", of("/check"), of("/check/leak"), "/check/leak", "/board", of("/freeze"), of("/setup"), of("/read/depth"), of("/influence"), of("/record"), of("/send"), `/sheet/${sheet}/send`, "/bring-in", `/sheet/${sheet}`, "/tin", "/settings", "/practice", "/guide", "/states"];
    const titles = new Set();
    for (const path of paths) {
      // The bench's own address would wake where the person stopped.
      await page.evaluate(() => localStorage.removeItem("shimwright.screen"));
      await open(path);
      await help().waitFor();
      assert.equal(await help().count(), 1, path);
      assert.equal(await help().getAttribute("aria-expanded"), "false", path);
      await help().click();
      const heading = panel().getByRole("heading");
      await heading.waitFor();
      titles.add(await heading.innerText());
      const says = await panel().getByRole("paragraph").first().innerText();
      assert.equal(says.match(/[.!](?= |$)/g).length, 2, `${path}: ${says}`);
      assert.equal(await panel().getByRole("img").count(), 1, path);
      await page.keyboard.press("Escape");
      assert.equal(await panel().count(), 0, path);
    }
    assert.equal(titles.size, 28);
  });

  test("it takes no focus from what is typed, lies over nothing, and goes by Escape to where it came", async () => {
    await open(`/job/${job}/read/depth`);
    const field = page.locator("#slot-0");
    await field.fill("0.6");
    await field.scrollIntoViewIfNeeded();
    const before = await page.evaluate(() => scrollY);
    await help().click();
    await panel().getByRole("heading", { name: "Reading" }).waitFor();
    assert.equal(await page.evaluate(() => document.activeElement.id), "slot-0");
    await page.keyboard.type("4");
    assert.equal(await field.inputValue(), "0.64");
    const [over, under] = await Promise.all([panel().boundingBox(), page.locator("main").boundingBox()]);
    assert.ok(over.y + over.height <= under.y + 1, "above the work");
    await page.keyboard.press("Escape");
    assert.equal(await panel().count(), 0);
    assert.equal(await page.evaluate(() => scrollY), before);
    assert.equal(await page.evaluate(() => document.activeElement.id), "slot-0");
    // The same by keyboard alone: what is closed from within leaves the focus on the control.
    await help().focus();
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Close help" }).focus();
    await page.keyboard.press("Enter");
    assert.equal(await page.evaluate(() => document.activeElement.id), "help-button");
    await help().click();
    await accessible(page, "help of a reading", [320]);
  });

  test("the guide is read on the screen", async () => {
    await open("/settings");
    await page.getByRole("link", { name: /Short guide/ }).click();
    await page.waitForURL(/\/guide$/);
    await accessible(page, "guide", [320, 820]);
  });

  for (const [name, width, height] of [["A4", 595, 842], ["US Letter", 612, 792]]) {
    test(`it prints on ${name}: tagged, searchable, on three pages, nothing of the screen around it`, async () => {
      await open("/guide");
      await page.locator("label").filter({ hasText: name }).click();
      const printed = await page.pdf({ preferCSSPageSize: true, tagged: true });
      const text = printed.toString("latin1");
      for (const mark of ["/Marked true", "/StructTreeRoot", "/Lang"]) assert.ok(text.includes(mark), mark);
      const found = pages(printed);
      assert.equal(found.length, 3);
      for (const sheet of found) assert.ok(Math.abs(sheet.width - width) <= 1 && Math.abs(sheet.height - height) <= 1, `${sheet.width} × ${sheet.height}`);
      const says = (at, words) => assert.ok(found[at].text.includes(words.replace(/\s+/g, "")), `page ${at + 1}: ${words}`);
      says(0, "Your unit’s own manual, the maker’s safety notes and local rules win, always.");
      says(0, "1. Before the case is opened");
      says(0, "2. Strip, bag and judge");
      says(1, "4. Measure");
      says(1, "Fit them, build dry, read again.");
      says(2, "7. Hand over");
      says(2, "Air in a case is stored force:");
      const all = found.map((sheet) => sheet.text).join("");
      for (const words of ["PrintorsavePDF", "USLetter", "Skiptothework"]) assert.ok(!all.includes(words), words);
    });
  }

  test("the browser had no complaint", () => assert.deepEqual(complaints, []));
});
