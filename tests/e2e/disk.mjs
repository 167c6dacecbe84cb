// A small disk of its own for a browser's profile: the browser's quota follows its size.
import { execFileSync } from "node:child_process";
import { temporaryFolder } from "./site.mjs";

/** A disk of so many megabytes; null where none may be mounted, as without the rights of root. */
export function smallDisk(megabytes) {
  const folder = temporaryFolder();
  try {
    execFileSync("mount", ["-t", "tmpfs", "-o", `size=${megabytes}M`, "tmpfs", folder], { stdio: "ignore" });
  } catch {
    return null;
  }
  return { folder, remove: () => execFileSync("umount", ["-l", folder]) };
}
