import { expect, test } from "vitest";
import { logTail } from "../../../src/log/append/log-tail.js";

const head = "time,bath,event,dye,note\n";
const row = "2027-04-16T09:00,six,made-up,coral,dry\n";
const tail = (text: string) => {
  const found = logTail(Buffer.from(text));
  return { ...found, tail: Buffer.from(found.tail).toString() };
};

test("a log that ends with a line end has no tail", () => {
  for (const text of ["", head, `${head}${row}`, `${head}${row.trim()}\r\n`, head.replace("\n", "\r")])
    expect(tail(text)).toEqual({ text, tail: "", torn: false });
});

test("a whole last row that only lacks its end is read, and not torn", () => {
  expect(tail(`${head}${row.trim()}`)).toEqual({
    text: `${head}${row.trim()}`,
    tail: row.trim(),
    torn: false,
  });
});

test("a last row with every cell and a slip in one is somebody's, not torn", () => {
  const slip = row.replace("made-up", "mad-up").trim();
  expect(tail(`${head}${slip}`)).toEqual({ text: `${head}${slip}`, tail: slip, torn: false });
});

test("a last row that was cut off anywhere before its last cell is torn, and not read", () => {
  const last = row.trim();
  for (let end = 1; end <= last.lastIndexOf(","); end++)
    expect(tail(`${head}${row}${last.slice(0, end)}`)).toEqual({
      text: `${head}${row}`,
      tail: last.slice(0, end),
      torn: true,
    });
});

test("a row that was cut off inside quotes or inside a letter is torn", () => {
  expect(tail(`${head}2027-04-16T09:00,six,made-up,coral,"dry, gl`).torn).toBe(true);
  const bytes = Buffer.from(`${head}2027-04-16T09:00,six,made-up,coral,é`);
  expect(logTail(bytes.subarray(0, -1)).torn).toBe(true);
});

test("the last line of a cell of several lines is no row of its own", () => {
  const text = `${head}2027-04-16T09:00,six,made-up,coral,"dry\nand clean"`;
  expect(tail(text)).toEqual({ text, tail: 'and clean"', torn: false });
});

test("the first line that we write may be cut off too; any other file is left as it is", () => {
  expect(tail("time,bath,eve")).toEqual({ text: "", tail: "time,bath,eve", torn: true });
  expect(tail("time;bath;ev").torn).toBe(true);
  // As somebody types it who wants these columns and no others.
  expect(tail("time;bath;event;dye")).toEqual({
    text: "time;bath;event;dye",
    tail: "time;bath;event;dye",
    torn: false,
  });
  expect(tail("buy dye").torn).toBe(false);
});
