import { strToU8, zipSync } from "fflate";
import { expect, test } from "vitest";
import { refusal } from "../tools/expecting.js";
import { archive, meshXml, modelXml, packed, relationships, threeMf } from "../tools/files.js";
import { box } from "../tools/solids.js";

const block = box([0, 0, 0], [2, 3, 5]);
const good = modelXml(`<object id="1">${meshXml(block)}</object>`, '<item objectid="1"/>');
const ofModel = async (text: string) => refusal(packed(text));

test("measureMesh refuses an archive that was cut off, and names the byte", async () => {
  const bytes = threeMf(block);
  for (const length of [4, 100, bytes.length >> 1, bytes.length - 1]) {
    const fault = await refusal(bytes.slice(0, length));
    expect(fault).toMatchObject({ code: "mesh-truncated" });
    expect(fault.message).toMatch(new RegExp(`^byte ${length}: the archive ends without its directory`));
  }
});

test("measureMesh refuses a zip archive that is not a 3MF file, and one without its model", async () => {
  expect((await refusal(archive({ "readme.txt": "x" }))).message).toMatch(
    /^byte 0: .* without _rels\/\.rels/,
  );
  const missing = await refusal(archive({ "_rels/.rels": relationships("/3D/other.model") }));
  expect(missing).toMatchObject({ code: "mesh-part-missing" });
  expect(missing.message).toMatch(/^line 2 of _rels\/\.rels: the archive holds no part/);
  expect((await refusal(archive({ "_rels/.rels": "<Relationships/>" }))).message).toMatch(
    /no relationship names/,
  );
});

test("measureMesh refuses paths that leave the archive", async () => {
  for (const name of ["../evil.model", "a/../../b", "/etc/x", "C:/x", "..\\x", "\\x"]) {
    const fault = await refusal(
      archive({ [name]: "x", "_rels/.rels": relationships(), "3D/part.model": good }),
    );
    expect(fault).toMatchObject({ code: "mesh-archive-path" });
    expect(fault.message).toMatch(/^byte \d+: the path .* leaves the archive$/);
  }
  const target = archive({ "_rels/.rels": relationships("/../../part.model"), "3D/part.model": good });
  expect(await refusal(target)).toMatchObject({ code: "mesh-archive-path" });
});

/** The archive with numbers of the n-th directory entry overwritten: offset in the entry, value. */
function withDirectory(bytes: Uint8Array<ArrayBuffer>, n: number, changes: [number, number][]): Uint8Array {
  const copy = bytes.slice();
  const view = new DataView(copy.buffer);
  let at = view.getUint32(copy.length - 6, true);
  for (let i = 0; i < n; i++) at += 46 + view.getUint16(at + 28, true);
  for (const [offset, value] of changes) view.setUint32(at + offset, value, true);
  return copy;
}

test("measureMesh refuses a part that unpacks to more than the archive announces, without unpacking it all", async () => {
  const bomb = packed(`${good}${" ".repeat(64 * 2 ** 20)}`);
  expect(bomb.length).toBeLessThan(2 ** 18);
  const announced = await refusal(bomb);
  expect(announced.message).toMatch(/over 200 times is taken for a zip bomb/);
  const started = performance.now();
  const lying = await refusal(withDirectory(bomb, 2, [[24, 5000]]));
  expect(lying.message).toMatch(/^byte \d+: "3D\/part.model" unpacks to more than the 5000 bytes/);
  expect(performance.now() - started).toBeLessThan(1000);
});

test("measureMesh refuses a part that is announced larger than the bound, or larger than it is", async () => {
  const bytes = threeMf(block);
  expect((await refusal(withDirectory(bytes, 2, [[24, 2 ** 30]]))).message).toMatch(
    /unpacks to 1073741824 bytes; at most 268435456 are read/,
  );
  expect((await refusal(withDirectory(bytes, 2, [[24, 9999]]))).message).toMatch(
    /the archive announces 9999/,
  );
});

test("measureMesh refuses damaged, encrypted, doubled and unknown entries", async () => {
  const bytes = threeMf(block);
  expect((await refusal(withDirectory(bytes, 2, [[16, 1]]))).message).toMatch(/does not match its check sum/);
  expect((await refusal(withDirectory(bytes, 2, [[8, 1 + (8 << 16)]]))).message).toMatch(/is encrypted/);
  expect((await refusal(withDirectory(bytes, 2, [[8, 12 << 16]]))).message).toMatch(/packed by method 12/);
  expect((await refusal(withDirectory(bytes, 2, [[42, 5]]))).message).toMatch(/should begin at byte 5/);
  expect((await refusal(withDirectory(bytes, 2, [[20, 2 ** 30]]))).message).toMatch(/takes 1073741824 bytes/);
  expect((await refusal(withDirectory(bytes, 2, [[24, 0xffffffff]]))).message).toMatch(/zip64/);
  const twice = archive({ "3D/part.model": good, "3d/PART.model": good, "_rels/.rels": relationships() });
  expect((await refusal(twice)).message).toMatch(/is in the archive twice/);
});

test("measureMesh refuses an archive of too many entries", async () => {
  const many = Object.fromEntries(Array.from({ length: 10_001 }, (_, i) => [`n${i}`, new Uint8Array()]));
  expect((await refusal(zipSync(many, { level: 0 }))).message).toMatch(/lists 10001 entries; at most 10000/);
});

test("measureMesh reads a stored part as well, and finds it damaged", async () => {
  const parts = { "_rels/.rels": strToU8(relationships()), "3D/part.model": strToU8(good) };
  const stored = zipSync(parts, { level: 0 });
  const at = stored.findIndex((_, i) => String.fromCharCode(...stored.subarray(i, i + 7)) === "<vertex");
  const damaged = stored.slice();
  damaged[at + 11]! ^= 1;
  expect((await refusal(damaged)).message).toMatch(/"3D\/part.model" does not match its check sum/);
});

test("measureMesh refuses a document type, and so every entity that would expand", async () => {
  const laughs = `<!DOCTYPE model [<!ENTITY a "ha">${Array.from({ length: 9 }, (_, i) => `<!ENTITY b${i} "${"&a;".repeat(9)}">`).join("")}]>`;
  const fault = await ofModel(good.replace("<model", `${laughs}<model`));
  expect(fault).toMatchObject({ code: "mesh-doctype" });
  expect(fault.message).toMatch(/^line 2 of 3D\/part.model: a document type is not allowed/);
  expect((await ofModel(good.replace('x="0"', 'x="&b9;"'))).message).toMatch(/^line 5 of .*undefined entity/);
});

test("measureMesh names the line of what is wrong in the model", async () => {
  const cases: [string, RegExp][] = [
    [good.slice(0, 600), /^line \d+ of 3D\/part.model: /],
    [good.replace('x="0"', 'x="nan"'), /^line 5 of .*x of a vertex is "nan", no finite number/],
    [good.replace('y="0"', ""), /^line 5 of .*y of a vertex is "missing"/],
    [good.replace('x="2"', 'x="1e999"'), /^line 6 of .*"1e999"/],
    [good.replace('x="2"', 'x="0x2"'), /^line 6 of .*"0x2"/],
    [good.replace('v1="0"', 'v1="8"'), /^line 14 of .*v1 of a triangle is "8"; the mesh has 8 vertices/],
    [good.replace('v1="0"', 'v1="-1"'), /v1 of a triangle is "-1"/],
    [good.replace('v1="0"', 'v1="99999999999999999999"'), /v1 of a triangle is "99999/],
    [good.replace('objectid="1"', 'objectid="2"'), /there is no object "2"/],
    [good.replace('objectid="1"', 'objectid="1" transform="1 0 0"'), /a transform needs twelve numbers/],
    [good.replace('objectid="1"', 'objectid="1" transform="1 0 0 0 1 0 0 0 0 0 0 0"'), /flattens the object/],
    [good.replace('unit="millimeter"', 'unit="furlong"'), /^line 2 of .*unit "furlong"; 3MF knows micron/],
    [good.replace("<model", '<model requiredextensions="z" xmlns:z="urn:z"'), /needs the extension "z"/],
    [good.replace("/core/2015/02", "/core/1999/01"), /is not the model element of 3MF core/],
    [good.replace("</object>", `</object><object id="1"/>`), /an object id is used twice/],
    [good.replace("<resources>", "<resources><vertex/>"), /a vertex outside an object/],
    [good.replace("<resources>", "<resources>\u0001"), /^line 3 of .*disallowed character/],
  ];
  for (const [text, message] of cases) expect((await ofModel(text)).message).toMatch(message);
  expect(await ofModel(good.replace('<item objectid="1"/>', ""))).toMatchObject({ code: "mesh-empty" });
});

test("measureMesh refuses bytes that are not text", async () => {
  const bytes = strToU8(good);
  bytes[200] = 0xff;
  const file = archive({ "_rels/.rels": relationships(), "3D/part.model": bytes });
  expect((await refusal(file)).message).toMatch(/^line \d+ of 3D\/part.model: bytes that are not text/);
});

test("measureMesh refuses components in a circle, too deep, or multiplied beyond the bound", async () => {
  const group = (id: number, ...held: number[]): string =>
    `<object id="${id}"><components>${held.map((h) => `<component objectid="${h}"/>`).join("\n")}</components></object>\n`;
  const circle = modelXml(group(1, 2) + group(2, 3) + group(3, 1), '<item objectid="1"/>');
  const fault = await ofModel(circle);
  expect(fault).toMatchObject({ code: "mesh-cycle" });
  expect(fault.message).toBe('line 6 of 3D/part.model: object "1" holds itself as a component');

  const chain = Array.from({ length: 40 }, (_, i) => group(i + 2, i + 1)).reverse();
  const mesh = `<object id="1">${meshXml(block)}</object>`;
  expect((await ofModel(modelXml(mesh + chain.join(""), '<item objectid="41"/>'))).message).toMatch(
    /32 deep/,
  );

  const doubling = Array.from({ length: 25 }, (_, i) => group(i + 2, i + 1, i + 1));
  expect((await ofModel(modelXml(mesh + doubling.join(""), '<item objectid="26"/>'))).message).toMatch(
    /components multiply to more than 100000 objects/,
  );
});

test("measureMesh refuses elements too deep and too many attributes", async () => {
  expect((await ofModel(good.replace("<resources>", "<resources>".repeat(1000)))).message).toMatch(/64 deep/);
  const attributes = Array.from({ length: 1000 }, (_, i) => `a${i}=""`).join(" ");
  expect((await ofModel(good.replace("<resources>", `<resources ${attributes}>`))).message).toMatch(
    /over 64 attributes/,
  );
});
