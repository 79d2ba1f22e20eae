// A writer for the crash test: records rows in a log without a pause, so many or without end, and says the note of each
// one that is recorded.
import { writeSync } from "node:fs";
import type { Request } from "../../src/cli/command.js";
import { nodeIo } from "../../src/cli/node-io.js";
import { execute } from "../../src/cli/record/execute.js";

const [log = "", writer = "", rows = "Infinity"] = process.argv.slice(2);
const output: Request["output"] = {
  format: "text",
  set: [],
  strict: false,
  quiet: false,
  colour: false,
  csv: { delimiter: ",", decimal: ".", bom: false },
};
const load = { bath: "six", event: "load", part: "hook", shade: "coral-light", parts: "24", seconds: "31" };

for (let count = 1; count <= Number(rows); count++) {
  const note = `${writer}.${count}`;
  const { report, diagnostics } = await execute(
    { args: [log], options: { ...load, note }, output },
    nodeIo(),
  );
  if (report === undefined) {
    writeSync(2, JSON.stringify(diagnostics));
    break;
  }
  writeSync(1, `${note}\n`);
}
