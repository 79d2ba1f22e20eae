import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { BatchFile } from "../../src/cli/cost/batch-files.js";
import { type CostJob, fileCosting } from "../../src/cli/cost/file-costs.js";
import { findFiles } from "../../src/cli/files/find-files.js";
import { watched as watchedIo } from "../../src/cli/files/own-input.js";
import type { Io, Thread } from "../../src/cli/io.js";
import { runFake } from "./fake-io.js";

let folder = "";
const write = (name: string, text: string): void => {
  mkdirSync(join(folder, name, ".."), { recursive: true });
  writeFileSync(join(folder, name), text);
};
const examples = new URL("../../examples/", import.meta.url).pathname;
const shared = ["workshop.yaml", "dyes.yaml"];
const batch = (name: string, { date = "", more = "", quantity = 20, include = shared } = {}): string =>
  `batch: ${name}
${date === "" ? "" : `date: ${date}\n`}include: [${include.map((file) => `../${file}`).join(", ")}]
baths:
  - { tank: six, dye: brick, topUp: strength }
orders:
  - { part: hook, shade: brick-light, quantity: ${quantity} }
  - { part: clip, shade: brick-deep, quantity: 12 }
${more}`;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "dipwright-"));
  for (const name of shared) write(name, readFileSync(join(examples, name), "utf8"));
  write("day/b.yaml", batch("second", { date: "2027-04-02" }));
  write("day/a.yaml", batch("first", { date: "2027-04-01" }));
  write("day/c/Z.yml", batch("third", { date: "2027-04-03" }));
  write("day/c/undated.yaml", batch("undated").replaceAll("../", "../../"));
  write("day/c/Z.yml", batch("third", { date: "2027-04-03" }).replaceAll("../", "../../"));
  write("day/common.yaml", "consumables: { perPart: 0.02 }\n");
  write("day/note.json", '["no batch"]\n');
  write("day/.hidden.yaml", "batch: hidden\n");
  write("day/readme.txt", "not looked at");
  write("bad/broken.yaml", "batch: broken\ntanks: {\n");
  write("bad/good.yaml", batch("good"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Reads real files below the folder, and counts how often each is read. */
function io(more: Partial<Io> = {}): { io: Partial<Io>; reads: Map<string, number> } {
  const reads = new Map<string, number>();
  return {
    reads,
    io: {
      readFile: async (path) => {
        reads.set(path, (reads.get(path) ?? 0) + 1);
        return readFileSync(join(folder, path));
      },
      find: (argument) => findFiles(argument, folder),
      ...more,
    },
  };
}
const cost = (...args: string[]) => runFake(["cost", ...args], io().io);
const names = (out: string): string[] => [
  ...new Set(
    out
      .trim()
      .split("\r\n")
      .slice(1)
      .map((line) => line.split(",")[0]!),
  ),
];

describe("the files of cost", () => {
  test("of a folder are its batches, sorted by code unit; other files are skipped and counted", async () => {
    const { status, out, err } = await cost("day", "--format", "csv");
    expect([status, names(out)]).toEqual([0, ["first", "second", "third", "undated"]]);
    expect(err).toContain("2 files without a batch skipped\n");
  });

  test("of a pattern in quotes are those that match it", async () => {
    expect(names((await cost("day/**/*.yml", "--format", "csv")).out)).toEqual(["third"]);
    const none = await cost("day/*.toml", "day/a.yaml", "--format", "csv");
    expect([none.status, names(none.out)]).toEqual([2, ["first"]]);
    expect(none.err).toContain("day/*.toml");
  });

  test("are each costed once, those named first and as they were named", async () => {
    const { out } = await cost("day/c/Z.yml", "day/../day/b.yaml", "day", "--format", "csv");
    expect(names(out)).toEqual(["third", "second", "first", "undated"]);
  });

  test("may be standard input once, among others", async () => {
    const text = new TextEncoder().encode(
      batch("typed", { include: ["workshop.yaml", "dyes.yaml"] }).replaceAll("../", ""),
    );
    const { status, out } = await runFake(
      ["cost", "-", "day/a.yaml", "--format", "csv"],
      io({ readStdin: async () => text }).io,
    );
    expect([status, names(out)]).toEqual([0, ["typed", "first"]]);
    expect((await cost("-", "-")).status).toBe(2);
  });

  test("are read once each, shared ones too", async () => {
    const counted = io();
    await runFake(["cost", "day", "--format", "csv"], counted.io);
    expect([...counted.reads.values()].every((count) => count === 1)).toBe(true);
    expect([...counted.reads.keys()]).toEqual(expect.arrayContaining(shared));
  });

  test("that were found and are reports of ours are passed over, whatever their size", async () => {
    write("with-report/a.yaml", batch("one"));
    write("with-report/last.json", `{\n  "schema": "dipwright/cost@1",\n "orders": [${"0,".repeat(3e6)}0]}`);
    const { status, out } = await cost("with-report", "--format", "csv");
    expect([status, names(out)]).toEqual([0, ["one"]]);
  });
});

describe("bad files of cost", () => {
  test("are reported, the others go on, and the status is 2", async () => {
    for (const format of ["csv", "json", "ndjson", "text"]) {
      const { status, out, err } = await cost("bad", "--format", format);
      expect([format, status]).toEqual([format, 2]);
      expect(out).toContain("good");
      expect(err).toContain("bad/broken.yaml:2");
      expect(err).toContain("1 file could not be costed and was left out");
    }
  });

  test("end the run with --fail-fast, and no file is made", async () => {
    const { status, out, files } = await cost("bad", "--format", "csv", "--fail-fast");
    expect([status, out, files.size]).toEqual([2, "", 0]);
    const later = ["cost", "day/a.yaml", "bad", "--format", "csv", "--fail-fast"];
    expect(names((await runFake(later, io().io)).out)).toEqual(["first"]);
    expect((await runFake([...later, "--out", "costs.csv"], io().io)).files.size).toBe(0);
  });

  test("in an included file are reported once, not for every batch", async () => {
    write("twice/shared.yaml", "rates: { labour: 30 }\n");
    for (const name of ["a", "b", "c"]) write(`twice/${name}.yaml`, `batch: ${name}\ninclude: shared.yaml\n`);
    const { err } = await cost("twice/a.yaml", "twice/b.yaml", "twice/c.yaml", "--format", "csv");
    expect(err.match(/unit-missing/g)).toHaveLength(1);
    expect(err).toContain("3 files could not be costed");
  });
});

describe("cost by date", () => {
  test("keeps the days asked for, both ends included, and counts what it left out", async () => {
    const { status, out, err } = await cost(
      "day",
      "--since",
      "2027-04-02",
      "--until",
      "2027-04-03",
      "--format",
      "csv",
    );
    expect([status, names(out)]).toEqual([0, ["second", "third"]]);
    expect(err).toContain("1 batch without a date left out\n1 batch of other days left out");
  });

  test("of days without a batch is a table without rows", async () => {
    const { status, out } = await cost("day", "--since", "2030-01-01", "--format", "csv");
    expect([status, out.split("\r\n")]).toEqual([0, [expect.stringMatching(/^batch,date,/), ""]]);
    const { out: json } = await cost("day", "--since", "2030-01-01", "--format", "json");
    expect(JSON.parse(json)).toMatchObject({ schema: "dipwright/cost@1", orders: [], batches: [] });
  });

  test.each(["2027-02-30", "April", "2027-4-1"])("refuses %s as a day", async (day) => {
    const { status, err } = await cost("day", "--since", day);
    expect(status).toBe(2);
    expect(err).toContain("--since");
  });
});

describe("the output of cost", () => {
  test("has the columns asked for, with or without their currency", async () => {
    const { out } = await cost("day/a.yaml", "--format", "csv", "--columns", "order,batch,total,price_EUR");
    expect(out.split("\r\n").slice(0, 2)).toEqual([
      "order,batch,total_EUR,price_EUR",
      expect.stringMatching(/^1,first,\d+\.\d\d,\d+\.\d\d$/),
    ]);
    const text = await cost("day/a.yaml", "--columns", "batch,labour");
    expect(text.out).toContain("batch  labour");
    const wrong = await cost("day/a.yaml", "--format", "csv", "--columns", "batch,weather");
    expect([wrong.status, wrong.out]).toEqual([2, ""]);
    expect(wrong.err).toContain('there is no column "weather"');
  });

  test("in ndjson is one line an order, in JSON one report with the same orders", async () => {
    const lines = (await cost("day", "--format", "ndjson")).out.trim().split("\n");
    const orders = lines.map((line) => JSON.parse(line));
    expect(orders).toHaveLength(8);
    expect(orders[0]).toMatchObject({ schema: "dipwright/cost-order@1", currency: "EUR", batch: "first" });
    const report = JSON.parse((await cost("day", "--format", "json")).out);
    expect(report.orders).toEqual(orders.map(({ schema: _, currency: __, ...order }) => order));
    expect(report.batches.map(({ batch }: { batch: string }) => batch)).toEqual([
      "first",
      "second",
      "third",
      "undated",
    ]);
  });

  test("keeps to decimal comma, delimiter and byte order mark over many batches", async () => {
    const { out } = await cost("day", "--format", "csv", "--decimal", "comma", "--bom");
    expect(out.startsWith("\uFEFFbatch;date;")).toBe(true);
    expect(out.match(/\uFEFF/g)).toHaveLength(1);
    const rows = out.trim().split("\r\n");
    expect(rows).toHaveLength(9);
    for (const row of rows.slice(1))
      expect(row).toMatch(/^\w+;[\d-]*;[12];\w+;[\w-]+;white;\d+;\d+;\d+,\d\d;/);
    const [tab, written] = [
      await cost("day", "--format", "csv", "--delimiter", "tab"),
      await cost("day", "--format", "csv", "--delimiter", "\\t"),
    ];
    expect([tab.status, tab.out.split("\t").length > 20, written.out]).toEqual([0, true, tab.out]);
    const bar = await cost("day", "--format", "csv", "--delimiter", "bar");
    expect(bar.out.replaceAll("|", ";").replaceAll(/(\d)\.(\d)/g, "$1,$2")).toBe(out.slice(1));
  });

  test("gives harmless cells where a batch is named like a formula", async () => {
    write("formula.yaml", batch('"=SUM(A1)"').replaceAll("../", ""));
    expect((await cost("formula.yaml", "--format", "csv")).out).toContain("\r\n'=SUM(A1),");
  });

  test("is the same bytes again, and waits for the currency where a batch without money comes first", async () => {
    write("poor.yaml", readFileSync(join(examples, "minimal.yaml"), "utf8"));
    const again = await Promise.all([1, 2].map(() => cost("poor.yaml", "day", "--format", "csv")));
    expect(again[0]!.out).toBe(again[1]!.out);
    const [header, first] = again[0]!.out.split("\r\n");
    expect(header).toContain(",total_EUR,");
    expect(first).toMatch(/^minimal,/);
    const alone = await cost("poor.yaml", "--format", "csv");
    expect(alone.out).toContain(",total,");
  });

  test("leaves a batch of another currency out of the stream, names both files, and goes on", async () => {
    write("cross/a.yaml", batch("euro"));
    write("cross/b.yaml", "batch: franc\ncurrency: CHF\ninclude: ../franc.yaml\n");
    write("cross/c.yaml", batch("euro-too"));
    write("franc.yaml", readFileSync(join(examples, "minimal.yaml"), "utf8").replace(/^batch:.*$/m, ""));
    const { status, out, err } = await cost("cross", "--format", "csv");
    expect([status, names(out)]).toEqual([2, ["euro", "euro-too"]]);
    expect(err.replace(/\s+/g, " ")).toContain("cross/b.yaml is in CHF, and cross/a.yaml is in EUR");
  });
});

describe("limits of cost", () => {
  test("are said with --quiet too, also of one file, and in figures that differ", async () => {
    write("over/a.yaml", batch("dear", { more: "limits: { costPerPart: 0.50 }\n" }));
    const quiet = await cost("over/a.yaml", "--quiet", "--format", "csv");
    expect([quiet.status, quiet.err.trim().split("\n").length]).toEqual([1, 2]);
    expect(quiet.err).toContain("over the limit of 0.50 EUR");
    const [first] = JSON.parse((await cost("over/a.yaml", "--format", "json")).out).orders;
    const limit = (Math.floor(first.costPerPart * 1e4) / 1e4).toFixed(4);
    const near = await cost("over/a.yaml", "--quiet", "--set", `limits.costPerPart=${limit}`);
    const [, cents, least] = /costs (\S+) EUR a part, over the limit of (\S+) EUR/.exec(near.err) ?? [];
    expect(Number(cents)).toBeGreaterThan(Number(least));
  });

  test("that are exceeded give status 1 and one line each, with --quiet nothing else", async () => {
    write("over/a.yaml", batch("dear", { more: "limits: { costPerPart: 0.50 }\n" }));
    write("over/b.yaml", batch("cheap", { more: "limits: { costPerPart: 50 }\n" }));
    const { status, out, err } = await cost("over", "--format", "csv");
    expect([status, names(out)]).toEqual([1, ["dear", "cheap"]]);
    const lines = err.split("\n").filter((line) => line.includes("over-limit"));
    expect(lines).toHaveLength(2);
    expect(lines[0]).toMatch(
      /^over\/a\.yaml: order 1 \(hook, brick-light\) costs \d+\.\d\d EUR a part, over the limit of 0\.50 EUR \(over-limit\)$/,
    );
    expect(await cost("over", "--format", "csv", "--quiet")).toMatchObject({
      status: 1,
      err: lines.map((line) => `${line}\n`).join(""),
    });
  });
});

describe("warnings of cost", () => {
  const low = `${batch("low").replace("topUp: strength", "start: { volume: 5.5 L }")}`;

  test("of one file are shown, of several counted; with --strict the status is 1", async () => {
    write("low/a.yaml", low);
    write("low/b.yaml", batch("full"));
    for (const format of ["csv", "ndjson", "text"]) {
      const one = await cost("low/a.yaml", "--format", format);
      expect([format, one.status]).toEqual([format, 0]);
      expect(one.err).toContain("warning[bath-starts-low]");
      const several = await cost("low", "--format", format);
      expect(several.err).not.toContain("warning[");
      expect(several.err).toMatch(/not shown \(.*bath-starts-low 1/);
      for (const name of ["low/a.yaml", "low"])
        expect([name, (await cost(name, "--format", format, "--strict")).status]).toEqual([name, 1]);
    }
  });
});

describe("progress of cost", () => {
  const clock = (): (() => Date) => {
    let now = 0;
    return () => {
      now += 150;
      return new Date(now);
    };
  };
  const watched = (more: Partial<Io>, ...args: string[]) =>
    runFake(["cost", "day", "--format", "csv", ...args], io({ now: clock(), ...more }).io);

  test("is shown on a terminal only, goes away again, and never with --quiet", async () => {
    const seen = await watched({ errIsTerminal: true });
    expect(seen.err).toMatch(/\r\d of 6 files/);
    expect(seen.err).toContain("\r\u001b[K");
    const lines = seen.err.split("\u001b[K");
    expect(lines.at(-1)).not.toContain("of 6 files");
    expect((await watched({ errIsTerminal: false })).err).not.toContain("of 6 files");
    expect((await watched({ errIsTerminal: true }, "--quiet")).err).toBe("");
    expect((await watched({ errIsTerminal: true, outIsTerminal: true })).err).not.toContain("of 6 files");
  });
});

test("a single bad file gives its faults alone", async () => {
  const { status, err } = await cost("bad/broken.yaml");
  expect([status, err]).toEqual([2, expect.stringMatching(/1 error\n$/)]);
});

describe("the columns of cost", () => {
  test("go by the same names on a day that has no batch", async () => {
    const args = ["day", "--format", "csv", "--columns", "batch,total_EUR"];
    expect((await cost(...args)).out).toMatch(/^batch,total_EUR\r\n/);
    expect(await cost(...args, "--since", "2030-01-01")).toMatchObject({
      status: 0,
      out: "batch,total_EUR\r\n",
    });
    expect((await cost("day", "--format", "csv", "--columns", "total_USD")).status).toBe(2);
  });
});

describe("cost --spread", () => {
  test("adds P10, P50 and P90, the same bytes for the same seed and others for another", async () => {
    const spread = (...more: string[]) =>
      cost("day/a.yaml", "--spread", "--draws", "50", "--format", "csv", ...more);
    const [one, again, other] = await Promise.all([spread(), spread(), spread("--seed", "2")]);
    expect(one.out.split("\r\n")[0]).toMatch(/,price_EUR,p10_EUR,p50_EUR,p90_EUR$/);
    expect(again.out).toBe(one.out);
    const [json, jsonAgain, jsonOther] = await Promise.all(
      [[], [], ["--seed", "2"]].map((more) =>
        cost("day/a.yaml", "--spread", "--draws", "50", "--format", "json", ...more),
      ),
    );
    expect(jsonAgain!.out).toBe(json!.out);
    expect(jsonOther!.out).not.toBe(json!.out);
    expect(other.status).toBe(0);
    const report = JSON.parse(json!.out);
    const { p10, p50, p90 } = report.orders[0].spread.costPerPart;
    expect(p10).toBeLessThan(p50);
    expect(p50).toBeLessThan(p90);
    expect(report.batches[0].spread.ranking.map(({ path }: { path: string }) => path)).toEqual(
      expect.arrayContaining(["handling.dragOut", "dyes.brick.uptake", "dyes.brick.activationEnergy"]),
    );
    expect(report.batches[0].spread).toMatchObject({ draws: 50, seed: 1, failed: 0 });
  });

  test("draws nothing it was not asked to", async () => {
    for (const args of [
      ["--draws", "50"],
      ["--seed", "3"],
      ["--spread", "--draws", "2"],
    ])
      expect([args, (await cost("day/a.yaml", ...args)).status]).toEqual([args, 2]);
  });
});

describe("cost in threads", () => {
  /** Threads that are none: what they are asked and answer is copied, as between real ones. */
  const threads =
    (log: string[], fails = false): NonNullable<Io["threads"]> =>
    async (script, job, atMost) => {
      log.push(`${script} ${atMost}`);
      const thread = (): Thread => {
        const { io: seen, reads } = watchedIo({ ...io().io, cwd: "/anywhere" } as Io);
        const costs = fileCosting(structuredClone(job) as CostJob, seen);
        return {
          ask: async (question) => {
            if (fails) throw new Error("the thread is gone");
            const answer = [];
            for (const file of structuredClone(question) as BatchFile[]) answer.push(await costs(file));
            return structuredClone({ answer, reads: [...reads] });
          },
          stop: async () => void log.push("stop"),
        };
      };
      return [thread(), thread()];
    };
  const spread = (more: Partial<Io>, ...args: string[]) =>
    runFake(["cost", "day", "bad", "--spread", "--draws", "20", ...args], io(more).io);

  test("writes and says the same as without, in every format", async () => {
    for (const format of ["csv", "json", "ndjson", "text"]) {
      const log: string[] = [];
      const [plain, threaded] = [
        await spread({}, "--format", format),
        await spread({ threads: threads(log) }, "--format", format),
      ];
      expect(threaded).toEqual(plain);
      expect([threaded.status, log]).toEqual([2, ["cost 4", "stop", "stop"]]);
    }
  });

  test("stops its threads where it stops, and is a defect where one of them fails", async () => {
    const log: string[] = [];
    const stopped = await spread({ threads: threads(log) }, "--fail-fast", "--format", "csv");
    expect([stopped.status, log.filter((word) => word === "stop").length]).toEqual([2, 2]);
    const failed = await spread({ threads: threads(log, true) }, "--format", "csv", "--out", "c.csv");
    expect([failed.status, failed.files.size]).toEqual([70, 0]);
    expect(failed.err).toContain("the thread is gone");
    expect(log.filter((word) => word === "stop").length).toBe(4);
  });

  test("is not done for a few files, nor for stdin", async () => {
    const log: string[] = [];
    await runFake(["cost", "day", "--format", "csv"], io({ threads: threads(log) }).io);
    await spread({ threads: threads(log) }, "-", "--format", "csv");
    expect(log).toEqual([]);
  });

  test("never writes over a file that it read, though a thread read it", async () => {
    for (const more of [{}, { threads: threads([]) }])
      for (const out of ["day/c/Z.yml", "dyes.yaml"]) {
        const { status, err, files } = await spread(more, "--format", "csv", "--out", out);
        expect([out, status, files.size]).toEqual([out, 2, 0]);
        expect(err).toContain("is read to make this result");
      }
  });
});

describe("plan --spread", () => {
  test("shows how sure the costs are, in text and JSON", async () => {
    const plan = (...more: string[]) =>
      runFake(["plan", "day/a.yaml", "--spread", "--draws", "40", ...more], io().io);
    expect((await plan()).out).toContain("How sure: cost of a good part in 40 draws");
    const { spread } = JSON.parse((await plan("--format", "json")).out);
    expect(spread).toMatchObject({ draws: 40, seed: 1, failed: 0, cost: { p50: expect.any(Number) } });
    expect(spread.orders[0].dipSeconds.p10).toBeGreaterThan(0);
    expect(spread.baths[0].lifeParts.p50).toBeGreaterThan(0);
    expect(spread.ranking[0].share).toBeGreaterThan(0);
    expect((await plan("--format", "json")).out).toBe((await plan("--format", "json")).out);
  });
});

describe("cost --against", () => {
  const earlier = async (): Promise<void> => {
    const { out } = await cost("day", "--format", "json", "--set", "rates.labour=20.00 /h");
    const report = JSON.parse(out);
    report.orders = report.orders.filter(({ batch }: { batch: string }) => batch !== "third");
    report.orders.push({ ...report.orders[0], batch: "sold-out" });
    write("last.json", JSON.stringify(report));
  };

  test("shows each order's change and its causes, new and gone orders, in every format", async () => {
    await earlier();
    for (const format of ["text", "markdown", "csv", "tsv", "json", "ndjson"]) {
      const { status, out } = await cost("day", "--against", "last.json", "--format", format);
      expect([format, status]).toEqual([format, 0]);
      for (const word of ["sold-out", "third", "gone", "new"]) expect(out).toContain(word);
      expect(out).toMatch(/labour per hour \+0\.2\d \(20\.00 -\\?> 34\.00\)|labour-rate/);
    }
    const { out } = await cost("day", "--against", "last.json", "--format", "ndjson");
    const orders = out
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line));
    expect(orders.map(({ status }) => status).sort()).toEqual([
      ...Array(6).fill("changed"),
      "gone",
      "new",
      "new",
    ]);
    const { change, causes } = orders.find(({ status }) => status === "changed");
    const sum = causes.reduce((total: number, cause: { change: number }) => total + cause.change, 0);
    expect(sum).toBeCloseTo(change, 8);
    expect(change).toBeGreaterThan(0);
  });

  test("of a report with itself finds nothing changed", async () => {
    const { out } = await cost("day", "--format", "json");
    write("same.json", out);
    const again = await cost("day", "--against", "same.json", "--format", "json");
    expect(JSON.parse(again.out).counts).toEqual({ changed: 0, same: 8, new: 0, gone: 0 });
  });

  test("compares with a report from before a cost line and its price existed", async () => {
    const report = JSON.parse((await cost("day", "--format", "json")).out);
    for (const order of report.orders) {
      order.total -= order.lines.disposal;
      order.costPerPart = order.total / order.quantity;
      delete order.lines.disposal;
      delete order.drivers.disposalPerL;
    }
    write("younger.json", JSON.stringify(report));
    const { status, out, err } = await cost("day", "--against", "younger.json");
    expect([status, err.includes("damaged")]).toEqual([0, false]);
    expect(out.replace(/\s+/g, " ")).toMatch(/price of disposal \+0\.\d+ \(0\.00 -> 0\.\d\d\)/);
  });

  test("looks at the earlier orders of the days asked for only", async () => {
    write("days.json", (await cost("day", "--format", "json")).out);
    const args = ["--since", "2027-04-02", "--until", "2027-04-02", "--against", "days.json"];
    const { out } = await cost("day", ...args, "--format", "json");
    const { counts, totalBefore, totalNow } = JSON.parse(out);
    expect(counts).toEqual({ changed: 0, same: 2, new: 0, gone: 0 });
    expect(totalNow).toBe(totalBefore);
  });

  test("says that orders it calls gone may be those of files that could not be costed", async () => {
    write("sick/a.yaml", batch("healthy"));
    write("sick/b.yaml", batch("sick"));
    write("sick.json", (await cost("sick", "--format", "json")).out);
    write("sick/b.yaml", "batch: sick\ntanks: {\n");
    const { status, out } = await cost("sick", "--against", "sick.json");
    expect([status, out.replace(/\s+/g, " ")]).toEqual([
      2,
      expect.stringContaining("1 file could not be costed: orders of it are listed as gone"),
    ]);
    const json = JSON.parse((await cost("sick", "--against", "sick.json", "--format", "json")).out);
    expect([json.filesNotCosted, json.counts.gone]).toEqual([1, 2]);
    // And the other way round: the report remembers what it left out.
    const before = await cost("sick", "--format", "json");
    expect([before.status, JSON.parse(before.out).filesNotCosted]).toEqual([2, 1]);
    write("lame.json", before.out);
    write("sick/b.yaml", batch("sick"));
    const healed = await cost("sick", "--against", "lame.json");
    expect(healed.out.replace(/\s+/g, " ")).toContain(
      "The earlier report left out 1 file: orders of it are listed as new, and are missing from the sum before.",
    );
  });

  test("names the largest cause of a change that does not show in cents", async () => {
    write("weak/a.yaml", batch("weak"));
    write("weak.json", (await cost("weak", "--format", "json")).out);
    const start = "start: { volume: 5.9 L, strength: 93 %, age: 3 d }";
    write("weak/a.yaml", batch("weak").replace("topUp: strength }", `topUp: strength, ${start} }`));
    const { out } = await cost("weak", "--against", "weak.json");
    expect(out).toMatch(/weak 1, hook brick-light: \S.* [+-]0\.0/);
  });

  test("shows a price that moved where the cost did not", async () => {
    write("price.json", (await cost("day/a.yaml", "--format", "json")).out);
    const { out } = await cost("day/a.yaml", "--set", "pricing.margin=55 %", "--against", "price.json");
    expect(out).toMatch(/pricing: price \d+\.90 EUR -> \d+\.90 EUR\./);
  });

  test("refuses a file that is not such a report, or does not exist", async () => {
    for (const [name, text] of [
      ["no.json", "batch: x\n"],
      ["other.json", '{"schema": "dipwright/plan@1"}'],
      ["torn.json", '{"schema": "dipwright/cost@1", "orders": [{"batch": 3}]}'],
    ] as const) {
      write(name, text);
      const { status, out, err } = await cost("day", "--against", name, "--format", "csv");
      expect([name, status, out]).toEqual([name, 2, ""]);
      expect(err).toContain("not-a-cost-report");
      expect(err).toContain("dipwright cost --format json");
    }
    expect(await cost("day", "--against", "nowhere.json")).toMatchObject({ status: 2, out: "" });
  });
});
