// What was acknowledged stays: killed browsers, two tabs, full stores.
//
// Short: 10 kills, 5 steps, one small disk. With SOAK (`cargo xtask soak`): 100 kills, 20 steps, 20
// disks whose size the browser's quota follows, where one may be mounted.
import assert from "node:assert/strict";
import { cpSync } from "node:fs";
import { join } from "node:path";
import { describe, test } from "node:test";
import { smallDisk } from "./disk.mjs";
import { devices, entryIds, faults, killTree, lives, open, refuseAt, stored, unlock, until, writing } from "./keep.mjs";
import { temporaryFolder } from "./site.mjs";

const LONG = Boolean(process.env.SOAK);
const KILLS = LONG ? 100 : 10;
const STEPS = LONG ? 20 : 5;
const DISKS = LONG ? 20 : 1;
const { site, device } = devices();

describe("killed in the middle", () => {
  test(`${KILLS} kills lose nothing that was acknowledged`, { timeout: KILLS * 30_000 }, async (t) => {
    const profile = temporaryFolder();
    const acknowledged = [];
    for (let kill = 0; kill <= KILLS; kill += 1) {
      const { context, page } = await device(profile);
      // A page of the same origin without the app: the store as the killed browser left it.
      await page.goto(`${site.url}/licences.txt`);
      const ids = new Set(await entryIds(page));
      const missing = acknowledged.filter(([entry]) => !ids.has(entry)).length;
      if (missing) {
        const kept = join(temporaryFolder(), "..", `shimwright-lost-at-kill-${kill}`);
        cpSync(profile, kept, { recursive: true });
        assert.fail(`${missing} of ${acknowledged.length} lost at kill ${kill}; ${ids.size} are there; the profile is kept in ${kept}`);
      }
      if (kill === KILLS) {
        await open(page, `${site.url}/settings`);
        const { lost, torn } = faults(acknowledged, await stored(page));
        t.diagnostic(`${KILLS} kills, ${acknowledged.length} acknowledged, ${ids.size} in the store: ${lost} lost, ${torn} torn`);
        assert.deepEqual({ lost, torn }, { lost: 0, torn: 0 });
        await context.close();
        break;
      }
      const told = await writing(page, site.url, { job: "kill", count: 100_000, bytes: kill % 2 ? 200_000 : 20_000 });
      await until(() => told.acknowledged.length > 0 || told.refused.length > 0);
      await new Promise((go) => setTimeout(go, Math.random() * 800));
      const killed = killTree(profile);
      assert.ok(killed.length > 3, "the browser and what it started");
      assert.deepEqual(told.refused, []);
      acknowledged.push(...told.acknowledged);
      await context.close().catch(() => {});
      // A browser that is still dying must not meet the next one in the same folder.
      await until(() => !killed.some(lives));
      unlock(profile);
    }
  });
});

describe("two tabs at once", () => {
  test("500 entries each: 1,000 kept, the same order in both", { timeout: 240_000 }, async (t) => {
    const { context, page } = await device();
    const other = await context.newPage();
    const told = await Promise.all([page, other].map((tab) => writing(tab, site.url, { job: "both", count: 500 })));
    await until(() => told.every(({ ended }) => ended), 200_000);
    assert.deepEqual(told.map(({ refused }) => refused), [[], []]);
    const order = (tab) => tab.locator("#order").evaluate((node) => node.textContent.trim().split("\n"));
    await until(async () => (await order(page)).length === 1001 && (await order(other)).length === 1001);
    const [here, there] = [await order(page), await order(other)];
    const { ids } = await stored(page);
    t.diagnostic(`${told.map(({ acknowledged }) => acknowledged.length).join(" + ")} acknowledged, ${ids.length} in the store with the opening`);
    assert.deepEqual(here, there);
    assert.deepEqual(here, ids);
    assert.equal(new Set(ids).size, 1001);
    await context.close();
  });
});

/** Writes until the store refuses, and asks that the screen says so in the same words. */
async function untilRefused(tab, told) {
  await until(() => told.ended, 120_000);
  assert.equal(told.refused.length, 1);
  assert.equal(await tab.locator("#refused").innerText(), told.refused[0]);
}

describe("a full store", () => {
  test(`refused at ${STEPS} steps: nothing acknowledged is lost and every failure is said`, { timeout: 600_000 }, async (t) => {
    const { context, page } = await device();
    await open(page, site.url);
    const acknowledged = [];
    for (let step = 1; step <= STEPS; step += 1) {
      const tab = await context.newPage();
      await tab.addInitScript(refuseAt, 1 + step * 3);
      const told = await writing(tab, site.url, { job: `full-${step}`, count: 1_000, bytes: step % 3 ? 40_000 : 0 });
      await untilRefused(tab, told);
      assert.match(told.refused[0], /^The device has no room left, so this was not saved\./);
      acknowledged.push(...told.acknowledged);
      await tab.close();
    }
    const { lost, torn } = faults(acknowledged, await stored(page));
    t.diagnostic(`${STEPS} steps, ${acknowledged.length} acknowledged, each refusal said: ${lost} lost, ${torn} torn`);
    assert.deepEqual({ lost, torn }, { lost: 0, torn: 0 });
    await context.close();
  });

  test(`the browser's own quota at ${DISKS} sizes: the same, also after the next start`, { timeout: 900_000 }, async (t) => {
    let [count, used] = [0, 0];
    for (let step = 1; step <= DISKS; step += 1) {
      const disk = smallDisk(60 + 3 * step);
      if (!disk) return t.skip("no disk may be mounted here");
      try {
        const profile = join(disk.folder, "profile");
        let { context, page } = await device(profile);
        await open(page, site.url);
        const tab = await context.newPage();
        const told = await writing(tab, site.url, { job: `quota-${step}`, count: 100_000, bytes: [40_000, 90_000, 15_000][step % 3] });
        await untilRefused(tab, told);
        assert.match(told.refused[0], /^The device has no room left, so this was not saved\./);
        used += (await page.evaluate(() => navigator.storage.estimate())).usage;
        await context.close();
        ({ context, page } = await device(profile));
        await open(page, site.url);
        assert.deepEqual(faults(told.acknowledged, await stored(page)), { lost: 0, torn: 0 });
        await context.close();
        count += told.acknowledged.length;
      } finally {
        disk.remove();
      }
    }
    t.diagnostic(`${DISKS} disks, ${count} acknowledged, ${(used / DISKS / 1e6).toFixed(0)} MB in use each, every refusal said: 0 lost, 0 torn`);
  });
});
