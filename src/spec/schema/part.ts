import * as z from "zod";
import { check } from "./check.js";
import { count, text } from "./plain-values.js";
import { money, quantity } from "./quantities.js";

/** A kind of part that is dyed. */
export const part = () =>
  z
    .strictObject({
      mass: quantity(
        "mass",
        { description: "mass of one part", examples: ["6.4 g"] },
        { positive: true },
      ).optional(),
      area: quantity(
        "area",
        { description: "all wetted surface of one part", examples: ["41 cm2"] },
        { positive: true },
      ).optional(),
      volume: quantity(
        "volume",
        { description: "volume of one part", examples: ["6.9 cm3"], default: "mass / 0.93 g/cm3" },
        { unit: "cm3", suggest: ["cm3", "mL"], positive: true },
      ).optional(),
      mesh: text({
        description: "mesh file that gives mass, area and volume, relative to this file",
        examples: ["hook.stl"],
      }).optional(),
      blank: z
        .union([
          money({ description: "cost of the undyed part, whatever its base", examples: [1.84] }),
          z.record(
            z.string(),
            money({ description: "cost of the undyed part of that base", examples: [1.84] }),
          ),
        ])
        .meta({ description: "cost of the undyed part: one amount, or one per base" })
        .optional(),
      perLoad: count({ description: "most that one load may hold in any tank", examples: [24] }).optional(),
    })
    .check(
      check((part, report) => {
        if ("mesh" in part) return;
        const lacking = (["mass", "area"] as const).filter((key) => !(key in part));
        if (lacking.length > 0)
          report(
            "missing-key",
            [lacking[0]!],
            `the part has no ${lacking.join(" and no ")}`,
            `add ${lacking.map((key) => (key === "mass" ? "mass: 6.4 g" : "area: 41 cm2")).join(" and ")}, or mesh: hook.stl`,
            "key",
          );
      }),
    );
