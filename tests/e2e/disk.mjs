// A small disk of its own for a browser's profile, to be filled to the last byte.
import { execFileSync } from "node:child_process";
import { mkdirSync, rmSync, statfsSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { temporaryFolder } from "./site.mjs";

/** A disk of so many megabytes; null where none may be mounted, as without the rights of root. */
export function smallDisk(megabytes) {
  const place = temporaryFolder();
  const [image, folder] = [join(place, "image"), join(place, "disk")];
  mkdirSync(folder);
  try {
    execFileSync("truncate", ["-s", `${megabytes}M`, image]);
    execFileSync("mkfs.ext4", ["-q", "-m", "0", image], { stdio: "ignore" });
    execFileSync("mount", ["-o", "loop", image, folder], { stdio: "ignore" });
  } catch {
    return null;
  }
  const filler = join(folder, "filler");
  return {
    folder,
    /** Leaves about so many bytes, or none. */
    fill(left) {
      const { bavail, bsize } = statfsSync(folder);
      try {
        writeFileSync(filler, Buffer.alloc(Math.max(0, bavail * bsize - left), 1), { flag: "a" });
      } catch {
        // Somebody else took the last of it.
      }
    },
    free: () => rmSync(filler, { force: true }),
    remove: () => execFileSync("umount", ["-l", folder]),
  };
}
