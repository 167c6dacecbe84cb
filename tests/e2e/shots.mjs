// Takes the pictures of the screens for the manifest and the README, filled with the practice job,
// whose unit, shims and readings are invented. Run by `cargo xtask shots`; the pictures are committed.
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { openBrowser, startSite } from "./site.mjs";
import { act, press, read, ready } from "./flow.mjs";

const folder = fileURLToPath(new URL("../../public/screenshots/", import.meta.url));
// Half again as many pixels for the phone: sharp in the README, and still few bytes.
const frames = [
  { name: "narrow", shown: ["set-up", "reading", "record"], viewport: { width: 360, height: 740 }, deviceScaleFactor: 1.5 },
  { name: "wide", shown: ["set-up", "bench"], viewport: { width: 1280, height: 800 }, deviceScaleFactor: 1 },
];
const most = 70_000;

mkdirSync(folder, { recursive: true });
const site = await startSite();
for (const frame of frames) {
  const { viewport, deviceScaleFactor } = frame;
  const context = await openBrowser(undefined, { viewport, deviceScaleFactor, colorScheme: "light", reducedMotion: "reduce" });
  const page = context.pages()[0];
  await page.goto(site.url);
  await ready(page);
  await page.getByRole("button", { name: /^Lay out the practice job/ }).click();
  const job = await page.locator(".job").getAttribute("href");

  await page.goto(`${site.url + job}/setup`);
  await ready(page);
  await shoot(page, frame, "set-up", "#advice");
  await act(page).click();
  await page.locator("#slot-0").waitFor();
  for (const value of ["0.66", "0.66"]) await typed(page, value);
  await shoot(page, frame, "reading");
  await typed(page, "0.67");
  await press(page, /^Keep/);
  await series(page, "lash-forward", ["0.39", "0.40", "0.39", "0.39"]);
  await series(page, "lash-reverse", ["0.64", "0.65", "0.64", "0.65"]);
  await page.waitForURL(/setup$/);
  await page.goto(`${site.url + job}/record`);
  await ready(page);
  await shoot(page, frame, "record", ".tbl--checks");
  await page.goto(`${site.url}/settings`);
  await ready(page);
  await page.getByRole("link", { name: "Bench" }).click();
  await page.getByRole("heading", { name: "Carry on" }).waitFor();
  await shoot(page, frame, "bench");
  await context.close();
}
await site.stop();
process.exit();

/** Types into the open slot, as a gauge does. */
async function typed(page, value) {
  await page.keyboard.type(value);
  await page.keyboard.press("Enter");
}

/** Reads and keeps a check that comes next by itself. */
async function series(page, check, values) {
  await page.waitForURL(new RegExp(`read/${check}$`));
  await read(page, values, /^Keep/);
}

/** Writes the screen as WebP: as it stands, on the phone from a part of it on. */
async function shoot(page, frame, screen, from) {
  if (!frame.shown.includes(screen)) return;
  const name = `${screen}-${frame.name}`;
  if (from && frame.name === "narrow") {
    await page.locator(from).evaluate((part) => window.scrollTo(0, part.getBoundingClientRect().top - document.querySelector(".plate").offsetHeight - 8));
  }
  const png = await page.screenshot();
  const webp = Buffer.from(await page.evaluate(pack, png.toString("base64")), "base64");
  if (webp.length > most) throw new Error(`${name}.webp has ${webp.length} bytes, more than ${most}`);
  writeFileSync(`${folder}${name}.webp`, webp);
  console.log(`${name}.webp: ${webp.length} bytes`);
}

/** In the page: PNG to WebP, which the browser can write and this script cannot. */
async function pack(base64) {
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  const picture = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
  const canvas = new OffscreenCanvas(picture.width, picture.height);
  canvas.getContext("2d").drawImage(picture, 0, 0);
  const blob = await canvas.convertToBlob({ type: "image/webp", quality: 0.75 });
  return btoa(Array.from(new Uint8Array(await blob.arrayBuffer()), (byte) => String.fromCharCode(byte)).join(""));
}
