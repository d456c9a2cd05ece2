import { writeNumber } from "../../core/write-number.js";
import {
  belowFull,
  candelas,
  capsule,
  cosinePower,
  dial,
  dialNumber,
  disc,
  efficacy,
  fractionOfFull,
  full,
  guideNumber,
  lambertian,
  metered,
  off,
  output,
  rectangle,
  setTo,
  sphere,
} from "../../model/make/lamps.js";
import type {
  BeamValue,
  CalibrationValue,
  DialValue,
  OutputValue,
  PowerValue,
  ShapeValue,
} from "../../model/values.js";
import type { Reference, Value } from "../../syntax/ast.js";
import { dimensionWords } from "../../units/dimension.js";
import { iso as isoOf } from "../../units/make.js";
import type {
  Efficacy,
  Energy,
  Flux,
  FStop,
  Intensity,
  IntensityTime,
  Length,
  LuminousEnergy,
  Plain,
  Quantity,
  Sensitivity,
  Stops,
} from "../../units/quantity.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { constant, isExpression } from "../constant.js";
import { type Context, replace, report } from "../context.js";
import { readBy } from "../quantities.js";
import { bare, singleWord } from "../words.js";
import { argumentTrouble, asCall, sortArguments } from "./calls.js";
import { isPerCent, ofDimension, readMeasure, readRowMeasure } from "./measure.js";
import { refuseArguments, refuseCall, refuseType } from "./want.js";

const opening = (name: string): PropertyRow => ({
  name,
  type: "length",
  help: "",
  example: "18 cm",
  default: "",
  range: [0.001, 30],
});

/** `disc(18 cm)`, `rectangle(60 x 90 cm)`, `sphere(8 cm)`, `capsule(7 cm, 4 cm)` */
export function readShape(ctx: Context, row: PropertyRow, value: Value): ShapeValue | null {
  const call = asCall(value);
  if (call === null || call.call.args === null) return refuseCall(ctx, row, value);
  const sorted = sortArguments(call.args);
  const [first, second] = sorted.plain;
  const one = (name: string, given: Value): Length | null =>
    readRowMeasure(ctx, opening(name), "m", given) as Length | null;
  switch (call.word) {
    case "disc":
    case "sphere": {
      const trouble = argumentTrouble(sorted, [], 1);
      if (trouble !== null || first === undefined) {
        return refuseArguments(ctx, call.call, trouble ?? "takes its diameter", `${call.word}(18 cm)`);
      }
      const diameter = one(call.word, first);
      return diameter === null ? null : call.word === "disc" ? disc(diameter) : sphere(diameter);
    }
    case "rectangle": {
      const inner = first === undefined ? null : bare(first);
      const trouble = argumentTrouble(sorted, [], 1);
      if (trouble !== null || inner === null || inner.kind !== "quantity") {
        return refuseArguments(ctx, call.call, trouble ?? "takes width x height", "rectangle(60 x 90 cm)");
      }
      const want = {
        count: 2,
        base: "m",
        name: "rectangle",
        words: "width x height",
        example: "rectangle(60 x 90 cm)",
      } as const;
      const read = readBy(ctx, inner, want) as readonly Length[] | null;
      const [width, height] = read ?? [];
      if (width === undefined || height === undefined) return null;
      const fits = [width, height].every((side) => checkOpening(ctx, side, inner));
      return fits ? rectangle(width, height) : null;
    }
    case "capsule": {
      const trouble = argumentTrouble(sorted, [], 2);
      if (trouble !== null || first === undefined || second === undefined) {
        return refuseArguments(
          ctx,
          call.call,
          trouble ?? "takes its length and its diameter",
          "capsule(7 cm, 4 cm)",
        );
      }
      const length = one("capsule", first);
      const diameter = one("capsule", second);
      if (length === null || diameter === null) return null;
      if (length.value < diameter.value) {
        return refuseArguments(
          ctx,
          call.call,
          "is shorter than it is thick; its length includes the rounded ends",
          "capsule(7 cm, 4 cm)",
        );
      }
      return capsule(length, diameter);
    }
    default:
      return refuseCall(ctx, row, value);
  }
}

function checkOpening(ctx: Context, side: Length, node: Value): boolean {
  const row = opening("rectangle");
  const [low, high] = row.range ?? [0, 0];
  if (side.value >= low && side.value <= high) return true;
  report(ctx, "value.range", node.span, {
    name: "rectangle",
    written: side.written,
    low: "1 mm",
    high: "30 m",
  });
  return false;
}

/** `metered(f/8, at: 2 m, ISO 100)`, `guide_number(58 m)`, `efficacy(35 lm/W)`, `candelas("file.ies")` */
export function readCalibration(ctx: Context, row: PropertyRow, value: Value): CalibrationValue | null {
  const call = asCall(value);
  if (call === null || call.call.args === null) return refuseCall(ctx, row, value);
  const sorted = sortArguments(call.args);
  switch (call.word) {
    case "metered":
      return readMetered(ctx, call.call);
    case "guide_number": {
      const trouble = argumentTrouble(sorted, [], 2);
      const [first, second] = sorted.plain;
      if (trouble !== null || first === undefined) {
        return refuseArguments(ctx, call.call, trouble ?? "takes a length", "guide_number(58 m, ISO 100)");
      }
      const range = { ...opening("guide_number"), range: [0.1, 2000] as const, example: "58 m" };
      const metres = readRowMeasure(ctx, range, "m", first) as Length | null;
      const iso =
        second === undefined
          ? isoOf(100)
          : readMeasure(ctx, { name: "guide_number", unit: "ISO", example: "ISO 100" }, second);
      return metres === null || iso === null ? null : guideNumber(metres, iso as Sensitivity);
    }
    case "efficacy": {
      const trouble = argumentTrouble(sorted, [], 1);
      const first = sorted.plain[0];
      if (trouble !== null || first === undefined) {
        return refuseArguments(ctx, call.call, trouble ?? "takes lumens to the watt", "efficacy(35 lm/W)");
      }
      const want: PropertyRow = { ...opening("efficacy"), example: "35 lm/W", range: [0.1, 683] };
      const read = readRowMeasure(ctx, want, "lm/W", first) as Efficacy | null;
      return read === null ? null : efficacy(read);
    }
    case "candelas": {
      const file = sorted.plain[0];
      if (file === undefined || file.kind !== "text" || call.args.length !== 1) {
        return refuseArguments(ctx, call.call, "takes the name of a file", 'candelas("dish.ies")');
      }
      return candelas(file.value);
    }
    default:
      return refuseCall(ctx, row, value);
  }
}

function readMetered(ctx: Context, call: Reference): CalibrationValue | null {
  const shown = "metered(f/8, at: 2 m, ISO 100)";
  const sorted = sortArguments(call.args ?? []);
  const trouble = argumentTrouble(sorted, ["at"], 2);
  const at = sorted.named.get("at");
  const [first, second] = sorted.plain;
  if (trouble !== null || at === undefined || first === undefined || second === undefined) {
    return refuseArguments(ctx, call, trouble ?? "takes an f-number, a distance and an ISO value", shown);
  }
  const fNumber = readMeasure(ctx, { name: "metered", unit: "f", example: shown }, first);
  const distance = readRowMeasure(
    ctx,
    { ...opening("at"), range: [0.05, 100], example: "2 m" },
    "m",
    at.value,
  );
  const iso = readMeasure(ctx, { name: "metered", unit: "ISO", example: shown }, second);
  if (fNumber === null || distance === null || iso === null) return null;
  if (!(fNumber.value > 0) || !(iso.value > 0))
    return refuseArguments(ctx, call, "needs values above zero", shown);
  return metered(fNumber as FStop, distance as Length, iso as Sensitivity);
}

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
  const read = constant(ctx, value, { words: "a power setting", example: row.example });
  return read === null ? null : powerOf(ctx, row, value, read);
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

/** `lambertian`, `cosine_power(4)` */
export function readBeam(ctx: Context, row: PropertyRow, value: Value): BeamValue | null {
  if (singleWord(bare(value)) === "lambertian") return lambertian;
  const call = asCall(value);
  if (call === null || call.word !== "cosine_power") return refuseCall(ctx, row, value);
  const first = call.args[0];
  if (first === undefined || call.args.length !== 1)
    return refuseArguments(ctx, call.call, "takes the exponent", row.example);
  const want: PropertyRow = { ...row, name: "cosine_power", example: "4", range: [0.1, 200] };
  const read = readRowMeasure(ctx, want, "1", first.value) as Plain | null;
  return read === null ? null : cosinePower(read);
}
