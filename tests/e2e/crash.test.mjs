// A real bench whose app cannot start: the crash card takes everything off the device all the same.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { enterDemo, press } from "./flow.mjs";
import { choose, downloaded, open, stored, until, writing } from "./keep.mjs";
import { openBrowser, startSite } from "./site.mjs";

/** In the page, before the app: the browser refuses the app's code, as a policy or a damaged file makes it. */
function refuseCode() {
  const refused = () => Promise.reject(new WebAssembly.CompileError("The test refuses it."));
  Object.assign(WebAssembly, { compile: refused, compileStreaming: refused, instantiate: refused, instantiateStreaming: refused });
}

describe("an app whose code the browser refuses", () => {
  let site, one, two, was;
  before(async () => {
    site = await startSite();
    [one, two] = [await openBrowser(), await openBrowser()];
    const [page] = one.pages();
    await enterDemo(page, site.url);
    const told = await writing(page, site.url, { job: "photos", count: 3, bytes: 20_000 });
    await until(() => told.ended);
    was = await stored(page);
    await one.addInitScript(refuseCode);
  });
  after(async () => { await one?.close(); await two?.close(); await site?.stop(); });

  async function exported(page) {
    await page.goto(site.url);
    await page.getByRole("heading", { name: "The app could not start" }).waitFor();
    const { text } = await downloaded(page, () => page.getByRole("button", { name: "Export everything" }).click());
    return text;
  }

  test("exports every entry and photo, and another device brings them in", async () => {
    const text = await exported(one.pages()[0]);
    const [page] = two.pages();
    await open(page, `${site.url}/bring-in`);
    await choose(page, text);
    assert.equal(await page.getByText("The file was cut off.").count(), 0);
    await press(page, /^Keep/);
    await page.getByRole("heading", { name: "Brought in" }).waitFor();
    const there = await stored(page);
    assert.deepEqual(there.ids.toSorted(), was.ids.toSorted());
    assert.deepEqual(there.photos.toSorted(), was.photos.toSorted());
    assert.deepEqual(there.sizes.toSorted(), was.sizes.toSorted());
    assert.equal(was.photos.length, 3);
  });

  test("with the store dropped as well it exports the second copy", async () => {
    const [page] = one.pages();
    const session = await one.newCDPSession(page);
    await session.send("Storage.clearDataForOrigin", { origin: site.url, storageTypes: "indexeddb" });
    const text = await exported(page);
    const [head, ...rest] = text.trimEnd().split("\n").map((line) => JSON.parse(line));
    assert.equal(head.entries, was.ids.length);
    assert.deepEqual(rest.slice(0, -1).map(({ id }) => id).toSorted(), was.ids.toSorted());
  });
});
