import { writeNumber } from "../../core/write-number.js";
import {
  belowFull,
  dial,
  dialNumber,
  fractionOfFull,
  full,
  off,
  output,
  setTo,
} from "../../model/make/lamps.js";
import type { DialValue, OutputValue, PowerValue } from "../../model/values.js";
import type { Toleranced, Value } from "../../syntax/ast.js";
import { dimensionWords } from "../../units/dimension.js";
import { plusMinus } from "../../units/make.js";
import type {
  Energy,
  Flux,
  Intensity,
  IntensityTime,
  LuminousEnergy,
  Plain,
  Quantity,
  Stops,
} from "../../units/quantity.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { constant, isExpression } from "../constant.js";
import { type Context, replace, report } from "../context.js";
import { withTolerance } from "../tolerance.js";
import { bare, singleWord } from "../words.js";
import { asCall } from "./calls.js";
import { isPerCent, ofDimension, readMeasure } from "./measure.js";
import { refuseArguments, refuseCall, refuseType } from "./want.js";

const outputUnits = ["lm s", "lm", "cd", "cd s"] as const;

/** `1000 lm s`, `900 lm`, `500 cd s`, `300 cd` */
export function readOutput(ctx: Context, row: PropertyRow, value: Value): OutputValue | null {
  if (!isExpression(value)) return refuseType(ctx, row, value);
  const read = constant(ctx, value, { words: "an output of light", example: row.example });
  if (read === null) return null;
  if (!(outputUnits as readonly string[]).includes(read.unit)) {
    if (read.unit === "J") {
      report(ctx, "unit.wrong", value.span, {
        name: row.name,
        wanted: "an output of light",
        found: "watt-seconds, which are what the dial shows",
        example: `power: ${read.written}`,
      });
      return null;
    }
    report(ctx, "unit.wrong", value.span, {
      name: row.name,
      wanted: "an output of light",
      found: dimensionWords(read.unit),
      example: `${row.name}: ${row.example}`,
    });
    return null;
  }
  if (!(read.value > 0)) {
    report(ctx, "value.range", value.span, {
      name: row.name,
      written: read.written,
      low: "more than 0",
      high: "1000000000 lm s",
    });
    return null;
  }
  return output(read as LuminousEnergy | Flux | Intensity | IntensityTime);
}
/** `1/4`, `full - 2 stop`, `200 Ws`, `dial(7.3)`, `off` */
export function readPower(ctx: Context, row: PropertyRow, value: Value): PowerValue | null {
  const inner = bare(value);
  const word = singleWord(inner);
  if (word === "full") return full;
  if (word === "off") return off;
  const call = asCall(inner);
  if (call !== null && call.word === "dial" && call.call.args !== null) {
    const first = call.args[0];
    const read =
      first === undefined || call.args.length !== 1
        ? null
        : (readMeasure(ctx, { name: "dial", unit: "1", example: "dial(7.3)" }, first.value) as Plain | null);
    if (first === undefined || call.args.length !== 1)
      return refuseArguments(ctx, call.call, "takes one number", "dial(7.3)");
    return read === null ? null : dialNumber(read);
  }
  if (inner.kind === "sum") {
    const [first, second] = inner.terms;
    if (
      first !== undefined &&
      second !== undefined &&
      inner.terms.length === 2 &&
      singleWord(first.value) === "full"
    ) {
      const stops = readMeasure(
        ctx,
        { name: row.name, unit: "stop", example: "full - 2 stop" },
        second.value,
      ) as Stops | null;
      if (stops === null) return null;
      if (second.sign === "+" || stops.value < 0) {
        report(ctx, "value.range", value.span, {
          name: row.name,
          written: `full ${second.sign} ${stops.written}`,
          low: "off",
          high: "full",
        });
        return null;
      }
      return belowFull(stops);
    }
  }
  if (!isExpression(value)) return refuseType(ctx, row, value);
  if (inner.kind === "toleranced") return powerWithTolerance(ctx, row, inner);
  const read = constant(ctx, value, { words: "a power setting", example: row.example });
  return read === null ? null : powerOf(ctx, row, value, read);
}

/** `1/16 +- 1/3 stop`, `200 Ws +- 5 %`: a setting that may be off by stops, or by a share of it. */
function powerWithTolerance(ctx: Context, row: PropertyRow, node: Toleranced): PowerValue | null {
  const read = constant(ctx, node.value, { words: "a power setting", example: row.example });
  const off = constant(ctx, node.tolerance, { words: "a tolerance", example: "1/10 stop" });
  if (read === null || off === null) return null;
  const power = powerOf(ctx, row, node.value, read);
  if (power?.kind !== "fraction") {
    return power === null
      ? null
      : powerOf(ctx, row, node.value, withTolerance(ctx, read, off, node.tolerance.span));
  }
  if (off.unit === "stop" || isPerCent(off)) return fractionOfFull(plusMinus(read as Plain, off));
  report(ctx, "value.tolerance", node.tolerance.span, {
    words: "a power setting",
    allowed: "a number of stops or a share in per cent",
    found: dimensionWords(off.unit),
    example: `${read.written} +- 1/10 stop`,
  });
  return null;
}

function powerOf(ctx: Context, row: PropertyRow, value: Value, read: Quantity): PowerValue | null {
  if (isPerCent(read)) {
    const share = read.value;
    const half = `full - ${writeNumber(Math.round(-Math.log2(share) * 10) / 10)} stop`;
    const dialled = `dial(${writeNumber(share * 10)})`;
    report(
      ctx,
      "power.percent",
      value.span,
      { written: read.written },
      {
        fixes:
          share > 0 && share <= 1
            ? [
                replace(ctx, `\`${half}\` (that share of the energy)`, value.span, half),
                replace(ctx, `\`${dialled}\` (that share of a dial from 0 to 10)`, value.span, dialled),
              ]
            : [],
      },
    );
    return null;
  }
  if (read.unit === "1") {
    if (read.value > 0 && read.value <= 1) return fractionOfFull(read as Plain);
    report(ctx, "value.range", value.span, {
      name: row.name,
      written: read.written,
      low: "1/1024",
      high: "1 (full)",
    });
    return null;
  }
  if (read.unit === "J") {
    if (read.value > 0) return setTo(read as Energy);
    report(ctx, "value.range", value.span, {
      name: row.name,
      written: read.written,
      low: "more than 0 Ws",
      high: "full power",
    });
    return null;
  }
  ofDimension(ctx, { name: row.name, unit: "J", example: "1/4" }, read, value);
  return null;
}
/** `numbers(10 is full, 1 is 1 stop)` */
export function readDial(ctx: Context, row: PropertyRow, value: Value): DialValue | null {
  const call = asCall(value);
  if (call === null || call.word !== "numbers") return refuseCall(ctx, row, value);
  let top: Plain | null = null;
  let step: Plain | null = null;
  for (const { value: entry } of call.args) {
    if (entry.kind !== "relation" || entry.word !== "is")
      return refuseArguments(ctx, call.call, "takes `N is full` and `N is 1 stop`", row.example);
    const number = readMeasure(
      ctx,
      { name: row.name, unit: "1", example: row.example },
      entry.left,
    ) as Plain | null;
    if (number === null) return null;
    if (singleWord(bare(entry.right)) === "full") top = number;
    else {
      const stop = readMeasure(ctx, { name: row.name, unit: "stop", example: "1 stop" }, entry.right);
      if (stop === null) return null;
      if (stop.value !== 1 || !(number.value > 0))
        return refuseArguments(ctx, call.call, "says how many numbers are 1 stop", row.example);
      step = number;
    }
  }
  if (top === null || step === null)
    return refuseArguments(ctx, call.call, "needs both `N is full` and `N is 1 stop`", row.example);
  return dial(top, step);
}
