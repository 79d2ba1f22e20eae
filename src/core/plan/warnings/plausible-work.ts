import { type Fault, warning } from "../../fault.js";
import { mapped } from "../../mapped.js";
import type { Batch, Handling } from "../../model/batch.js";
import { defaults } from "../../model/defaults.js";
import { convertTo } from "../../quantity/convert.js";
import { shortNumber } from "../../quantity/text/short-number.js";

// Bounds that no shop of this kind passes but by a slip of unit or decimal. Common practice, no source.
/** Acid dyes hardly go into nylon below this. */
const coolestBathCelsius = 40;
/** Nylon yellows in hotter air. */
const hottestDryerCelsius = 130;
const shortestDryingMinutes = 5;
const longestHandlingSeconds = 1800;
const leastYield = 0.5;
/** Hotter liquor burns the skin within minutes. */
const hottestEmptyingCelsius = 50;
/** More liquor stays on no part that drains. */
const mostDragOutMlPerDm2 = 20;

/** Steps of a load whose time is given. */
const steps = {
  load: "loadSeconds",
  drain: "drainSeconds",
  rinse: "rinseSeconds",
  unload: "unloadSeconds",
} as const satisfies Readonly<Record<string, keyof Handling>>;

/** What to write where a temperature in °F is one that is usual in °C. */
function celsiusMeant(celsius: number, least: number, most: number): string {
  const number = convertTo("temperature", celsius, "°C", "°F");
  return number >= least && number <= most
    ? `write ${shortNumber(number)} °C if °C is meant`
    : "check the temperature and its unit";
}

/** Warnings on temperatures, times and shares of the work that are hardly meant. */
export function implausibleWork(
  batch: Pick<Batch, "baths" | "dryers" | "handling" | "orders" | "yield">,
): readonly Fault[] {
  const faults: Fault[] = [];
  for (const dye of new Set(mapped(batch.baths, (bath) => bath.dye)))
    if (dye.celsius < coolestBathCelsius)
      faults.push(
        warning(
          "bath-cool",
          ["dyes", dye.name, "temperature"],
          `dye "${dye.name}" is used at ${shortNumber(dye.celsius)} °C, where dyes hardly go in`,
          celsiusMeant(dye.celsius, coolestBathCelsius, 100),
        ),
      );
  for (const dryer of batch.dryers) {
    if (dryer.celsius > hottestDryerCelsius)
      faults.push(
        warning(
          "dryer-hot",
          ["dryers", dryer.name, "temperature"],
          `dryer "${dryer.name}" is at ${shortNumber(dryer.celsius)} °C, where parts suffer`,
          `write ${shortNumber(dryer.celsius)} °F if °F is meant`,
        ),
      );
    if (dryer.minutes < shortestDryingMinutes)
      faults.push(
        warning(
          "drying-short",
          ["dryers", dryer.name, "time"],
          `dryer "${dryer.name}" dries in ${shortNumber(60 * dryer.minutes)} s`,
          `write ${shortNumber(60 * dryer.minutes)} min if minutes are meant`,
        ),
      );
  }
  const { coolToCelsius, dragOutMlPerDm2 } = batch.handling;
  if (coolToCelsius > hottestEmptyingCelsius)
    faults.push(
      warning(
        "cool-to-hot",
        ["handling", "coolTo"],
        `baths are emptied at ${shortNumber(coolToCelsius)} °C, which scalds`,
        `let them cool under ${hottestEmptyingCelsius} °C; ${shortNumber(defaults.handling.coolToCelsius)} °C is usual`,
      ),
    );
  const carried = [
    { path: ["handling", "dragOut"], what: "parts carry", mlPerDm2: dragOutMlPerDm2 },
    ...mapped([...new Set(mapped(batch.orders, ({ part }) => part))], (part) => ({
      path: ["parts", part.name, "dragOut"],
      what: `part "${part.name}" carries`,
      mlPerDm2: part.dragOutMlPerDm2 ?? 0,
    })),
  ];
  for (const { path, what, mlPerDm2 } of carried)
    if (mlPerDm2 > mostDragOutMlPerDm2)
      faults.push(
        warning(
          "drag-out-large",
          path,
          `${what} ${shortNumber(mlPerDm2)} mL of liquor out per dm2, a film of ${shortNumber(mlPerDm2 / 10, 2)} mm`,
          `write ${shortNumber(mlPerDm2)} mL/m2 if that is meant`,
        ),
      );
  for (const [step, key] of Object.entries(steps)) {
    const minutes = batch.handling[key] / 60;
    if (batch.handling[key] > longestHandlingSeconds)
      faults.push(
        warning(
          "handling-long",
          ["handling", step],
          `${step} takes ${shortNumber(minutes)} min of each load`,
          `write ${shortNumber(minutes)} s if seconds are meant`,
        ),
      );
  }
  if (batch.yield < leastYield)
    faults.push(
      warning(
        "yield-low",
        ["yield"],
        `of 100 parts only ${shortNumber(100 * batch.yield)} come out good`,
        10 * batch.yield >= leastYield && 10 * batch.yield <= 1
          ? `write ${shortNumber(1000 * batch.yield)} % if the decimal point is misplaced`
          : "the yield is the share of good parts: check it",
      ),
    );
  return faults;
}
