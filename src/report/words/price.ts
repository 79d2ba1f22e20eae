import type { CostedOrder } from "../../core/cost/batch-costs.js";

/** The title of a column of prices; it says that tax is in them where it is. */
export const priceTitle = (orders: readonly Pick<CostedOrder, "tax">[]): string =>
  orders.some(({ tax }) => tax !== undefined && tax > 0) ? "price with tax" : "price";
