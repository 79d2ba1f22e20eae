import type { DyedOrder, Order } from "./batch.js";

/** The shade of an order of undyed parts, as files and reports name it. */
export const undyed = "none";

export const isDyed = (order: Order): order is DyedOrder => order.shade !== undefined;
