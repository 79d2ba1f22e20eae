import { bath } from "./bath/declaration.js";
import { blend } from "./blend/declaration.js";
import { check } from "./check/declaration.js";
import { colour } from "./colour/declaration.js";
import type { CommandDeclaration } from "./command.js";
import { compare } from "./compare/declaration.js";
import { cost } from "./cost/declaration.js";
import { fit } from "./fit/declaration.js";
import { keys } from "./keys/declaration.js";
import { measure } from "./measure/declaration.js";
import { mix } from "./mix/declaration.js";
import { newBatch } from "./new/declaration.js";
import { offer } from "./offer/declaration.js";
import { plan } from "./plan/declaration.js";
import { record } from "./record/declaration.js";
import { review } from "./review/declaration.js";
import { rework } from "./rework/declaration.js";
import { schema } from "./schema/declaration.js";
import { shade } from "./shade/declaration.js";
import { swatches } from "./swatches/declaration.js";
import { sweep } from "./sweep/declaration.js";
import { week } from "./week/declaration.js";

/** Every command, in the order of the help. */
export const commands: readonly CommandDeclaration[] = [
  plan,
  bath,
  cost,
  offer,
  week,
  shade,
  swatches,
  blend,
  rework,
  sweep,
  check,
  newBatch,
  record,
  review,
  mix,
  measure,
  compare,
  fit,
  colour,
  keys,
  schema,
];
