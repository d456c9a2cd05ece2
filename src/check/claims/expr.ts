import { printNode } from "../../format/print-node.js";
import { writeName } from "../../model/make/points.js";
import { adding, valueExpr, wordsOf } from "../../model/result-types.js";
import type { Expr, ResultType } from "../../model/values.js";
import type { Expression, Product, Reference, Sum } from "../../syntax/ast.js";
import { findResult, results } from "../../vocabulary/results.js";
import { constant } from "../constant.js";
import { type Context, replace, report } from "../context.js";
import { placeNames } from "../places.js";
import { nearNames, suggestion } from "../suggest.js";
import { namesMeter, naturalReading, readingExpr } from "./readings.js";
import { appliedTo, functionRow, resultExpr, unknownResult } from "./results.js";

const wanted = { words: "a result or a value", example: "key.angular_size" };

/** What one side of a claim says, typed, with every name found. Null after a finding. */
export function expr(ctx: Context, node: Expression): Expr | null {
  if (isConstant(ctx, node)) {
    const value = constant(ctx, node, wanted);
    return value === null ? null : valueExpr(value);
  }
  switch (node.kind) {
    case "reference":
      return reference(ctx, node);
    case "group": {
      const only = node.members[0];
      if (node.members.length === 1 && only !== undefined) return expr(ctx, only);
      report(ctx, "value.not-constant", node.span, { written: printNode(node) });
      return null;
    }
    case "negation": {
      const operand = expr(ctx, node.operand);
      return operand === null ? null : { kind: "negation", type: operand.type, operand };
    }
    case "sum":
      return sum(ctx, node);
    case "product":
      return product(ctx, node);
    case "toleranced":
      return expr(ctx, node.value);
    case "damaged":
      return null;
    default:
      return null;
  }
}

/** True where nothing but literals and `let`s is involved. */
function isConstant(ctx: Context, node: Expression): boolean {
  switch (node.kind) {
    case "quantity":
    case "f-number":
    case "iso":
    case "ratio":
      return true;
    case "damaged":
      return false;
    case "reference": {
      const name = node.path.parts[0]?.text ?? "";
      if (node.path.parts.length > 1) return false;
      return node.args === null
        ? ctx.lets.has(name) && !ctx.declared.has(name)
        : name === "closed" || name === "opened";
    }
    case "group":
      return node.members.every((member) => isConstant(ctx, member));
    case "negation":
      return isConstant(ctx, node.operand);
    case "sum":
      return node.terms.every((term) => isConstant(ctx, term.value));
    case "product":
      return node.factors.every((factor) => isConstant(ctx, factor.value));
    case "toleranced":
      return isConstant(ctx, node.value) && isConstant(ctx, node.tolerance);
    default:
      return node satisfies never;
  }
}

/** True for a word that is like the name of a result and like no place: `coverge`. */
function isNearResult(ctx: Context, word: string): boolean {
  const names = results.filter((row) => row.of === "nothing").map((row) => row.name);
  return nearNames(word, placeNames(ctx)).length === 0 && nearNames(word, names).length > 0;
}

/** True for a point that some subject has. */
const isPoint = (ctx: Context, name: string): boolean =>
  placeNames(ctx).some((place) => place === name || place.endsWith(`.${name}`));

function reference(ctx: Context, node: Reference): Expr | null {
  const parts = node.path.parts;
  const first = parts[0]?.text ?? "";
  const last = parts[parts.length - 1]?.text ?? "";
  if (parts.length === 1) {
    const row = functionRow(first);
    const isPlace = ctx.declared.has(first) || ctx.lets.has(first);
    if (row !== null && (node.args !== null || !isPlace)) return resultExpr(ctx, node, row, null, expr);
    if (node.args !== null) return unknownResult(ctx, node, first, "nothing");
    if (["ratio", "contrast"].includes(first) && !isPlace) return unknownResult(ctx, node, first, "nothing");
    if (findResult(first, "light") !== null && !isPlace && !isPoint(ctx, first))
      return unknownResult(ctx, node, first, "nothing");
    if (!isPlace && isNearResult(ctx, first)) return unknownResult(ctx, node, first, "nothing");
    return naturalReading(ctx, node);
  }
  if (namesMeter(node)) return readingExpr(ctx, node);
  const light = parts.length === 2 && ctx.declared.get(first)?.kind === "light";
  if (light) {
    const row = findResult(last, "light");
    return row === null ? unknownResult(ctx, node, last, "light") : resultExpr(ctx, node, row, first, expr);
  }
  if (node.args !== null && parts.length === 2 && findResult(last, "light") !== null && isNowhere(ctx, first))
    return noSuchLight(ctx, node, first);
  const row = functionRow(last);
  if (row !== null && row.args.length === 1 && row.args[0]?.type === "reading") {
    const before = parts.slice(0, -1);
    const span = { start: node.span.start, end: before[before.length - 1]?.span.end ?? node.span.end };
    return appliedTo(ctx, node, row, {
      kind: "reference",
      span,
      path: { kind: "path", span, parts: before },
      args: null,
    });
  }
  return readingExpr(ctx, node);
}

/** Whether nothing in the recipe, no place and no part of a subject has this name. */
const isNowhere = (ctx: Context, name: string): boolean =>
  name !== "subject" && !ctx.declared.has(name) && !ctx.lets.has(name) && !placeNames(ctx).includes(name);

/** Says that a result is asked of a light that is not there, with what is near. */
function noSuchLight(ctx: Context, node: Reference, name: string): null {
  const lights = [...ctx.declared.values()].filter(({ kind }) => kind === "light");
  const known = lights.map((light) => writeName(light.name));
  const near = nearNames(name, known);
  const span = node.path.parts[0]?.span ?? node.span;
  const fixes = near.map((meant) => replace(ctx, `write \`${meant}\``, span, meant));
  const none = "There is no light in this recipe.";
  report(ctx, "name.unknown", span, { name, known: suggestion(near, known, none) }, { fixes });
  return null;
}

function refuse(ctx: Context, node: Expression, left: string, right: string, done: string): null {
  report(ctx, "claim.arithmetic", node.span, { left, right, done });
  return null;
}

function sum(ctx: Context, node: Sum): Expr | null {
  const terms: { sign: "+" | "-"; value: Expr }[] = [];
  for (const { sign, value: operand } of node.terms) {
    const value = expr(ctx, operand);
    if (value === null) return null;
    const first = terms[0]?.value;
    if (first !== undefined && (value.type !== first.type || !adding.includes(first.type))) {
      const done = sign === "+" ? "added" : "subtracted";
      return refuse(ctx, node, wordsOf(first.type), wordsOf(value.type), done);
    }
    terms.push({ sign, value });
  }
  const type = terms[0]?.value.type;
  return type === undefined ? null : { kind: "sum", type, terms };
}

function product(ctx: Context, node: Product): Expr | null {
  const factors: { sign: "*" | "/"; value: Expr }[] = [];
  let type: ResultType = "number";
  for (const factor of node.factors) {
    const value = expr(ctx, factor.value);
    if (value === null) return null;
    const done = factor.sign === "*" ? "multiplied" : "divided";
    if (value.type !== "number" && !adding.includes(value.type))
      return refuse(ctx, node, wordsOf(type), wordsOf(value.type), done);
    if (factors.length === 0) type = value.type;
    else if (value.type === type && factor.sign === "/" && type !== "number") type = "number";
    else if (value.type !== "number") {
      if (type !== "number" || factor.sign === "/")
        return refuse(ctx, node, wordsOf(type), wordsOf(value.type), done);
      type = value.type;
    }
    factors.push({ sign: factor.sign, value });
  }
  return { kind: "product", type, factors };
}
