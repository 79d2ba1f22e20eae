import { coldPerHot } from "../../core/bath/water.js";
import { defaults, usualCapacityL } from "../../core/model/defaults.js";
import type { Quantity } from "../../core/quantity/quantity.js";
import { describeQuantity } from "../../core/quantity/text/describe.js";
import { isMap } from "../source/is-map.js";
import { degrees, items, own, type PartlyRead, type Report, roomOf } from "./report.js";

const litres = (quantity: Quantity): string => describeQuantity("volume", quantity);

/** A kept bath must fit into its tank when it is hot. */
export function checkStarts(batch: PartlyRead, report: Report): void {
  for (const [i, bath] of items(batch.baths)) {
    const tank = own(batch.tanks, bath.tank);
    const { start } = bath;
    if (tank === undefined || tank === null || typeof start !== "object" || start === null) continue;
    const capacity = tank.capacity?.value ?? usualCapacityL(tank.volume?.value ?? Number.POSITIVE_INFINITY);
    const key = start.volume === undefined ? "coldVolume" : "volume";
    const given = start[key] as Quantity | undefined;
    const celsius = own(batch.dyes, bath.dye)?.temperature?.value;
    if (given?.value === undefined || (key === "coldVolume" && celsius === undefined)) continue;
    const hotL = key === "volume" ? given.value : given.value / coldPerHot(celsius!, roomOf(batch));
    if (hotL > capacity)
      report(
        "start-volume",
        ["baths", i, "start", key],
        `${litres(given)}${key === "volume" ? "" : `, which is ${litres({ value: hotL })} at ${degrees(celsius!)},`} does not fit into the tank ${bath.tank}, which holds ${litres({ value: capacity })}`,
        key === "volume"
          ? "give the volume that is in the tank"
          : "give the volume that the jug shows, or pour less into the tank",
      );
  }
}

/** Whether a value is there that could not be read. */
const hasFault = (map: unknown, key: string): boolean =>
  isMap(map) && Object.hasOwn(map, key) && map[key] === undefined;

/** Baths must cool to a temperature above the room's, and one that is written must be under that of the hottest. */
export function checkCoolTo(batch: PartlyRead, report: Report): void {
  const { handling, room } = batch;
  if (hasFault(handling, "coolTo") || hasFault(room, "temperature")) return;
  const given = handling?.coolTo?.value;
  const usual = defaults.handling.coolToCelsius;
  const coolTo = given ?? usual;
  const roomCelsius = roomOf(batch);
  const used = new Set(items(batch.baths).map(([, bath]) => bath.dye));
  const dyes = [...used].flatMap((name) => {
    const celsius = own(batch.dyes, name)?.temperature?.value;
    return celsius === undefined || celsius <= roomCelsius ? [] : [{ name: name!, celsius }];
  });
  const hottest = dyes.reduce<(typeof dyes)[number] | undefined>(
    (most, dye) => (most === undefined || dye.celsius > most.celsius ? dye : most),
    undefined,
  );
  if (hottest === undefined) return;
  const likely = roomCelsius < usual && usual < hottest.celsius ? usual : (roomCelsius + hottest.celsius) / 2;
  const between = `between the room's ${degrees(roomCelsius)} and the ${degrees(hottest.celsius)} of the dye ${hottest.name}, such as ${degrees(likely)}`;
  if (coolTo <= roomCelsius)
    report(
      "cool-to",
      given === undefined ? ["room", "temperature"] : ["handling", "coolTo"],
      `baths cannot cool to ${degrees(coolTo)}${given === undefined ? " (default)" : ""} in a room at ${degrees(roomCelsius)}`,
      given === undefined ? `add coolTo: under handling, ${between}` : `write a temperature ${between}`,
    );
  else if (given !== undefined && coolTo >= hottest.celsius)
    report(
      "cool-to",
      ["handling", "coolTo"],
      `baths cool to ${degrees(coolTo)} before they are emptied, but no dye is used hotter than ${degrees(hottest.celsius)}`,
      `write a temperature ${between}`,
    );
}
