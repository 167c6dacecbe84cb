// How long advice takes in a browser: the engine alone as a WebAssembly module, built and shrunk
// as the app is, on the random layouts of `crates/gearing/examples/speed`.
//
// `cargo xtask ci` builds the module and names it in SPEED_WASM. The clock runs in the page, on a
// slowed processor, around one question each; every case is asked once, as a person does.
import { readFileSync } from "node:fs";

const NAMES = [
  "a family each, steps of 0.01 mm", "a family each, steps of 0.001 mm", "a family each, steps of 0.0005 mm",
  "two positions share a family, steps of 0.01 mm", "two positions share a family, steps of 0.001 mm",
];

/** Times of every case in the order asked, ms, by kind: [{ name, times }]. */
export async function adviceTimes(page) {
  const bytes = readFileSync(process.env.SPEED_WASM).toString("base64");
  const found = await page.evaluate(async (bytes) => {
    const module = await WebAssembly.instantiate(Uint8Array.from(atob(bytes), (letter) => letter.charCodeAt(0)));
    const { kinds, cases, prepare, advise } = module.instance.exports;
    const found = [];
    for (let kind = 0; kind < kinds(); kind += 1) {
      const times = [];
      for (let seed = 0; seed < cases(); seed += 1) {
        prepare(kind, seed);
        const start = performance.now();
        advise();
        times.push(performance.now() - start);
      }
      found.push(times);
    }
    return found;
  }, bytes);
  return found.map((times, kind) => ({ name: NAMES[kind], times }));
}
