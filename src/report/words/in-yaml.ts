/** A name as YAML reads it back. */
export const inYaml = (name: string): string =>
  /^\p{L}[\p{L}\p{N}_-]*$/u.test(name) ? name : JSON.stringify(name);
