import { mapped } from "../../mapped.js";
import { type Assumption, assumption } from "../../model/assumption.js";
import type { Batch, Tank } from "../../model/batch.js";
import type { AssumedWork } from "./assumed-work.js";

const tanksOf = ({ baths }: Batch): Tank[] => [...new Set(mapped(baths, (bath) => bath.tank))];

/** The tanks without a heater power. */
export const unknownHeaters = ({ batch }: AssumedWork): Assumption[] =>
  tanksOf(batch)
    .filter(({ heaterW }) => heaterW === undefined)
    .map(({ name }) =>
      assumption(
        "unknown-heater",
        ["tanks", name],
        `tank "${name}" has no heater power: heating up is left out of the day, the energy and the costs`,
      ),
    );

/** The tanks without a liquor surface. */
export const assumedSurfaces = ({ batch }: AssumedWork): Assumption[] =>
  tanksOf(batch)
    .filter(({ surfaceAssumed }) => surfaceAssumed)
    .map(({ name, surfaceCm2 }) =>
      assumption(
        "assumed-surface",
        ["tanks", name, "surface"],
        `tank "${name}": a liquor surface of ${Math.round(surfaceCm2)} cm2 (as deep as wide) is assumed: heat and evaporation rest on it`,
      ),
    );
