import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../../", import.meta.url));

const npm = (cwd: string, ...args: readonly string[]): string =>
  execFileSync("npm", args, { cwd, encoding: "utf8", shell: process.platform === "win32" });

/** Packs what is built, installs that in a new folder with a space and an umlaut in its path, and returns the folder. */
export function installPacked(): string {
  if (!existsSync(join(root, "dist/dipwright.js")))
    throw new Error("these tests run what is built: npm run build");
  const folder = mkdtempSync(join(tmpdir(), "dipwright gefärbt "));
  npm(root, "pack", "--ignore-scripts", "--silent", "--pack-destination", folder);
  // The package depends on no other: the registry is not needed.
  npm(folder, "install", "--offline", "--no-audit", "--no-fund", "--silent", "./dipwright-0.1.0.tgz");
  return folder;
}
