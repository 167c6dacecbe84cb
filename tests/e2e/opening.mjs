// How long a step of a well-filled job takes to open: tap to the step on the screen.
import { ready } from "./flow.mjs";
import { STEPS } from "./guided.mjs";

const ENTRIES = 500, PHOTOS = 40;
const VALUE = {
  meas: (unit) => ({ readings: [{ typed: "1", unit }] }),
  torque: (unit) => ({ torque: { values: [{ typed: "30", unit }], asked: null, offset: null, set: null, on: "dry" } }),
  pack: (unit) => ({ pack: [{ typed: "0.50", unit }] }),
  choice: (options) => ({ chosen: [options.split("/").find((option) => !option.startsWith("!"))] }),
  sign: () => ({ "sign-seen": {} }),
  orient: () => ({ facing: { words: "as it lay, aft", photo: null } }),
  text: () => ({ text: "invented" }),
  time: () => ({ time: 1778580000000 }),
};

/** The facts of a gear-set job, done as far as they reach, with a photo for each record that asks for one. */
function facts() {
  const all = [{ "procedure-pinned": { layout: "b", revision: 1 } }, { "scope-chosen": { scope: "gearset", reason: "" } }];
  let photos = 0;
  for (const step of STEPS.filter((step) => step.scope.includes("gearset"))) {
    for (const record of step.rec) {
      const [, kind, rest] = /^(\w+):(.*)$/.exec(record);
      const [label, unit] = rest.split("|");
      if (kind === "photo" && photos >= PHOTOS) continue;
      const value = kind === "photo" ? { photo: `photo-${(photos += 1)}` } : VALUE[kind](unit);
      all.push({ captured: { step: step.id, label, value } });
    }
    all.push({ "step-done": { step: step.id } });
  }
  // What was captured once more, as happens.
  const again = all.filter((fact) => fact.captured && !fact.captured.value.photo);
  for (let at = 0; all.length < ENTRIES; at += 1) all.push(again[at % again.length]);
  while (photos < PHOTOS) all.push({ captured: { step: "b01", label: "plate and four sides", value: { photo: `photo-${(photos += 1)}` } } });
  return all;
}

/** Fills the job that is open with entries, `more` facts behind them, and photos, as they lie in the store. */
export async function fillJob(page, more = []) {
  const job = /\/job\/([^/]+)/.exec(page.url())[1];
  await page.evaluate(async ([job, facts, photos]) => {
    const canvas = document.createElement("canvas");
    [canvas.width, canvas.height] = [1600, 1200];
    const pen = canvas.getContext("2d");
    for (let at = 0; at < 400; at += 1) {
      pen.fillStyle = `hsl(${(at * 37) % 360} 50% ${30 + (at % 40)}%)`;
      pen.fillRect((at * 97) % 1600, (at * 61) % 1200, 180, 140);
    }
    const picture = await new Promise((done) => canvas.toBlob(done, "image/jpeg", 0.82));
    const base = await new Promise((done, failed) => {
      const asked = indexedDB.open("shimwright");
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => failed(asked.error);
    });
    const device = JSON.parse(localStorage.getItem("shimwright.device"));
    const book = `job:${job}`;
    const put = base.transaction(["entries", "photos"], "readwrite");
    facts.forEach((fact, at) => {
      const n = 1000 + at;
      const entry = { v: 2, book, id: `filled-${at}.0`, n, device, at: 1778580000000 + at * 30000, fact };
      put.objectStore("entries").add(JSON.stringify(entry), [book, n, device]);
    });
    for (let photo = 1; photo <= photos; photo += 1) put.objectStore("photos").add(picture, `photo-${photo}`);
    await new Promise((done, failed) => { put.oncomplete = done; put.onerror = () => failed(put.error); });
    base.close();
  }, [job, [...facts(), ...more], PHOTOS]);
  return job;
}

/** Milliseconds from the tap on a step to its head and captures on the screen, for some steps each. */
export async function openingTimes(page, url, job) {
  await page.goto(`${url}/job/${job}`);
  await ready(page);
  await page.locator("h1").first().waitFor();
  const steps = ["b01", "b14", "b17", "b22", "b28", "b30", "b35", "b38", "b39", "b41", "b47b"];
  const times = [];
  for (const id of steps) {
    const title = STEPS.find((step) => step.id === id).t;
    times.push(await page.evaluate(([job, id, title]) => new Promise((done) => {
      const link = document.createElement("a");
      link.href = `/job/${job}/step/${id}`;
      document.body.append(link);
      const start = performance.now();
      const look = () => {
        const stands = document.querySelector("h1")?.textContent === title && document.querySelector("#rec-0");
        if (stands) requestAnimationFrame(() => done(performance.now() - start));
        else requestAnimationFrame(look);
      };
      link.click();
      link.remove();
      look();
    }), [job, id, title]));
  }
  return times;
}
