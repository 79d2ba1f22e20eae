import type { Room, Tank } from "../../model/batch.js";
import { evaporationKgPerH, type HeatUp, heatUp, holdingPowerW } from "./heating.js";

/** What a tank's heat asks for at one temperature; `up` is absent where no heater is known. */
export interface TankHeat {
  /** Mains power that holds the bath while parts are dipped. */
  readonly holdingW: number;
  readonly evaporationKgPerH: number;
  readonly up?: HeatUp;
}

/** How a tank's heat is come by: `tankHeat`, or one that remembers. */
export type HeatOf = (tank: Tank, celsius: number, room: Room) => TankHeat;

/** Heating up, holding and evaporation of a tank at a temperature, parts being dipped. */
export const tankHeat: HeatOf = (tank, celsius, room) => ({
  holdingW: holdingPowerW(tank, celsius, room),
  evaporationKgPerH: evaporationKgPerH(tank, celsius, room, "dipping"),
  ...(tank.heaterW === undefined ? {} : { up: heatUp(tank, celsius, room) }),
});

/** A `tankHeat` that works the same tank once for each temperature and room that it meets. */
export function heatMemory(): HeatOf {
  const known = new WeakMap<Tank, Map<string, TankHeat>>();
  return (tank, celsius, room) => {
    const ofTank = known.get(tank) ?? new Map<string, TankHeat>();
    known.set(tank, ofTank);
    const key = `${celsius} ${room.celsius} ${room.humidity}`;
    const heat = ofTank.get(key) ?? tankHeat(tank, celsius, room);
    ofTank.set(key, heat);
    return heat;
  };
}
