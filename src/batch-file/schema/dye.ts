import * as z from "zod";
import { readingSaid } from "../../core/colour/reading.js";
import { defaults, standardReading } from "../../core/model/defaults.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import { lawNames } from "../../core/uptake/law/laws.js";
import { exponentRange } from "../../core/uptake/swatches/bath-response.js";
import { check } from "./check.js";
import { hex, lab, reading } from "./colours.js";
import { dilution } from "./dilution.js";
import { checkKinds } from "./dye-kind.js";
import { orEvidence, uptakeEvidence } from "./evidence.js";
import { oneOfKeys } from "./one-of-forms.js";
import { number, text } from "./plain-values.js";
import {
  assumedText,
  days,
  leadTime,
  liquidOrPowder,
  liquorTemperature,
  percent,
  quantity,
  written,
} from "./quantities.js";

/** Published energies reach 117; with this one a bath 10 K cooler takes over 100 times as long: more can only be a slip [kJ/mol]. */
const mostActivationKj = 500;

const swatchColours = ["lab", "hex", "reflectance"] as const;

/** The colour that one dip gave. */
const swatch = () =>
  z
    .strictObject({
      time: quantity(
        "time",
        { description: "dip time; 0 s for the bare base", examples: ["30 s"] },
        { least: 0, limits: "0 s or more" },
      ),
      strength: quantity(
        "percent",
        {
          description: "strength of the bath, if it was not fresh: shows how strength changes dip times",
          examples: ["50 %"],
          default: percent(defaults.swatch.strength),
        },
        { least: 0.05, most: 3, limits: "between 5 % and 300 %" },
      ).optional(),
      temperature: liquorTemperature({
        description: "temperature of the bath, if it was different: shows how temperature changes dip times",
        examples: ["76 °C"],
        otherwise: "that of the dye",
      }).optional(),
      lab: lab({ description: "CIELAB as read", examples: [[73.5, 33.0, 15.9]] }).optional(),
      hex: hex({ description: "colour as a screen shows it, sRGB, D65/2", examples: ["#d9603b"] }).optional(),
      reflectance: text({
        description: "CSV file of wavelength in nm and reflectance, relative to this file",
        examples: ["coral-180s.csv"],
      }).optional(),
    })
    .check(
      check((swatch, report) => {
        if (swatch.time?.value === 0 && ("strength" in swatch || "temperature" in swatch))
          report(
            "bare-swatch",
            ["strength" in swatch ? "strength" : "temperature"],
            "a swatch of 0 s is the bare base, which has not been in a bath",
            "leave out its strength and temperature",
          );
        const given = swatchColours.filter((key) => key in swatch);
        if (given.length === 0)
          report(
            "swatch-colour",
            [],
            "the swatch has no colour",
            "add lab: [73.5, 33.0, 15.9], or hex, or reflectance",
          );
        else if (given.length > 1)
          report(
            "swatch-colour",
            [given[1]!],
            `the swatch has ${given.length} colours`,
            `keep one of ${given.join(", ")}`,
          );
      }),
    )
    .meta(oneOfKeys(swatchColours));

/** A dye, liquid or powder, and its bath. */
export const dye = () =>
  z
    .strictObject({
      price: liquidOrPowder(
        { kind: "pricePerVolume", limits: {} },
        { kind: "pricePerMass", limits: {} },
        "write a price per litre of a liquid, such as 46.00 /L, or per kilogram of a powder, such as 90.00 /kg",
        {
          description: "price per volume of a liquid, per mass of a powder",
          examples: ["46.00 /L", "90.00 /kg"],
        },
      ).optional(),
      dilution: dilution({
        description: "dye : water by volume, or the dye's share; g/L for a powder",
        examples: ["1:9", "10 %", "100 mL/L", "20 g/L"],
      }),
      temperature: quantity("temperature", { description: "temperature of the bath", examples: ["80 °C"] }),
      measuredAt: z
        .strictObject({
          dilution: dilution({
            description: "dilution in which the swatches were dipped",
            examples: ["1:9"],
            otherwise: "the bath's own",
          }).optional(),
          temperature: liquorTemperature({
            description: "temperature at which the swatches were dipped",
            examples: ["80 °C"],
            otherwise: "the bath's own",
          }).optional(),
        })
        .meta({
          description:
            "the bath in which the swatches were dipped, if the baths of this batch differ; rate, and shades by time or swatch, are for it too",
        })
        .optional(),
      base: text({ description: "base that the swatches were dyed on", examples: ["white"] }).optional(),
      reading: reading({
        description: "illuminant and observer of the lab values",
        examples: ["D65/10"],
        default: readingSaid(standardReading),
      }).optional(),
      swatches: z
        .array(swatch())
        .meta({ description: "colours by dip time, in a fresh bath at the dilution and temperature above" })
        .optional(),
      law: z
        .enum(["auto", ...lawNames])
        .meta({ description: "uptake law", default: defaults.dye.law })
        .optional(),
      rate: quantity(
        "rate",
        {
          description: "uptake rate, to fix it by hand",
          examples: ["0.012 /s"],
          otherwise: "fitted to the swatches",
        },
        { positive: true },
      ).optional(),
      strengthExponent: number(
        {
          description:
            "p: a bath of strength s takes s^-p times as long; fixes by hand what swatches with a strength show",
          examples: [1.4],
          otherwise: "between 1 and 2, by the law",
        },
        { from: exponentRange[0], to: exponentRange[1] },
      ).optional(),
      timeFactor: number(
        {
          description: "factor on all times of this dye, as the bath log taught it: review says which",
          examples: [1.08],
          default: defaults.dye.timeFactor,
        },
        { from: 0.1, to: 10 },
      ).optional(),
      saturation: number(
        {
          description: "strength at which the uptake levels off, see the uptake laws",
          examples: [0.8],
          otherwise: "it does not level off",
        },
        { above: 0 },
      ).optional(),
      stock: liquidOrPowder(
        { kind: "volume", limits: { unit: "mL" } },
        { kind: "mass", limits: {} },
        "write a volume of a liquid, such as 1.5 L, or a mass of a powder, such as 500 g",
        { description: "amount on the shelf; the plan says what is short", examples: ["1.5 L", "500 g"] },
      ).optional(),
      leadTime: leadTime().optional(),
      activationEnergy: quantity(
        "energyPerMole",
        {
          description: "how strongly heat speeds up the uptake",
          examples: ["75 kJ/mol"],
          otherwise: `${written("energyPerMole", defaults.dye.activationEnergyJPerMol.value, { to: "kJ/mol" })}, published range 45 to 117, assumed`,
        },
        {
          positive: true,
          most: 1000 * mostActivationKj,
          limits: `above 0 and up to ${mostActivationKj} kJ/mol`,
        },
      ).optional(),
      uptake: orEvidence(
        liquidOrPowder(
          { kind: "volumePerArea", limits: { positive: true } },
          { kind: "massPerArea", limits: { positive: true } },
          "write mL of concentrate per area, such as 0.03 mL/dm2, or g of powder, such as 0.006 g/dm2",
          {
            description: "dye that the longest swatch takes up per area",
            examples: ["0.03 mL/dm2", "0.006 g/dm2"],
            otherwise: `${assumedText("volumePerArea", defaults.dye.uptakeMlPerDm2)}; for a powder, the dye in ${defaults.dye.powderUptakeLiquorMlPerDm2} mL of fresh liquor`,
          },
        ),
        uptakeEvidence(),
        "dye that the longest swatch takes up per area, or evidence of it",
      ).optional(),
      shelfLife: days(
        { description: "how long a made-up bath keeps", examples: ["60 d"] },
        { positive: true },
      ).optional(),
      notes: text({
        description: "anything to print with the plan",
        examples: ["Smells; use extraction."],
      }).optional(),
    })
    .check(
      check((dye, report) => {
        checkKinds(dye, report);
        const seen = new Map<string, number>();
        (Array.isArray(dye.swatches) ? dye.swatches : []).forEach((swatch, i) => {
          const seconds = swatch?.time?.value;
          if (seconds === undefined) return;
          const dip = `${seconds} ${swatch?.strength?.value} ${swatch?.temperature?.value}`;
          if (!seen.has(dip)) seen.set(dip, i);
          else
            report(
              "swatch-twice",
              ["swatches", i, "time"],
              `two swatches have the dip time of ${shortNumber(seconds)} s`,
              "keep one, or give their mean",
            );
        });
      }),
    );
