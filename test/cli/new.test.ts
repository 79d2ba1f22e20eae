import { expect, test } from "vitest";
import { runFake } from "./fake-io.js";

test("new writes a starter batch that check finds nothing wrong with", async () => {
  const { status, out, files } = await runFake(["new", "spring"]);
  expect([status, out]).toEqual([0, expect.stringContaining("Next: dipwright plan spring/batch.yaml")]);
  const text = files.get("spring/batch.yaml") ?? "";
  const checked = await runFake(["check", "-", "--strict"], {
    readStdin: async () => new TextEncoder().encode(text),
  });
  expect([checked.status, checked.err]).toEqual([0, ""]);
});

test("new writes a starter batch that plans and costs without a warning to heed first", async () => {
  const { files } = await runFake(["new", "spring"]);
  const stdin = { readStdin: async () => new TextEncoder().encode(files.get("spring/batch.yaml")) };
  for (const command of ["plan", "cost"]) {
    const { status, err } = await runFake([command, "-", "--strict"], stdin);
    expect([command, status, err]).toEqual([command, 0, ""]);
  }
});

test("new returns 2 and says why where a file is already there", async () => {
  const taken = {
    code: "exists",
    severity: "error",
    path: [],
    message: "spring/batch.yaml is already there",
  } as const;
  const { status, out, err } = await runFake(["new", "spring"], { createFiles: async () => [taken] });
  expect([status, out, err]).toEqual([2, "", "error[exists]: spring/batch.yaml is already there\n"]);
});

test("new names its files as json", async () => {
  const { out } = await runFake(["new", "spring", "--format", "json"]);
  expect(JSON.parse(out)).toMatchObject({
    schema: "dipwright/new@1",
    folder: "spring",
    files: expect.arrayContaining(["spring/batch.yaml"]),
  });
});
