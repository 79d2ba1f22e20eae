/**
 * Cost of one good part where some are scrapped: (material + hourly rates × time + set-up share)/(1 - scrap).
 *
 * `perHour` is labour and machine together; `scrap` a share of the parts started.
 * @source quotationPage
 * @example
 * unitCostWithYield({ material: 2.5, perHour: 93, secondsPerPart: 45, setUp: 240, batchSize: 500, scrap: 0.0216 }) // => 4.233953
 */
export const unitCostWithYield = (job: {
  readonly material: number;
  readonly perHour: number;
  readonly secondsPerPart: number;
  readonly setUp: number;
  readonly batchSize: number;
  readonly scrap: number;
}): number =>
  (job.material + (job.perHour * job.secondsPerPart) / 3600 + job.setUp / job.batchSize) / (1 - job.scrap);

/**
 * Cost of one good part of a run that has been counted: (started × unit + scrapped × disposal)/good.
 * @source scrapExample
 * @example
 * costPerGood({ started: 1000, scrapped: 42, unitCost: 4.35, disposalEach: 0.6 }) // => 4.567015
 */
export const costPerGood = (run: {
  readonly started: number;
  readonly scrapped: number;
  readonly unitCost: number;
  readonly disposalEach: number;
}): number => (run.started * run.unitCost + run.scrapped * run.disposalEach) / (run.started - run.scrapped);
