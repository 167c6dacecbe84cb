// A bench with many jobs: how soon it opens with no signal on a slow device, and what saving costs.
//
// Short: 100 jobs of 300 entries. With SOAK (`cargo xtask soak`): 1,000 jobs, held to
// the figures: open within 1.0 s at a quarter of the speed, saving at most 1.2 times as long as
// with 10 jobs. The figures are printed; the short form holds only what cannot depend on the load.
import { strict as assert } from "node:assert";
import { describe, test } from "node:test";
import { controlled, ready } from "./flow.mjs";
import { devices, until, writing } from "./keep.mjs";

const LONG = Boolean(process.env.SOAK);
const JOBS = LONG ? 1000 : 100;
const SAVES = 40;
const { site, device } = devices();

/** A device with the practice job; `more` further jobs are laid beside it as their lines. */
async function filled(more) {
  const { context, page } = await device();
  await page.goto(site.url);
  await ready(page);
  await page.getByRole("button", { name: /practice job/i }).first().click();
  await page.locator(".job").first().waitFor();
  await controlled(page);
  await page.evaluate(fill, more);
  return { context, page };
}

/** In the page: jobs of 300 entries over twenty unit sheets; what is known of the books is left out. */
async function fill(more) {
  const base = await new Promise((resolve, reject) => {
    const request = indexedDB.open("shimwright");
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const ended = (transaction) => new Promise((resolve, reject) => {
    transaction.oncomplete = resolve;
    transaction.onabort = () => reject(transaction.error);
  });
  const read = base.transaction("entries").objectStore("entries").getAll();
  await new Promise((resolve) => { read.onsuccess = resolve; });
  const lines = read.result.map((line) => JSON.parse(line));
  const of = (kind) => lines.filter(({ book }) => book.startsWith(kind));
  const [sheet, job] = [of("sheet:"), of("job:")];
  const [, ...acts] = job;
  const DAY = 86_400_000;
  let transaction;
  const add = (entry) => transaction.objectStore("entries").add(JSON.stringify(entry), [entry.book, entry.n, entry.device]);
  for (let number = 0; number < more; number += 1) {
    if (number % 20 === 0) {
      if (transaction) await ended(transaction);
      transaction = base.transaction(["entries", "summaries"], "readwrite", { durability: "relaxed" });
      transaction.objectStore("summaries").clear();
    }
    const [book, own] = [`job:many-${number}`, `many-${number % 20}`];
    if (number < 20) sheet.forEach((entry) => add({ ...entry, book: `sheet:${own}`, id: `s${number}.${entry.n}` }));
    for (let place = 0; place < 300; place += 1) {
      const fact = place === 0
        ? { "job-opened": { ...job[0].fact["job-opened"], sheet: own, number: number + 2, boat: `Boat ${number}, invented` } }
        : place % 2 ? acts[place % acts.length].fact : { "note-written": { text: `Invented note ${place} of job ${number}.` } };
      const at = lines[0].at - (more - number) * DAY + place * 60_000;
      add({ v: 1, book, id: `m${number}x${place}.0`, n: place + 1, device: lines[0].device, at, fact });
    }
  }
  if (transaction) await ended(transaction);
  base.close();
}

/** Milliseconds from asking for the bench to its first card, with no signal. */
async function opens(context, slow) {
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: slow });
  await page.addInitScript(() => {
    new MutationObserver((_, observer) => {
      if (!document.querySelector(".job")) return;
      observer.disconnect();
      requestAnimationFrame(() => { window.cardAt = performance.now(); });
    }).observe(document, { childList: true, subtree: true });
  });
  await page.goto(site.url);
  await page.waitForFunction(() => window.cardAt, null, { timeout: 120_000 });
  const at = await page.evaluate(() => window.cardAt);
  const jobs = await page.locator(".job").count();
  await page.close();
  return { at, jobs };
}

/** The median of what each of some saves took in the page. */
async function saving(context) {
  const page = await context.newPage();
  const times = [];
  page.on("console", (message) => { if (message.text().startsWith("acknowledged")) times.push(performance.now()); });
  const told = await writing(page, site.url, { job: "many-1", count: SAVES });
  await until(() => told.ended, 120_000);
  await page.close();
  assert.deepEqual(told.refused, []);
  return median(times.slice(1).map((time, at) => time - times[at]));
}

const median = (numbers) => [...numbers].sort((a, b) => a - b)[numbers.length >> 1];
const ms = (number) => `${number.toFixed(0)} ms`;

describe("many jobs", () => {
  test(`${JOBS} jobs of 300 entries`, { timeout: 1_200_000 }, async (t) => {
    const [few, many] = [await filled(9), await filled(JOBS - 1)];
    const first = [await opens(few.context, 1), await opens(many.context, 1)];
    await Promise.all([few, many].map(({ context }) => context.setOffline(true)));
    const [atTen, atAll] = [[], []];
    for (let round = 0; round < 5; round += 1) {
      atTen.push((await opens(few.context, 4)).at);
      atAll.push((await opens(many.context, 4)).at);
    }
    const saves = [[], []];
    for (let round = 0; round < 3; round += 1) {
      saves[0].push(await saving(few.context));
      saves[1].push(await saving(many.context));
    }
    const ratio = median(saves[1]) / median(saves[0]);
    t.diagnostic(`summed up at first: ${ms(first[0].at)} with 10 jobs, ${ms(first[1].at)} with ${JOBS}`);
    t.diagnostic(`opens offline at CPU x4: ${ms(median(atTen))} with 10 jobs, ${ms(median(atAll))} with ${JOBS} (${atAll.map(ms).join(", ")})`);
    t.diagnostic(`saving an entry: ${median(saves[0]).toFixed(2)} ms with 10 jobs, ${median(saves[1]).toFixed(2)} ms with ${JOBS}: ratio ${ratio.toFixed(2)}`);
    assert.equal(first[1].jobs, 8);
    if (LONG) assert.ok(median(atAll) <= 1000 && ratio <= 1.2);
    const { page } = many;
    await page.goto(site.url);
    await page.getByRole("button", { name: /^Show 12 of [0-9]+ older jobs$/ }).click();
    await until(async () => (await page.locator(".job").count()) === 20);
    await page.goto(`${site.url}/job/many-0/setup`);
    await page.getByText("Boat 0, invented").first().waitFor();
  });
});
