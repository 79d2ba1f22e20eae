import type { Assumption } from "../../model/assumption.js";
import { dyesOf } from "../../model/dyes-of.js";
import { shortNumber } from "../../quantity/text/short-number.js";
import { madeUpStrength } from "../../uptake/law/measured-at.js";
import type { BathRun } from "../run/bath-run.js";
import { type AssumedWork, dyesInBaths, ofDye } from "./assumed-work.js";

/** How far a bath must leave full strength before the assumed exponent matters [-]. Common practice, no source. */
const strengthMatters = 0.05;

const leavesFull = ({ loads, bath }: BathRun): boolean =>
  loads.some(
    ({ result }) => Math.abs(result.strengthDuring * madeUpStrength(bath.dye) - 1) > strengthMatters,
  );

/** How far a bath must leave its temperature while parts are in it before the assumed answer to it matters [K]. Common practice, no source. */
const kelvinMatters = 0.5;

const leavesSet = ({ loads, bath }: BathRun): boolean =>
  loads.some(
    ({ result }) =>
      Math.abs((result.celsiusBefore + result.celsiusAfter) / 2 - bath.dye.celsius) > kelvinMatters,
  );

/** How dyes are assumed to answer to strength and temperature, where a bath leaves those of the swatches. */
export const assumedAnswers = ({ batch, models, runs }: AssumedWork): Assumption[] =>
  [...dyesInBaths(batch)].flatMap((dye): Assumption[] => {
    const model = models.get(dye);
    if (model === undefined) return [];
    const { response, uptake } = model;
    const holding = runs.filter((run) => dyesOf(run.bath.dye).includes(dye));
    const exponentAssumed =
      response.strengthExponent === undefined &&
      dye.strengthExponent === undefined &&
      holding.some((run) => run.bath.dye === dye && leavesFull(run));
    const energyAssumed =
      response.activationEnergyJPerMol === undefined &&
      dye.activationEnergyAssumed &&
      holding.some((run) => run.bath.dye.celsius !== uptake.referenceCelsius || leavesSet(run));
    return [
      ...(exponentAssumed
        ? [
            ofDye(
              dye,
              "assumed-strength-exponent",
              ["strengthExponent"],
              `: 1/s to 1/s² times as long at strength s is assumed; a swatch from a half-strength bath or a trial dip tells it`,
            ),
          ]
        : []),
      ...(energyAssumed
        ? [
            ofDye(
              dye,
              "assumed-activation-energy",
              ["activationEnergy"],
              `: ${shortNumber(uptake.activationEnergyJPerMol / 1000)} kJ/mol, published range 45 to 117, is assumed: its times in a bath that is not at ${shortNumber(uptake.referenceCelsius)} °C rest on it; a swatch dipped cooler tells it`,
            ),
          ]
        : []),
    ];
  });
