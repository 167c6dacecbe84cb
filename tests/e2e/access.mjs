// Accessibility scan shared by the browser tests: axe-core with WCAG 2.2 AA and enhanced contrast.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Violations on the page as it stands, each as one line: rule, places, what was found. */
export async function violations(page) {
  await page.evaluate(axe);
  const result = await page.evaluate(() =>
    window.axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      rules: { "color-contrast-enhanced": { enabled: true } },
    }),
  );
  return result.violations.map(
    (found) =>
      `${found.id}: ${found.nodes.map((node) => `${node.target.join(" ")} (${node.failureSummary?.split("\n")[1]?.trim() ?? ""})`).join("; ")}`,
  );
}

/** Puts the page into a theme; undefined gives it back to the device. */
const setTheme = (page, theme) => page.evaluate((name) => {
  if (name === undefined) delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = name;
}, theme);

/** Runs the scan in both themes and leaves the page in the one it had. */
export async function violationsInBothThemes(page) {
  const found = [];
  const before = await page.evaluate(() => document.documentElement.dataset.theme);
  for (const theme of ["sun", "shed"]) {
    await setTheme(page, theme);
    // Colours move for 140 ms; reading them half way would find contrasts nobody sees.
    await page.evaluate(() => Promise.all(document.getAnimations().map((animation) => animation.finished)));
    found.push(...(await violations(page)).map((line) => `${theme}: ${line}`));
  }
  await setTheme(page, before);
  return found;
}

/** Holds a phone's screen to the scan over its whole length, and to no sideways scroll at any of the widths. */
export async function accessible(page, what, widths = [360]) {
  // High enough that the bars that stay put lie over nothing while it is scanned.
  await page.setViewportSize({ width: 360, height: 6000 });
  const found = await violationsInBothThemes(page);
  await page.setViewportSize({ width: 360, height: 740 });
  assert.deepEqual(found, [], what);
  for (const width of widths) {
    await page.setViewportSize({ width, height: 740 });
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), true, what);
  }
  await page.setViewportSize({ width: 360, height: 740 });
}
