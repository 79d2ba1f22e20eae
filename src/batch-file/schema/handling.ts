import * as z from "zod";
import { defaults } from "../../core/model/defaults.js";
import { rangeInWords } from "../../core/quantity/text/range-in-words.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import { check } from "./check.js";
import { dragOutEvidence, orEvidence } from "./evidence.js";
import { count } from "./plain-values.js";
import { assumedText, liquorTemperature, percent, quantity, share, written } from "./quantities.js";

const seconds = (description: string, of: number, to = "s") => {
  const fallback = written("time", of, { to });
  return quantity("time", { description, examples: [fallback], default: fallback }).optional();
};
/** Seconds that are listed as assumed where the file leaves them out. */
const assumedSeconds = (description: string, value: number) =>
  quantity("time", {
    description,
    examples: [written("time", value)],
    otherwise: assumedText("time", { value, factor: usual.assumedFactor }),
  }).optional();
/** Minutes that are listed as assumed where the file leaves them out. */
const assumedMinutes = (description: string, value: number) => {
  const fallback = written("time", value, { from: "min" });
  return quantity(
    "time",
    {
      description,
      examples: [fallback],
      otherwise: `${fallback}, ${rangeInWords(usual.assumedFactor)}, assumed`,
    },
    { unit: "min", suggest: ["min", "s"] },
  ).optional();
};
/** Seconds that do not count where the file leaves them out. */
const uncountedSeconds = (description: string, example: string) =>
  quantity("time", { description, examples: [example], otherwise: "not counted" }).optional();
const usual = defaults.handling;

/** More rinses than this can only be a slip. */
const mostRinses = 12;

/** With 75 kJ/mol, a bath 10 K under its temperature dyes at less than half its pace: more can only be a slip [K]. */
const mostBelowKelvin = 10;

/** Times and amounts of the handling of a load. */
export const handling = () =>
  z
    .strictObject({
      load: assumedSeconds("put a load on its rack, per load", usual.loadSeconds),
      loadPart: assumedSeconds("put one more part on the rack, per part", usual.loadPartSeconds),
      drain: quantity("time", {
        description: "let it drip, per load, as the swatches were",
        examples: [written("time", usual.drainSeconds)],
        otherwise: `${written("time", usual.drainSeconds)}, assumed`,
      }).optional(),
      rinse: assumedSeconds("rinse it, per load, all rinses together", usual.rinseSeconds),
      rinses: count(
        {
          description: "baths of clear water that a load is rinsed in, one after the other",
          examples: [2],
          default: usual.rinses,
        },
        { most: mostRinses },
      ).optional(),
      rinseWater: quantity("volume", {
        description: "clear water in each of these baths",
        examples: ["2 L"],
        default: written("volume", usual.rinseWaterL),
      }).optional(),
      rinseEvery: count({
        description: "loads that one filling of rinse water serves",
        examples: [3],
        default: usual.rinseEvery,
      }).optional(),
      rinseChange: uncountedSeconds("change the rinse water, all its baths, lid on", "40 s"),
      unload: assumedSeconds("take it off, per load", usual.unloadSeconds),
      unloadPart: assumedSeconds("take one more part off, per part", usual.unloadPartSeconds),
      below: quantity(
        "temperatureDifference",
        {
          description: "how far under its own temperature a bath may be when a load goes in",
          examples: [written("temperatureDifference", usual.belowKelvin, { to: "°C" })],
          default: written("temperatureDifference", usual.belowKelvin, { to: "°C" }),
        },
        { positive: true, most: mostBelowKelvin, limits: `above 0 °C and up to ${mostBelowKelvin} °C` },
      ).optional(),
      topUpTemperature: liquorTemperature({
        description: "temperature of what is topped up",
        examples: ["50 °C"],
        otherwise: "the room's",
      }).optional(),
      topUpTime: uncountedSeconds("measure and pour one top-up, lid on till it goes in", "60 s"),
      coolTo: liquorTemperature({
        description: "a bath cools to this temperature before it is emptied, poured back or cleaned up",
        examples: [written("temperature", usual.coolToCelsius)],
        default: written("temperature", usual.coolToCelsius),
      }).optional(),
      dryerLoading: assumedMinutes("fill and empty the dryer, per run", usual.dryerLoadingMinutes),
      setUp: assumedMinutes("make up and get ready, per bath", usual.setUpMinutes),
      cleanUp: assumedMinutes("pour away or back and clean, per bath", usual.cleanUpMinutes),
      timing: seconds("how exactly a dip can be timed, 95 %", usual.timingSeconds),
      shortest: seconds("shortest dip that can be done", usual.shortestSeconds),
      longest: seconds("longest dip that is worth it", usual.longestSeconds, "min"),
      dragOut: orEvidence(
        quantity("volumePerArea", {
          description: "liquor carried out per wetted area",
          examples: ["0.8 mL/dm2"],
          otherwise: assumedText("volumePerArea", usual.dragOutMlPerDm2),
        }),
        dragOutEvidence(),
        "liquor carried out per wetted area, or evidence of it",
      ).optional(),
      liquorRatio: quantity("volumePerMass", {
        description: "least liquor per mass of parts",
        examples: ["20 L/kg"],
        otherwise: assumedText("volumePerMass", {
          value: usual.liquorRatioLPerKg,
          factor: usual.assumedFactor,
        }),
      }).optional(),
      freeboard: share(
        {
          description: "share of the capacity that stays empty",
          examples: ["5 %"],
          default: percent(usual.freeboard),
        },
        { most: 0.95, limits: "between 0 % and 95 %" },
      ).optional(),
    })
    .check(
      check((handling, report) => {
        const unread = (["shortest", "longest"] as const).some(
          (key) => key in handling && handling[key] === undefined,
        );
        const shortest = handling.shortest?.value ?? usual.shortestSeconds;
        const longest = handling.longest?.value ?? usual.longestSeconds;
        if (unread || shortest < longest) return;
        const unlessGiven = (key: "shortest" | "longest"): string =>
          handling[key] === undefined ? " (default)" : "";
        report(
          "dip-limits",
          [handling.longest === undefined ? "shortest" : "longest"],
          `the longest dip of ${shortNumber(longest)} s${unlessGiven("longest")} is not longer than the shortest of ${shortNumber(shortest)} s${unlessGiven("shortest")}`,
          handling.longest === undefined
            ? `add longest: with a longer time than shortest, such as ${shortNumber(2 * shortest)} s`
            : handling.shortest === undefined
              ? `write longest: with more than ${shortNumber(shortest)} s, or add shortest: with less than ${shortNumber(longest)} s`
              : "give longest a longer time than shortest",
        );
      }),
    );
