/** The version of the command; a test holds it equal to package.json. */
export const version = "0.1.0";
