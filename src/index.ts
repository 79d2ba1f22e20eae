/** The public library: the pure core, the reader of batch files and the renderers of what it says of them. */

// The batch file, read and checked.

export type { Fault, Outcome } from "./core/fault.js";
export type { Diagnostic, Span } from "./diagnostics/diagnostic.js";
export { renderJson } from "./diagnostics/render-json.js";
export { renderPlain } from "./diagnostics/render-plain.js";
export { renderText, type TextOptions } from "./diagnostics/render-text.js";
export type { ReadFile } from "./spec/include.js";
export { batchJsonSchema, type JsonSchema } from "./spec/json-schema.js";
export { modelReader, type ReadBytes, type ReadModel } from "./spec/model-reader.js";
export { type BatchInput, type BatchRead, type Need, readBatch } from "./spec/read-batch.js";
export { type Reflectance, reflectanceReader } from "./spec/reflectance.js";
export type { Readers } from "./spec/resources.js";

// The batch and its plan.

export type { Advice } from "./core/batch/advice.js";
export type { Caution } from "./core/batch/cautions.js";
export type { LoadLimit } from "./core/batch/loads.js";
export * from "./core/batch/model.js";
export { type PlanWork, planBatch } from "./core/batch/plan.js";
export type * from "./core/batch/plan-model.js";
export type { RestsOn } from "./core/batch/rests-on-assumed.js";
export type { TimelineEntry, TimelineTask } from "./core/batch/timeline.js";

// Quantities.

export { formatQuantity } from "./core/quantity/format-quantity.js";
export type { KindName } from "./core/quantity/kinds.js";
export { type ParseOptions, parseQuantity } from "./core/quantity/parse-quantity.js";
export type { Quantity } from "./core/quantity/quantity.js";
export { type ParsedSurface, parseSurface, wettedWallDm2 } from "./core/quantity/surface.js";

// Colour.

export type { Chromaticity } from "./core/colour/chromaticity.js";
export { type Ciede2000Terms, ciede2000, ciede2000Pairs, ciede2000Terms } from "./core/colour/ciede2000.js";
export { labToLch, labToXyz, lchToLab, xyzToLab } from "./core/colour/cielab.js";
export { type Luv, luvToXyz, xyzToLuv } from "./core/colour/cieluv.js";
export { type ColourReport, colourReport, spectrumReport } from "./core/colour/colour-report.js";
export {
  type ComparedColour,
  type CompareReport,
  type Comparison,
  compareColours,
  compareLab,
  type FormulaName,
  judge,
  type Verdict,
} from "./core/colour/compare.js";
export {
  cie76,
  cie94,
  cie94Textile,
  cmc,
  cmc11,
  cmc21,
  type LabDifference,
} from "./core/colour/differences.js";
export {
  changeDeltaE,
  changeGrade,
  type GreyGrade,
  type GreyScale,
  greyGrades,
  stainingGrade,
} from "./core/colour/grey-scale.js";
export {
  type CurveStrength,
  curveStrength,
  kOverS,
  reflectanceOf,
  relativeStrength,
  type Surface,
  withoutSurface,
  withSurface,
} from "./core/colour/kubelka-munk.js";
export { type Metamerism, metamerism } from "./core/colour/metamerism.js";
export { smoothReflectance } from "./core/colour/smooth-reflectance.js";
export { type Spectrum, spectrumLab, spectrumXyz } from "./core/colour/spectrum.js";
export {
  decodeSrgb,
  encodeSrgb,
  inGamut,
  labToSrgb,
  type Srgb,
  srgbToHex,
  srgbToLab,
  srgbToXyz,
  xyzToSrgb,
} from "./core/colour/srgb.js";
export type { Lch, Reading, Xyz } from "./core/colour/types.js";
export { cieWhiteness, type Whiteness, yellowness } from "./core/colour/whiteness.js";

// Uptake of dye, and the time for a shade.

export { celsiusForFactor, rateFactor } from "./core/uptake/arrhenius.js";
export type { LeaveOneOut } from "./core/uptake/choose-law.js";
export { type DipTimer, depthAt, secondsForDepth, type UptakeModel } from "./core/uptake/depth.js";
export {
  describeShade,
  type ShadeBath,
  type ShadeDescription,
  type ShadeMakeUp,
  type ShadePoint,
  type ShadeSensitivity,
  type ShadeTime,
  type ShadeWish,
} from "./core/uptake/describe-shade.js";
export { fitUptake, type UptakeFit, type UptakeFits } from "./core/uptake/fit-uptake.js";
export { strengthForUptake, uptakeAtStrength } from "./core/uptake/isotherm.js";
export type { UptakePoint } from "./core/uptake/law-fit.js";
export { lawInverse, lawUptake } from "./core/uptake/laws.js";
export type { Hold, Influence, Sensitivity } from "./core/uptake/sensitivity.js";
export type { WayOut } from "./core/uptake/way-out.js";

// Baths: making up, mixing, heat, rinsing, life.

export { drainingFilmMlPerDm2, waterViscosityPaS } from "./core/bath/drain-film.js";
export type { DyeFate } from "./core/bath/dye-fate.js";
export { evaporationFluxKgM2H, surfaceLossWPerM2 } from "./core/bath/evaporation.js";
export { type LosingTank, wallLossW } from "./core/bath/heat-loss.js";
export type { Holding } from "./core/bath/heat-report.js";
export { type HeatedTank, type HeatUp, heatUp, holdingPowerW } from "./core/bath/heating.js";
export { type BathLife, bathLife, type LifeEnd, type LifeLoad } from "./core/bath/life.js";
export type { LifeTotals } from "./core/bath/life-totals.js";
export type { DrainSaving, Range } from "./core/bath/longer-drain.js";
export { type DyeAmount, type MakeUp, makeUp } from "./core/bath/make-up.js";
export { alligation, dilutedConcentration, dilutedVolume, weakerToAdd } from "./core/bath/mixing.js";
export {
  auxiliaryStockMl,
  exhaustion,
  liquorMl,
  liquorRatio,
  shadePercent,
  stockMl,
  strengthCorrected,
} from "./core/bath/on-weight.js";
export { dragOutFromPurchases, rinseRatio, rinseStrength } from "./core/bath/rinse.js";
export type { BathSetting, Hindrance, LoadWork } from "./core/bath/run.js";
export type { BathState } from "./core/bath/step.js";
export { type Topping, type ToppingAsked, topping } from "./core/bath/topping.js";
export type { LifePoint, LoadRecord } from "./core/bath/trace.js";
export type { WarmUpPoint } from "./core/bath/warm-up.js";
export { filledInSeries, washedOut, washOutTime } from "./core/bath/wash-out.js";
export { waterDensityKgM3 } from "./core/bath/water.js";

// Costs and prices.

export type { CostSheet } from "./core/cost/allocate.js";
export {
  type BlankBuild,
  type BlankCost,
  blankCost,
  blankDifference,
  powderPerPartMass,
} from "./core/cost/blank.js";
export {
  type BreakEven,
  breakEven,
  type ColourFixedCosts,
  contributionPerPart,
  type Sale,
} from "./core/cost/break-even.js";
export type { ColourCosts } from "./core/cost/colours.js";
export { equipmentPerHour, straightLine } from "./core/cost/depreciation.js";
export { endingStep, nextEnding } from "./core/cost/ending.js";
export {
  type BaseOffer,
  blankRiseToEqualProfit,
  equalProfitSurcharge,
  profitPerPart,
} from "./core/cost/equal-profit.js";
export type { CostLine } from "./core/cost/items.js";
export { logMean, productChange } from "./core/cost/log-mean.js";
export { machineHourRate, sharedCharge } from "./core/cost/machine-hour.js";
export { marginOf, markupForMargin, markupOf } from "./core/cost/margin.js";
export type { OtherBase } from "./core/cost/other-bases.js";
export type { PlanPrices } from "./core/cost/prices.js";
export {
  costWithRework,
  dipsPerStarted,
  partsAgain,
  type ReworkYield,
  reworkPays,
  yieldWithRework,
} from "./core/cost/rework.js";
export { roundedText, roundMoney } from "./core/cost/rounding.js";
export { type SellingPrice, sellingPrice } from "./core/cost/selling-price.js";
export { costPerGood, unitCostWithYield } from "./core/cost/unit-cost.js";

// Parts from models.

export type { MeshFormat } from "./core/mesh/format.js";
export { measureMesh } from "./core/mesh/measure.js";
export type { MeshMeasure, MeshOptions } from "./core/mesh/mesh-measure.js";
export type { MeshUnit } from "./core/mesh/units.js";
