import type * as model from "../../core/model/batch.js";
import { usualCapacityL } from "../../core/model/defaults.js";
import { type ParsedSurface, wettedWallDm2 } from "../../core/quantity/parse/parse-surface.js";
import type { Spec } from "./complete.js";
import { present } from "./present.js";

type Tank = Spec["tanks"][string];

const equipment = (given: Tank["equipment"]): model.Equipment | undefined =>
  given && { price: given.price.value, lifeHours: given.life.value };

/** Side of the cube of a volume, squared [cm2]. */
const cubeSide = (volumeL: number): ParsedSurface => ({ shape: "area", value: (volumeL * 1000) ** (2 / 3) });

export const tank = (of: Tank, name: string): model.Tank => {
  const volumeL = of.volume.value;
  const surface = of.surface ?? cubeSide(volumeL);
  return present({
    name,
    volumeL,
    capacityL: of.capacity?.value ?? usualCapacityL(volumeL),
    surfaceCm2: surface.value,
    surfaceAssumed: of.surface === undefined,
    wallAreaDm2: of.wallArea?.value ?? wettedWallDm2(surface, volumeL),
    insulation: of.insulation,
    cover: of.cover,
    heaterW: of.heater?.value,
    heaterEfficiency: of.heaterEfficiency.value,
    agitationW: of.agitation.value,
    leastL: of.least?.value,
    equipment: equipment(of.equipment),
  });
};

export const dryer = (of: Spec["dryers"][string], name: string): model.Dryer =>
  present({
    name,
    capacity: of.capacity,
    celsius: of.temperature.value,
    minutes: of.time.value,
    powerW: of.power.value,
    duty: of.duty.value,
    equipment: equipment(of.equipment),
  });
