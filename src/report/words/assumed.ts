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

/** What a report assumes, under a heading of its own; nothing where it assumes nothing. */
export const assumedBlocks = (messages: readonly string[]): Block[] =>
  titledList("Assumed, not measured", messages.map(sentence));

/** What the costs leave out because no figure is given for it. */
export const notCountedBlocks = (items: readonly string[]): Block[] =>
  items.length === 0 ? [] : [paragraph(`Not given, so counted as nothing: ${items.join("; ")}.`)];
