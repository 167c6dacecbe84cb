// Starts and stops the finished app's own server for a test.
//
// `cargo xtask test` sets SHIMWRIGHT_XTASK (the program that serves) and CHROMIUM (the browser);
// by hand, `cargo xtask build` first and both are found where they usually are.
import { spawn } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const root = fileURLToPath(new URL("../../", import.meta.url));
const dist = join(root, "dist");
const running = new Set();
const folders = [];
process.on("exit", () => {
  running.forEach((child) => child.kill());
  folders.forEach((folder) => rmSync(folder, { recursive: true, force: true }));
});

/** A folder that is gone after the test. */
export function temporaryFolder() {
  const folder = mkdtempSync(join(tmpdir(), "shimwright-"));
  folders.push(folder);
  return folder;
}

/** Serves `dist/`, or a copy of it, on a free port or again on `port`. Answers { url, port, stop() }. */
export async function startSite({ port = 0, from = dist } = {}) {
  const program = process.env.SHIMWRIGHT_XTASK ?? join(root, "target/debug/xtask");
  const child = spawn(program, ["serve", "--built", "--from", from, "--port", String(port)], { cwd: root, stdio: ["ignore", "pipe", "inherit"] });
  running.add(child);
  const ended = new Promise((resolve) => child.once("exit", () => { running.delete(child); resolve(); }));
  const url = await new Promise((resolve, reject) => {
    let said = "";
    child.stdout.on("data", (piece) => {
      said += piece;
      const found = /listening on (http:\/\/\S+)/.exec(said);
      if (found) resolve(found[1]);
    });
    ended.then(() => reject(new Error("the server stopped before it was ready")));
  });
  return { url, port: Number(new URL(url).port), stop: () => { child.kill(); return ended; } };
}

/** A copy of `dist/` that a test may change. */
export function copyOfDist() {
  const folder = temporaryFolder();
  cpSync(dist, folder, { recursive: true });
  return folder;
}

/** Presses what saves a file, and keeps the file; answers its path. */
export async function saveTo(page, button, path) {
  const [download] = await Promise.all([page.waitForEvent("download"), button.click()]);
  await download.saveAs(path);
  return path;
}

/** A browser with a profile on disk, as a person has it; storage outlives `close()` for the same folder. */
export function openBrowser(folder = temporaryFolder(), options = {}) {
  return chromium.launchPersistentContext(folder, {
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    headless: true,
    args: ["--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
    viewport: { width: 360, height: 740 },
    ...options,
  });
}
