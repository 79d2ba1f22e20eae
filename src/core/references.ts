/** The bibliography: every `@source key` in a doc comment and every `source: key` beside an outside check names one of these. */
export const references = {
  buck1996:
    "Buck Research Instruments, Model CR-1A Hygrometer Operating Manual (1996), appendix 1; after A. L. Buck, J. Appl. Meteorol. 20 (1981) 1527",
  kell1975:
    "G. S. Kell, Density, thermal expansivity, and compressibility of liquid water from 0 to 150 °C, J. Chem. Eng. Data 20 (1975) 97",
} as const;

/** A key of the bibliography. */
export type ReferenceKey = keyof typeof references;
