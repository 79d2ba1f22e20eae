import { expect, test } from "vitest";
import { ciede2000 } from "../../../../src/core/colour/difference/ciede2000.js";
import type { Lab } from "../../../../src/core/model/batch.js";
import { swatchSet } from "../../../../src/core/uptake/swatches/swatch-curves.js";
import { readText } from "../../../batch-file/read.js";

const early: Lab = [52.2, 34, 10.1];

async function codesAt(late: Lab): Promise<string[]> {
  const { batch } = await readText(`
batch: order
bases: { white: { lab: [93.0, -0.3, 0.6] } }
dyes:
  red:
    dilution: 1:9
    temperature: 80 °C
    base: white
    swatches:
      - { time: 10 s, lab: [63.6, 29.4, 8.1] }
      - { time: 20 s, lab: [${early}] }
      - { time: 40 s, lab: [${late}] }
`);
  return swatchSet(batch!.dyes[0]!).faults.map(({ code }) => code);
}

test("a longer swatch that is paler by 1 CIEDE2000 is warned of, one that is paler by less is not", async () => {
  const paler = (by: number): Lab => [early[0] + by, early[1], early[2]];
  let [near, far] = [0, 4];
  while (far - near > 1e-9) {
    const middle = (near + far) / 2;
    if (ciede2000(paler(middle), early) < 1) near = middle;
    else far = middle;
  }
  expect(await codesAt(paler(far - 0.01))).not.toContain("swatch-order");
  expect(await codesAt(paler(far + 0.01))).toContain("swatch-order");
});
