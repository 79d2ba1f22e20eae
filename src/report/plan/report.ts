import type { Plan } from "../../core/batch/plan-model.js";
import type { Report } from "../report.js";
import { planBlocks } from "./blocks.js";
import { planRows } from "./rows.js";

/** The run sheet in every format. */
export const planReport = (plan: Plan): Report => ({
  name: "plan",
  data: { ...plan },
  rows: planRows(plan),
  blocks: planBlocks(plan),
});
