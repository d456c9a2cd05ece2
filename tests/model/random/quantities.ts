import type { BaseUnit } from "../../../src/units/dimension.js";
import {
  fNumber,
  ft,
  inUnit,
  iso,
  kelvin,
  mired,
  number,
  percent,
  plusMinus,
  quantity,
  shutterOneOver,
  stops,
  thirdStops,
} from "../../../src/units/make.js";
import { exactFNumber, exactIso, exactShutter } from "../../../src/units/nominal.js";
import type { Length, Quantity } from "../../../src/units/quantity.js";
import { toBase, type UnitRow, unitTable } from "../../../src/units/spellings.js";
import type { Draw } from "./draw.js";

/** Numbers as people write them, and some that nobody would. */
function amount(draw: Draw, low: number, high: number): number {
  const share = draw.share();
  // Now and then the very ends, or something close to them.
  const any = draw.once(12)
    ? draw.one([low, high])
    : low + (high - low) * (draw.once(4) ? share * share * share * share : share);
  const digits = draw.int(0, 5);
  const rounded = digits === 5 ? any : Number(any.toFixed(digits));
  const kept = rounded >= low && rounded <= high ? rounded : any;
  return kept === 0 ? 0 : kept;
}

/** A number in one of the units of a dimension, in a range of the base unit. */
function inSomeUnit<U extends BaseUnit>(draw: Draw, base: U, low: number, high: number): Quantity<U> {
  const rows = unitTable.filter((row: UnitRow) => row.base === base && row.name !== "%");
  for (let tries = 0; tries < 8; tries++) {
    const row = draw.one(rows);
    const made = inUnit(
      row.name,
      base,
      amount(draw, (low * row.over) / row.times, (high * row.over) / row.times),
    );
    if (made.value >= low && made.value <= high) return made;
  }
  const [row] = rows.filter((one) => one.times === 1 && one.over === 1);
  return inUnit(
    row?.name ?? base,
    base,
    low < 0 && high > 0 ? 0 : toBase({ times: 1, over: 1 } as UnitRow, low),
  );
}

/** A length in one unit, as it may stand in a size. */
export function anySide(draw: Draw, low: number, high: number): Length {
  return inSomeUnit(draw, "m", low, high);
}

/** A tolerance that may stand behind a quantity. */
function withSpread(draw: Draw, q: Quantity): Quantity {
  if (q.unit === "f" || q.unit === "ISO" || q.unit === "EV") return plusMinus(q, thirdStops(draw.int(1, 3)));
  if (q.unit === "K") return plusMinus(q, mired(draw.int(1, 40)));
  if (q.unit === "stop") return plusMinus(q, stops(draw.int(1, 9) / 10));
  if (q.unit === "mired") return plusMinus(q, mired(draw.int(1, 9)));
  if (draw.once(2)) return plusMinus(q, percent(draw.int(1, 25)));
  return q.unit === "1" ? q : plusMinus(q, { ...inSomeUnit(draw, q.unit, 0, 1) });
}

/** A quantity of a dimension in a range of its base unit, written in one of many ways. */
export function anyQuantity(draw: Draw, unit: BaseUnit, low: number, high: number, spread = true): Quantity {
  const plain = plainQuantity(draw, unit, low, high);
  return spread && draw.once(6) ? withSpread(draw, plain) : plain;
}

function plainQuantity(draw: Draw, unit: BaseUnit, low: number, high: number): Quantity {
  const inside = (made: Quantity): Quantity | null => (made.value >= low && made.value <= high ? made : null);
  switch (unit) {
    case "1":
      return number(amount(draw, low, high));
    case "m":
      return (draw.once(6) ? inside(feetAndInches(draw, high)) : null) ?? inSomeUnit(draw, "m", low, high);
    case "f": {
      const nominal = fNumber(draw.one([1.4, 2, 2.8, 4, 5.6, 7.1, 8, 11, 16, 22]));
      return draw.once(3)
        ? fNumber(amount(draw, Math.max(low, 0.9), Math.min(high, 60)))
        : (inside(nominal) ?? fNumber(exactFNumber(low)));
    }
    case "ISO":
      return draw.once(3)
        ? iso(amount(draw, Math.max(low, 3), Math.min(high, 50_000)))
        : (inside(iso(draw.one([50, 100, 125, 320, 6400]))) ?? iso(exactIso(low)));
    case "K":
      return kelvin(amount(draw, low, high));
    case "stop":
      return (draw.once(3) ? inside(thirdStops(draw.int(1, 11))) : null) ?? stops(amount(draw, low, high));
    case "s":
      return (draw.once(2) ? inside(oneOver(draw.int(1, 2000))) : null) ?? inSomeUnit(draw, "s", low, high);
    default:
      return inSomeUnit(draw, unit, low, high);
  }
}

const oneOver = (n: number): Quantity<"s"> => quantity("s", 1 / n, `1/${n} s`);

/** An exposure time, on the nominal series or off it, as a camera's property holds it. */
export function anyShutter(draw: Draw, low: number, high: number): Quantity<"s"> {
  if (draw.once(2)) return shutterOneOver(draw.one([1, 2, 30, 60, 125, 200, 333, 1000]));
  const plain = inSomeUnit(draw, "s", low, high);
  return { ...plain, value: exactShutter(plain.value) };
}

function feetAndInches(draw: Draw, high: number): Length {
  return ft(draw.int(0, Math.max(0, Math.floor(high / 0.3048) - 1)), draw.int(0, 110) / 10);
}

/** A share in per cent. */
export function anyShare(draw: Draw, low = 0, high = 1): Quantity<"1"> {
  return percent(amount(draw, low * 100, high * 100));
}

/** A fraction of full power, as the dial shows it. */
export function anyFraction(draw: Draw): Quantity<"1"> {
  const below = draw.one([1, 2, 3, 4, 8, 16, 64, 128]);
  return below === 1 ? number(amount(draw, 0.001, 1)) : quantity("1", 1 / below, `1/${below}`);
}
