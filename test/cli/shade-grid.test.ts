import { expect, test } from "vitest";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const shade = (...args: string[]) =>
  runFake(["shade", "restock.yaml", "--target", "brick-deep", ...args], folderIo(examples));

test("a card has the times that shade gives for each bath, in seconds in CSV and JSON", async () => {
  const { out } = await shade("--grid", "--format", "json");
  const card = JSON.parse(out);
  expect(card.celsius).toEqual([76, 77, 78, 79, 80, 81, 82]);
  expect(card.strengths).toEqual([1.1, 1, 0.9, 0.8, 0.7, 0.6, 0.5]);
  const told = async (...args: string[]) =>
    JSON.parse((await shade(...args, "--format", "json")).out).target.seconds as number;
  expect(card.seconds[4][1]).toBeCloseTo(await told("--strength", "70%", "--temperature", "77C"), 9);
  expect(card.seconds[1][4]).toBeCloseTo(await told(), 9);
  const rows = (await shade("--grid", "--format", "csv")).out.trim().split(/\r?\n/);
  expect(rows).toHaveLength(1 + 49);
  expect(rows[0]).toBe("dye,target,base,strength_pct,bath_C,dip_s");
  expect(Number(rows[2]!.split(",").at(-1))).toBeCloseTo(card.seconds[0][1], 1);
});

test("its table fits a page of 80 columns, with a mark on dips over the longest", async () => {
  const { out } = await runFake(["shade", "restock.yaml", "--target", "brick-deep", "--grid"], {
    ...folderIo(examples),
    columns: 80,
  });
  expect(out).toMatch(/^ +50 % +>10:28/m);
  for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  expect((await shade("--grid", "--format", "markdown")).out).toContain("| 100 % | 2:37 |");
});

test("a card needs a target, and no bath of its own", async () => {
  for (const args of [
    ["--strength", "50%"],
    ["--temperature", "78C"],
    ["--trial", "60 s, 50,30,10"],
  ])
    expect((await shade("--grid", ...args)).status).toBe(2);
  expect(
    (await runFake(["shade", "restock.yaml", "--dye", "teal", "--grid"], folderIo(examples))).status,
  ).toBe(2);
});
