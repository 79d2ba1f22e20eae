/** The bibliography: every `@source key` in a doc comment and every `source: key` beside an outside check names one of these. */
export const references = {
  buck1996:
    "Buck Research Instruments, Model CR-1A Hygrometer Operating Manual (1996), appendix 1; after A. L. Buck, J. Appl. Meteorol. 20 (1981) 1527",
  cegarraPuente1967:
    "J. Cegarra, P. Puente, Considerations on the kinetics of the dyeing process, Textile Res. J. 37 (1967) 343; from memory, page not seen",
  chairat2005:
    "M. Chairat, S. Rattanaphani, J. B. Bremner, V. Rattanaphani, An adsorption and kinetic study of lac dyeing on silk, Dyes and Pigments 64 (2005) 231; abstract",
  codata2018:
    "E. Tiesinga, P. J. Mohr, D. B. Newell, B. N. Taylor, CODATA recommended values of the fundamental physical constants: 2018, Rev. Mod. Phys. 93 (2021) 025010",
  crank1975: "J. Crank, The Mathematics of Diffusion, 2nd edition, Oxford (1975)",
  hoMckay1999:
    "Y. S. Ho, G. McKay, Pseudo-second order model for sorption processes, Process Biochemistry 34 (1999) 451",
  kell1975:
    "G. S. Kell, Density, thermal expansivity, and compressibility of liquid water from 0 to 150 °C, J. Chem. Eng. Data 20 (1975) 97",
  lagergren1898:
    "S. Lagergren, Zur Theorie der sogenannten Adsorption gelöster Stoffe, Kungliga Svenska Vetenskapsakademiens Handlingar 24, no. 4 (1898) 1",
  langmuir1918:
    "I. Langmuir, The adsorption of gases on plane surfaces of glass, mica and platinum, J. Am. Chem. Soc. 40 (1918) 1361",
  orangeTwoNylon:
    "Diffusion kinetics of Orange II in nylon 66, Textile Research Journal; abstract, authors and year not seen",
  vanOosterom1983:
    "A. van Oosterom, J. Strackee, The solid angle of a plane triangle, IEEE Trans. Biomed. Eng. BME-30 (1983) 125; formula from memory",
} as const;

/** A key of the bibliography. */
export type ReferenceKey = keyof typeof references;
