/** Words without quotes that YAML does not take for a text. */
const reserved = /^(?:true|false|null)$/i;

/**
 * A name as YAML reads it back, in braces too.
 * @example
 * inYaml("sea-blue") // => "sea-blue"
 * inYaml("blue, deep") // => '"blue, deep"'
 * inYaml("true") // => '"true"'
 */
export const inYaml = (name: string): string =>
  /^\p{L}[\p{L}\p{N}_-]*$/u.test(name) && !reserved.test(name) ? name : JSON.stringify(name);
