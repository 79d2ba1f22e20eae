import { appendFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { appendLines } from "../../../src/cli/files/append-lines.js";

const folder = mkdtempSync(join(tmpdir(), "append-"));
afterAll(() => rmSync(folder, { recursive: true }));

let count = 0;
const file = (text?: string): string => {
  const path = join(folder, `${count++}.csv`);
  if (text !== undefined) writeFileSync(path, text);
  return path;
};
const isWhole = (line: string): boolean => /^[a-z]+,\d$/.test(line.trim());
const append = (path: string, text: string, tail = "", torn = false, isNew = false) =>
  appendLines(path, { text, lineEnd: "\n", isNew, tail: Buffer.from(tail), torn, isWhole });
const textOf = (path: string): string => readFileSync(path, "utf8");

test("appendLines begins a file, and adds lines to one that is there", () => {
  const path = file();
  expect(append(path, "name,n\na,1\n", "", false, true)).toEqual({ setAside: [] });
  expect(append(path, "b,2\nc,3\n")).toEqual({ setAside: [] });
  expect(textOf(path)).toBe("name,n\na,1\nb,2\nc,3\n");
});

test("appendLines does nothing where the file does not end as it did when it was read", () => {
  const begun = file("name,n\n");
  expect(append(begun, "name,n\na,1\n", "", false, true)).toBe("changed");
  const torn = file("name,n\na,");
  expect(append(torn, "b,2\n")).toBe("changed");
  expect(append(torn, "b,2\n", "b,", true)).toBe("changed");
  expect(append(torn, "b,2\n", ",", true)).toBe("changed");
  expect([textOf(begun), textOf(torn)]).toEqual(["name,n\n", "name,n\na,"]);
});

test("appendLines ends a last line that only lacks its end", () => {
  const path = file("name,n\na,1");
  expect(append(path, "b,2\n", "a,1", false)).toEqual({ setAside: [] });
  expect(textOf(path)).toBe("name,n\na,1\nb,2\n");
});

test("appendLines moves a torn last line beside the file and leaves blanks in its place", () => {
  const path = file("name,n\na,1\nbé");
  expect(append(path, "c,3\n", "bé", true)).toEqual({ setAside: ["bé"] });
  expect(textOf(path)).toBe("name,n\na,1\n   \nc,3\n");
  expect(textOf(`${path}.torn`)).toBe("bé\n");
});

test("a tail that is not torn after all, because its writer goes on, is left alone", () => {
  const path = file("name,n\nb");
  const goesOn = {
    ...{ text: "d,4\n", lineEnd: "\n", isNew: false, isWhole },
    tail: Buffer.from("b"),
    get torn() {
      appendFileSync(path, ",2\n");
      return true;
    },
  };
  expect(appendLines(path, goesOn)).toBe("changed");
  expect(textOf(path)).toBe("name,n\nb,2\n");
});

test("a torn line that another run has set aside meanwhile is not set aside again", () => {
  const path = file("name,n\nb");
  appendFileSync(path, "\nc,3\n");
  // Both saw the torn line; the other was first.
  expect(append(path, "d,4\n", "b", true)).toBe("changed");
  expect(append(path, "d,4\n")).toEqual({ setAside: [] });
});

/** Lines whose text is asked for when the end of the file has been looked at: then another writer comes between. */
const interrupted = (path: string, text: string, other: string) =>
  appendLines(path, {
    get text() {
      appendFileSync(path, other);
      return text;
    },
    lineEnd: "\n",
    isNew: false,
    tail: Buffer.alloc(0),
    torn: false,
    isWhole,
  });

test("what a crash leaves between the reading and the writing is cut from the front of our line", () => {
  const path = file("name,n\n");
  expect(interrupted(path, "b,2\n", "aa,")).toEqual({ setAside: ["aa,"] });
  expect(textOf(path)).toBe("name,n\n   b,2\n");
  expect(textOf(`${path}.torn`)).toBe("aa,\n");
});

test("a row of another writer that ends like ours is left alone", () => {
  const path = file("name,n\n");
  expect(interrupted(path, ",2\n", "b,2\n")).toEqual({ setAside: [] });
  expect(textOf(path)).toBe("name,n\nb,2\n,2\n");
});
