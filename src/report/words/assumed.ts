import type { Assumption } from "../../core/model/assumption.js";
import type { RestsOn } from "../../core/model/rests-on.js";
import { type Block, paragraph, titledList } from "../report.js";
import { sentence } from "./sentence.js";

const sign = "†";
const words = { uptake: "uptake", dragOut: "drag-out" } as const;

/** What is assumed, in words. */
export const restsInWords = (rests: RestsOn): string => rests.map((what) => words[what]).join(" and ");

/** The same in a cell of a table for scripts: "uptake drag_out"; empty where nothing is assumed. */
export const restsInCell = (rests: RestsOn): string =>
  rests.map((what) => words[what].replace("-", "_")).join(" ");

/** The sign behind a figure that rests on something assumed; nothing behind others. */
export const mark = (rests: RestsOn): string => (rests.length > 0 ? sign : "");

/** What the sign means; null where nothing bears it. */
export const footnote = (rests: RestsOn): string | null =>
  rests.length === 0 ? null : `${sign} rests on an assumed ${restsInWords(rests)}: see the end.`;

/** " (12 % of the cost)" */
const shareInWords = (share: number): string =>
  share < 0.005 ? " (under 1 % of the cost)" : ` (${Math.round(100 * share)} % of the cost)`;

/** What is assumed, how much of the cost rests on it, and how to find a figure of your own. */
const assumptionInWords = ({ message, costShare, help }: Assumption): string =>
  `${message}${costShare === undefined ? "" : shareInWords(costShare)}${help === undefined ? "" : `: ${help}`}`;

/** Assumptions as JSON gives them. */
export const assumedRecords = (
  assumptions: readonly Assumption[],
): Pick<Assumption, "code" | "path" | "message">[] =>
  assumptions.map((one) => ({ code: one.code, path: one.path, message: assumptionInWords(one) }));

/** What a report assumes, each once, under a heading of its own; nothing where it assumes nothing. */
export const assumedBlocks = (assumptions: readonly Assumption[]): Block[] =>
  titledList("Assumed, not measured", [...new Set(assumptions.map(assumptionInWords))].map(sentence));

/** What the costs leave out because no figure is given for it. */
export const notCountedBlocks = (items: readonly string[]): Block[] =>
  items.length === 0 ? [] : [paragraph(`Not given, so counted as nothing: ${items.join("; ")}.`)];
