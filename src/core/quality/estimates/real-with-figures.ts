import { dyePace } from "../../bath/heat/working/dye-pace.js";
import type { RealBath } from "../../bath/replay/real-bath.js";
import { dipTimer } from "../../uptake/law/dip-time.js";
import { type Figures, withFigures } from "./figures.js";

/** A bath whose dye, drag-out and evaporation have other figures. */
export function realWithFigures(real: RealBath, figures: Figures): RealBath {
  const { setting, madeUp } = real;
  const { heat, handling, dye } = setting;
  const uptake = withFigures(real.uptake, figures);
  return {
    ...real,
    uptake,
    setting: {
      ...setting,
      dye: { ...dye, uptakePerDm2: figures.uptakePerDm2 },
      handling: { ...handling, dragOutMlPerDm2: figures.dragOutMlPerDm2 },
      timer: dipTimer(uptake, heat.celsius, madeUp),
      pace: dyePace(uptake.activationEnergyJPerMol, heat.celsius),
      // As if the vapour were lighter: more of it, with the heat that it takes.
      heat: { ...heat, kgPerL: heat.kgPerL / figures.evaporation },
    },
  };
}
