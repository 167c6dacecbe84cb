// The guided job as a person does it: whatever the blue button proposes, by the words and fields on
// the screen. The values are invented; which answers a gate takes is read from the procedure's file.
import { strict as assert } from "node:assert";
import { readFileSync } from "node:fs";
import { act } from "./flow.mjs";

const file = new URL("../../public/procedures/layout-b-r1.jsonl", import.meta.url);
export const STEPS = readFileSync(file, "utf8").trim().split("\n").map((line) => JSON.parse(line));

/** The records of a step: kind, label, unit or options, how many. */
export function records(id) {
  const step = STEPS.find((it) => it.id === id);
  return step.rec.map((text) => {
    const [, kind, rest] = /^(\w+):(.*)$/.exec(text);
    const [label, unit, , repeats] = rest.split("|");
    return { kind, label, unit, repeats, options: kind === "choice" ? unit.split("/") : [] };
  });
}

/** A picture made in the page, as a camera hands it over. */
export async function jpeg(page, width = 1200, height = 900) {
  const bytes = await page.evaluate(async ([width, height]) => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [width, height];
    const pen = canvas.getContext("2d");
    for (let at = 0; at < 40; at += 1) {
      pen.fillStyle = `hsl(${at * 9} 60% 50%)`;
      pen.fillRect(at * width / 40, 0, width / 40, height);
    }
    const blob = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.8));
    return [...new Uint8Array(await blob.arrayBuffer())];
  }, [width, height]);
  return { name: "photo.jpg", mimeType: "image/jpeg", buffer: Buffer.from(bytes) };
}

export const words = async (page) => (await act(page).innerText()).trim();
export const stepOf = (page) => /\/step\/([^/]+)$/.exec(page.url())?.[1];
const block = (page, at) => page.locator(`#rec-${at}`);

/** Waits until the blue button says something else. */
export async function changed(page, before) {
  await page.waitForFunction((before) => {
    const button = document.querySelector(".dock .btn--main");
    return button && !button.hasAttribute("aria-busy") && button.innerText.trim() !== before;
  }, before);
}

const VALUES = { mm: "0.50", ml: "600", kPa: "70", degC: "21", "N·m": "30", N: "5", deg: "90", pcs: "2", percent: "60", min: "20", h: "120", turns: "2" };

/** Captures the record that the blue button names, as a careful person would. */
export async function capture(page, id, { answers = {}, picture } = {}) {
  const said = await words(page);
  const all = records(id);
  const named = all.filter((record) => said.endsWith(record.label) || said === `Look: ${record.label} thicker`);
  const record = named.sort((one, other) => other.label.length - one.label.length)[0];
  assert.ok(record, `${id}: the button says “${said}”`);
  const at = all.indexOf(record);
  const given = answers[`${id}:${record.label}`];
  const here = block(page, at);
  if (said.startsWith("Photo: ")) {
    const chosen = page.waitForEvent("filechooser");
    await act(page).click();
    await (await chosen).setFiles(picture);
  } else if (said.startsWith("Now: ")) {
    await act(page).click();
  } else if (said.startsWith("Start: ")) {
    await here.getByRole("button", { name: /^Start \d+ min$/ }).first().click();
  } else if (said.startsWith("Look: ")) {
    await here.getByRole("button", { name: /^Yes/ }).click();
  } else if (said.startsWith("Choose: ")) {
    const word = given ?? record.options.find((option) => !option.startsWith("!"));
    const answer = { name: word.replace("!", ""), exact: true };
    const groups = here.getByRole("radiogroup");
    for (let group = 0; group < await groups.count(); group += 1) {
      await groups.nth(group).locator("label").filter({ has: page.getByRole("radio", answer) }).click();
    }
    const chip = here.getByRole("group").getByRole("button", answer);
    if (await chip.count() > 0) await chip.click();
    if (record.repeats === "each") await act(page).click();
  } else if (said.startsWith("Write: ") || said.startsWith("Say how: ")) {
    await here.locator("input[type=text]").first().fill(given ?? "as it lay, aft");
    await keep(page);
  } else {
    const fields = here.locator(".slots input");
    const value = given ?? VALUES[record.unit] ?? "1";
    const several = await fields.count();
    const many = record.repeats === "each" || record.kind === "pack" ? Math.min(several, 2) : several;
    if (several === 0) await here.locator(`#rec-${at}-0`).fill(value);
    for (let field = 0; field < many; field += 1) await fields.nth(field).fill(value);
    await keep(page);
  }
  await changed(page, said);
}

/** Presses the blue button, which keeps what is typed. */
async function keep(page) {
  await act(page).filter({ hasText: /^Keep / }).click();
}

/** Does the step on the screen as the blue button proposes it, up to the proposal `until`. */
export async function doStep(page, options = {}) {
  const id = stepOf(page);
  for (let tries = 0; tries < 60; tries += 1) {
    const said = await words(page);
    if (options.until?.test(said)) return said;
    // A step whose readings were taken again stands as it was.
    if (said === "Close this step" || said.startsWith("Next: ")) {
      await act(page).click();
      await page.waitForFunction((id) => !location.pathname.endsWith(`/step/${id}`), id);
      return said;
    }
    if (said === "Judge the gate") {
      await page.locator("#gate-by").fill("JK");
      await page.getByRole("button", { name: "Yes, it holds" }).click();
      await changed(page, said);
    } else if (said.startsWith("Read ")) {
      await readCheck(page, options.readings);
    } else if (said === "Ask for consent") {
      await consent(page);
      await toStep(page, id);
    } else if (said === "Freeze the packs") {
      await act(page).click();
      await page.locator("#seen-by").fill("SA");
      await page.locator("#set-by").fill("JK");
      await act(page).filter({ hasText: /freeze packs$/ }).click();
      await page.waitForFunction(() => !location.pathname.endsWith("/freeze") || document.querySelector(".gate--open"));
      await toStep(page, id);
    } else {
      assert.ok(!said.startsWith("Gate shut"), `${id}: ${await page.locator("#gate").innerText()}`);
      await capture(page, id, options);
    }
  }
  throw new Error(`${id} does not end: ${await words(page)}`);
}

/** Fills the consent in and keeps it, signed by initials; a price only where one is asked for. */
export async function consent(page, { by = "the owner", price = "1 420 invented", limit = "1 500 invented" } = {}) {
  await act(page).click();
  await page.waitForURL(/\/consent$/);
  await page.locator("#work").waitFor();
  for (const tick of await page.locator("#work input[type=checkbox]").all()) await tick.check();
  await page.locator("#price").fill(price);
  await page.locator("#limit").fill(limit);
  await page.locator("#by").fill(by);
  await page.locator("#initials").fill("OW");
  await act(page).filter({ hasText: "Keep consent" }).click();
  await page.getByRole("heading", { level: 1, name: "Consent stands" }).waitFor();
}

/** On the set-up's own pad, and back. */
async function readCheck(page, readings = {}) {
  const id = stepOf(page);
  await act(page).click();
  await page.waitForURL(/\/read\//);
  const check = /read\/([^/]+)$/.exec(page.url())[1];
  const fields = page.locator(".slots input");
  await fields.first().waitFor();
  for (let field = 0; field < await fields.count(); field += 1) await fields.nth(field).fill(readings[check] ?? "0.30");
  await act(page).filter({ hasText: /^(Keep|Near|Disagrees)/ }).click();
  await page.waitForFunction((check) => !location.pathname.endsWith(`/read/${check}`) || document.querySelector(".slots input")?.value === "", check);
  await toStep(page, id);
}

/** To a step, by its address, within the app. */
export async function toStep(page, id) {
  await page.evaluate((id) => {
    const link = document.createElement("a");
    link.href = `${/^\/job\/[^/]+/.exec(location.pathname)[0]}/step/${id}`;
    document.body.append(link);
    link.click();
    link.remove();
  }, id);
  await page.waitForURL(new RegExp(`/step/${id}$`));
  await page.locator("h1").first().waitFor({ timeout: 8000 });
}

/** Works on, step by step, until the step `id` is on the screen. */
export async function workTo(page, id, options = {}) {
  for (let steps = 0; steps < 90 && stepOf(page) !== id; steps += 1) {
    await doStep(page, options);
    if (!stepOf(page)) {
      await act(page).click();
      await page.waitForURL(/\/step\//);
    }
  }
  assert.equal(stepOf(page), id);
}
