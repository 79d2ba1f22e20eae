import { readFileSync } from "node:fs";

/**
 * Certified nonlinear least squares (source: nistStrd): start values, parameters, their standard deviations and
 * the residual sum as certified to eleven digits. The observations lie in fixtures/nist.
 */
export interface CertifiedSet {
  readonly name: string;
  readonly model: (b: readonly number[], x: number) => number;
  readonly starts: readonly (readonly number[])[];
  readonly parameters: readonly number[];
  readonly deviations: readonly number[];
  readonly residualSum: number;
}

export const certifiedSets: readonly CertifiedSet[] = [
  {
    name: "Misra1a",
    model: ([b1, b2], x) => b1! * -Math.expm1(-b2! * x),
    starts: [
      [500.0, 0.0001],
      [250.0, 0.0005],
    ],
    parameters: [238.94212918, 0.00055015643181],
    deviations: [2.7070075241, 7.2668688436e-6],
    residualSum: 0.12455138894,
  },
  {
    name: "Misra1b",
    model: ([b1, b2], x) => b1! * (1 - (1 + (b2! * x) / 2) ** -2),
    starts: [
      [500.0, 0.0001],
      [300.0, 0.0002],
    ],
    parameters: [337.99746163, 0.00039039091287],
    deviations: [3.1643950207, 4.2547321834e-6],
    residualSum: 0.075464681533,
  },
  {
    name: "Misra1c",
    model: ([b1, b2], x) => b1! * (1 - (1 + 2 * b2! * x) ** -0.5),
    starts: [
      [500.0, 0.0001],
      [600.0, 0.0002],
    ],
    parameters: [636.42725809, 0.00020813627256],
    deviations: [4.6638326572, 1.7728423155e-6],
    residualSum: 0.040966836971,
  },
  {
    name: "Misra1d",
    model: ([b1, b2], x) => (b1! * b2! * x) / (1 + b2! * x),
    starts: [
      [500.0, 0.0001],
      [450.0, 0.0003],
    ],
    parameters: [437.36970754, 0.00030227324449],
    deviations: [3.6489174345, 2.9334354479e-6],
    residualSum: 0.056419295283,
  },
  {
    name: "Chwirut1",
    model: ([b1, b2, b3], x) => Math.exp(-b1! * x) / (b2! + b3! * x),
    starts: [
      [0.1, 0.01, 0.02],
      [0.15, 0.008, 0.01],
    ],
    parameters: [0.1902781837, 0.0061314004477, 0.010530908399],
    deviations: [0.021938557035, 0.00034500025051, 0.00079281847748],
    residualSum: 2384.4771393,
  },
  {
    name: "Chwirut2",
    model: ([b1, b2, b3], x) => Math.exp(-b1! * x) / (b2! + b3! * x),
    starts: [
      [0.1, 0.01, 0.02],
      [0.15, 0.008, 0.01],
    ],
    parameters: [0.16657666537, 0.0051653291286, 0.012150007096],
    deviations: [0.03830328681, 0.00066621605126, 0.0015304234767],
    residualSum: 513.04802941,
  },
  {
    name: "DanWood",
    model: ([b1, b2], x) => b1! * x ** b2!,
    starts: [
      [1.0, 5.0],
      [0.7, 4.0],
    ],
    parameters: [0.76886226176, 3.8604055871],
    deviations: [0.01828197386, 0.051726610913],
    residualSum: 0.0043173084083,
  },
  {
    name: "MGH09",
    model: ([b1, b2, b3, b4], x) => (b1! * (x * x + x * b2!)) / (x * x + x * b3! + b4!),
    starts: [
      [25.0, 39.0, 41.5, 39.0],
      [0.25, 0.39, 0.415, 0.39],
    ],
    parameters: [0.19280693458, 0.19128232873, 0.12305650693, 0.13606233068],
    deviations: [0.011435312227, 0.19633220911, 0.080842031232, 0.090025542308],
    residualSum: 0.00030750560385,
  },
  {
    name: "Rat42",
    model: ([b1, b2, b3], x) => b1! / (1 + Math.exp(b2! - b3! * x)),
    starts: [
      [100.0, 1.0, 0.1],
      [75.0, 2.5, 0.07],
    ],
    parameters: [72.462237576, 2.6180768402, 0.067359200066],
    deviations: [1.7340283401, 0.088295217536, 0.0034465663377],
    residualSum: 8.0565229338,
  },
];

/** The observations of a set. */
export function observationsOf(name: string): { readonly x: number; readonly y: number }[] {
  const text = readFileSync(
    new URL(`../../fixtures/nist/${name.toLowerCase()}.csv`, import.meta.url),
    "utf8",
  );
  const rows = text.trim().split("\n").slice(1);
  return rows.map((row) => {
    const [x, y] = row.split(",").map(Number);
    return { x: x!, y: y! };
  });
}
