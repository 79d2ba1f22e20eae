import { defaults } from "../../core/model/defaults.js";
import { formatsOf } from "../../report/format/formats.js";
import type { CommandDeclaration } from "../command.js";

/** `mix` as help and completion know it. */
export const mix: CommandDeclaration = {
  name: "mix",
  group: "Without a batch file",
  arguments: "",
  summary: "make-up, top-up and on-weight amounts",
  details:
    "Make-up: --volume and --dilution. Top-up: also --from-volume and --from-strength. Thinning: those two and --strength. On weight: --goods and --depth.",
  options: [
    { flags: "--volume <volume>", description: "bath to reach, measured hot: 6L" },
    { flags: "--dilution <ratio>", description: 'dye : water, 1:9; or "10 %", 100mL/L, 20g/L' },
    { flags: "--temperature <temp>", description: "of the bath: 80C; default the room's" },
    { flags: "--room <temp>", description: `where amounts are measured: default ${defaults.room.celsius}C` },
    { flags: "--from-volume <volume>", description: "what is in the tank, measured hot" },
    { flags: "--from-strength <share>", description: "its strength; a fresh bath has 100%" },
    { flags: "--strength <share>", description: "strength to reach: default 100%" },
    { flags: "--goods <mass>", description: "mass of the parts: 250g" },
    { flags: "--depth <share>", description: "dye per mass of parts: 2%" },
    { flags: "--stock <strength>", description: "dye solution in use: 10g/L or 1% (g in 100 mL)" },
    { flags: "--ratio <ratio>", description: "goods : liquor, 1:20; or 20L/kg" },
    { flags: "--dye-strength <share>", description: "of this lot of dye against standard: 95%" },
  ],
  examples: [
    "dipwright mix --volume 6L --dilution 1:9 --temperature 80C",
    "dipwright mix --from-volume 5.6L --from-strength 92% --volume 6L \\\n    --dilution 1:9 --temperature 80C",
    "dipwright mix --goods 250g --depth 2% --stock 1% --ratio 1:20",
  ],
  formats: formatsOf(),
  load: async () => (await import("./execute.js")).execute,
};
