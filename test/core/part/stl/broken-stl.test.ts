import { strToU8 } from "fflate";
import { expect, test } from "vitest";
import { measured, near, refusal } from "../tools/expecting.js";
import { asciiStl, asciiText, binaryStl } from "../tools/files.js";
import { box, octahedron } from "../tools/solids.js";

const block = box([0, 0, 0], [2, 3, 5]);

test("measureMesh refuses an empty file", async () => {
  expect(await refusal(new Uint8Array())).toMatchObject({
    code: "mesh-empty",
    message: "byte 0: the file is empty",
  });
});

test("measureMesh names the byte where a truncated binary STL ends, and what it announced", async () => {
  const fault = await refusal(binaryStl(block).slice(0, 84 + 50 * 7 + 20));
  expect(fault.code).toBe("mesh-truncated");
  expect(fault.message).toBe(
    "byte 80: the header announces 12 triangles, which takes 684 bytes; the file ends at byte 454, after 7 whole triangles",
  );
  expect((await refusal(binaryStl(block).slice(0, 60))).message).toMatch(/^byte 60: the file ends inside/);
});

test("measureMesh refuses a huge count at once, without taking memory for it", async () => {
  const bytes = binaryStl(block);
  new DataView(bytes.buffer).setUint32(80, 0xffffffff, true);
  const before = process.memoryUsage().arrayBuffers;
  expect((await refusal(bytes)).message).toMatch(/^byte 80: the header announces 4294967295 triangles/);
  expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(2 ** 20);
});

test("measureMesh reads a binary STL whose header begins with solid", async () => {
  const found = await measured(binaryStl(block, "solid block made somewhere"));
  near(found.volumeCm3, 0.03);
  expect(found.format).toBe("stl-binary");
});

test("measureMesh finds a truncated binary STL whose header begins with solid", async () => {
  const fault = await refusal(binaryStl(block, "solid block").slice(0, 300));
  expect(fault.message).toMatch(/^byte 80: the header announces 12 triangles.* ends at byte 300/);
});

test("measureMesh refuses a text STL behind a binary header", async () => {
  const bytes = new Uint8Array([...new Uint8Array(80), ...strToU8(asciiText(block))]);
  expect(await refusal(bytes)).toMatchObject({ code: "mesh-mislabelled" });
  expect((await refusal(bytes)).message).toMatch(/^byte 0: neither a text nor a binary STL/);
});

test("measureMesh refuses a text STL that lost its first line", async () => {
  const fault = await refusal(strToU8(asciiText(block).split("\n").slice(1).join("\n")));
  expect(fault.message).toBe('line 1: a text with facets that does not begin with "solid"');
});

test("measureMesh refuses a file that is not a model", async () => {
  for (const text of [
    "just some words, long enough to hold a header ".repeat(4),
    "<?xml version='1.0'?><svg/>",
  ])
    expect(await refusal(strToU8(text))).toMatchObject({ code: "mesh-unknown" });
});

test("measureMesh names byte, corner and triangle of a number that is not finite", async () => {
  for (const [value, shown] of [
    [Number.NaN, "NaN"],
    [Number.NEGATIVE_INFINITY, "-Infinity"],
  ] as const) {
    const bytes = binaryStl(block);
    new DataView(bytes.buffer).setFloat32(84 + 50 * 9 + 12 + 4 * 7, value, true);
    const fault = await refusal(bytes);
    expect(fault.code).toBe("mesh-not-finite");
    expect(fault.message).toBe(`byte 574: y of corner 3 of triangle 10 is ${shown}, not a number`);
  }
});

test("measureMesh passes over a normal that is not a number", async () => {
  const bytes = binaryStl(block);
  new DataView(bytes.buffer).setFloat32(84, Number.NaN, true);
  near((await measured(bytes)).volumeCm3, 0.03);
  near(
    (await measured(strToU8(asciiText(block).replaceAll("normal 0 0 0", "normal nan -inf x")))).volumeCm3,
    0.03,
  );
});

test("measureMesh warns of bytes after the last triangle", async () => {
  const found = await measured(new Uint8Array([...binaryStl(block), 1, 2, 3]));
  near(found.volumeCm3, 0.03);
  expect(found.faults.map((f) => f.message)).toEqual([
    "byte 684: bytes after the last triangle are passed over",
  ]);
});

test("measureMesh refuses a file without triangles", async () => {
  expect(await refusal(new Uint8Array(84))).toMatchObject({ code: "mesh-empty" });
  expect(await refusal(strToU8("solid nothing\nendsolid nothing\n"))).toMatchObject({ code: "mesh-empty" });
});

test("measureMesh names the line of what is wrong in a text STL", async () => {
  const lines = asciiText(block).split("\n");
  const changed = (line: number, text: string): Uint8Array =>
    strToU8(lines.map((old, i) => (i === line - 1 ? text : old)).join("\n"));
  const cases: [Uint8Array, string][] = [
    [changed(4, "vertex 1,5 0 0"), 'line 4: "1,5" is not a finite number'],
    [changed(5, "vertex 0 nan 0"), 'line 5: "nan" is not a finite number'],
    [changed(6, "vertex 0 1e999 0"), 'line 6: "1e999" is not a finite number'],
    [changed(6, "vertex 0 1e999999999999 0"), 'line 6: "1e999999999999" is not a finite number'],
    [changed(3, "    outer lop"), 'line 3: found "lop", expected loop'],
    [changed(7, "vertex 1 1 1"), 'line 7: found "vertex", expected endloop'],
    [changed(2, "face normal 0 0 1"), 'line 2: found "face", expected facet or endsolid'],
    [changed(86, "endsolid\nrubbish"), 'line 87: found "rubbish", expected solid'],
    [strToU8(lines.slice(0, 85).join("\n")), "line 85: the text ends before facet or endsolid"],
    [strToU8(lines.slice(0, 20).join("\n")), "line 20: the text ends before endloop"],
  ];
  for (const [bytes, message] of cases) expect((await refusal(bytes)).message).toBe(message);
});

test("measureMesh reads a text STL in capitals, with any line ends, a byte order mark, and several solids", async () => {
  const text = `${asciiText(block, "Büro 1")}${asciiText(octahedron(4), "")}`;
  for (const variant of [
    text.toUpperCase(),
    text.replaceAll("\n", "\r\n"),
    text.replaceAll("\n", "\r"),
    `\ufeff\n\n${text}`,
    text.replaceAll("\n", "\n\n\t"),
  ])
    near((await measured(strToU8(variant))).volumeCm3, (30 + (4 / 3) * 64) / 1000);
});

test("measureMesh reads from the middle of a larger buffer", async () => {
  for (const bytes of [binaryStl(block), asciiStl(block)]) {
    const larger = new Uint8Array(bytes.length + 7);
    larger.set(bytes, 3);
    near((await measured(larger.subarray(3, 3 + bytes.length))).volumeCm3, 0.03);
  }
});
