import { printNode } from "../../format/print-node.js";
import { arms } from "../../model/make/lamps.js";
import { contrast, reflecting, surface } from "../../model/make/surroundings.js";
import type { ArmsValue, ContrastValue, LevelValue, SurfaceValue } from "../../model/values.js";
import type { Toleranced, Value } from "../../syntax/ast.js";
import { dimensionWords } from "../../units/dimension.js";
import { say } from "../../units/make.js";
import type { Angle, Plain, Quantity, Stops } from "../../units/quantity.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { surfaces } from "../../vocabulary/surfaces.js";
import { readingExpr } from "../claims/readings.js";
import { constant, isExpression } from "../constant.js";
import { type Context, replace, report } from "../context.js";
import { nearNames } from "../suggest.js";
import { withTolerance } from "../tolerance.js";
import { bare, singleWord } from "../words.js";
import { asCall } from "./calls.js";
import { inRange, readMeasure, readRowMeasure, readShare } from "./measure.js";
import { refuseArguments, refuseCall, refuseType } from "./want.js";

/** A named surface or a reflectance in per cent. */
export function readSurface(ctx: Context, row: PropertyRow, value: Value): SurfaceValue | null {
  const off = namedWithTolerance(ctx, value);
  if (off !== null) {
    const found = readSurface(ctx, row, off.value);
    const tolerance = constant(ctx, off.tolerance, { words: "a tolerance", example: "5 %" });
    if (found === null || tolerance === null) return null;
    const reflectance = withTolerance(ctx, found.reflectance, tolerance, off.tolerance.span) as Plain;
    return reflectance.plusMinus === undefined
      ? null
      : { ...found, reflectance, written: `${found.written} +- ${reflectance.plusMinus.written}` };
  }
  const word = singleWord(bare(value));
  if (word !== null && !ctx.lets.has(word)) {
    const found = surface(word);
    if (found !== null) return found;
    const names = surfaces.map((entry) => entry.name);
    const near = [...nearNames(word, names), ...names.filter((name) => name.startsWith(`${word}_`))];
    report(
      ctx,
      "surface.unknown",
      value.span,
      { name: word, names: names.join(", ") },
      {
        fixes: near.slice(0, 3).map((name) => {
          const share = surface(name)?.reflectance.written ?? "";
          return replace(ctx, `write \`${name}\` (${share})`, value.span, name);
        }),
      },
    );
    return null;
  }
  if (!isExpression(value)) return refuseType(ctx, row, value);
  const share = readShare(ctx, { ...row, range: [0, 1] }, value);
  return share === null ? null : reflecting(share);
}

/** `white_board +- 5 %`: a name, which is no `let`, with a tolerance behind it; null for anything else. */
function namedWithTolerance(ctx: Context, value: Value): Toleranced | null {
  const inner = bare(value);
  if (inner.kind !== "toleranced") return null;
  const word = singleWord(inner.value);
  return word === null || ctx.lets.has(word) || ctx.declared.has(word) ? null : inner;
}

/** A share in per cent; a `reflectance` may be the name of a surface, which stands for its share. */
export function readReflectance(ctx: Context, row: PropertyRow, value: Value): Quantity<"1"> | null {
  const inner = namedWithTolerance(ctx, value)?.value ?? value;
  const word = row.name === "reflectance" ? singleWord(bare(inner)) : null;
  if (word === null || ctx.lets.has(word) || ctx.declared.has(word)) return readShare(ctx, row, value);
  const found = readSurface(ctx, row, value);
  return found === null ? null : { ...found.reflectance, written: word };
}

/** `hanging`, `raised`, `spread(20 deg)`, `ahead(45 deg)` */
export function readArms(ctx: Context, row: PropertyRow, value: Value): ArmsValue | null {
  const word = singleWord(bare(value));
  if (word === "hanging" || word === "raised") return arms(word);
  const call = asCall(value);
  if (call === null || (call.word !== "spread" && call.word !== "ahead")) return refuseCall(ctx, row, value);
  const first = call.args[0];
  if (first === undefined || call.args.length !== 1) {
    return refuseArguments(ctx, call.call, "takes the angle above the horizontal", "spread(20 deg)");
  }
  const want: PropertyRow = { ...row, name: call.word, example: "20 deg", range: [-90, 90] };
  const angle = readRowMeasure(ctx, want, "deg", first.value) as Angle | null;
  return angle === null ? null : arms(call.word, angle);
}

/** `3:1` or `1.5 stop`, with a tolerance in stops if given. */
export function readContrast(ctx: Context, row: PropertyRow, value: Value): ContrastValue | null {
  if (!isExpression(value)) return refuseType(ctx, row, value);
  const read = constant(ctx, value, { words: "a contrast", example: row.example });
  if (read === null) return null;
  const spread = read.plusMinus;
  const tolerance: Stops | null =
    spread === undefined || spread.unit !== "stop"
      ? null
      : { value: spread.value, unit: "stop", written: spread.written };
  const ratio = read.unit === "1" && read.written.includes(":") && read.value > 0;
  if (read.unit === "stop" || ratio) {
    const stops: Stops = {
      value: ratio ? Math.log2(read.value) : read.value,
      unit: "stop",
      written: read.written,
    };
    return inRange(ctx, row, stops, value) === null ? null : contrast(stops.value, read.written, tolerance);
  }
  if (read.unit === "1") {
    const fixes = /^[\d.]+$/.test(read.written)
      ? [`${read.written}:1`, `${read.written} stop`].map((text) =>
          replace(ctx, `write \`${text}\``, value.span, text),
        )
      : [];
    report(ctx, "contrast.plain", value.span, { written: read.written }, { fixes });
  } else {
    report(ctx, "unit.wrong", value.span, {
      name: row.name,
      wanted: "a ratio or stops",
      found: dimensionWords(read.unit),
      example: `${row.name}: ${row.example}`,
    });
  }
  return null;
}

/** `1 stop under face.disc(towards: key)` */
export function readLevel(ctx: Context, row: PropertyRow, value: Value): LevelValue | null {
  if (value.kind !== "relation" || (value.word !== "under" && value.word !== "over"))
    return refuseType(ctx, row, value);
  const stops = readMeasure(
    ctx,
    { name: row.name, unit: "stop", example: row.example },
    value.left,
  ) as Stops | null;
  const of = readingExpr(ctx, value.right);
  if (stops === null || of === null) return null;
  return { stops, side: value.word, of, written: `${say(stops)} ${value.word} ${printNode(value.right)}` };
}
