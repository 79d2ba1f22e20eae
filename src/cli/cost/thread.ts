import { answerAll } from "../thread.js";
import type { BatchFile } from "./batch-files.js";
import { type CostJob, type FileCosts, fileCosting } from "./file-costs.js";

/** What a thread of `cost` runs: each question is some files, the answer their costs. */
answerAll((job, io) => {
  const costs = fileCosting(job as CostJob, io);
  return async (question) => {
    const answers: FileCosts[] = [];
    for (const file of question as readonly BatchFile[]) answers.push(await costs(file));
    return answers;
  };
});
