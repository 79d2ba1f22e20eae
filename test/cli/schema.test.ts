import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { runFake } from "./fake-io.js";

test("schema prints the same JSON Schema in both formats, and new writes it beside the starter", async () => {
  const { status, out, err } = await runFake(["schema"]);
  expect([status, err]).toEqual([0, ""]);
  expect(JSON.parse(out)).toMatchObject({ title: "dipwright batch file", type: "object" });
  expect((await runFake(["schema", "--format", "json"])).out).toBe(out);
  expect((await runFake(["new", "spring"])).files.get("spring/batch.schema.json")).toBe(out);
});

test("the schema that the examples name is the one of now; else: npm run keys", async () => {
  const kept = readFileSync(new URL("../../examples/batch.schema.json", import.meta.url), "utf8");
  expect(kept).toBe((await runFake(["schema"])).out);
});
