import * as z from "zod";
import { defaults } from "../../core/model/defaults.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import { check } from "./check.js";
import { lab, surfaceHex } from "./colours.js";
import type { Forms } from "./one-of-forms.js";
import { number } from "./plain-values.js";
import { money, percent, quantity, share, written } from "./quantities.js";

const unpriced = "costs nothing, and the cost sheet says so";

/** Prices that the workshop pays. */
export const rates = () =>
  z.strictObject({
    electricity: quantity("pricePerEnergy", {
      description: "price of electrical energy",
      examples: ["0.31 /kWh"],
      otherwise: unpriced,
    }).optional(),
    water: quantity(
      "pricePerVolume",
      { description: "price of tap water", examples: ["4.20 /m3"], otherwise: unpriced },
      { unit: "/m3", suggest: ["/m3", "/L"] },
    ).optional(),
    labour: quantity("pricePerTime", {
      description: "price of working time",
      examples: ["34.00 /h"],
      otherwise: unpriced,
    }).optional(),
    disposal: quantity("pricePerVolume", {
      description: "price of spent-liquor disposal",
      examples: ["0.60 /L"],
      otherwise: unpriced,
    }).optional(),
  });

export const room = () =>
  z.strictObject({
    temperature: quantity(
      "temperature",
      {
        description: "temperature of the room and of cold water",
        examples: ["20 °C"],
        default: written("temperature", defaults.room.celsius),
      },
      { least: 0, most: 50, limits: "between 0 °C and 50 °C" },
    ).optional(),
    humidity: share({
      description: "relative humidity of the air",
      examples: ["50 %"],
      default: percent(defaults.room.humidity),
    }).optional(),
  });

/** An undyed material. */
export const base = () =>
  z
    .strictObject({
      lab: lab({
        description: "its colour as read, CIELAB, under the reading of the dyes that are used on it",
        examples: [[92.1, -0.6, -2.3]],
      }).optional(),
      hex: surfaceHex({
        description: "its colour as a screen shows it, sRGB, D65/2; carried over to each dye's reading",
        examples: ["#e8e6e9"],
      }).optional(),
    })
    .check(
      check((base, report) => {
        if ("lab" in base && "hex" in base)
          report("base-colour", ["hex"], "the base has two colours", "keep one of lab and hex", "key");
      }),
    )
    .meta({
      forms: [
        { needs: [], keys: ["lab"] },
        { needs: [], keys: ["hex"] },
      ] satisfies Forms,
    });

export const consumables = () =>
  z.strictObject({
    perBath: money({
      description: "gloves, filters and the like, per bath",
      examples: [1.5],
      default: defaults.consumables.perBath,
    }).optional(),
    perLoad: money({
      description: "small things per load",
      examples: [0.05],
      default: defaults.consumables.perLoad,
    }).optional(),
    perPart: money({
      description: "small things per part started",
      examples: [0.02],
      default: defaults.consumables.perPart,
    }).optional(),
  });

/** From the cost of a good part to its price. */
export const pricing = () =>
  z
    .strictObject({
      overhead: quantity("percent", {
        description: "share of the cost that is added to it",
        examples: ["10 %"],
        default: percent(defaults.pricing.overhead),
      }).optional(),
      fees: share({
        description: "share of the price that a sales channel keeps",
        examples: ["4 %"],
        default: percent(defaults.pricing.fees),
      }).optional(),
      margin: share({
        description: "share of the price that is profit",
        examples: ["45 %"],
        default: percent(defaults.pricing.margin),
      }).optional(),
      tax: quantity("percent", {
        description: "share of the price that is added to it",
        examples: ["20 %"],
        default: percent(defaults.pricing.tax),
      }).optional(),
      ending: number(
        { description: "prices are rounded up to the next amount with this ending", examples: [0.9] },
        { from: 0 },
      ).optional(),
    })
    .check(
      check((pricing, report) => {
        const [fees, margin] = [
          pricing.fees?.value ?? defaults.pricing.fees,
          pricing.margin?.value ?? defaults.pricing.margin,
        ];
        if (fees + margin >= 1 - 1e-12)
          report(
            "price-shares",
            [pricing.margin === undefined ? "fees" : "margin"],
            `fees and margin make ${shortNumber((fees + margin) * 100, 6)} % of the price, so nothing is left for the cost`,
            "both are shares of the price: keep their sum below 100 %",
          );
      }),
    );
