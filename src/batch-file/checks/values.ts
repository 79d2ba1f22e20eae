import { convertTo } from "../../core/quantity/convert.js";
import { listed } from "../../core/quantity/text/listed.js";
import { shortNumber } from "../../core/quantity/text/short-number.js";
import { degrees, entries, items, type PartlyRead, plainDyes, type Report, roomOf } from "./report.js";

/** Values that must fit values elsewhere in the batch. */
export function checkValues(batch: PartlyRead, report: Report): void {
  const room = roomOf(batch);
  for (const [name, dye] of entries(batch.dyes)) {
    const celsius = dye.temperature?.value;
    if (celsius === undefined) continue;
    const fahrenheit = convertTo("temperature", celsius, "°F", "°C");
    if (celsius >= 100)
      report(
        "temperature",
        ["dyes", name, "temperature"],
        `${degrees(celsius)} is not below the boiling point of water`,
        fahrenheit > room && fahrenheit < 100
          ? `write ${shortNumber(celsius)} °F if you mean °F: that is ${degrees(fahrenheit)}`
          : "write a temperature below 100 °C; °F and K are read too",
      );
    else if (celsius <= room)
      report(
        "temperature",
        ["dyes", name, "temperature"],
        `${degrees(celsius)} is not above the room's ${degrees(room)}`,
        "a bath is heated: write its temperature, such as 80 °C or 176 °F",
      );
  }
  for (const [name, shade] of entries(batch.shades)) {
    const seconds = shade.swatch?.value;
    const dye = plainDyes(batch).find(([own]) => own === shade.dye)?.[1];
    if (seconds === undefined || dye === undefined) continue;
    const swatches = items(dye.swatches);
    const fresh = swatches.filter(
      ([, swatch]) =>
        swatch.strength === undefined && swatch.temperature === undefined && swatch.time?.value !== 0,
    );
    const times = fresh.flatMap(([, swatch]) =>
      swatch.time?.value === undefined ? [] : [swatch.time.value],
    );
    if (times.includes(seconds) || times.length < fresh.length) continue;
    report(
      "swatch-missing",
      ["shades", name, "swatch"],
      `the dye ${shade.dye} has no swatch of ${shortNumber(seconds)} s`,
      times.length === 0
        ? `add swatches to dyes.${shade.dye}, or give the shade as time: ${shortNumber(seconds)} s`
        : `it has swatches of ${listed(
            times.map((time) => shortNumber(time)),
            "and",
          )} s; for a time between them write time: ${shortNumber(seconds)} s`,
    );
  }
}
