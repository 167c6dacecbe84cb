// A log whose last record is half written, as a kill, a flat battery or a full disk leaves it.
//
// Measured with Chromium 156, without the app: the next start reads everything and goes on in the
// same log; the start after that finds "checksum mismatch" and drops every database of the site. It
// is LevelDB's log, github.com/google/leveldb, doc/log_format.md: a record is checked by the length
// and checksum that stand before it. The app has a new log begun before it writes.
import assert from "node:assert/strict";
import { existsSync, readdirSync, statSync, truncateSync } from "node:fs";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { devices, entryIds, killTree, lives, open, unlock, until, writing } from "./keep.mjs";
import { temporaryFolder } from "./site.mjs";

const { site, device } = devices();

/** Ends a browser as a flat battery does. */
async function end(page, profile) {
  const killed = killTree(profile);
  await page.context().close().catch(() => {});
  await until(() => !killed.some(lives));
  unlock(profile);
}

async function write(page, job, count) {
  const told = await writing(page, site.url, { job, count });
  await until(() => told.ended);
  assert.deepEqual(told.refused, []);
  return told.acknowledged.map(([entry]) => entry);
}

/**
 * A visit that presses nothing and ends as a flat battery does, once its new log stands: what was
 * there. Ended before that, twice in a row, it could still cost the site.
 */
async function look(profile) {
  const page = (await device(profile)).page;
  const old = log(profile);
  await open(page, site.url);
  const ids = await entryIds(page);
  await until(() => !existsSync(old));
  await until(() => page.evaluate(async () => !(await indexedDB.databases()).some(({ name }) => name === "shimwright-fresh")));
  await end(page, profile);
  return ids;
}

/** The log that is written in. */
function log(profile) {
  const base = join(profile, "Default/IndexedDB");
  const folder = readdirSync(base).find((name) => name.endsWith(".leveldb"));
  const logs = readdirSync(join(base, folder)).filter((name) => name.endsWith(".log"));
  return join(base, folder, logs.sort().at(-1));
}

/** Takes the last bytes of the last record away. */
const tear = (path) => truncateSync(path, statSync(path).size - 10);

describe("a log torn in its last record", () => {
  test("costs that record at most, also after the next starts", { timeout: 120_000 }, async () => {
    const profile = temporaryFolder();
    let page = (await device(profile)).page;
    const acknowledged = await write(page, "torn", 20);
    await end(page, profile);
    tear(log(profile));
    page = (await device(profile)).page;
    // A page of the same origin without the app: what is there before it writes.
    await page.goto(`${site.url}/licences.txt`);
    const before = await entryIds(page);
    assert.ok(before.length >= acknowledged.length, "the opening, and all but the torn one");
    const more = await write(page, "torn", 5);
    await end(page, profile);
    page = (await device(profile)).page;
    await open(page, `${site.url}/settings`);
    assert.equal(await page.getByText("The browser found the store broken").count(), 0);
    const ids = await entryIds(page);
    assert.deepEqual([...before, ...more].filter((id) => !ids.includes(id)), []);
    await page.context().close();
  });

  test("is let go of by a visit that only looks", { timeout: 120_000 }, async () => {
    const profile = temporaryFolder();
    const page = (await device(profile)).page;
    const acknowledged = await write(page, "torn", 20);
    await end(page, profile);
    tear(log(profile));
    for (let visit = 0; visit < 3; visit += 1) {
      const ids = await look(profile);
      assert.ok(acknowledged.filter((id) => !ids.includes(id)).length <= 1);
    }
  });
});
