/** The bibliography: every `@source` in a doc comment and every `source:` beside an outside check names one of these. */
export const references = {
  allen1966:
    "E. Allen, Basic equations used in computer color matching, J. Opt. Soc. Am. 56 (1966) 1256; title from memory, paper not read",
  ang2005:
    "B. W. Ang, The LMDI approach to decomposition analysis: a practical guide, Energy Policy 33 (2005) 867; from memory",
  astmE308: "ASTM E308, Computing the Colors of Objects by Using the CIE System",
  astmE313:
    "ASTM E313, Calculating Yellowness and Whiteness Indices from Instrumentally Measured Color Coordinates",
  batchRinsing1977:
    "Theory of batch-type intermittent rinsing, Journal of the Metal Finishing Society of Japan 28 (1977) no. 7; abstract, author not seen",
  batesWatts1988:
    "D. M. Bates, D. G. Watts, Nonlinear Regression Analysis and Its Applications, Wiley (1988)",
  berns2000:
    "R. S. Berns, Billmeyer and Saltzman's Principles of Color Technology, 3rd edition, Wiley (2000), mean colour difference from the mean; from memory",
  birge1932:
    "R. T. Birge, The calculation of errors by the method of least squares, Phys. Rev. 40 (1932) 207; from memory",
  brent1973:
    "R. P. Brent, Algorithms for Minimization without Derivatives, Prentice-Hall (1973); from memory",
  broadbent2001:
    "A. D. Broadbent, Basic Principles of Textile Coloration, Society of Dyers and Colourists (2001); from memory, page not seen",
  brent1980:
    "R. P. Brent, An improved Monte Carlo factorization algorithm, BIT 20 (1980) 176, section on finding cycles; from memory",
  buck1996:
    "Buck Research Instruments, Model CR-1A Hygrometer Operating Manual (1996), appendix 1; after A. L. Buck, J. Appl. Meteorol. 20 (1981) 1527",
  burnhamAnderson2002:
    "K. P. Burnham, D. R. Anderson, Model Selection and Multimodel Inference, 2nd ed., Springer (2002); from memory",
  burns2020:
    "S. A. Burns, Numerical methods for smoothest reflectance reconstruction, Color Res. Appl. 45 (2020) 8",
  calculus2:
    "G. Strang, E. Herman, Calculus Volume 2 (open textbook, 2016; year from memory), sections 2.8 on cooling and 4.3 on separable equations",
  cegarraPuente1967:
    "J. Cegarra, P. Puente, Considerations on the kinetics of the dyeing process, Textile Res. J. 37 (1967) 343; from memory, page not seen",
  chairat2005:
    "M. Chairat, S. Rattanaphani, J. B. Bremner, V. Rattanaphani, An adsorption and kinetic study of lac dyeing on silk, Dyes and Pigments 64 (2005) 231; abstract",
  boxLucas1959:
    "G. E. P. Box, H. L. Lucas, Design of experiments in non-linear situations, Biometrika 46 (1959) 77-90; from memory",
  champWoodall1987:
    "C. W. Champ, W. H. Woodall, Exact results for Shewhart control charts with supplementary runs rules, Technometrics 29 (1987) 393; Table 1 as printed in the manual of the R package spc 0.7.2",
  chemistry2e:
    "P. Flowers, K. Theopold, R. Langley, W. R. Robinson, Chemistry 2e (open textbook), chapter 3, dilution examples; from memory, recomputed",
  chemistry2eCalorimetry:
    "P. Flowers, K. Theopold, R. Langley, W. R. Robinson, Chemistry 2e (open textbook, 2019; year from memory), section 5.2 Calorimetry",
  cie116: "CIE 116-1995, Industrial colour-difference evaluation",
  cie15: "CIE 15:2018, Colorimetry, 4th edition",
  cie15ed3: "CIE 15:2004, Colorimetry, 3rd edition; limits of whiteness and tint from memory",
  codata2018:
    "E. Tiesinga, P. J. Mohr, D. B. Newell, B. N. Taylor, CODATA recommended values of the fundamental physical constants: 2018, Rev. Mod. Phys. 93 (2021) 025010",
  collegeAlgebra:
    "J. Abramson, Algebra and Trigonometry, and College Algebra 2e (open textbooks, 2021; year from memory), Exponential and logarithmic models",
  coolingReport:
    "Student report on the cooling of water in a cup and a beaker, table of part A, on a site of course notes; unrefereed",
  costingExercises:
    "Cost accounting exercises with worked answers: machine-hour rates, depreciation by the hour; public homework and calculator pages",
  counterflowNote: "Counterflow (cascade) rinsing, application note on the rinsing of circuit boards",
  crank1975: "J. Crank, The Mathematics of Diffusion, 2nd edition, Oxford (1975)",
  dragOutNote: "Calculating bath drag out, trade note (2014)",
  drainWeighings:
    "Weighings of draining panels, 18 by 24 in: at least 30 s pay, nothing significant after 40 s; a post on a trade mailing list (1995)",
  financialAccounting:
    "M. Franklin, P. Graybeal, D. Cooper, Principles of Accounting (open textbook), chapter 11, depreciation; from memory, recomputed",
  fritschCarlson1980:
    "F. N. Fritsch, R. E. Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980) 238; from memory",
  gelman2013:
    "A. Gelman and others, Bayesian Data Analysis, 3rd edition, Chapman and Hall (2013), prior information as additional data; from memory",
  golubPereyra1973:
    "G. H. Golub, V. Pereyra, The differentiation of pseudo-inverses and nonlinear least squares problems whose variables separate, SIAM J. Numer. Anal. 10 (1973) 413; from memory",
  golubVanLoan2013:
    "G. H. Golub, C. F. Van Loan, Matrix Computations, 4th edition, Johns Hopkins (2013); from memory",
  hairer1993:
    "E. Hairer, S. P. Nørsett, G. Wanner, Solving Ordinary Differential Equations I, 2nd edition, Springer (1993); from memory",
  heatingTimePages:
    "Time to heat water, worked examples of two public pages, one of science teaching, one of electrical engineering",
  heldKarp1962:
    "M. Held, R. M. Karp, A dynamic programming approach to sequencing problems, J. SIAM 10 (1962) 196; from memory",
  hoMckay1999:
    "Y. S. Ho, G. McKay, Pseudo-second order model for sorption processes, Process Biochemistry 34 (1999) 451",
  hurvichTsai1989:
    "C. M. Hurvich, C.-L. Tsai, Regression and time series model selection in small samples, Biometrika 76 (1989) 297; from memory",
  hyndmanFan1996:
    "R. J. Hyndman, Y. Fan, Sample quantiles in statistical packages, Am. Stat. 50 (1996) 361; from memory",
  iecSrgb: "IEC 61966-2-1, Colour management, default RGB colour space: sRGB",
  imanConover1979:
    "R. L. Iman, W. J. Conover, The use of the rank transform in regression, Technometrics 21 (1979) 499; from memory",
  iso4217: "ISO 4217, Codes for the representation of currencies and funds, list one: minor units",
  isoA02:
    "ISO 105-A02, Textiles, tests for colour fastness, part A02: grey scale for assessing change in colour",
  isoA03: "ISO 105-A03, Textiles, tests for colour fastness, part A03: grey scale for assessing staining",
  isoA04:
    "ISO 105-A04, Textiles, tests for colour fastness, part A04: method for the instrumental assessment of the degree of staining of adjacent fabrics",
  isoA05:
    "ISO 105-A05, Textiles, tests for colour fastness, part A05: instrumental assessment of change in colour for determination of grey scale rating",
  isoCie11664p1: "ISO/CIE 11664-1, Colorimetry, part 1: CIE standard colorimetric observers",
  isoCie11664p2: "ISO/CIE 11664-2, Colorimetry, part 2: CIE standard illuminants",
  isoCie11664p4: "ISO/CIE 11664-4, Colorimetry, part 4: CIE 1976 L*a*b* colour space",
  isoCie11664p5:
    "ISO/CIE 11664-5, Colorimetry, part 5: CIE 1976 L*u*v* colour space and u', v' uniform chromaticity scale diagram",
  isoCie11664p6: "ISO/CIE 11664-6, Colorimetry, part 6: CIEDE2000 colour-difference formula",
  isoJ02:
    "ISO 105-J02, Textiles, tests for colour fastness, part J02: instrumental assessment of relative whiteness",
  isoJ03: "ISO 105-J03, Textiles, tests for colour fastness, part J03: calculation of colour differences",
  jeffreys1930:
    "H. Jeffreys, The draining of a vertical plate, Proc. Camb. Phil. Soc. 26 (1930) 204; from memory",
  kell1975:
    "G. S. Kell, Density, thermal expansivity, and compressibility of liquid water from 0 to 150 °C, J. Chem. Eng. Data 20 (1975) 97",
  kubelkaMunk1931:
    "P. Kubelka, F. Munk, Ein Beitrag zur Optik der Farbanstriche, Z. tech. Phys. 12 (1931) 593",
  lagergren1898:
    "S. Lagergren, Zur Theorie der sogenannten Adsorption gelöster Stoffe, Kungliga Svenska Vetenskapsakademiens Handlingar 24, no. 4 (1898) 1",
  langmuir1918:
    "I. Langmuir, The adsorption of gases on plane surfaces of glass, mica and platinum, J. Am. Chem. Soc. 40 (1918) 1361",
  lucasSaccucci1990:
    "J. M. Lucas, M. S. Saccucci, Exponentially weighted moving average control schemes: properties and enhancements, Technometrics 32 (1990) 1; Table 3 as printed in the manual of the R package spc 0.7.2",
  macAdam1935:
    "D. L. MacAdam, Maximum visual efficiency of colored materials, J. Opt. Soc. Am. 25 (1935) 361",
  managerialAccounting:
    "M. Franklin, P. Graybeal, D. Cooper, Principles of Accounting, Volume 2: Managerial Accounting (open textbook, 2019), sections 3.4 break-even of several products, 10.6 constrained resources; year from memory",
  marsaglia2004:
    "G. Marsaglia, Evaluating the normal distribution, J. Stat. Softw. 11 (2004) no. 4; from memory",
  mckay1979:
    "M. D. McKay, R. J. Beckman, W. J. Conover, A comparison of three methods for selecting values of input variables in the analysis of output from a computer code, Technometrics 21 (1979) 239; from memory",
  mixingTanks:
    "Mixing-tank equation, public worked examples; two tanks in series from a university teaching collection with its misprint corrected",
  montgomery1991:
    "D. C. Montgomery, Introduction to Statistical Quality Control, Wiley (1991), viscosity of primer paint; data as in the manual of the R package qcc, limits from memory",
  more1978:
    "J. J. Moré, The Levenberg-Marquardt algorithm: implementation and theory, Lecture Notes in Mathematics 630 (1978) 105; from memory",
  nishina1992:
    "K. Nishina, A comparison of control charts from the viewpoint of change-point estimation, Qual. Reliab. Eng. Int. 8 (1992) 537; from memory",
  nistHandbook:
    "NIST/SEMATECH e-Handbook of Statistical Methods, sections 6.3.2.2 Individuals control charts and 6.3.2.4 EWMA control charts",
  nistStrd:
    "NIST Statistical Reference Datasets, nonlinear regression, https://www.itl.nist.gov/div898/strd/nls/nls_main.shtml",
  openStaxPhysics:
    "P. P. Urone, R. Hinrichs, College Physics, chapter 14 Heat and heat transfer methods (open textbook)",
  openTankHeatLoss:
    "Heat loss from open water tanks, table of an engineering reference page; still air at 60 °F; called rough estimates there",
  orangeTwoNylon:
    "Diffusion kinetics of Orange II in nylon 66, Textile Research Journal; abstract, authors and year not seen",
  pharmaceuticalCalculations:
    "Subcourse MD0802, Pharmaceutical Calculations, section on alligation (medical course of an army)",
  piessens1983:
    "R. Piessens, E. de Doncker-Kapenga, C. W. Überhuber, D. K. Kahaner, QUADPACK: a subroutine package for automatic integration, Springer (1983)",
  platingCourse: "Plating training course, appendix on areas and volumes",
  psychrometry: "Latent heat as 2501 - 2.36 t kJ/kg: the usual straight line of psychrometry, from memory",
  pupak: "Magalong, DelaCruz, Bumatay, Deocaris, R package PUPAK, examples of its help pages",
  quotationPage: "Manufacturing cost calculator, worked example page: quotation with scrap and margin",
  rinsingArticles:
    "Trade articles on rinsing with less water; rinsing chapter of a surface finishing guidebook (2011)",
  saunderson1942:
    "J. L. Saunderson, Calculation of the color of pigmented plastics, J. Opt. Soc. Am. 32 (1942) 727",
  scaldHospital:
    "Hot water burns, safety page of a children's hospital: 145, 150 and 155 °F; figures called less than",
  scaldPlumbing:
    "Water temperature against time to a second and third degree burn, table of plumbing safety guidance, 113 to 140 °F",
  schoolMixing:
    "Answer on a public page of school exercises: 40 g of water at 20 °C mixed with 100 g at 80 °C",
  scrapExample: "Inputs of a published scrap cost example; cost per good part computed",
  shah2014:
    "M. M. Shah, Methods for calculation of evaporation from swimming pools and other water surfaces, ASHRAE Transactions 120 (2014) part 2; first given 1992",
  sharma2005:
    "G. Sharma, W. Wu, E. N. Dalal, The CIEDE2000 color-difference formula: implementation notes, supplementary test data, and mathematical observations, Color Res. Appl. 30 (2005) 21",
  shewchuk1997:
    "J. R. Shewchuk, Adaptive precision floating-point arithmetic and fast robust geometric predicates, Discrete Comput. Geom. 18 (1997) 305; from memory",
  spearman1904:
    "C. Spearman, The proof and measurement of association between two things, Am. J. Psychol. 15 (1904) 72; from memory",
  standingBathRuns:
    "Standing-bath runs constructed in exact fractions for this project and rounded to nine decimals",
  steelTankExercise:
    "Heat loss through the wall of a mild steel tank, worked exercise of a public page of exam answers",
  textileLabPages:
    "Public textile laboratory calculation pages (2012 to 2015): stock solutions and recipes; lecture slides of B. Venkatesh on basic terms of dyeing",
  transtrumSethna2012:
    "M. K. Transtrum, J. P. Sethna, Improvements to the Levenberg-Marquardt algorithm for nonlinear least-squares minimization (2012), arXiv 1201.5885; from memory",
  tutoringPages: "Answers on public tutoring pages (2018, 2023): mixing of acids, half time of a mixing tank",
  universityPhysics2:
    "S. J. Ling, J. Sanny, W. Moebs, University Physics Volume 2 (open textbook, 2016; year from memory), chapter 1, problems",
  vanOosterom1983:
    "A. van Oosterom, J. Strackee, The solid angle of a plane triangle, IEEE Trans. Biomed. Eng. BME-30 (1983) 125; formula from memory",
  waterTable:
    "IAPWS-IF97 and the IAPWS formulations for liquid water, 0 to 100 °C by 5, computed with a public implementation",
  wichura1988:
    "M. J. Wichura, Algorithm AS 241: the percentage points of the normal distribution, Appl. Stat. 37 (1988) 477; coefficients from memory, checked against the normal integral",
} as const;
