// Accessibility scan shared by the browser tests: axe-core with WCAG 2.2 AA and enhanced contrast.
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
