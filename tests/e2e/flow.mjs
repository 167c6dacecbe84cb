// The acts of the main job as a person does them, by the words and fields on the screen.
// The unit, the readings and the shims are invented.
import { strict as assert } from "node:assert";

/** The unit sheet: field id, what is typed. Lash bands hold at a 22 mm radius on the driveshaft. */
export const SHEET = [
  ["depth-low", "0.62"], ["depth-high", "0.68"],
  ["forward-low", "0.20"], ["forward-high", "0.35"], ["forward-radius", "22"],
  ["reverse-low", "0.30"], ["reverse-high", "0.55"], ["reverse-radius", "22"],
  ["pinion-teeth", "14"], ["forward-teeth", "21"], ["reverse-teeth", "21"], ["pinion-radius", "24"],
  ["pressure-angle", "20"], ["spiral-angle", "35"], ["arm-radius", "30"],
];
/** Choices: the group on the sheet, the answer. */
export const CHOICES = [
  ["depth-side", "Mesh side"], ["forward-shaft", "Driveshaft"], ["reverse-shaft", "Driveshaft"], ["arm-shaft", "Driveshaft"],
  ["place-B1", "B1"], ["place-B3", "B3"], ["place-B4", "None"],
];
/** Twelve shims: family, the two places as measured; the closed micrometer reads 0.002. */
export const SHIMS = [
  ["B1", "0.152", "0.154"], ["B1", "0.202", "0.202"], ["B1", "0.053", "0.053"], ["B1", "0.302", "0.302"],
  ["B2", "0.252", "0.252"], ["B2", "0.303", "0.301"], ["B2", "0.203", "0.203"], ["B2", "0.102", "0.102"],
  ["B3", "0.152", "0.152"], ["B3", "0.252", "0.252"], ["B3", "0.102", "0.104"], ["B3", "0.052", "0.052"],
];
export const FOUND = { B1: "0.50 + 0.10", B2: "0.40 + 0.15", B3: "0.30 + 0.20" };

/** The app is up and the worker answers from now on. */
export async function ready(page) {
  await page.waitForFunction(() => "ready" in document.documentElement.dataset);
}
export const controlled = (page) => page.waitForFunction(() => navigator.serviceWorker.controller !== null);

/** The dock's one next act. */
export const act = (page) => page.locator(".dock .btn--main");
export async function press(page, words) {
  const button = act(page).filter({ hasText: words });
  await button.waitFor();
  await button.click();
}
export async function jump(page, place) {
  await page.getByText("Jump", { exact: true }).click();
  await page.locator(".jump__menu").getByRole("link", { name: place }).click();
}

/** Types into a field and leaves it by Enter, as a gauge does. */
export async function type(page, id, text) {
  await page.locator(`#${id}`).fill(text);
  await page.locator(`#${id}`).press("Enter");
}

export async function startSheet(page, name) {
  await page.locator("#unit").fill(name);
  await page.getByRole("button", { name: "Start this sheet" }).click();
  await page.locator("#depth-low").waitFor();
}

export async function choose(page, group, answer) {
  await page.locator(`#${group} label`).filter({ hasText: new RegExp(`^${answer}`) }).first().click();
}

export async function fillSheet(page) {
  for (const [id, text] of SHEET) await type(page, id, text);
  for (const [group, answer] of CHOICES) await choose(page, group, answer);
  for (const slot of ["B1", "B2", "B3"]) await page.locator(`#way-${slot} label`).first().click();
}

export async function fillTin(page, shims = SHIMS) {
  await type(page, "zero", "0.002");
  for (const [at, [family, one, other]] of shims.entries()) {
    await page.locator(".families label").filter({ hasText: new RegExp(`^${family}`) }).click();
    await type(page, "place-1", one);
    await type(page, "place-2", other);
    await press(page, /in the tin$/);
    await page.locator(".plate").getByText(at === 0 ? "1 shim" : `${at + 1} shims`, { exact: true }).waitFor();
  }
}

/** Names the boat of a new job and opens it: its id. */
export async function beginJob(page, boat) {
  await page.locator("#boat").fill(boat);
  await press(page, /^Open job/);
  await page.waitForURL(/\/job\/[^/]+$/);
  return /job\/([^/]+)$/.exec(page.url())[1];
}

export async function openJob(page, boat) {
  await beginJob(page, boat);
  await jump(page, "Set-up");
  await page.waitForURL(/\/job\/[^/]+\/setup$/);
}

export async function writeFound(page, packs = FOUND) {
  for (const [slot, text] of Object.entries(packs)) await page.locator(`#found-${slot}`).fill(text);
  await press(page, /^Write down/);
  // They are kept once the app says so; a page left before that leaves them unsaved.
  await page.getByRole("status").getByText(/ found/).waitFor();
}

/** Types a series, each value with Enter, then keeps it. */
export async function read(page, values, keep) {
  for (const [at, value] of values.entries()) {
    await page.locator(`#slot-${at}`).fill(value);
    if (at + 1 < values.length) await page.locator(`#slot-${at}`).press("Enter");
  }
  await press(page, keep);
}

/** From wherever keeping a series led to, the reading of a check: at once, or by the blue button. */
export async function nextReading(page, check) {
  await page.waitForURL(new RegExp(`(setup|read/${check})$`));
  if (page.url().endsWith("setup")) await press(page, /^Read/);
  await page.waitForURL(new RegExp(`read/${check}$`));
}

/** A bench with one job in it, through the screens. */
export async function enterDemo(page, url) {
  await page.goto(`${url}/new-job`);
  await ready(page);
  await controlled(page);
  await startSheet(page, "Unit 14/21");
  await fillSheet(page);
  await jump(page, "Shim tin");
  await fillTin(page, SHIMS.slice(0, 4));
  await page.goto(`${url}/new-job`);
  await ready(page);
  await openJob(page, "Grey Heron");
}

/** The numbers in a text, in order. */
export const numbers = (text) => (text.match(/\d+[.,]\d+/g) ?? []).map((word) => Number(word.replace(",", ".")));
export function near(found, expected, within, what) {
  assert.ok(Math.abs(found - expected) <= within, `${what}: found ${found}, expected ${expected} ± ${within}`);
}
