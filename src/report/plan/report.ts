import type { Plan } from "../../core/plan/plan-model.js";
import type { Report } from "../report.js";
import { assumedRecords } from "../words/assumed.js";
import { withCautions } from "../words/cautions.js";
import { planBlocks } from "./blocks.js";
import { planRows } from "./rows.js";

/** The run sheet in every format. */
export const planReport = (plan: Plan): Report => ({
  name: "plan",
  data: { ...plan, assumptions: assumedRecords(plan.assumptions) },
  rows: withCautions(planRows(plan), plan.cautions),
  blocks: planBlocks(plan),
});
