import { writeNumber } from "../../core/write-number.js";
import { gel, gels } from "../../model/make/lamps.js";
import { writeName } from "../../model/make/points.js";
import type { GelsValue, GelValue } from "../../model/values.js";
import type { Value } from "../../syntax/ast.js";
import { mired, stops } from "../../units/make.js";
import type { Mired, Stops } from "../../units/quantity.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { constant, isExpression } from "../constant.js";
import { type Context, contextOf, type Owned, replace, report } from "../context.js";
import { expand } from "../like.js";
import { nearNames, suggestion } from "../suggest.js";
import { bare, singleWord } from "../words.js";
import { argumentTrouble, asCall, sortArguments } from "./calls.js";
import { readMeasure, readRowMeasure } from "./measure.js";
import { refuseArguments, refuseCall, refuseKind } from "./want.js";

const lossRow: PropertyRow = {
  name: "loses",
  type: "stops",
  help: "",
  example: "1/3 stop",
  default: "",
  range: [0, 12],
};
const shiftRow: PropertyRow = {
  name: "gel",
  type: "mired",
  help: "",
  example: "60 mired",
  default: "",
  range: [0, 500],
};

/** One gel or a list of gels. */
export function readGels(ctx: Context, row: PropertyRow, value: Value): GelsValue | null {
  const inner = bare(value);
  const items = inner.kind === "list" ? inner.items : [inner];
  const read: GelValue[] = [];
  for (const item of items) {
    const one = readGel(ctx, row, item);
    if (one === null) return null;
    read.push(one);
  }
  return gels(...read);
}

function readGel(ctx: Context, row: PropertyRow, value: Value): GelValue | null {
  const inner = bare(value);
  const word = singleWord(inner);
  if (word !== null) return definedGel(ctx, word, inner);
  const call = asCall(inner);
  if (call !== null && call.call.args !== null) {
    const tint = call.word;
    if (tint !== "warm" && tint !== "cool" && tint !== "neutral") return refuseCall(ctx, row, value);
    const sorted = sortArguments(call.args);
    const trouble = argumentTrouble(sorted, ["loses"], tint === "neutral" ? 0 : 1);
    const shiftGiven = sorted.plain[0];
    if (trouble !== null || (tint !== "neutral" && shiftGiven === undefined)) {
      return refuseArguments(ctx, call.call, trouble ?? "takes a shift in mired", row.example);
    }
    const shift =
      shiftGiven === undefined
        ? mired(0)
        : (readRowMeasure(ctx, shiftRow, "mired", shiftGiven) as Mired | null);
    const lossGiven = sorted.named.get("loses");
    const loses =
      lossGiven === undefined
        ? stops(0)
        : (readRowMeasure(ctx, lossRow, "stop", lossGiven.value) as Stops | null);
    return shift === null || loses === null ? null : gel(tint, shift, loses);
  }
  if (!isExpression(inner)) return refuseKind(ctx, row, value, "a gel");
  const read = constant(ctx, inner, { words: "a gel", example: row.example });
  if (read === null) return null;
  if (read.unit === "K") {
    const shift = 1e6 / read.value - 1e6 / 5600;
    const size = writeNumber(Math.round(Math.abs(shift)));
    const text = `${shift >= 0 ? "warm" : "cool"}(${size} mired)`;
    report(
      ctx,
      "gel.temperature",
      value.span,
      { written: read.written },
      {
        fixes: [replace(ctx, `\`${text}\` (takes 5600 K to about ${read.written})`, value.span, text)],
      },
    );
    return null;
  }
  if (read.unit === "mired") {
    report(
      ctx,
      "gel.direction",
      value.span,
      { written: read.written },
      {
        fixes: (["warm", "cool"] as const).map((word) =>
          replace(ctx, `\`${word}(${read.written})\``, value.span, `${word}(${read.written})`),
        ),
      },
    );
    return null;
  }
  return refuseCall(ctx, row, value);
}

/** A gel by the name of its definition. */
function definedGel(ctx: Context, name: string, value: Value): GelValue | null {
  const entry = ctx.definitions.get(name);
  const known = [...ctx.definitions.values()].filter((d) => d.kind === "gel").map((d) => writeName(d.name));
  if (entry === undefined || entry.kind !== "gel") {
    const near = nearNames(name, known);
    if (!ctx.missing.has(name)) {
      const help = suggestion(
        near,
        known,
        "Write the gel itself, for example `warm(60 mired)`, or define one.",
      );
      report(
        ctx,
        "like.unknown",
        value.span,
        { name, known: help },
        { fixes: near.map((near) => replace(ctx, `write \`${near}\``, value.span, near)) },
      );
    }
    return null;
  }
  entry.used = true;
  const expanded = expand(contextOf(ctx, entry), entry.statement.block, "gel", [entry.statement]);
  return readGelBlock(expanded.entries);
}

/** The gel that the entries of a `define gel` block describe. */
function readGelBlock(entries: readonly Owned[]): GelValue | null {
  let warms: Mired | null = null;
  let cools: Mired | null = null;
  let loses: Stops | null = null;
  for (const { entry, ctx } of entries) {
    if (entry.kind !== "property") continue;
    const name = entry.path.parts[0]?.text;
    if (name === "warms")
      warms = readMeasure(ctx, { name, unit: "mired", example: "60 mired" }, entry.value) as Mired | null;
    if (name === "cools")
      cools = readMeasure(ctx, { name, unit: "mired", example: "60 mired" }, entry.value) as Mired | null;
    if (name === "loses")
      loses = readMeasure(ctx, { name, unit: "stop", example: "1/3 stop" }, entry.value) as Stops | null;
  }
  const loss = loses ?? stops(0);
  if (warms !== null && warms.value > 0) return gel("warm", warms, loss);
  if (cools !== null && cools.value > 0) return gel("cool", cools, loss);
  return gel("neutral", mired(0), loss);
}
