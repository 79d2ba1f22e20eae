import type * as model from "../../core/model/batch.js";
import { defaults } from "../../core/model/defaults.js";
import type { RawSpec } from "../schema/batch.js";
import { assumed, evidenceOf, orElse, quantityOf } from "./defaulted.js";
import { found } from "./found.js";
import { present } from "./present.js";

const usual = defaults.handling;
const assumedDragOut = assumed(usual.dragOutMlPerDm2);
/** Not drawn: colour goes on deepening while parts drip, so another drain would need other swatches. */
const assumedDrain = assumed({ value: usual.drainSeconds });
const halfToTwice = (value: number) => assumed({ value, factor: usual.assumedFactor });

export const completeHandling = (h: NonNullable<RawSpec["handling"]>) => ({
  load: h.load ?? halfToTwice(usual.loadSeconds),
  loadPart: h.loadPart ?? halfToTwice(usual.loadPartSeconds),
  drain: h.drain ?? assumedDrain,
  rinse: h.rinse ?? halfToTwice(usual.rinseSeconds),
  rinses: h.rinses ?? usual.rinses,
  rinseWater: orElse(h.rinseWater, usual.rinseWaterL),
  rinseEvery: h.rinseEvery ?? usual.rinseEvery,
  unload: h.unload ?? halfToTwice(usual.unloadSeconds),
  unloadPart: h.unloadPart ?? halfToTwice(usual.unloadPartSeconds),
  below: orElse(h.below, usual.belowKelvin),
  topUpTemperature: h.topUpTemperature,
  topUpTime: h.topUpTime,
  rinseChange: h.rinseChange,
  coolTo: orElse(h.coolTo, usual.coolToCelsius),
  dryerLoading: h.dryerLoading ?? halfToTwice(usual.dryerLoadingMinutes),
  setUp: h.setUp ?? halfToTwice(usual.setUpMinutes),
  cleanUp: h.cleanUp ?? halfToTwice(usual.cleanUpMinutes),
  timing: orElse(h.timing, usual.timingSeconds),
  shortest: orElse(h.shortest, usual.shortestSeconds),
  longest: orElse(h.longest, usual.longestSeconds),
  dragOut: quantityOf(h.dragOut) ?? assumedDragOut,
  dragOutEvidence: evidenceOf(h.dragOut),
  liquorRatio: h.liquorRatio ?? halfToTwice(usual.liquorRatioLPerKg),
  freeboard: orElse(h.freeboard, usual.freeboard),
});

const assumable: readonly model.AssumedHandling[] = [
  "load",
  "loadPart",
  "drain",
  "rinse",
  "unload",
  "unloadPart",
  "dryerLoading",
  "setUp",
  "cleanUp",
  "liquorRatio",
];

export const handling = (h: ReturnType<typeof completeHandling>): model.Handling => ({
  loadSeconds: h.load.value,
  loadPartSeconds: h.loadPart.value,
  drainSeconds: h.drain.value,
  rinseSeconds: h.rinse.value,
  rinses: h.rinses,
  rinseWaterL: h.rinseWater.value,
  rinseEvery: h.rinseEvery,
  unloadSeconds: h.unload.value,
  unloadPartSeconds: h.unloadPart.value,
  belowKelvin: h.below.value,
  coolToCelsius: h.coolTo.value,
  dryerLoadingMinutes: h.dryerLoading.value,
  setUpMinutes: h.setUp.value,
  cleanUpMinutes: h.cleanUp.value,
  timingSeconds: h.timing.value,
  shortestSeconds: h.shortest.value,
  longestSeconds: h.longest.value,
  dragOutMlPerDm2: h.dragOut.value,
  dragOutAssumed: h.dragOut.assumed === true,
  ...present({
    dragOutFound: found(h.dragOut),
    topUpCelsius: h.topUpTemperature?.value,
    topUpSeconds: h.topUpTime?.value,
    rinseChangeSeconds: h.rinseChange?.value,
  }),
  liquorRatioLPerKg: h.liquorRatio.value,
  freeboard: h.freeboard.value,
  assumed: assumable.filter((key) => h[key].assumed === true),
});
