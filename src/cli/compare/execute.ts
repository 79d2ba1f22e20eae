import { standardReading } from "../../core/model/defaults.js";
import { type Execute, refused } from "../command.js";
import { compareTyped } from "./colours.js";
import { comparePairs } from "./pairs.js";
import { readTask } from "./read-task.js";

/** Colour differences of two colours or of a file of pairs. */
export const execute: Execute = async (request, io) => {
  const task = readTask(request);
  if (!task.ok) return refused(...task.faults);
  const { what, reading, limit } = task.value;
  if (what.kind === "colours") return compareTyped(what, task.value, request, io);
  return comparePairs(
    {
      file: what.file,
      failFast: what.failFast,
      reading: reading ?? standardReading,
      ...(limit === undefined ? {} : { limit }),
    },
    request.output,
    io,
  );
};
