import { expect, test } from "vitest";
import { enterBody, newWelder, weldExactly } from "../../../../src/core/part/surface/weld.js";
import { weldNear } from "../../../../src/core/part/surface/weld-near.js";
import { newChunk } from "../../../../src/core/part/triangles.js";

const ways = {
  weldExactly,
  weldNear: (...[welder, chunk, corners, ids]: Parameters<typeof weldExactly>) =>
    weldNear(welder, 1e-3, chunk, corners, ids),
};

for (const [name, weld] of Object.entries(ways))
  test(`${name} gives places numbers of their own in each of 5000 bodies`, () => {
    const welder = newWelder(16);
    const chunk = newChunk();
    const ids = new Int32Array(2);
    // The second place is within the tolerance of the first, in the next cell.
    const found = Array.from({ length: 5000 }, (_, body) => {
      enterBody(welder, body);
      chunk.set([0.0019, 2, 3, 0.0021, 2, 3]);
      weld(welder, chunk, 2, ids);
      return [...ids];
    });
    const joined = name === "weldNear";
    expect(found).toEqual(
      Array.from({ length: 5000 }, (_, body) => (joined ? [body, body] : [2 * body, 2 * body + 1])),
    );
    expect(welder.count).toBe(joined ? 5000 : 10_000);
  });

test("weldNear joins corners within the tolerance on every side of a cell, and no others", () => {
  const chunk = newChunk();
  const ids = new Int32Array(2);
  for (let n = 0; n < 200; n++) {
    const at = [0, 1, 2].map((k) => Math.sin(n * 3 + k) * 5);
    const step = [0, 1, 2].map((k) => Math.cos(n * 7 + k));
    const longest = Math.max(...step.map(Math.abs));
    for (const [factor, same] of [
      [0.99, true],
      [1.01, false],
    ] as const) {
      const other = at.map((x, k) => x + (step[k]! / longest) * factor * 0.01);
      chunk.set([...at, ...other]);
      weldNear(newWelder(16), 0.01, chunk, 2, ids);
      expect(ids[0] === ids[1]).toBe(same);
    }
  }
});
