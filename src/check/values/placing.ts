import { along, left, right, straight, tape, towards, writeName } from "../../model/make/points.js";
import { edgeOf, markFrom } from "../../model/make/surroundings.js";
import type { BearingValue, DirectionValue, HingeValue, MarkValue, TapeValue } from "../../model/values.js";
import type { Value } from "../../syntax/ast.js";
import type { Angle, Length } from "../../units/quantity.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { isExpression } from "../constant.js";
import { type Context, replace, report } from "../context.js";
import { nearNames, suggestion } from "../suggest.js";
import { bare, singleWord } from "../words.js";
import { argumentTrouble, asCall, sortArguments } from "./calls.js";
import { readMeasure, readRowMeasure } from "./measure.js";
import { readPoint } from "./points.js";
import { refuseArguments, refuseCall, refuseType } from "./want.js";

/** Words that people may use for a bearing, with the bearing: it is counted from the camera's side. */
const sideWords: ReadonlyMap<string, string> = new Map([
  ...["behind", "back", "rear", "backlight"].map((word) => [word, "left(180 deg)"] as const),
  ...["front", "ahead", "camera", "frontal"].map((word) => [word, "0 deg"] as const),
  ...["left", "right"].map((word) => [word, `${word}(90 deg)`] as const),
]);

/** `left(30 deg)`; an angle of 0 or 180 deg has no side and needs none. */
export function readBearing(ctx: Context, row: PropertyRow, value: Value): BearingValue | null {
  const call = asCall(value);
  if (call !== null && call.call.args !== null) {
    if (call.word !== "left" && call.word !== "right") return refuseCall(ctx, row, value);
    const sorted = sortArguments(call.args);
    const trouble = argumentTrouble(sorted, [], 1);
    const angle = sorted.plain[0];
    if (trouble !== null || angle === undefined)
      return refuseArguments(ctx, call.call, trouble ?? "takes an angle", row.example);
    const read = readRowMeasure(ctx, { ...row, range: row.range ?? [0, 180] }, "deg", angle) as Angle | null;
    return read === null ? null : call.word === "left" ? left(read) : right(read);
  }
  const meant = sideWords.get(singleWord(bare(value)) ?? "");
  if (meant !== undefined && !ctx.lets.has(call?.word ?? "")) {
    return refuseCall(ctx, row, value, [replace(ctx, `write \`${meant}\``, value.span, meant)]);
  }
  if (!isExpression(value)) return refuseType(ctx, row, value);
  const read = readMeasure(ctx, { name: row.name, unit: "deg", example: row.example }, value) as Angle | null;
  if (read === null) return null;
  if (read.value === 0 || read.value === 180) return left(read);
  const angle = read.written.replace(/^-/, "");
  report(
    ctx,
    "bearing.side",
    value.span,
    { written: read.written },
    {
      fixes: (["left", "right"] as const).map((side) =>
        replace(ctx, `\`${side}(${angle})\``, value.span, `${side}(${angle})`),
      ),
    },
  );
  return null;
}

/** A bearing, `up` or `down`, or the point that is looked at. */
export function readDirection(ctx: Context, row: PropertyRow, value: Value): DirectionValue | null {
  const word = singleWord(bare(value));
  if ((word === "up" || word === "down") && !ctx.declared.has(word)) return straight(word);
  const call = asCall(value);
  const isBearing = call?.call.args != null && (call.word === "left" || call.word === "right");
  const isAngle = bare(value).kind === "quantity";
  if (isBearing || isAngle) {
    const bearing = readBearing(ctx, row, value);
    return bearing === null ? null : along(bearing);
  }
  const point = readPoint(ctx, row.name, value);
  return point === null ? null : towards(point);
}

/** A length, or a length from a point. */
export function readTape(ctx: Context, row: PropertyRow, value: Value): TapeValue | null {
  if (value.kind === "relation") {
    if (value.word !== "from") return refuseType(ctx, row, value);
    const length = readRowMeasure(ctx, row, "m", value.left) as Length | null;
    const from = readPoint(ctx, row.name, value.right);
    return length === null || from === null ? null : tape(length, from);
  }
  if (!isExpression(value)) return refuseType(ctx, row, value);
  const length = readRowMeasure(ctx, row, "m", value) as Length | null;
  return length === null ? null : tape(length);
}

/** `left_edge(back)` */
export function readHinge(ctx: Context, row: PropertyRow, value: Value): HingeValue | null {
  const call = asCall(value);
  if (call === null || call.call.args === null || (call.word !== "left_edge" && call.word !== "right_edge")) {
    return refuseCall(ctx, row, value);
  }
  const of = call.args[0];
  const name = of === undefined || of.name !== null ? null : singleWord(bare(of.value));
  if (name === null || call.args.length !== 1)
    return refuseArguments(ctx, call.call, "takes the name of a flat", row.example);
  const flats = [...ctx.declared.values()]
    .filter((d) => d.block.words[0]?.text === "flat")
    .map((d) => writeName(d.name));
  if (!flats.includes(writeName(name))) {
    const near = nearNames(name, flats);
    report(
      ctx,
      "name.unknown",
      of?.span ?? call.call.span,
      { name, known: suggestion(near, flats, "There is no flat in the set.") },
      { fixes: near.map((near) => replace(ctx, `write \`${near}\``, of?.span ?? call.call.span, near)) },
    );
    return null;
  }
  return edgeOf(call.word === "left_edge" ? "left" : "right", name);
}

/** `from(left: 1.2 m, back: 70 cm)` */
export function readMark(ctx: Context, row: PropertyRow, value: Value): MarkValue | null {
  const call = asCall(value);
  if (call === null || call.word !== "from") return refuseCall(ctx, row, value);
  const sorted = sortArguments(call.args);
  const walls = ["left", "right", "back", "front"] as const;
  const trouble = argumentTrouble(sorted, walls, 0);
  if (trouble !== null) return refuseArguments(ctx, call.call, trouble, row.example);
  if (sorted.named.has("left") && sorted.named.has("right")) {
    return refuseArguments(ctx, call.call, "measures from both side walls; one is enough", row.example);
  }
  if (sorted.named.has("back") && sorted.named.has("front")) {
    return refuseArguments(
      ctx,
      call.call,
      "measures from both the back and the front wall; one is enough",
      row.example,
    );
  }
  if (sorted.named.size === 0) return refuseArguments(ctx, call.call, "needs at least one wall", row.example);
  const read: Partial<Record<(typeof walls)[number], Length>> = {};
  for (const wall of walls) {
    const argument = sorted.named.get(wall);
    if (argument === undefined) continue;
    const at = readRowMeasure(
      ctx,
      { ...row, name: wall, example: "1.2 m", range: [0, 200] },
      "m",
      argument.value,
    );
    if (at === null) return null;
    read[wall] = at as Length;
  }
  return markFrom(read);
}
