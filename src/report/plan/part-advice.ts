import type { Advice } from "../../core/plan/advice/part-advice.js";
import type { Plan } from "../../core/plan/plan-model.js";

/** A line a kind of advice, with the parts that it is for. */
export function partAdvice(plan: Plan, index: number): string[] {
  const names = (code: Advice["code"], say: (advice: Advice) => string): string =>
    plan.advice
      .filter((advice) => advice.bath === index + 1 && advice.code === code)
      .map(say)
      .join(", ");
  const light = names("floats", ({ part }) => part);
  const cups = names("holds-liquor", ({ part }) => part);
  const thin = names("thin-walls", ({ part, meanWallMm: mm }) => `${part} (about ${mm.toFixed(1)} mm)`);
  return [
    ...(light === "" ? [] : [`They float until wetted: ${light}. Use a basket or a weight.`]),
    ...(cups === ""
      ? []
      : [
          `They hold liquor and air: ${cups}. Turn them under the surface until no bubble comes, lift them mouth down.`,
        ]),
    ...(thin === ""
      ? []
      : [`Thin walls, soft when hot: ${thin}. Support them, and let them cool lying flat.`]),
  ];
}
