/** How a spread is drawn where nothing else is asked for. Apart from what draws it, which a plan without a spread does not load. */
export const usualDraws = { draws: 1000, seed: 1 };
