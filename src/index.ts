/** The public library: the pure core, the reader of batch files, the bath log, and the renderers of what they say. */

// The batch file, read and checked.

export type { BatchRead } from "./batch-file/batch-read.js";
export type { BatchText, Need } from "./batch-file/batch-text.js";
export { batchJsonSchema } from "./batch-file/json-schema/batch-json-schema.js";
export type { JsonSchema } from "./batch-file/json-schema/json-schema.js";
export { type BatchInput, readBatch } from "./batch-file/read-batch.js";
export { modelReader, type ReadBytes, type ReadModel } from "./batch-file/resources/model-reader.js";
export type { Reflectance } from "./batch-file/resources/parse-reflectance.js";
export { reflectanceReader } from "./batch-file/resources/reflectance.js";
export type { Readers } from "./batch-file/resources/resources.js";
export type { ReadFile } from "./batch-file/source/include.js";
export { Workshop, type WorkshopReaders } from "./batch-file/workshop.js";
export type { Fault, Outcome } from "./core/fault.js";
export type { Diagnostic, Span } from "./diagnostics/diagnostic.js";
export { renderJson } from "./diagnostics/render-json.js";
export { renderPlain } from "./diagnostics/render-plain.js";
export { renderText, type TextOptions } from "./diagnostics/render-text.js";

// The batch and its plan.

export type { LoadLimit } from "./core/bath/load/load-size.js";
export * from "./core/model/batch.js";
export type { RestsOn } from "./core/model/rests-on.js";
export { offerOf } from "./core/offer/offer.js";
export type { Offer, OfferWish, PriceRow } from "./core/offer/offer-model.js";
export type { Caution } from "./core/plan/advice/cautions.js";
export type { Advice } from "./core/plan/advice/part-advice.js";
export type { TimelineEntry, TimelineTask } from "./core/plan/day/timeline.js";
export { planBatch } from "./core/plan/plan.js";
export type * from "./core/plan/plan-model.js";
export { SharedWork } from "./core/plan/run/shared-work.js";
export { batchWear } from "./core/plan/wear.js";
export type * from "./core/plan/wear-model.js";
export { planWeek } from "./core/week/week.js";
export type * from "./core/week/week-model.js";

// Quantities.

export type { KindName } from "./core/quantity/kinds.js";
export { type ParseOptions, parseQuantity } from "./core/quantity/parse/parse-quantity.js";
export { type ParsedSurface, parseSurface, wettedWallDm2 } from "./core/quantity/parse/parse-surface.js";
export type { Quantity } from "./core/quantity/quantity.js";
export { formatQuantity } from "./core/quantity/text/format-quantity.js";

// Colour.

export type { Chromaticity } from "./core/colour/chromaticity.js";
export { labToLch, labToXyz, lchToLab, xyzToLab } from "./core/colour/cielab.js";
export { type Luv, luvToXyz, xyzToLuv } from "./core/colour/cieluv.js";
export { type ColourReport, colourReport, spectrumReport } from "./core/colour/colour-report.js";
export {
  cie76,
  cie94,
  cie94Textile,
  cmc,
  cmc11,
  cmc21,
  type LabDifference,
} from "./core/colour/difference/cie-differences.js";
export {
  type Ciede2000Terms,
  ciede2000,
  ciede2000Pairs,
  ciede2000Terms,
  ciede2000Textile,
} from "./core/colour/difference/ciede2000.js";
export {
  type ComparedColour,
  type CompareReport,
  type Comparison,
  compareColours,
  compareLab,
  type FormulaName,
  judge,
  type Verdict,
} from "./core/colour/difference/compare-colours.js";
export {
  changeDeltaE,
  changeGrade,
  type GreyGrade,
  type GreyScale,
  greyGrades,
  stainingGrade,
} from "./core/colour/difference/grey-scale.js";
export { type Metamerism, metamerism } from "./core/colour/difference/metamerism.js";
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
} from "./core/colour/screen/srgb.js";
export {
  type CurveStrength,
  curveStrength,
  kOverS,
  reflectanceOf,
  relativeStrength,
  type Surface,
  withoutSurface,
  withSurface,
} from "./core/colour/spectrum/kubelka-munk.js";
export { smoothReflectance } from "./core/colour/spectrum/smooth-reflectance.js";
export { type Spectrum, spectrumLab, spectrumXyz } from "./core/colour/spectrum/spectrum.js";
export { cieWhiteness, type Whiteness, yellowness } from "./core/colour/whiteness.js";
export type { Lch, Reading, Xyz } from "./core/model/colour.js";

// Uptake of dye, and the time for a shade.

export type { UptakePoint } from "./core/uptake/fit/fit-law.js";
export { fitUptake, type UptakeFit, type UptakeFits } from "./core/uptake/fit/fit-uptake.js";
export { celsiusForFactor, rateFactor } from "./core/uptake/law/arrhenius.js";
export { type DipTimer, depthAt, dipSeconds, equivalentSeconds } from "./core/uptake/law/dip-time.js";
export { strengthForUptake, uptakeAtStrength } from "./core/uptake/law/isotherm.js";
export { lawInverse, lawUptake } from "./core/uptake/law/laws.js";
export { freshDepth, freshSeconds, type UptakeModel } from "./core/uptake/law/uptake-model.js";
export {
  describeShade,
  type Known,
  type ShadeDescription,
  type ShadePoint,
} from "./core/uptake/shade/describe-shade.js";
export type { MovedBase } from "./core/uptake/shade/moved-base.js";
export type { Hold, Influence, Sensitivity } from "./core/uptake/shade/sensitivity.js";
export type { ShadeBath, ShadeMakeUp } from "./core/uptake/shade/shade-bath.js";
export type { ShadeSensitivity, ShadeTime, ShadeWish } from "./core/uptake/shade/shade-time.js";
export type { WayOut } from "./core/uptake/shade/slower-dip.js";
export type { DoubtFrom } from "./core/uptake/shade/time-doubt.js";
export type { LeaveOneOut } from "./core/uptake/swatches/choose-law.js";

// Baths: making up, mixing, heat, rinsing, life.

export { evaporationFluxKgM2H, surfaceLossWPerM2 } from "./core/bath/heat/evaporation.js";
export { type LosingTank, wallLossW } from "./core/bath/heat/heat-loss.js";
export type { Holding } from "./core/bath/heat/heat-report.js";
export { type HeatedTank, type HeatUp, heatUp, holdingPowerW } from "./core/bath/heat/heating.js";
export { liquorJPerLK, mixedCelsius, type WarmBody } from "./core/bath/heat/mixing-temperature.js";
export { type Wall, wallTransmission } from "./core/bath/heat/wall-transmission.js";
export type { WarmUpPoint } from "./core/bath/heat/warm-up.js";
export {
  type BathHeat,
  bathHeat,
  type HeatPhase,
  type WorkedTank,
} from "./core/bath/heat/working/bath-heat.js";
export { dip } from "./core/bath/heat/working/dip.js";
export { dyePace } from "./core/bath/heat/working/dye-pace.js";
export type { Pace } from "./core/bath/heat/working/flow.js";
export {
  type HeatState,
  heatState,
  immerseParts,
  liftParts,
  pourTopUp,
} from "./core/bath/heat/working/heat-state.js";
export { hold } from "./core/bath/heat/working/hold.js";
export { fallTo, riseTo } from "./core/bath/heat/working/rise-and-fall.js";
export { type RoomAir, roomAir } from "./core/bath/heat/working/room-air.js";
export { type BathLife, bathLife, type LifeEnd } from "./core/bath/life/bath-life.js";
export type { DyeFate } from "./core/bath/life/dye-fate.js";
export type { LifeTotals } from "./core/bath/life/life-totals.js";
export type { LifePoint, LoadRecord } from "./core/bath/life/trace.js";
export type { BathSetting } from "./core/bath/load/bath-setting.js";
export type { BathState } from "./core/bath/load/bath-state.js";
export type { LoadWork } from "./core/bath/load/load-work.js";
export type { Hindrance } from "./core/bath/load/work-load.js";
export { type MakeUp, makeUp } from "./core/bath/make-up/make-up.js";
export { alligation, dilutedConcentration, dilutedVolume, weakerToAdd } from "./core/bath/make-up/mixing.js";
export {
  auxiliaryStockMl,
  exhaustion,
  liquorMl,
  liquorRatio,
  shadePercent,
  stockMl,
  strengthCorrected,
} from "./core/bath/make-up/on-weight.js";
export { type Topping, type ToppingAsked, topping } from "./core/bath/make-up/top-up.js";
export { counterFlowRatio, counterFlowWater } from "./core/bath/rinse/counter-flow.js";
export { drainingFilmMlPerDm2, waterViscosityPaS } from "./core/bath/rinse/drain-film.js";
export { loadsPerFilling, rinsesEnough } from "./core/bath/rinse/enough-rinses.js";
export type { DrainSaving, Range } from "./core/bath/rinse/longer-drain.js";
export {
  dragOutFromPurchases,
  looseLeft,
  rinseAfterLoad,
  rinseRatio,
  rinseStrength,
  rinseWater,
} from "./core/bath/rinse/rinse.js";
export { type RinseBaths, type RinsedLoad, type Rinsing, rinseLoads } from "./core/bath/rinse/rinse-loads.js";
export { filledInSeries, flushed, washedOut, washOutTime } from "./core/bath/rinse/wash-out.js";
export { waterDensityKgM3 } from "./core/bath/water.js";

// Several dyes to one colour, and parts that missed theirs.

export { type Blend, type BlendAddition, type BlendAsked, blend } from "./core/recipe/blend/blend.js";
export type { BlendRecipe, OnBase, Pour, RecipeDye } from "./core/recipe/blend/described.js";
export { type Carried, carriedStrength } from "./core/recipe/carry-over/carried-strength.js";
export { carryOverShift, type Liquor, rinsesUnseen } from "./core/recipe/carry-over/carry-over.js";
export { leastHarmOrder } from "./core/recipe/carry-over/least-harm-order.js";
export {
  type TankStep,
  type ThroughOneTank,
  throughOneTank,
} from "./core/recipe/carry-over/through-one-tank.js";
export { depthOfDip, type RecipeDip } from "./core/recipe/mixture/depth-of-dip.js";
export { type MixDye, mixDyes } from "./core/recipe/mixture/mix-dye.js";
export { mixedKs } from "./core/recipe/mixture/mixed-ks.js";
export { type Mixture, mixedLab, mixtureOf } from "./core/recipe/mixture/mixture.js";
export { type MissedPart, type Rework, reworkShade } from "./core/recipe/rework/rework-shade.js";
export { bestTwoDips, type TwoDips } from "./core/recipe/sequence/two-dips.js";
export type { DyePoured, Poured } from "./core/recipe/solve/amounts.js";
export type { Recipe } from "./core/recipe/solve/find-recipes.js";
export type { MixTrial } from "./core/recipe/trial/fit-trials.js";
export { type DyeModel, dyeModel } from "./core/uptake/shade/dye-model.js";

// Costs and prices.

export type { CostLine } from "./core/cost/line/cost-lines.js";
export type { CostSheet } from "./core/cost/line/cost-sheet.js";
export { logMean, productChange } from "./core/cost/line/log-mean.js";
export {
  type BreakEven,
  breakEven,
  type ColourFixedCosts,
  contributionPerPart,
  type Sale,
} from "./core/cost/price/break-even.js";
export type { ColourCosts } from "./core/cost/price/colour-costs.js";
export { endingStep, nextEnding } from "./core/cost/price/ending.js";
export {
  type BaseOffer,
  blankRiseToEqualProfit,
  equalProfitSurcharge,
  profitPerPart,
} from "./core/cost/price/equal-profit.js";
export { marginOf, markupForMargin, markupOf } from "./core/cost/price/margin.js";
export {
  type MixBreakEven,
  type MixProduct,
  mixBreakEven,
} from "./core/cost/price/mix-break-even.js";
export type { OtherBase } from "./core/cost/price/other-bases.js";
export { type ScarceHours, type ScarceProduct, scarceHours } from "./core/cost/price/scarce-hours.js";
export { type SellingPrice, sellingPrice } from "./core/cost/price/selling-price.js";
export { type ColourYear, yearlyBreakEven, yearlyProfit } from "./core/cost/price/yearly-break-even.js";
export {
  type BlankBuild,
  type BlankCost,
  blankCost,
  blankDifference,
  powderPerPartMass,
} from "./core/cost/rate/blank.js";
export { equipmentPerHour, straightLine } from "./core/cost/rate/depreciation.js";
export { machineHourRate, sharedCharge } from "./core/cost/rate/machine-hour.js";
export type { PlanPrices } from "./core/cost/rate/plan-prices.js";
export { costPerGood, unitCostWithYield } from "./core/cost/rate/unit-cost.js";
export {
  costWithRework,
  dipsPerStarted,
  partsAgain,
  type ReworkYield,
  reworkPays,
  yieldWithRework,
} from "./core/cost/rework.js";
export { roundedText, roundMoney } from "./core/cost/rounding.js";

// Quality.

export {
  type ChartOptions,
  type ChartPoint,
  type ChartSignal,
  type ControlChart,
  controlChart,
  type OutRun,
} from "./core/quality/control-chart.js";
export { type EwmaSetting, ewma, ewmaHalfWidth, usualEwma } from "./core/quality/ewma.js";
export { type ControlLimits, individualsLimits } from "./core/quality/individuals-limits.js";
export { breaksRule, type RunRule, type RunRuleName, runRules } from "./core/quality/run-rules.js";
export { type Unevenness, unevenness } from "./core/quality/unevenness.js";

// The bath log: read, followed through the arithmetic of a plan, and what it teaches.

export type { RealBath, ReplayedBath } from "./core/bath/replay/real-bath.js";
export type { Estimated } from "./core/quality/estimates/estimate.js";
export type * from "./core/quality/review/review-model.js";
export { type BathLog, type LogRead, readLog } from "./log/read/read-log.js";
export { type Filling, type FillingRow, fillingsOf } from "./log/replay/filling.js";
export {
  type LogNames,
  type ReplayedDip,
  type ReplayedFilling,
  type ReplayedRow,
  replayFilling,
} from "./log/replay/replay-filling.js";
export { type LoggedStart, realBathOf, startFromLog } from "./log/replay/start-from-log.js";
export { reviewLog } from "./log/review/review.js";
export { traceLoads } from "./log/review/trace.js";
export type { LocalTime } from "./log/row/local-time.js";
export type * from "./log/row/log-row.js";

// Parts from models.

export type { MeshFormat } from "./core/part/format.js";
export { measureMesh } from "./core/part/measure.js";
export type { MeshMeasure, MeshOptions } from "./core/part/mesh-measure.js";
export type { MeshUnit } from "./core/part/units.js";
