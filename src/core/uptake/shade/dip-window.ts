import type { DipTimer } from "../law/dip-time.js";
import type { ShadeAim } from "./aim.js";

/** Times [s] at which the ends of a shade's window are reached at a strength; a far end of null is never reached. */
export function dipWindow(
  timer: DipTimer,
  { freshWindow }: Pick<ShadeAim, "freshWindow">,
  strength: number,
): readonly [number, number | null] | null {
  if (freshWindow === null) return null;
  const [from, to] = freshWindow;
  return [timer(from, strength), to === null ? null : timer(to, strength)];
}

/**
 * CIEDE2000 per second at a dip of a strength: that of a fresh bath, slowed as the dip itself is. dt_fresh/dt is found
 * from a fresh time longer by 1e-4 of itself. Null where no colour is known, or for a dip of no time.
 */
export function dipSlope(
  timer: DipTimer,
  { freshSeconds, slopePerFreshSecond }: Pick<ShadeAim, "freshSeconds" | "slopePerFreshSecond">,
  strength: number,
): number | null {
  if (slopePerFreshSecond === null || freshSeconds === 0) return null;
  const longer = freshSeconds * (1 + 1e-4);
  return (
    (slopePerFreshSecond * (longer - freshSeconds)) /
    (timer(longer, strength) - timer(freshSeconds, strength))
  );
}
