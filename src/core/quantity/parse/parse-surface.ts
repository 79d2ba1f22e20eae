import { done, error, type Fault, failed, type Outcome } from "../../fault.js";
import type { Quantity } from "../quantity.js";
import { tidyNumber } from "./number-text.js";
import { parseQuantity, splitPlusMinus } from "./parse-quantity.js";

/** The liquor surface of a tank, as read [cm2]; the shape is that of the tank seen from above. */
export type ParsedSurface = Quantity &
  (
    | { readonly shape: "box"; readonly lengthCm: number; readonly widthCm: number }
    | { readonly shape: "cylinder"; readonly diameterCm: number }
    | { readonly shape: "area" }
  );

/** The half width as a share of the value. */
const relative = (quantity: Quantity): number => (quantity.plusMinus ?? 0) / quantity.value;
const spread = (value: number, share: number): Quantity =>
  share === 0 ? { value } : { value, plusMinus: value * share };

/** Help for two sides without a unit: it shows both. */
const asSides =
  (text: string) =>
  (fault: Fault): Fault => ({
    ...fault,
    help:
      fault.code === "unit-missing"
        ? `write ${text.trim().replace(/\s*[x×*]\s*/i, " cm x ")} cm`
        : surfaceForms,
  });

/** The forms that a surface has. */
export const surfaceForms = "write 450 cm2, or 30 cm x 15 cm, or diameter 32 cm";

const nothing = (path: Fault["path"]): Outcome<never> =>
  failed(error("not-positive", path, "a surface must be above 0", surfaceForms));

/**
 * Reads a liquor surface: an area, the two sides of a box, or the diameter of a cylinder.
 * @example
 * parseSurface("450 cm2").value // => {"shape": "area", "value": 450}
 * parseSurface("30 cm x 15 cm").value.value // => 450
 * parseSurface("diameter 32 cm").value.value // => 804.2477
 */
export function parseSurface(text: string, path: readonly (string | number)[] = []): Outcome<ParsedSurface> {
  if (text.length > 100)
    return failed(error("quantity-form", path, "the text is too long for a surface", surfaceForms));
  const round =
    /^\s*(?:(?:diameter|diam\.?|dia\.?|ø|⌀)\s*(.*)|(.*?)\s*(?:diameter|diam\.?|dia\.?|ø|⌀))\s*$/i.exec(text);
  if (round !== null) {
    const diameter = parseQuantity("length", round[1] ?? round[2] ?? "", { path });
    if (!diameter.ok) return failed(...diameter.faults.map((f) => ({ ...f, help: surfaceForms })));
    const cm = diameter.value.value;
    return cm > 0
      ? done({
          shape: "cylinder",
          diameterCm: cm,
          ...spread((Math.PI / 4) * cm * cm, 2 * relative(diameter.value)),
        })
      : nothing(path);
  }
  const sides = text.split(/\s*[x×*]\s*(?=[\d.])/i);
  if (sides.length === 2) {
    const [left, right] = sides as [string, string];
    const second = parseQuantity("length", right, { path });
    if (!second.ok) return failed(...second.faults.map(asSides(text)));
    // "30 x 15 cm": one unit for both sides.
    const unit = /^[\d.\s]+$/.test(left) ? splitPlusMinus(right)[0].replace(/^[\d.\s]+/, "") : "";
    const first = parseQuantity("length", `${left} ${unit}`, { path });
    if (!first.ok) return failed(...first.faults.map(asSides(text)));
    const [lengthCm, widthCm] = [first.value.value, second.value.value];
    return lengthCm * widthCm > 0
      ? done({
          shape: "box",
          lengthCm,
          widthCm,
          ...spread(lengthCm * widthCm, Math.hypot(relative(first.value), relative(second.value))),
        })
      : nothing(path);
  }
  const length = parseQuantity("length", text);
  const one = /^\s*([\d.]+)\s*(\S+)\s*$/.exec(text);
  if (length.ok && length.value.value > 0 && one !== null)
    return failed(
      error(
        "unit-wrong",
        path,
        `${text.trim()} is a length, not a surface`,
        `write diameter ${one[1]} ${one[2]} of a round tank, or both sides such as ${one[1]} ${one[2]} x ${tidyNumber(Math.ceil((Number(one[1]) * 2) / 3))} ${one[2]}`,
      ),
    );
  const area = parseQuantity("area", text, { path, unit: "cm2", suggest: ["cm2", "dm2"] });
  if (!area.ok)
    return failed(
      ...area.faults.map((f) =>
        f.code === "unit-wrong" || f.code === "quantity-form" ? { ...f, help: surfaceForms } : f,
      ),
    );
  return area.value.value > 0 ? done({ shape: "area", ...area.value }) : nothing(path);
}

/**
 * Walls and floor that the liquor wets [dm2]: those of a box or cylinder of the surface's shape that holds the volume
 * [L]. A surface given as an area counts as a square.
 * @source platingCourse areas and volumes
 * @example
 * wettedWallDm2({shape: "box", lengthCm: 30, widthCm: 15, value: 450}, 6) // => 16.5
 * wettedWallDm2({shape: "area", value: 100}, 1) // => 5
 */
export function wettedWallDm2(surface: ParsedSurface, volumeL: number): number {
  const depthCm = (volumeL * 1000) / surface.value;
  const roundCm =
    surface.shape === "cylinder"
      ? 2 * Math.sqrt(Math.PI * surface.value)
      : surface.shape === "box"
        ? 2 *
          (surface.lengthCm + surface.widthCm) *
          Math.sqrt(surface.value / (surface.lengthCm * surface.widthCm))
        : 4 * Math.sqrt(surface.value);
  return (surface.value + roundCm * depthCm) / 100;
}
