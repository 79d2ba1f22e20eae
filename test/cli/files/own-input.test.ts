import { expect, test } from "vitest";
import { folderIo } from "../../tools/folder-io.js";
import { runFake } from "../fake-io.js";

const examples = new URL("../../../examples", import.meta.url).pathname;
const run = (...args: string[]) => runFake(args, folderIo(examples));

test("--out never writes over a file that the result is made from: named, the same by another path, or included", async () => {
  for (const out of ["restock.yaml", "./restock.yaml", "dyes.yaml"]) {
    const { status, err, files } = await run("plan", "restock.yaml", "--format", "text", "--out", out);
    expect([out, status, files.size]).toEqual([out, 2, 0]);
    expect(err).toContain("is read to make this result");
  }
  expect((await run("plan", "minimal.yaml", "--out", "sheet.txt")).files.size).toBe(1);
});

test("--out without --format writes the format of its ending, where the command has it", async () => {
  const text = async (out: string) => (await run("plan", "minimal.yaml", "--out", out)).files.get(out);
  expect(await text("a.csv")).toMatch(/^batch,date,bath,tank/);
  expect(await text("a.json")).toMatch(/^\{\s+"schema": "dipwright\/plan@1"/);
  expect(await text("a.md")).toMatch(/^# Run sheet/);
  expect(await text("a.TXT")).toMatch(/^Run sheet/);
  expect(
    (await run("plan", "minimal.yaml", "--format", "text", "--out", "b.csv")).files.get("b.csv"),
  ).toMatch(/^Run sheet/);
});

test("check says what a plan would say: errors with status 2, warnings with status 0 or 1 under --strict", async () => {
  const weak = await run("check", "restock.yaml", "--set", "tanks.six.heater=150 W");
  expect([weak.status, weak.err]).toEqual([2, expect.stringContaining("error[heater-too-weak]")]);
  const warned = await run("check", "warnings.yaml");
  expect([warned.status, warned.err]).toEqual([0, expect.stringContaining("warning[bath-nearly-spent]")]);
  expect((await run("check", "warnings.yaml", "--strict")).status).toBe(1);
  const far = await run("check", "restock.yaml", "--set", "shades.brick-deep.lab=[40, 0, 0]");
  expect([far.status, far.err]).toEqual([0, expect.stringContaining("warning[shade-out-of-reach]")]);
});

test("a shade out of reach is marked in its row and has no price", async () => {
  const args = ["plan", "restock.yaml", "--set", "shades.brick-deep.lab=[40, 0, 0]"];
  expect((await run(...args)).out).toContain("NOT REACHED");
  const report = JSON.parse((await run(...args, "--format", "json")).out);
  expect(report.orders[1]).toMatchObject({ reachable: false, costPerPart: expect.any(Number) });
  expect(report.orders[1]).not.toHaveProperty("price");
  expect(report.orders[0]).toMatchObject({ reachable: true, price: expect.any(Number) });
});

test("--out never follows a link over a file that the result is made from", async () => {
  const io = {
    ...folderIo(examples),
    realPath: (path: string) => path.replace("/anywhere/link.csv", "/anywhere/dyes.yaml"),
  };
  const { status, files } = await runFake(["plan", "restock.yaml", "--out", "link.csv"], io);
  expect([status, files.size]).toEqual([2, 0]);
  expect((await runFake(["plan", "restock.yaml", "--out", "other.csv"], io)).files.size).toBe(1);
});

test("--out - is the standard output, and .jsonl names ndjson", async () => {
  const { files, out } = await run("plan", "minimal.yaml", "--out", "-");
  expect([files.size, out]).toEqual([0, (await run("plan", "minimal.yaml")).out]);
  const cost = await run("cost", "minimal.yaml", "--out", "costs.jsonl");
  expect(JSON.parse(cost.files.get("costs.jsonl")!.split("\n")[0]!)).toHaveProperty("costPerPart");
});
