// Makes a checkout ready: installs what the lock file says if that is not there yet, then builds.
import { execSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";

const root = new URL("../", import.meta.url);
const stamp = new URL("node_modules/.package-lock.json", root);
const lock = new URL("package-lock.json", root);
const run = (command) => execSync(command, { cwd: root, stdio: ["ignore", 2, 2] });

if (!existsSync(stamp) || statSync(stamp).mtimeMs < statSync(lock).mtimeMs)
  run("npm ci --no-audit --no-fund");
run("node .ci/build.mjs");
