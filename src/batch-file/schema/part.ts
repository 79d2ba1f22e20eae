import * as z from "zod";
import { done, error, failed } from "../../core/fault.js";
import { defaults } from "../../core/model/defaults.js";
import type { MeshUnit } from "../../core/part/units.js";
import { listed } from "../../core/quantity/text/listed.js";
import { modelUnit, modelUnitNames } from "../resources/model-units.js";
import { blank } from "./blank.js";
import { blankStock } from "./blank-stock.js";
import { check } from "./check.js";
import { leaf, notA } from "./leaf.js";
import type { Forms } from "./one-of-forms.js";
import { count, text } from "./plain-values.js";
import { leadTime, quantity, written } from "./quantities.js";

// A leaf, since a fault in a plain enum would make zod report the first branch of the union instead.
const modelUnitLeaf = () =>
  leaf<MeshUnit>(
    { type: "string", enum: modelUnitNames, errorMessage: `write ${listed(modelUnitNames)}` },
    {
      description: "unit that an STL is drawn in; a 3MF file names its own",
      default: defaults.part.meshUnit,
      examples: ["inch"],
    },
    (input) => {
      const unit = modelUnit(String(input));
      return unit === undefined
        ? failed(
            error(
              "unknown-word",
              [],
              typeof input === "string"
                ? `${input} is not a unit of a model`
                : notA("a unit of a model", input),
              `write ${listed(modelUnitNames)}`,
            ),
          )
        : done(unit);
    },
  );

/** A model file that a part is measured from. */
const mesh = () =>
  z
    .union([
      text({ description: "name of the file", examples: ["models/hook.stl"] }),
      z
        .strictObject({
          file: text({ description: "name of the file", examples: ["models/hook.stl"] }),
          unit: modelUnitLeaf().optional(),
        })
        .meta({ description: "a file that is not drawn in mm" }),
    ])
    .meta({
      description:
        "model file, STL or 3MF, relative to this file; gives area and volume, and mass by the density",
      examples: ["models/hook.stl", { file: "models/hook.stl", unit: "inch" }],
    });

/** Water has 4.2 and solids have less: more can only be a slip [kJ/(kg K)]. */
const mostHeatCapacity = 10;

/** What a part needs without a model file. */
const givenKeys = ["mass", "area"] as const;

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
        { description: "volume of one part", examples: ["6.9 cm3"], otherwise: "mass / density" },
        { unit: "cm3", suggest: ["cm3", "mL"], positive: true },
      ).optional(),
      mesh: mesh().optional(),
      density: quantity(
        "density",
        {
          description: "density of the material; gives mass from a model's volume, or volume from mass",
          examples: ["0.93 g/cm3"],
          otherwise: `${written("density", defaults.part.densityGPerCm3)}, sintered nylon, assumed`,
        },
        { positive: true },
      ).optional(),
      blank: blank().optional(),
      stock: blankStock().optional(),
      leadTime: leadTime().optional(),
      perLoad: count({
        description: "most parts in one load, in any tank",
        examples: [24],
        otherwise: "no limit of the part itself",
      }).optional(),
      dragOut: quantity("volumePerArea", {
        description: "liquor that this part carries out per wetted area; cups and blind holes carry more",
        examples: ["1.6 mL/dm2"],
        otherwise: "that of handling",
      }).optional(),
      heatCapacity: quantity(
        "specificHeat",
        {
          description: "specific heat of the material: cold parts cool the bath by it",
          examples: ["1.7 kJ/(kg K)"],
          default: written("specificHeat", defaults.part.heatCapacityKjPerKgK),
        },
        { least: 0, most: mostHeatCapacity, limits: `between 0 and ${mostHeatCapacity} kJ/(kg K)` },
      ).optional(),
    })
    .check(
      check((part, report) => {
        if ("mesh" in part) return;
        const lacking = givenKeys.filter((key) => !(key in part));
        if (lacking.length > 0)
          report(
            "missing-key",
            [lacking[0]!],
            `the part has no ${lacking.join(" and no ")}`,
            `add ${lacking.map((key) => (key === "mass" ? "mass: 6.4 g" : "area: 41 cm2")).join(" and ")}, or mesh: hook.stl`,
            "key",
          );
      }),
    )
    .meta({
      forms: [{ needs: ["mesh"] }, { needs: givenKeys }] satisfies Forms,
    });
