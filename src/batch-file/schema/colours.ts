import { parseReading, readingForm, readingPattern } from "../../core/colour/reading.js";
import { resolveLab } from "../../core/colour/resolve-colour.js";
import { parseHex } from "../../core/colour/screen/css-colour.js";
import { done, error, failed, type Outcome } from "../../core/fault.js";
import type { Lab, Reading } from "../../core/model/colour.js";
import { standardReading } from "../../core/model/defaults.js";
import { leaf, type Meaning, notA } from "./leaf.js";

const labForm = "write lightness 0 to 100, then a and b, such as [73.5, 33.0, 15.9]";

/** Largest a and b of a surface, either way: no surface has more, with room to spare. Common practice, no source. */
const mostAb = 150;

const labRules = {
  type: "array",
  items: { type: "number", minimum: -mostAb, maximum: mostAb },
  minItems: 3,
  maxItems: 3,
  errorMessage: labForm,
  snippet: {
    label: "[L, a, b]",
    description: "lightness 0 to 100, a (red, less green), b (yellow, less blue)",
  },
};

/** Three numbers of CIELAB. */
export const lab = (meaning: Meaning) =>
  leaf<Lab>(labRules, meaning, (input) => {
    if (
      !Array.isArray(input) ||
      input.length !== 3 ||
      !input.every((n) => typeof n === "number" && Number.isFinite(n))
    )
      return failed(
        error(
          "lab-form",
          [],
          Array.isArray(input) && input.length !== 3
            ? `write three numbers; this has ${input.length}`
            : Array.isArray(input)
              ? "one of the three is not a number"
              : notA("a list of three numbers", input),
          labForm,
        ),
      );
    const [l, a, b] = input as [number, number, number];
    return l >= 0 && l <= 100 && Math.abs(a) <= mostAb && Math.abs(b) <= mostAb
      ? done([l, a, b] as const)
      : failed(error("out-of-range", [], "no surface has this colour", labForm));
  });

const hexForm = {
  type: "string",
  pattern: "^\\s*#?(?:[0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})\\s*$",
  errorMessage: 'write # and digits 0 to 9 and a to f in quotes, such as "#d9603b"',
  snippet: { label: "#rrggbb", description: "the colour in quotes: without them # begins a comment" },
};

function readHex(input: unknown): Outcome<string> {
  if (input === null)
    return failed(
      error(
        "hex-form",
        [],
        "the colour is missing: # begins a comment",
        'put the colour in quotes: "#d9603b"',
      ),
    );
  const read = typeof input === "string" ? parseHex(input.trim().replace(/^#?/, "#")) : undefined;
  return read === undefined
    ? failed(
        error(
          "hex-form",
          [],
          "this is not a colour of three or six hexadecimal digits",
          hexForm.errorMessage,
        ),
      )
    : done(read);
}

/** A colour as a screen shows it; the value is "#rrggbb". */
export const hex = (meaning: Meaning) => leaf<string>(hexForm, meaning, readHex);

/** The same, for a surface: the colour must be one that some reflectance curve has. */
export const surfaceHex = (meaning: Meaning) =>
  leaf<string>(hexForm, meaning, (input) => {
    const read = readHex(input);
    if (!read.ok) return read;
    const colour = resolveLab({ kind: "hex", hex: read.value }, standardReading);
    return colour.ok
      ? read
      : failed(...colour.faults.map((f) => error(f.code, [], f.message, f.help ?? "read the colour again")));
  });

/** "D65/10": illuminant and observer. */
export const reading = (meaning: Meaning) =>
  leaf<Reading>({ type: "string", pattern: readingPattern, errorMessage: readingForm }, meaning, (input) => {
    const read = parseReading(typeof input === "string" ? input : "");
    return read.ok
      ? read
      : failed(error("reading-form", [], "this is not an illuminant and observer", readingForm));
  });
