import { expect, test } from "vitest";
import { folderIo } from "../tools/folder-io.js";
import { runFake } from "./fake-io.js";

const examples = new URL("../../examples", import.meta.url).pathname;
const run = (...args: string[]) => runFake(["rework", ...args], folderIo(examples));
const json = async (...args: string[]) => JSON.parse((await run(...args, "--format", "json")).out);
const tooLight = ["mixing.yaml", "--from", "72,38,-6", "--shade", "rose-deep"];

for (const format of ["text", "json", "csv", "markdown"])
  test(`rework prints what a part can become as ${format}`, async () => {
    const { status, out, err } = await run(...tooLight, "--format", format);
    expect([status, err]).toEqual([0, ""]);
    await expect(out).toMatchFileSnapshot(`golden/rework/rose.${format === "text" ? "txt" : format}`);
  });

test("rework has the keys that scripts rely on", async () => {
  const report = await json(...tooLight);
  expect(report.schema).toBe("dipwright/rework@1");
  expect(report.shades).toHaveLength(5);
  expect(report.shades[2]).toMatchObject({
    shade: "rose-deep",
    dye: "rose",
    seconds: expect.any(Number),
    lab: [expect.any(Number), expect.any(Number), expect.any(Number)],
    deltaE00: expect.any(Number),
    reachable: true,
  });
});

test("a part that is darker than its shade needs a new one, and gives status 1", async () => {
  const { status, out } = await run("mixing.yaml", "--from", "58,45,-8", "--shade", "rose-light");
  expect(status).toBe(1);
  expect(out).toContain("darker than rose-light");
  expect(out.replace(/\s+/g, " ")).toContain("A new part is needed for: straw-mid, rose-light");
});

test("a part that is right passes as it is", async () => {
  const { status, out } = await run("mixing.yaml", "--from", "rose-light", "--shade", "rose-light");
  expect(status).toBe(0);
  expect(out).toContain("It passes as rose-light already");
});

test("given a base, rework says which shades it can serve at all", async () => {
  const grey = await run("mixing.yaml", "--from", "grey");
  expect(grey.out).toContain("Base grey can become none of these shades");
  const own = await json("mixing.yaml", "--from", "natural");
  const served = own.shades.filter(({ reachable }: { reachable: boolean }) => reachable);
  expect(served.map(({ shade }: { shade: string }) => shade)).toEqual([
    "straw-mid",
    "rose-light",
    "rose-deep",
    "lagoon-deep",
  ]);
});

test.each([
  ["no colour", ["mixing.yaml"], "--from is needed"],
  ["an unknown name", ["mixing.yaml", "--from", "roselight"], "did you mean rose-light?"],
  ["an unknown shade", ["mixing.yaml", "--from", "60,1,2", "--shade", "rosé"], "--shade"],
  ["half a colour", ["mixing.yaml", "--from", "60,1"], "60,1"],
])("rework refuses %s and says what to write", async (_, args, said) => {
  const { status, out, err } = await run(...args);
  expect([status, out]).toEqual([2, ""]);
  expect(err.replace(/\s+/g, " ")).toContain(said);
  expect(err).not.toContain("    at ");
});

test("shades whose dye has no curve are left out with a warning", async () => {
  const one = "dyes.rose.swatches=[{ time: 60 s, lab: [65.2, 46.5, -8.3] }]";
  const { status, err, out } = await run("mixing.yaml", "--from", "72,38,-6", "--set", one);
  expect(status).toBe(0);
  expect(err).toContain("rework-without-curve");
  expect(out).not.toContain("rose-deep ");
});
