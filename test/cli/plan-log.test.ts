import { expect, test } from "vitest";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const log = `time,bath,event,dye,part,shade,base,parts,seconds,celsius,concentrateMl,waterMl,note
2026-10-01T08:00,six,made-up,brick,,,,,,,,,
2026-10-01T10:00,six,load,,clip,brick-light,,42,30,79.5,,,
`;
const files = new Map([["baths.csv", log]]);
const run = (...args: readonly string[]) => runFake(args, folderIo(examples, files));

test.each(["plan", "bath"])("%s takes the log of --log for a bath with start: log", async (command) => {
  const { status, err, out } = await run(
    command,
    "restock.yaml",
    ...["--set", "baths.0.start=log", "--log", "baths.csv", "--format", "json"],
  );
  expect(err).not.toContain("error");
  expect(status).toBe(0);
  if (command === "plan")
    expect(JSON.parse(out).baths[0].start).toMatchObject({
      kind: "kept",
      log: { file: "baths.csv", row: 3, time: "2026-10-01T10:00:00" },
    });
});

test("the run sheet says which row of the log the bath follows from", async () => {
  const { out } = await run("plan", "restock.yaml", "--set", "baths.0.start=log", "--log", "baths.csv");
  expect(out.replace(/\s+/g, " ")).toContain("(by baths.csv up to row 3 of 2026-10-01 10:00:00)");
});

test("the run sheet of a bath with a log names what to read, and lets the next batch start from it", async () => {
  const sheet = async (...more: string[]) =>
    (
      await run(
        "plan",
        "restock.yaml",
        "--set",
        "orders=[{part: clip, shade: brick-light, quantity: 40}]",
        "--quiet",
        ...more,
      )
    ).out;
  const words = "- Log each load: dip, °C, colour of one dry part; each top-up: mL of water.\n";
  const [without, logged] = [await sheet(), await sheet("--log", "baths.csv")];
  expect(without).not.toContain("Log each load");
  expect(without).not.toContain("start: log");
  expect(logged).toContain(words);
  expect(logged).toContain("\nstart: log\n");
});

test("a log named by --set is relative to the batch file, and one that is not there is said", async () => {
  const set = ["--set", "baths.0.start=log", "--set", "log=baths.csv"];
  expect((await run("plan", "restock.yaml", ...set)).status).toBe(0);
  const { status, err } = await run("plan", "restock.yaml", "--set", "baths.0.start=log", "--log", "no.csv");
  expect(status).toBe(2);
  expect(err).toContain("error[log-unreadable]: the log no.csv cannot be read: there is no such file");
});

test("record --from plans with the log that it appends to", async () => {
  const { status, err } = await run(
    "record",
    "baths.csv",
    ...["--from", "restock.yaml", "--set", "baths.0.start=log", "--quiet"],
  );
  expect(status, err).toBe(0);
});
