import { expect, test } from "vitest";
import { ciede2000, ciede2000Pairs, ciede2000Terms } from "../../src/core/colour/difference/ciede2000.js";
import type { Lab } from "../../src/core/model/colour.js";

// source: sharma2005 table 1, the 34 pairs: L1 a1 b1 L2 a2 b2 and the difference to 4 decimals
const table = `
50 2.6772 -79.7751 50 0 -82.7485 2.0425
50 3.1571 -77.2803 50 0 -82.7485 2.8615
50 2.8361 -74.02 50 0 -82.7485 3.4412
50 -1.3802 -84.2814 50 0 -82.7485 1.0000
50 -1.1848 -84.8006 50 0 -82.7485 1.0000
50 -0.9009 -85.5211 50 0 -82.7485 1.0000
50 0 0 50 -1 2 2.3669
50 -1 2 50 0 0 2.3669
50 2.49 -0.001 50 -2.49 0.0009 7.1792
50 2.49 -0.001 50 -2.49 0.001 7.1792
50 2.49 -0.001 50 -2.49 0.0011 7.2195
50 2.49 -0.001 50 -2.49 0.0012 7.2195
50 -0.001 2.49 50 0.0009 -2.49 4.8045
50 -0.001 2.49 50 0.001 -2.49 4.8045
50 -0.001 2.49 50 0.0011 -2.49 4.7461
50 2.5 0 50 0 -2.5 4.3065
50 2.5 0 73 25 -18 27.1492
50 2.5 0 61 -5 29 22.8977
50 2.5 0 56 -27 -3 31.9030
50 2.5 0 58 24 15 19.4535
50 2.5 0 50 3.1736 0.5854 1.0000
50 2.5 0 50 3.2972 0 1.0000
50 2.5 0 50 1.8634 0.5757 1.0000
50 2.5 0 50 3.2592 0.335 1.0000
60.2574 -34.0099 36.2677 60.4626 -34.1751 39.4387 1.2644
63.0109 -31.0961 -5.8663 62.8187 -29.7946 -4.0864 1.2630
61.2901 3.7196 -5.3901 61.4292 2.248 -4.962 1.8731
35.0831 -44.1164 3.7933 35.0232 -40.0716 1.5901 1.8645
22.7233 20.0904 -46.694 23.0331 14.973 -42.5619 2.0373
36.4612 47.858 18.3852 36.2715 50.5065 21.2231 1.4146
90.8027 -2.0831 1.441 91.1528 -1.6435 0.0447 1.4441
90.9257 -0.5406 -0.9208 88.6381 -0.8985 -0.7239 1.5381
6.7747 -0.2908 -2.4247 5.8714 -0.0985 -2.2286 0.6377
2.0776 0.0795 -1.135 0.9033 -0.0636 -0.5514 0.9082
`;
const pairs = table
  .trim()
  .split("\n")
  .map((line) => line.split(" ").map(Number));

test("ciede2000 returns all 34 published differences to 4 decimals, in both directions", () => {
  expect(pairs).toHaveLength(34);
  for (const [L1, a1, b1, L2, a2, b2, published] of pairs as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ][]) {
    const first: Lab = [L1, a1, b1];
    const second: Lab = [L2, a2, b2];
    expect(ciede2000(first, second).toFixed(4)).toBe(published.toFixed(4));
    expect(ciede2000(second, first).toFixed(4)).toBe(published.toFixed(4));
  }
});

test("ciede2000Pairs returns for many pairs what ciede2000 returns for each", () => {
  const flat = Float64Array.from(pairs.flatMap((row) => row.slice(0, 6)));
  const many = ciede2000Pairs(flat, new Float64Array(34));
  pairs.forEach((row, i) => {
    expect(many[i]).toBe(ciede2000(row.slice(0, 3) as unknown as Lab, row.slice(3, 6) as unknown as Lab));
  });
});

test("ciede2000Terms returns parts that change sign with the direction and nothing else", () => {
  for (const row of pairs) {
    const first = row.slice(0, 3) as unknown as Lab;
    const second = row.slice(3, 6) as unknown as Lab;
    const there = ciede2000Terms(first, second);
    const back = ciede2000Terms(second, first);
    expect(there.deltaL + back.deltaL).toBe(0);
    expect(there.deltaC + back.deltaC).toBe(0);
    expect(there.deltaH + back.deltaH).toBeCloseTo(0, 12);
    expect(there.deltaE).toBeCloseTo(back.deltaE, 12);
  }
});
