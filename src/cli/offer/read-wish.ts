import { done, error, type Fault, failed, type Outcome } from "../../core/fault.js";
import { defaults } from "../../core/model/defaults.js";
import type { OfferWish } from "../../core/offer/offer-model.js";
import type { Request } from "../command.js";
import { optionReader } from "../option-reader.js";
import { usualHoursPerWeek, usualQuantities } from "./usual.js";

const perYear = { day: 365, week: 365 / 7, month: 12, year: 1 } as const;
const mostQuantities = 8;
const mostParts = 1_000_000;

/** What the command line asks for; every fault of it at once. */
export function readWish(options: Request["options"]): Outcome<OfferWish> {
  const faults: Fault[] = [];
  const refuse = (option: string, message: string, help: string): undefined => {
    faults.push(error("usage", [`--${option}`], message, help));
  };
  const typed = (option: string): string | undefined => options[option] as string | undefined;
  const number = (option: string, text: string | undefined, above: number): number | undefined => {
    if (text === undefined) return undefined;
    const value = /^\d+(\.\d+)?$/.test(text.trim()) ? Number(text) : Number.NaN;
    return value >= above
      ? value
      : refuse(option, `"${text}" is not a number that fits here`, "write a number such as 1.5");
  };
  const quantities = countsOf(typed("quantities"), (text) =>
    refuse(
      "quantities",
      `"${text}" is not a list of whole numbers`,
      `write up to ${mostQuantities} of them, such as 1,10,50`,
    ),
  );
  const listText = typed("listQuantity");
  const listQuantity = listText === undefined ? (quantities[1] ?? quantities[0]) : Number(listText);
  if (listQuantity !== undefined && !quantities.includes(listQuantity))
    refuse(
      "list-quantity",
      `"${listText}" is not one of the quantities`,
      `write one of ${quantities.join(", ")}`,
    );
  const salesText = typed("sales");
  const sales = /^\s*(\d+(?:\.\d+)?)\s*\/\s*(day|week|month|year)s?\s*$/.exec(salesText ?? "");
  const salesPerYear =
    sales === null ? undefined : Number(sales[1]) * perYear[sales[2] as keyof typeof perYear];
  if (
    salesText !== undefined &&
    !(salesPerYear !== undefined && salesPerYear > 0 && salesPerYear <= mostParts)
  )
    refuse(
      "sales",
      `"${salesText}" does not say how many parts are sold in a time`,
      "write 12/month; day, week and year are read too",
    );
  const reader = optionReader(typed);
  const bounds = { above: 0, to: 168 * 3600, must: "a week has up to 168 h: write 30 h" };
  const seconds = reader.quantity("hours", "time", bounds, { suggest: ["h"] });
  const tolerance = number("tolerance", typed("tolerance"), 0.1) ?? defaults.shade.tolerance;
  const jug = number("jug", typed("jug"), 0) ?? 0;
  faults.push(...reader.faults);
  if (faults.length > 0) return failed(...faults);
  return done({
    quantities,
    listQuantity: listQuantity!,
    tolerance,
    ...(salesPerYear === undefined ? {} : { salesPerYear }),
    hoursPerWeek: seconds === undefined ? usualHoursPerWeek : seconds / 3600,
    jug,
  });
}

/** Ascending, each once. */
function countsOf(text: string | undefined, refuse: (text: string) => void): readonly number[] {
  if (text === undefined) return usualQuantities;
  const counts = text.split(",").map((one) => (/^\s*\d+\s*$/.test(one) ? Number(one) : 0));
  if (counts.length > mostQuantities || counts.some((count) => count < 1 || count > mostParts)) {
    refuse(text);
    return usualQuantities;
  }
  return [...new Set(counts)].sort((a, b) => a - b);
}
