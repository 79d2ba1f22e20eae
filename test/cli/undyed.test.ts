import { expect, test } from "vitest";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const order = "  - { part: hook, shade: none, base: white, quantity: 12 }\n";
const plain = `batch: plain
currency: EUR
bases: { white: {} }
parts:
  hook: { mass: 6.4 g, area: 41 cm2, blank: 1.84 }
orders:
${order}`;

const run = (text: string, ...args: readonly string[]) =>
  runFake(args, folderIo(examples, new Map([["plain.yaml", text]])));

test.each([
  ["plan", []],
  ["cost", []],
  ["sweep", ["--vary", "orders.0.quantity=12,24"]],
  ["week", ["--from", "2027-04-12"]],
])("%s takes a batch of undyed orders alone, without baths", async (command, more) => {
  const { status, out, err } = await run(plain, command, "plain.yaml", ...more);
  expect([status, err]).toEqual([0, ""]);
  expect(out).not.toMatch(/Infinity|assumed drag-out/);
  if (command !== "week") expect(out).toContain("22.08");
});

test.each(["plan", "cost"])("%s needs baths as soon as one order is dyed", async (command) => {
  const dyed = `${plain}${order.replace("none", "deep")}dyes:\n  coral: { dilution: 1:9, temperature: 80 °C, rate: 0.01 /s }\nshades:\n  deep: { dye: coral, time: 60 s }\n`;
  const { status, err } = await run(dyed, command, "plain.yaml");
  expect(status).toBe(2);
  expect(err).toContain("error[missing-key]: the batch has no baths, which this command needs");
});

test("bath needs baths, whatever is ordered", async () => {
  const { status, err } = await run(plain, "bath", "plain.yaml");
  expect(status).toBe(2);
  expect(err).toContain("error[missing-key]: the batch has no baths, which this command needs");
});
