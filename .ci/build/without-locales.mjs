/** Leaves out zod's messages in some fifty languages; ours are in src/batch-file/issues. */
export const withoutLocales = {
  name: "without-locales",
  resolveId: (id) => (/\/locales\/index\.js$/.test(id) ? "\0no-locales" : null),
  load: (id) => (id === "\0no-locales" ? "export {};" : null),
};
