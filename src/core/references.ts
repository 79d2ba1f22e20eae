/** The bibliography: every `@source key` in a doc comment and every `source: key` beside an outside check names one of these. */
export const references = {
  batesWatts1988:
    "D. M. Bates, D. G. Watts, Nonlinear Regression Analysis and Its Applications, Wiley (1988)",
  brent1973:
    "R. P. Brent, Algorithms for Minimization without Derivatives, Prentice-Hall (1973); from memory",
  buck1996:
    "Buck Research Instruments, Model CR-1A Hygrometer Operating Manual (1996), appendix 1; after A. L. Buck, J. Appl. Meteorol. 20 (1981) 1527",
  cegarraPuente1967:
    "J. Cegarra, P. Puente, Considerations on the kinetics of the dyeing process, Textile Res. J. 37 (1967) 343; from memory, page not seen",
  chairat2005:
    "M. Chairat, S. Rattanaphani, J. B. Bremner, V. Rattanaphani, An adsorption and kinetic study of lac dyeing on silk, Dyes and Pigments 64 (2005) 231; abstract",
  codata2018:
    "E. Tiesinga, P. J. Mohr, D. B. Newell, B. N. Taylor, CODATA recommended values of the fundamental physical constants: 2018, Rev. Mod. Phys. 93 (2021) 025010",
  crank1975: "J. Crank, The Mathematics of Diffusion, 2nd edition, Oxford (1975)",
  fritschCarlson1980:
    "F. N. Fritsch, R. E. Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980) 238; from memory",
  golubPereyra1973:
    "G. H. Golub, V. Pereyra, The differentiation of pseudo-inverses and nonlinear least squares problems whose variables separate, SIAM J. Numer. Anal. 10 (1973) 413; from memory",
  golubVanLoan2013:
    "G. H. Golub, C. F. Van Loan, Matrix Computations, 4th edition, Johns Hopkins (2013); from memory",
  hoMckay1999:
    "Y. S. Ho, G. McKay, Pseudo-second order model for sorption processes, Process Biochemistry 34 (1999) 451",
  hurvichTsai1989:
    "C. M. Hurvich, C.-L. Tsai, Regression and time series model selection in small samples, Biometrika 76 (1989) 297; from memory",
  kell1975:
    "G. S. Kell, Density, thermal expansivity, and compressibility of liquid water from 0 to 150 °C, J. Chem. Eng. Data 20 (1975) 97",
  lagergren1898:
    "S. Lagergren, Zur Theorie der sogenannten Adsorption gelöster Stoffe, Kungliga Svenska Vetenskapsakademiens Handlingar 24, no. 4 (1898) 1",
  langmuir1918:
    "I. Langmuir, The adsorption of gases on plane surfaces of glass, mica and platinum, J. Am. Chem. Soc. 40 (1918) 1361",
  lawsonHanson1974:
    "C. L. Lawson, R. J. Hanson, Solving Least Squares Problems, Prentice-Hall (1974); from memory",
  more1978:
    "J. J. Moré, The Levenberg-Marquardt algorithm: implementation and theory, Lecture Notes in Mathematics 630 (1978) 105; from memory",
  nistStrd:
    "NIST Statistical Reference Datasets, nonlinear regression, https://www.itl.nist.gov/div898/strd/nls/nls_main.shtml",
  orangeTwoNylon:
    "Diffusion kinetics of Orange II in nylon 66, Textile Research Journal; abstract, authors and year not seen",
  shewchuk1997:
    "J. R. Shewchuk, Adaptive precision floating-point arithmetic and fast robust geometric predicates, Discrete Comput. Geom. 18 (1997) 305; from memory",
  transtrumSethna2012:
    "M. K. Transtrum, J. P. Sethna, Improvements to the Levenberg-Marquardt algorithm for nonlinear least-squares minimization (2012), arXiv 1201.5885; from memory",
} as const;

/** A key of the bibliography. */
export type ReferenceKey = keyof typeof references;
