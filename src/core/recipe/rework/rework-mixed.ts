import type { Outcome } from "../../fault.js";
import type { Shade } from "../../model/batch.js";
import { aimAtMix } from "../mixed-bath/mixed-aim.js";
import type { MixedDye } from "../mixed-bath/mixed-dye.js";
import { type MissedPart, type Rework, reworkAlong } from "./rework-shade.js";

/** What a part becomes on its way to a shade of a mix, in a fresh bath of it: `reworkShade` along the mix's colours. */
export function reworkMixed(mixed: MixedDye, shade: Shade, part: MissedPart): Outcome<Rework> {
  const aim = aimAtMix(mixed, shade, undefined);
  if (!aim.ok) return aim;
  const { labAt, over, freshSeconds } = aim.value;
  const { dye, model } = mixed;
  return reworkAlong(
    {
      dye: dye.name,
      reading: dye.reading,
      labAt,
      over,
      longestSeconds: Math.max(model.longestSeconds, model.uptake.referenceSeconds),
      aimedSeconds: freshSeconds,
    },
    shade,
    part,
  );
}
