import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, dirname, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";

const root = new URL("../../", import.meta.url).pathname;
const bundle = join(root, "dist/dipwright.js");
const readme = readFileSync(join(root, "README.md"), "utf8");
const examples = readFileSync(join(root, "examples/README.md"), "utf8");
/** Lines of a page's blocks of one kind. */
const lines = (kind: string, page = readme): string[] =>
  [...page.matchAll(new RegExp(`\`\`\`${kind}\\n([\\s\\S]*?)\`\`\``, "g"))].flatMap((block) =>
    block[1]!.trim().split("\n"),
  );

let home = "";
const at = (...names: string[]): string => join(home, "dyeing", ...names);
beforeAll(() => {
  if (!existsSync(bundle)) throw new Error("these tests run the built command: npm run build");
  home = mkdtempSync(join(tmpdir(), "dipwright-"));
  mkdirSync(at("batches"), { recursive: true });
  for (const name of ["restock.yaml", "minimal.yaml", "workshop.yaml", "dyes.yaml"])
    writeFileSync(at("batches", name), readFileSync(join(root, "examples", name)));
  mkdirSync(join(home, "bin"));
  writeFileSync(join(home, "bin/dipwright"), `#!/bin/sh\nexec "${process.execPath}" "${bundle}" "$@"\n`, {
    mode: 0o755,
  });
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

/** Runs a command as a shell does that finds dipwright and node. */
const sh = (command: string, cwd = at()) =>
  spawnSync("sh", ["-c", command], {
    cwd,
    encoding: "utf8",
    env: {
      HOME: home,
      PATH: [join(home, "bin"), dirname(process.execPath), process.env.PATH].join(delimiter),
    },
  });

test("the README's cron line makes the nightly table", () => {
  const [line, ...others] = lines("cron");
  expect(others).toEqual([]);
  const command = /^(?:[\d*/,-]+ ){5}(.+)$/.exec(line!)![1]!;
  expect(command).not.toContain("%");
  const { status, stdout, stderr } = sh(command, home);
  expect([status, stdout]).toEqual([0, ""]);
  // What cron mails: nothing is wrong, and what was not looked at.
  expect(stderr).toMatch(/^2 files without a batch skipped\n(\d+ warnings? not shown .*\n)?$/);
  const rows = readFileSync(at("costs.csv"), "utf8").trim().split("\r\n");
  expect(rows[0]).toMatch(/^batch,date,order,.*,price_EUR$/);
  expect(rows).toHaveLength(6);
});

test("the README's comparison shows what changed since the last night, and keeps the report for the next", () => {
  const [tonight, against, keep] = lines("shell");
  const night = () => [tonight, against, keep].map((line) => sh(line!).status);
  expect(sh(tonight!).status).toBe(0);
  expect(sh(keep!).status).toBe(0);
  expect(night()).toEqual([0, 0, 0]);
  const changes = () => readFileSync(at("changes.csv"), "utf8").trim().split("\r\n").slice(1);
  expect(changes().map((row) => row.split(",")[6])).toEqual(Array(5).fill("same"));
  const text = readFileSync(at("batches/workshop.yaml"), "utf8");
  writeFileSync(at("batches/workshop.yaml"), text.replace("labour: 34.00 /h", "labour: 36.00 /h"));
  expect(night()).toEqual([0, 0, 0]);
  writeFileSync(at("batches/workshop.yaml"), text);
  expect(changes().filter((row) => row.includes("labour per hour +"))).toHaveLength(4);
  expect(existsSync(at("tonight.json"))).toBe(false);
});

test("the examples' pipe puts rows behind those of an earlier table, and the head once", () => {
  const [head, pipe] = lines("shell", examples);
  const names = "date,batch,order,part,shade,total_EUR";
  const rows = () => readFileSync(at("all-costs.csv"), "utf8").trim().split("\r\n");
  for (const count of [4, 8]) {
    expect([sh(head!).status, sh(pipe!).status]).toEqual([0, 0]);
    expect(rows()).toHaveLength(1 + count);
    expect(rows().filter((row) => row === names)).toHaveLength(1);
    expect(rows()[1]).toMatch(/^2026-10-05,autumn-restock,1,clip,brick-light,\d+\.\d\d$/);
  }
});

test("the README's query finds the dear orders, with jq where there is one and without", () => {
  const [, , , query, without, ...others] = lines("shell");
  expect(others).toEqual([]);
  const plain = sh(without!);
  const report = JSON.parse(
    execFileSync(process.execPath, [bundle, "cost", "batches", "--format", "json", "--quiet"], {
      cwd: at(),
      encoding: "utf8",
    }),
  );
  const dear = report.orders.filter(({ costPerPart }: { costPerPart: number | null }) => costPerPart! > 2);
  expect(dear.length).toBeGreaterThan(0);
  expect(dear.length).toBeLessThan(report.orders.length);
  const wanted = dear
    .map(({ batch, order, part }: Record<string, unknown>) => `${batch}\t${order}\t${part}\n`)
    .join("");
  expect([plain.status, plain.stdout]).toEqual([0, wanted]);
  expect(sh(without!.replace("batches", "batches --since 2099-01-01"))).toMatchObject({
    status: 0,
    stdout: "",
  });
  // Not every machine has jq; the line without it is checked on all, the one with it where it can run.
  if (sh("command -v jq").status !== 0) process.stderr.write("no jq here: the query with jq was not run\n");
  else expect(sh(query!)).toMatchObject({ status: 0, stdout: wanted });
});
