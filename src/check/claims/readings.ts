import { printNode } from "../../format/print-node.js";
import { writeName } from "../../model/make/points.js";
import type { Expr } from "../../model/values.js";
import type { Expression, Reference } from "../../syntax/ast.js";
import { type Context, replace, report } from "../context.js";
import { bodyPoints, hasParts, isWall, resolvePlace } from "../places.js";
import { argumentTrouble, sortArguments } from "../values/calls.js";
import { readPoint } from "../values/points.js";
import { bare, singleWord } from "../words.js";
import { noteAbsentReading } from "./absent.js";

/** The same reference without its last part and without arguments. */
function without(node: Reference, parts: number): Reference {
  const kept = node.path.parts.slice(0, node.path.parts.length - parts);
  const last = kept[kept.length - 1] ?? node.path.parts[0];
  const span = { start: node.span.start, end: last?.span.end ?? node.span.end };
  return { kind: "reference", span, path: { kind: "path", span, parts: kept }, args: null };
}

const lastPart = (node: Reference): string => node.path.parts[node.path.parts.length - 1]?.text ?? "";

/** True for `face.disc(...)` and `face.dome(...)`. */
export function namesMeter(node: Reference): boolean {
  const last = lastPart(node);
  return node.path.parts.length > 1 && (last === "disc" || last === "dome");
}

/** A reading: `face.disc(towards: key)`, or a surface or point that has one natural reading. Null after a finding. */
export function readingExpr(ctx: Context, expression: Expression): Expr | null {
  const node = bare(expression);
  if (node.kind === "damaged") return null;
  if (node.kind !== "reference") {
    report(ctx, "claim.types", expression.span, { left: "Something that is no reading", right: "a reading" });
    return null;
  }
  if (namesMeter(node)) return meterReading(ctx, node);
  if (node.args !== null) {
    report(ctx, "result.argument", node.span, {
      name: printNode(without(node, 0)),
      trouble: "is not a reading",
      example: "face.disc(towards: key)",
    });
    return null;
  }
  return naturalReading(ctx, node);
}

/** A reading that needs no meter to be named. */
export function naturalReading(ctx: Context, node: Reference): Expr | null {
  const path = resolvePlace(ctx, node);
  if (path === null) return null;
  if (isNatural(ctx, path)) {
    noteAbsentReading(ctx, node, path.join("."), null, []);
    return {
      kind: "reading",
      type: "reading",
      station: path.join("."),
      receptor: "disc",
      towards: null,
      lights: [],
    };
  }
  const name = path.join(".");
  const light = ctx.declared.get(name)?.kind === "light";
  const shown = printNode(node);
  const towards = keyName(ctx);
  report(
    ctx,
    "reading.meter",
    node.span,
    { name: shown },
    {
      ...(light
        ? {
            help: `\`${shown}\` is a lamp; what it gives is read at a place: \`face.disc(towards: ${shown}, only: ${shown})\`.`,
          }
        : {}),
      fixes: light
        ? []
        : [
            replace(
              ctx,
              `\`${shown}.disc(towards: ${towards})\``,
              node.span,
              `${shown}.disc(towards: ${towards})`,
            ),
            replace(ctx, `\`${shown}.dome(towards: camera)\``, node.span, `${shown}.dome(towards: camera)`),
          ],
    },
  );
  return null;
}

/** A light to suggest as the key: the one that is called so, else the first. */
function keyName(ctx: Context): string {
  const lights = [...ctx.declared.values()].filter((d) => d.kind === "light").map((d) => d.name);
  return lights.includes("key") ? "key" : writeName(lights[0] ?? "key");
}

/** True for places with one natural reading: surfaces, the cheeks, and points that say what they face. */
export function isNatural(ctx: Context, path: readonly string[]): boolean {
  const last = path[path.length - 1] ?? "";
  if (last === "lit_cheek" || last === "shaded_cheek") return true;
  if (isWall(path[0] ?? "")) return true;
  if (path.length === 1 && (last === "floor" || last === "ceiling")) return true;
  const whole = ctx.declared.get(path.join("."));
  const points = [...ctx.declared.values()].filter((d) => d.kind === "point" && d.name === last);
  const point = whole?.kind === "point" ? whole : path.length <= 2 ? points[0] : undefined;
  if (point !== undefined && !(bodyPoints as readonly string[]).includes(last)) {
    return point.block.entries.some(
      (entry) => entry.kind === "property" && entry.path.parts[0]?.text === "faces",
    );
  }
  const piece = ctx.declared.get(path[0] ?? "");
  if (piece?.kind !== "piece") return false;
  return hasParts(piece) || piece.block.words[0]?.text === "table" || piece.block.words[0]?.text === "disc";
}

function meterReading(ctx: Context, node: Reference): Expr | null {
  const path = resolvePlace(ctx, without(node, 1));
  if (path === null) return null;
  const receptor = lastPart(node) === "disc" ? "disc" : "dome";
  const sorted = sortArguments(node.args ?? []);
  const trouble = argumentTrouble(sorted, ["towards", "only"], 0);
  const example = "face.disc(towards: key)";
  if (trouble !== null) {
    report(ctx, "result.argument", node.span, { name: printNode(node), trouble, example });
    return null;
  }
  const towards = sorted.named.get("towards");
  const only = sorted.named.get("only");
  const point = towards === undefined ? null : readPoint(ctx, "towards", towards.value);
  if (towards !== undefined && point === null) return null;
  if (towards === undefined && !isNatural(ctx, path)) {
    report(ctx, "result.argument", node.span, {
      name: printNode(node),
      trouble: "does not say where it looks",
      example: `${path.join(".")}.${receptor}(towards: ${receptor === "disc" ? keyName(ctx) : "camera"})`,
    });
    return null;
  }
  const lights =
    only === undefined ? [] : readLights(ctx, only.value.kind === "list" ? only.value.items : [only.value]);
  if (lights === null) return null;
  noteAbsentReading(ctx, node, path.join("."), point, lights);
  return { kind: "reading", type: "reading", station: path.join("."), receptor, towards: point, lights };
}

/** Names of lights. Null after a finding. */
export function readLights(
  ctx: Context,
  values: readonly {
    readonly kind: string;
    readonly span: { readonly start: number; readonly end: number };
  }[],
): readonly string[] | null {
  const names: string[] = [];
  for (const value of values) {
    const word = singleWord(bare(value as Expression));
    if (word === null || ctx.declared.get(word)?.kind !== "light") {
      const lights = [...ctx.declared.values()].filter((d) => d.kind === "light").map((d) => d.name);
      report(ctx, "name.unknown", value.span, {
        name: word ?? printNode(value as Expression),
        known:
          lights.length === 0
            ? "There is no light in this recipe."
            : `A light is wanted: ${lights.join(", ")}.`,
      });
      return null;
    }
    names.push(word);
  }
  return names;
}
