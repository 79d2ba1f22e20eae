import { madeOnce } from "../../made-once.js";
import type { Room, Tank } from "../../model/batch.js";
import { evaporationKgPerH, type HeatUp, heatUp, holdingPowerW } from "./heating.js";
import { type BathHeat, bathHeat } from "./working/bath-heat.js";
import type { CelsiusTable } from "./working/celsius-table.js";
import { cooledShare } from "./working/cooled-share.js";
import { dyePace } from "./working/dye-pace.js";
import type { Pace } from "./working/flow.js";
import { type RoomAir, roomAir } from "./working/room-air.js";

/** What a tank needs at one temperature; `up` is absent where no heater is known. */
export interface TankHeat {
  /** Mains power that holds the bath while parts are dipped. */
  readonly holdingW: number;
  readonly evaporationKgPerH: number;
  /** From the room's temperature, with the tank's working volume. */
  readonly up?: HeatUp;
  readonly working: BathHeat;
}

/** Tanks at one temperature in one room that are kept; a workshop has a dozen. */
const mostHeats = 256;

/**
 * Heating up, holding, evaporation and losses of tanks, worked once for each tank, temperature and room; how baths cool,
 * and how dyes answer to temperature.
 */
export class TankHeats {
  private readonly known = new Map<string, TankHeat>();
  private readonly airs = new Map<string, RoomAir>();
  private readonly cooling = new Map<
    BathHeat,
    { readonly toCelsius: number; readonly share: CelsiusTable | undefined }
  >();
  private readonly paces = new Map<string, Pace>();

  at(tank: Tank, celsius: number, room: Room): TankHeat {
    const { name: _, equipment: __, ...thermal } = tank;
    const key = JSON.stringify([thermal, celsius, room]);
    return madeOnce(this.known, key, mostHeats, () => ({
      holdingW: holdingPowerW(tank, celsius, room),
      evaporationKgPerH: evaporationKgPerH(tank, celsius, room, "dipping"),
      ...(tank.heaterW === undefined ? {} : { up: heatUp(tank, celsius, room) }),
      working: bathHeat(tank, celsius, room, this.air(room)),
    }));
  }

  /** `cooledShare` of a tank's heat, which is `at(...).working`. */
  cooled(heat: BathHeat, toCelsius: number): CelsiusTable | undefined {
    const known = this.cooling.get(heat);
    if (known?.toCelsius === toCelsius) return known.share;
    const made = { toCelsius, share: cooledShare(heat, toCelsius) };
    this.cooling.delete(heat);
    return madeOnce(this.cooling, heat, mostHeats, () => made).share;
  }

  /** `dyePace` of an activation energy and a bath's temperature. */
  pace(activationEnergyJPerMol: number, celsius: number): Pace {
    return madeOnce(this.paces, `${activationEnergyJPerMol} ${celsius}`, mostHeats, () =>
      dyePace(activationEnergyJPerMol, celsius),
    );
  }

  private air(room: Room): RoomAir {
    return madeOnce(this.airs, JSON.stringify(room), mostHeats, () => roomAir(room));
  }
}
