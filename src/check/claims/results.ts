import type { Span } from "../../core/span.js";
import type { Fix } from "../../diagnostics/diagnostic.js";
import { printNode } from "../../format/print-node.js";
import { printName } from "../../format/print-value.js";
import { writeName } from "../../model/make/points.js";
import type { Expr, PointValue } from "../../model/values.js";
import type { Argument, Expression, Reference, Value } from "../../syntax/ast.js";
import { type ArgumentType, findResult, type ResultRow, results } from "../../vocabulary/results.js";
import { isExpression } from "../constant.js";
import { type Context, replace, report } from "../context.js";
import { isWall, resolvePlace, settingWords } from "../places.js";
import { nearNames, suggestion } from "../suggest.js";
import { sortArguments } from "../values/calls.js";
import { readPoint } from "../values/points.js";
import { bare, singleWord } from "../words.js";
import { noteAbsent } from "./absent.js";
import { readingExpr, readLights } from "./readings.js";

/** Reads an expression; handed in, since results are part of expressions and hold some themselves. */
export type ReadExpr = (ctx: Context, node: Expression) => Expr | null;

type Given = { readonly name: string; readonly value: Expr | PointValue | string };

/** A result of a light or a function. Null after a finding. */
export function resultExpr(
  ctx: Context,
  node: Reference,
  row: ResultRow,
  of: string | null,
  read: ReadExpr,
): Expr | null {
  const args = readArguments(ctx, node, row, read);
  if (args === null) return null;
  else noteAbsent(ctx, node, row, of, args);
  return { kind: "result", type: row.type, name: row.name, of, args };
}

function trouble(
  ctx: Context,
  node: Reference,
  row: ResultRow,
  words: string,
  at: { readonly span: Span; readonly fixes: readonly Fix[] } = { span: node.span, fixes: [] },
): null {
  const light = row.of === "light" ? node.path.parts[0] : undefined;
  const example = light === undefined ? row.example : row.example.replace(/^key/, printName(light));
  report(ctx, "result.argument", at.span, { name: row.name, trouble: words, example }, { fixes: at.fixes });
  return null;
}

function readArguments(
  ctx: Context,
  node: Reference,
  row: ResultRow,
  readExpr: ReadExpr,
): readonly Given[] | null {
  const sorted = sortArguments(node.args ?? []);
  if (sorted.twice !== null) return trouble(ctx, node, row, `gets \`${sorted.twice}\` twice`);
  const strange = [...sorted.named].find(([name]) => row.args.every((parameter) => parameter.name !== name));
  if (strange !== undefined) return strangeArgument(ctx, node, row, strange);
  const rest: Value[] = [...sorted.plain];
  const left = new Map<string, Argument>(sorted.named);
  const given: Given[] = [];
  for (const parameter of row.args) {
    const named = left.get(parameter.name);
    left.delete(parameter.name);
    const values =
      named !== undefined ? [named.value] : parameter.many === true ? rest.splice(0) : rest.splice(0, 1);
    if (values.length === 0) {
      if (parameter.needed) return trouble(ctx, node, row, `needs \`${parameter.name}\``);
      continue;
    }
    for (const value of values) {
      const read = readArgument(ctx, node, row, readExpr, parameter, value);
      if (read === null) return null;
      given.push({ name: parameter.name, value: read });
    }
  }
  const chosen = (row.oneOf ?? []).filter((name) => given.some((argument) => argument.name === name));
  if (row.oneOf !== undefined && chosen.length !== 1) {
    const names = row.oneOf.map((name) => `\`${name}\``).join(" or ");
    return trouble(ctx, node, row, `needs ${names}${chosen.length === 0 ? "" : ", not both"}`);
  }
  if (rest.length > 0) return trouble(ctx, node, row, "has too many arguments");
  return given;
}

/** An argument that the result does not take: said at its name, with the one that was meant. */
function strangeArgument(
  ctx: Context,
  node: Reference,
  row: ResultRow,
  [name, argument]: readonly [string, Argument],
): null {
  const names = row.args.map((parameter) => parameter.name);
  const given = (node.args ?? []).map((one) => one.name?.text);
  const near = nearNames(
    name,
    names.filter((one) => !given.includes(one)),
  );
  const span = argument.name?.span ?? argument.span;
  const fixes = near.map((meant) => replace(ctx, `write \`${meant}\``, span, meant));
  const may =
    near.length > 0
      ? `; perhaps ${near.map((one) => `\`${one}\``).join(" or ")} is meant`
      : names.length > 0
        ? `; it may have ${names.join(", ")}`
        : "";
  return trouble(ctx, node, row, `takes no \`${name}\`${may}`, { span, fixes });
}

function readArgument(
  ctx: Context,
  node: Reference,
  row: ResultRow,
  readExpr: ReadExpr,
  { name, type }: { readonly name: string; readonly type: ArgumentType },
  value: Value,
): Expr | PointValue | string | null {
  switch (type) {
    case "length":
    case "angle": {
      if (!isExpression(value))
        return trouble(ctx, node, row, `needs ${type === "angle" ? "an angle" : "a length"} for \`${name}\``);
      const read = readExpr(ctx, value);
      if (read === null) return null;
      if (read.type !== type)
        return trouble(ctx, node, row, `needs ${type === "angle" ? "an angle" : "a length"} for \`${name}\``);
      return read;
    }
    case "point":
      return readPoint(ctx, name, value);
    case "light":
    case "lights":
      return readLights(ctx, [value])?.[0] ?? null;
    case "face":
      return readFace(ctx, node, row, value);
    case "outline":
      return readOutline(ctx, node, row, value);
    case "reading": {
      if (!isExpression(value)) return trouble(ctx, node, row, "takes readings");
      const read = readExpr(ctx, value);
      if (read === null) return null;
      const light = ["reading", "f-number", "exposure", "ev"].includes(read.type);
      return light ? read : trouble(ctx, node, row, "takes readings, such as `face.disc(towards: key)`");
    }
    case "extent": {
      const word = singleWord(bare(value));
      if (word === "width" || word === "height") return word;
      if (!isExpression(value))
        return trouble(ctx, node, row, "takes width, height or an angle for `across`");
      const read = readExpr(ctx, value);
      if (read === null) return null;
      return read.type === "angle"
        ? read
        : trouble(ctx, node, row, "takes width, height or an angle for `across`");
    }
    case "side": {
      const word = singleWord(bare(value));
      return word === "left" || word === "right" || word === "top"
        ? word
        : trouble(ctx, node, row, `needs left, right or top for \`${name}\``);
    }
    case "frame-side": {
      const word = singleWord(bare(value));
      return word === "left" || word === "right" || word === "top" || word === "bottom"
        ? word
        : trouble(ctx, node, row, `needs left, right, top or bottom for \`${name}\``);
    }
    case "surface-name": {
      const word = singleWord(bare(value));
      if (word === "floor" || (word !== null && isWall(word))) return word;
      if (word !== null && ctx.declared.get(word)?.kind === "piece") return word;
      if (word !== null && !ctx.declared.has(word)) return unknownSurface(ctx, value, word);
      return trouble(ctx, node, row, `needs the name of a surface for \`${name}\``);
    }
    default:
      return type satisfies never;
  }
}

/** Says that the set has no surface of this name, with what is near. */
function unknownSurface(ctx: Context, value: Value, name: string): null {
  const pieces = [...ctx.declared.values()].filter(({ kind }) => kind === "piece");
  const known = [...pieces.map((piece) => writeName(piece.name)), "floor"];
  const near = nearNames(name, known);
  const fixes = near.map((meant) => replace(ctx, `write \`${meant}\``, value.span, meant));
  report(
    ctx,
    "name.unknown",
    value.span,
    { name: writeName(name), known: suggestion(near, known, "There is none in the set.") },
    { fixes },
  );
  return null;
}

/** The face of a subject: `face` or `ana.face`. */
function readFace(ctx: Context, node: Reference, row: ResultRow, value: Value): string | null {
  const inner = bare(value);
  if (inner.kind !== "reference" || inner.args !== null) return trouble(ctx, node, row, "takes a face");
  const path = resolvePlace(ctx, inner);
  if (path === null) return null;
  return path[path.length - 1] === "face" ? path.join(".") : trouble(ctx, node, row, "takes a face");
}

/** The hair or the face of a subject, whose outline is meant. */
function readOutline(ctx: Context, node: Reference, row: ResultRow, value: Value): string | null {
  const inner = bare(value);
  const path = inner.kind === "reference" && inner.args === null ? resolvePlace(ctx, inner) : undefined;
  if (path === null) return null;
  const part = path?.[path.length - 1];
  return path !== undefined && (part === "hair" || part === "face")
    ? path.join(".")
    : trouble(ctx, node, row, "takes the outline of `hair` or `face`");
}

const ratioWords = ["ratio", "contrast", "lighting_ratio", "contrast_ratio", "key_fill", "lit_shadow"];

/** Says that there is no such result, with what is near. */
export function unknownResult(ctx: Context, node: Reference, name: string, of: ResultRow["of"]): null {
  if (ratioWords.includes(name)) {
    const lights = [...ctx.declared.values()].filter((d) => d.kind === "light").map((d) => writeName(d.name));
    const face = ctx.subjects.length > 1 ? `${ctx.subjects[0]}.face` : "face";
    const [first, second] = lights;
    const pair = first === undefined || second === undefined ? null : `key_to_fill(${first}, ${second})`;
    report(
      ctx,
      "result.ratio",
      node.span,
      { name },
      {
        fixes: [
          replace(ctx, `\`lit_to_shadow(${face})\``, node.span, `lit_to_shadow(${face})`),
          ...(pair === null ? [] : [replace(ctx, `\`${pair}\``, node.span, pair)]),
        ],
      },
    );
    return null;
  }
  const elsewhere = askedElsewhere(ctx, node, name, of);
  if (elsewhere !== null) {
    const { known, fixes } = elsewhere;
    report(ctx, "result.unknown", node.span, { name: printNode(node), known }, { fixes });
    return null;
  }
  const rows = results.filter((row) => row.of === of);
  const near = nearNames(
    name,
    rows.map((row) => row.name),
  );
  const last = node.path.parts[node.path.parts.length - 1];
  report(
    ctx,
    "result.unknown",
    node.span,
    {
      name: printNode(node),
      known: suggestion(
        near,
        rows.map((row) => row.name),
        "There are none.",
      ),
    },
    {
      fixes:
        last === undefined
          ? []
          : near.map((candidate) => replace(ctx, `write \`${candidate}\``, last.span, candidate)),
    },
  );
  return null;
}

/** What to say where there is such a result of something else, or where the name is a setting; null for neither. */
function askedElsewhere(
  ctx: Context,
  node: Reference,
  name: string,
  of: ResultRow["of"],
): { readonly known: string; readonly fixes: readonly Fix[] } | null {
  const [first] = node.path.parts;
  if (of === "nothing" && findResult(name, "light") !== null) {
    const lights = [...ctx.declared.values()]
      .filter((one) => one.kind === "light")
      .map((one) => writeName(one.name));
    const start = { start: node.span.start, end: node.span.start };
    const fixes = lights
      .slice(0, 3)
      .map((light) => replace(ctx, `write \`${light}.${name}\``, start, `${light}.`));
    return { known: `It is asked of a light, as in \`${lights[0] ?? "key"}.${name}\`.`, fixes };
  }
  const alone = of === "light" ? findResult(name, "nothing") : null;
  if (alone !== null)
    return { known: `It stands without a light in front: \`${alone.example}\`.`, fixes: [] };
  const setting = of === "light" ? settingWords("light", first?.text ?? "", name) : null;
  return setting === null ? null : { known: setting, fixes: [] };
}

/** The function of this name, if there is one. */
export function functionRow(name: string): ResultRow | null {
  return findResult(name, "nothing");
}

/** A function applied to the natural reading of what stands before the point: `floor.exposure`. */
export function appliedTo(ctx: Context, node: Reference, row: ResultRow, of: Reference): Expr | null {
  const reading = readingExpr(ctx, of);
  if (reading === null) return null;
  if (node.args !== null) return trouble(ctx, node, row, "takes no arguments here");
  const args = [{ name: row.args[0]?.name ?? "a", value: reading }];
  noteAbsent(ctx, node, row, null, args);
  return { kind: "result", type: row.type, name: row.name, of: null, args };
}
