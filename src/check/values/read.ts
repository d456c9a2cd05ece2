import { quote } from "../../core/quote.js";
import type { ValueShapes } from "../../model/values.js";
import type { Value } from "../../syntax/ast.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { wordSynonyms } from "../../vocabulary/synonyms.js";
import type { ValueType } from "../../vocabulary/value-types.js";
import { type Context, replace, report } from "../context.js";
import { nearNames } from "../suggest.js";
import { bare, singleWord } from "../words.js";
import { readBeam } from "./beam.js";
import { readCalibration } from "./calibration.js";
import { argumentTrouble, asCall, sortArguments } from "./calls.js";
import { readGels } from "./gels.js";
import { inRange, readMeasure, readRowMeasure, readShutter } from "./measure.js";
import { readNaturalLight } from "./natural-light.js";
import { readBearing, readDirection, readHinge, readMark, readTape } from "./placing.js";
import { readPoint } from "./points.js";
import { readDial, readOutput, readPower } from "./power.js";
import { readShape } from "./shape.js";
import { readPixels, readRectangle, readVolume } from "./sizes.js";
import { readName } from "./surface-name.js";
import { readArms, readContrast, readLevel, readReflectance, readSurface } from "./surroundings.js";
import { refuseArguments, refuseCall, refuseType } from "./want.js";

type Reader<T extends ValueType> = (ctx: Context, row: PropertyRow, value: Value) => ValueShapes[T] | null;

/** Reads a plain quantity of the dimension that belongs to the type. */
const measure =
  <T extends ValueType>(unit: Parameters<typeof readRowMeasure>[2]): Reader<T> =>
  (ctx, row, value) =>
    readRowMeasure(ctx, row, unit, value) as ValueShapes[T] | null;

/** Properties whose times are on the shutter's nominal series. */
const nominalTimes = new Set(["shutter", "sync"]);

const readers: { readonly [T in ValueType]: Reader<T> } = {
  length: measure("m"),
  angle: measure("deg"),
  time: (ctx, row, value) =>
    (nominalTimes.has(row.name) ? readShutter(ctx, row, value) : readRowMeasure(ctx, row, "s", value)) as
      | ValueShapes["time"]
      | null,
  energy: measure("J"),
  watts: measure("W"),
  mass: measure("kg"),
  illuminance: measure("lx"),
  fraction: readReflectance,
  number: measure("1"),
  aperture: measure("f"),
  sensitivity: measure("ISO"),
  temperature: measure("K"),
  stops: measure("stop"),
  mired: measure("mired"),
  rectangle: readRectangle,
  volume: readVolume,
  pixels: readPixels,
  point: (ctx, row, value) => readPoint(ctx, row.name, value),
  direction: readDirection,
  bearing: readBearing,
  tape: readTape,
  shape: readShape,
  calibration: readCalibration,
  output: readOutput,
  power: readPower,
  dial: readDial,
  beam: readBeam,
  gels: readGels,
  surface: readSurface,
  hinge: readHinge,
  mark: readMark,
  arms: readArms,
  natural_light: readNaturalLight,
  contrast: readContrast,
  level: readLevel,
  scale: (ctx, row, value) => {
    const read = readMeasure(ctx, { name: row.name, unit: row.unit ?? "1", example: row.example }, value);
    return read === null ? null : inRange(ctx, { ...row, range: row.range ?? [0, 1e9] }, read, value);
  },
  word: (ctx, row, value) => {
    const word = singleWord(bare(value));
    if (word === null) return refuseType(ctx, row, value);
    const words = row.words ?? [];
    if (words.includes(word)) return word;
    const meant = wordSynonyms.find(
      ({ property, wrong, right }) =>
        property === row.name && wrong.includes(word.toLowerCase()) && words.includes(right),
    );
    const near = meant === undefined ? nearNames(word, words) : [meant.right];
    report(
      ctx,
      "value.word",
      value.span,
      { name: row.name, word, words: words.join(", ") },
      {
        fixes: near.map((name) => replace(ctx, `write \`${name}\``, value.span, name)),
      },
    );
    return null;
  },
  name: readName,
  text: (ctx, row, value) => (value.kind === "text" ? value.value : refuseType(ctx, row, value)),
  texts: (ctx, row, value) => {
    const items = value.kind === "list" ? value.items : [value];
    const read: string[] = [];
    for (const item of items) {
      if (item.kind !== "text") return refuseType(ctx, row, item);
      read.push(item.value);
    }
    return read;
  },
  photo: (ctx, row, value) => {
    const call = asCall(value);
    if (call === null || call.word !== "photo") return refuseCall(ctx, row, value);
    const sorted = sortArguments(call.args);
    const file = sorted.plain[0];
    const trouble = argumentTrouble(sorted, [], 1);
    if (trouble !== null || file?.kind !== "text") {
      return refuseArguments(ctx, call.call, trouble ?? "takes the name of a file", row.example);
    }
    return { file: file.value, took: [], written: `photo(${quote(file.value)})` };
  },
};

/** Reads the value of a property as its type says. Null after a finding, or where the value is damaged. */
export function readValue(ctx: Context, row: PropertyRow, value: Value): ValueShapes[ValueType] | null {
  if (value.kind === "damaged") return null;
  return readers[row.type](ctx, row, value);
}
