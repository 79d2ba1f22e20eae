import { Ajv2020 } from "ajv/dist/2020.js";
import { batchJsonSchema } from "../../../src/batch-file/json-schema/batch-json-schema.js";

const ajv = new Ajv2020({ allErrors: true, strict: false });
ajv.addSchema(batchJsonSchema(), "batch");
const validate = ajv.getSchema("batch")!;

/** What an editor marks in a batch, each with its place. */
export function marked(batch: unknown): { readonly at: string; readonly message: string }[] {
  validate(batch);
  return (validate.errors ?? []).map(({ instancePath, message }) => ({
    at: instancePath,
    message: message ?? "",
  }));
}

/** Whether a value is one that a node of the schema takes; `node` may refer to its definitions. */
export function takes(node: object): (value: unknown) => boolean {
  // By the definitions of the whole schema, which are compiled once.
  const valid = ajv.compile(JSON.parse(JSON.stringify(node).replaceAll('"$ref":"#/', '"$ref":"batch#/')));
  return (value) => valid(value) === true;
}
