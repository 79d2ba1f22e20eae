import * as z from "zod";
import { topUpBelow } from "../../core/bath/load/load-size.js";
import { error, failed } from "../../core/fault.js";
import { defaults } from "../../core/model/defaults.js";
import { type ParsedSurface, parseSurface, surfaceForms } from "../../core/quantity/parse/parse-surface.js";
import { describeQuantity } from "../../core/quantity/text/describe.js";
import { check } from "./check.js";
import { leaf, notA } from "./leaf.js";
import { count } from "./plain-values.js";
import { money, percent, quantity, share, written } from "./quantities.js";

/** Price and life of equipment. */
const equipment = () =>
  z
    .strictObject({
      price: money({ description: "price of the equipment", examples: [140.0] }),
      life: quantity(
        "time",
        { description: "hours of use until it is worn out", examples: ["1500 h"] },
        { unit: "h", suggest: ["h", "d"], positive: true },
      ),
    })
    .meta({ description: "cost of the equipment, spread over the hours that it lasts" });

/** A heated tank. */
export const tank = () =>
  z
    .strictObject({
      volume: quantity(
        "volume",
        { description: "working volume, measured hot", examples: ["6 L"] },
        { positive: true },
      ),
      capacity: quantity(
        "volume",
        {
          description: "volume to the brim",
          examples: ["7.2 L"],
          otherwise: `${defaults.tank.capacityPercent / 100} x volume`,
        },
        { positive: true },
      ).optional(),
      surface: leaf<ParsedSurface>(
        { type: "string", reads: "surface", errorMessage: surfaceForms },
        {
          description: "liquor surface: an area, the sides of a box or the diameter of a cylinder",
          examples: ["450 cm2", "30 cm x 15 cm", "diameter 32 cm"],
          otherwise: "that of a cube of this volume, assumed",
        },
        (input) =>
          typeof input === "string" || typeof input === "number"
            ? parseSurface(String(input))
            : failed(error("wrong-type", [], notA("a surface", input), surfaceForms)),
      ).optional(),
      wallArea: quantity(
        "area",
        {
          description: "walls and floor that lose heat",
          examples: ["18 dm2"],
          otherwise: "walls and floor up to the liquor, of a box or cylinder of this surface and volume",
        },
        { suggest: ["dm2", "cm2"], positive: true },
      ).optional(),
      insulation: z
        .enum(["none", "housing", "foam"])
        .meta({
          description: "around the walls: none loses 12, housing 6, foam 2.2 W/(m2 K)",
          default: defaults.tank.insulation,
        })
        .optional(),
      cover: z
        .enum(["none", "lid", "balls"])
        .meta({
          description:
            "over the liquor: none, a lid (on while heating up, off while dipping) or balls (always on)",
          default: defaults.tank.cover,
        })
        .optional(),
      heater: quantity(
        "power",
        { description: "power of the heater", examples: ["400 W"], otherwise: "heating up is left out" },
        { positive: true },
      ).optional(),
      heaterEfficiency: share(
        {
          description: "share of the heater's power that reaches the liquor",
          examples: ["90 %"],
          default: percent(defaults.tank.heaterEfficiency),
        },
        { positive: true, limits: "above 0 % and up to 100 %" },
      ).optional(),
      agitation: quantity("power", {
        description: "ultrasound or pump, on while dipping",
        examples: ["180 W"],
        default: written("power", defaults.tank.agitationW),
      }).optional(),
      least: quantity(
        "volume",
        {
          description: "with less liquor, measured hot, heater and ultrasound must not run",
          examples: ["4.5 L"],
          otherwise: "no limit of the tank itself",
        },
        { positive: true },
      ).optional(),
      equipment: equipment().optional(),
    })
    .check(
      check((tank, report) => {
        const { volume, capacity, least } = tank;
        if (
          volume !== undefined &&
          least !== undefined &&
          least.value > topUpBelow * volume.value * (1 + 1e-12)
        )
          report(
            "least",
            ["least"],
            `the least level of ${describeQuantity("volume", least)} is over 98 % of the working volume of ${describeQuantity("volume", volume)}, to which a bath falls before it is topped up`,
            "least is the volume under which heater and ultrasound must not run: write at most 98 % of the working volume",
          );
        if (volume !== undefined && capacity !== undefined && capacity.value <= volume.value)
          report(
            "capacity",
            ["capacity"],
            `the capacity of ${describeQuantity("volume", capacity)} is not more than the working volume of ${describeQuantity("volume", volume)}`,
            "capacity is the volume to the brim, volume the working volume: leave room for the parts",
          );
      }),
    );

/** A dryer; parts go in after the rinse. */
export const dryer = () =>
  z.strictObject({
    capacity: countOfParts(),
    temperature: quantity(
      "temperature",
      { description: "temperature of the air", examples: ["70 °C"] },
      { least: 20, most: 200, limits: "between 20 °C and 200 °C" },
    ),
    time: quantity(
      "time",
      { description: "time of one run", examples: ["60 min"] },
      { unit: "min", suggest: ["min", "h"], positive: true },
    ),
    power: quantity("power", { description: "power while heating", examples: ["500 W"] }),
    duty: share({
      description: "share of the time that it heats",
      examples: ["60 %"],
      default: percent(defaults.dryer.duty),
    }).optional(),
    equipment: equipment().optional(),
  });

const countOfParts = () => count({ description: "parts in one run", examples: [60] });
