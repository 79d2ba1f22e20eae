import * as z from "zod";
import { defaults } from "../../core/model/defaults.js";
import { check } from "./check.js";
import { hex, lab } from "./colours.js";
import { oneOfKeys } from "./one-of-forms.js";
import { number, text } from "./plain-values.js";
import { quantity } from "./quantities.js";

const targets = ["time", "swatch", "lab", "hex"] as const;

/** A colour that can be ordered. */
export const shade = () =>
  z
    .strictObject({
      dye: text({ description: "dye that gives it", examples: ["coral"] }),
      time: quantity(
        "time",
        { description: "the colour that this dip time gives in a fresh bath", examples: ["30 s"] },
        { positive: true },
      ).optional(),
      swatch: quantity(
        "time",
        { description: "the colour of the dye's swatch of this time", examples: ["180 s"] },
        { positive: true },
      ).optional(),
      lab: lab({ description: "the colour as read, CIELAB", examples: [[57.0, 54.1, 30.2]] }).optional(),
      hex: hex({
        description: "the colour as a screen shows it, sRGB, D65/2",
        examples: ["#d9603b"],
      }).optional(),
      tolerance: number(
        {
          description: "largest colour difference that passes, CIEDE2000",
          examples: [1.5],
          default: defaults.shade.tolerance,
        },
        { above: 0, to: 50 },
      ).optional(),
    })
    .check(
      check((shade, report) => {
        const given = targets.filter((key) => key in shade);
        if (given.length === 0)
          report(
            "shade-target",
            [],
            "the shade has no colour",
            "add one of time: 30 s, swatch: 180 s, lab: [57.0, 54.1, 30.2] or hex",
          );
        else if (given.length > 1)
          report(
            "shade-target",
            [given[1]!],
            `the shade gives its colour in ${given.length} ways: ${given.join(", ")}`,
            "keep one of them",
            "key",
          );
      }),
    )
    .meta(oneOfKeys(targets));
