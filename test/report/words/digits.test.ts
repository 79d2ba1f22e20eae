import { expect, test } from "vitest";
import { duration } from "../../../src/core/quantity/text/duration.js";
import {
  degrees,
  gramsSaid,
  litres,
  percent,
  pour,
  volumeSaid,
  weigh,
} from "../../../src/report/words/amounts.js";
import { decimals, digitsMl, trimmed } from "../../../src/report/words/digits.js";
import { clock } from "../../../src/report/words/times.js";

test("decimals never gives a minus zero and trimmed drops zeros at the end of a fraction only", () => {
  expect([decimals(-0.001, 2), decimals(-0.4, 0), decimals(-0.006, 2)]).toEqual(["0.00", "0", "-0.01"]);
  expect([trimmed(10, 1), trimmed(100, 2), trimmed(5.6, 2), trimmed(0.05, 1)]).toEqual([
    "10",
    "100",
    "5.6",
    "0.1",
  ]);
});

test("digitsMl gives tenths under 10 mL and whole millilitres from there on", () => {
  expect([0, 0.04, 9.94, 9.96, 10.4, 584.13].map(digitsMl)).toEqual(["0.0", "0.0", "9.9", "10", "10", "584"]);
});

test("pour says millilitres below a litre and litres from there on", () => {
  expect([9.87, 584.13, 999.4, 999.6, 5257.2].map(pour)).toEqual([
    "9.9 mL",
    "584 mL",
    "999 mL",
    "1.00 L",
    "5.26 L",
  ]);
});

test("weigh says grams to 0.1 and kilograms to the gram", () => {
  expect([5, 120.04, 999.94, 999.96, 1250].map(weigh)).toEqual([
    "5.0 g",
    "120.0 g",
    "999.9 g",
    "1.000 kg",
    "1.250 kg",
  ]);
});

test("amounts in running text carry no zeros at the end", () => {
  expect([litres(6), volumeSaid(6), volumeSaid(5.6), gramsSaid(250), gramsSaid(1250)]).toEqual([
    "6.00 L",
    "6 L",
    "5.6 L",
    "250 g",
    "1.25 kg",
  ]);
});

test("degrees gives whole or half degrees, percent tenths", () => {
  expect([80, 79.8, 82.3, -0.2].map(degrees)).toEqual(["80 °C", "80 °C", "82.5 °C", "0 °C"]);
  expect([0.1, 0.9237, 1].map(percent)).toEqual(["10 %", "92.4 %", "100 %"]);
});

test("duration gives whole seconds, carried into minutes and hours", () => {
  expect([0, 0.4, 42.4, 59.6, 60, 92, 3600, 3905].map(duration)).toEqual([
    "0 s",
    "0 s",
    "42 s",
    "1 min",
    "1 min",
    "1 min 32 s",
    "1 h",
    "1 h 5 min 5 s",
  ]);
});

test("clock gives the time of day from a start, else the time since the start", () => {
  expect([clock(15), clock(75.6), clock(0)]).toEqual(["+0:15", "+1:16", "+0:00"]);
  expect([clock(15, 480), clock(1000, 480), clock(-30, 0)]).toEqual(["08:15", "00:40 +1 d", "23:30 -1 d"]);
});
