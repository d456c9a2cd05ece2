import { exp2 } from "../core/exp2.js";
import { writeNumber } from "../core/write-number.js";
import { printNode } from "../format/print-node.js";
import { writeName } from "../model/make/points.js";
import type { Expression, Product, Reference, Sum, Toleranced } from "../syntax/ast.js";
import { type BaseUnit, dimensionWords } from "../units/dimension.js";
import { quantity } from "../units/make.js";
import type { Quantity } from "../units/quantity.js";
import {
  addQuantities,
  computed,
  extendProduct,
  finishProduct,
  type Running,
  runningWords,
  startProduct,
} from "./arithmetic.js";
import { type Context, replace, report } from "./context.js";
import { readFNumber, readIso, readQuantity } from "./quantities.js";
import { nearNames, suggestion } from "./suggest.js";
import { absolute, turnedRound, withSpreads, withTolerance } from "./tolerance.js";

/** What is wanted, for messages. */
export interface Wanted {
  readonly words: string;
  readonly example: string;
  /** The base unit that is wanted, where there is only one; suggestions for a misspelt unit keep to it. */
  readonly unit?: BaseUnit;
}

/**
 * Works out a value that is known before any light is computed: literals, `let`s and arithmetic on them.
 * Null after a finding. A ratio `3:1` is the number 3 with its written form kept.
 */
export function constant(ctx: Context, node: Expression, wanted: Wanted): Quantity | null {
  switch (node.kind) {
    case "quantity":
      return readQuantity(ctx, node, wanted);
    case "f-number":
      return readFNumber(node);
    case "iso":
      return readIso(node);
    case "ratio":
      if (node.right === 0) {
        report(ctx, "value.zero-division", node.span, { written: printNode(node) });
        return null;
      }
      if (!Number.isFinite(node.left / node.right)) {
        report(ctx, "number.too-large", node.span, {});
        return null;
      }
      return quantity("1", node.left / node.right, `${writeNumber(node.left)}:${writeNumber(node.right)}`);
    case "group": {
      const only = node.members[0];
      if (node.members.length === 1 && only !== undefined) return constant(ctx, only, wanted);
      return notConstant(ctx, node);
    }
    case "negation": {
      const inner = constant(ctx, node.operand, wanted);
      if (inner === null) return null;
      if (inner.unit === "f" || inner.unit === "ISO" || inner.unit === "K" || inner.written.includes(":")) {
        report(ctx, "value.product", node.span, {
          left: "a minus sign",
          right: dimensionWords(inner.unit),
          done: "put together",
        });
        return null;
      }
      const value = inner.value === 0 ? 0 : -inner.value;
      const turned = quantity(inner.unit, value, value === 0 ? inner.written : `-${inner.written}`);
      return turnedRound(turned, inner);
    }
    case "sum":
      return sum(ctx, node, wanted);
    case "product":
      return product(ctx, node, wanted);
    case "reference":
      return reference(ctx, node, wanted);
    case "toleranced":
      return toleranced(ctx, node, wanted);
    case "damaged":
      return null;
    default:
      return node satisfies never;
  }
}

function notConstant(ctx: Context, node: Expression): null {
  report(ctx, "value.not-constant", node.span, { written: printNode(node) });
  return null;
}

function sum(ctx: Context, node: Sum, wanted: Wanted): Quantity | null {
  let total: Quantity | null = null;
  for (const [index, term] of node.terms.entries()) {
    const next = constant(ctx, term.value, wanted);
    if (next === null) return null;
    if (index === 0 || total === null) {
      total = next;
      continue;
    }
    const outcome = addQuantities(total, next, term.sign);
    if (outcome.kind === "refused") {
      if (outcome.why === "stops-on-f-number") refuseStopsOnFNumber(ctx, node);
      else {
        report(
          ctx,
          "value.add",
          node.span,
          {
            left: dimensionWords(total.unit),
            right: dimensionWords(next.unit),
            done: term.sign === "+" ? "added" : "subtracted",
          },
          { label: outcome.why === "overflow" ? "the result is out of all bounds" : "" },
        );
      }
      return null;
    }
    total = withSpreads(outcome.quantity, [
      { quantity: total, slope: 1 },
      { quantity: next, slope: term.sign === "+" ? 1 : -1 },
    ]);
  }
  return total;
}

/** `f/8 + 1/3 stop`: two readings, two fixes. */
function refuseStopsOnFNumber(ctx: Context, node: Sum): void {
  const stop = node.terms.find((term) => term.value.kind !== "f-number");
  const hole = node.terms.find((term) => term.value.kind === "f-number");
  const fixes =
    stop !== undefined && hole !== undefined && node.terms.length === 2
      ? (["closed", "opened"] as const).map((word) => {
          const text = `${word}(${printNode(hole.value)}, ${printNode(stop.value)})`;
          return replace(ctx, `\`${text}\` (${word === "closed" ? "less" : "more"} light)`, node.span, text);
        })
      : [];
  report(ctx, "value.stops-on-f-number", node.span, { written: printNode(node) }, { fixes });
}

function product(ctx: Context, node: Product, wanted: Wanted): Quantity | null {
  let running: Running | null = null;
  const factors: { readonly quantity: Quantity; readonly way: 1 | -1 }[] = [];
  for (const [index, factor] of node.factors.entries()) {
    const next = constant(ctx, factor.value, wanted);
    if (next === null) return null;
    if (factor.sign === "/" && next.value === 0) {
      report(ctx, "value.zero-division", node.span, { written: printNode(node) });
      return null;
    }
    if (next.value !== 0) factors.push({ quantity: next, way: factor.sign === "/" ? -1 : 1 });
    const before: Running | null = running;
    running = index === 0 || before === null ? startProduct(next) : extendProduct(before, next, factor.sign);
    if (running === null) {
      const sign = node.factors[Math.max(index, 1)]?.sign ?? "*";
      report(
        ctx,
        "value.product",
        node.span,
        {
          left: before === null ? dimensionWords(next.unit) : runningWords(before),
          right: before === null ? "another value" : dimensionWords(next.unit),
          done: sign === "*" ? "multiplied" : "divided",
        },
        next.unit === "f"
          ? { help: "F-numbers change by `closed(f/8, 1 stop)` and `opened(f/8, 1 stop)`." }
          : {},
      );
      return null;
    }
  }
  if (running === null) return null;
  const outcome = finishProduct(running);
  if (outcome.kind === "value") {
    const { value } = outcome.quantity;
    return withSpreads(
      outcome.quantity,
      factors.map(({ quantity, way }) => ({ quantity, slope: (way * value) / quantity.value })),
    );
  }
  report(ctx, "value.product", node.span, {
    left: runningWords(running),
    right: "anything",
    done: "used here",
  });
  return null;
}

function reference(ctx: Context, node: Reference, wanted: Wanted): Quantity | null {
  const name = node.path.parts[0]?.text ?? "";
  if (node.args !== null && (name === "closed" || name === "opened") && node.path.parts.length === 1) {
    return stoppedFNumber(ctx, node, name, wanted);
  }
  if (node.args !== null || node.path.parts.length > 1) return notConstant(ctx, node);
  const value = ctx.letValue(name);
  if (value !== "none") return value;
  if (ctx.declared.has(name)) return notConstant(ctx, node);
  const known = [...ctx.lets.keys()].map(writeName);
  const near = nearNames(name, known);
  report(
    ctx,
    "name.unknown",
    node.span,
    { name, known: suggestion(near, known, `${wanted.words} is wanted, for example \`${wanted.example}\`.`) },
    {
      fixes: near.map((candidate) => replace(ctx, `write \`${candidate}\``, node.span, candidate)),
    },
  );
  return null;
}

/** `closed(f/8, 1/3 stop)`: less light; `opened(...)`: more. */
function stoppedFNumber(
  ctx: Context,
  node: Reference,
  word: "closed" | "opened",
  wanted: Wanted,
): Quantity | null {
  const [hole, by] = node.args ?? [];
  const first = hole === undefined || !isExpression(hole.value) ? null : constant(ctx, hole.value, wanted);
  const second = by === undefined || !isExpression(by.value) ? null : constant(ctx, by.value, wanted);
  if (
    first === null ||
    second === null ||
    first.unit !== "f" ||
    second.unit !== "stop" ||
    node.args?.length !== 2
  ) {
    report(ctx, "value.argument", node.span, {
      call: word,
      trouble: "takes an f-number and a number of stops",
      example: `${word}(f/8, 1/3 stop)`,
    });
    return null;
  }
  const stops = word === "closed" ? second.value : -second.value;
  const terms = [
    { quantity: first, slope: 1 },
    { quantity: second, slope: word === "closed" ? 1 : -1 },
  ];
  const sure = terms.every(({ quantity }) => absolute(quantity) === 0);
  const written = sure ? printNode(node) : `${word}(${first.written}, ${second.written})`;
  return withSpreads({ ...computed("f", first.value * exp2(stops / 2)), written }, terms);
}

function toleranced(ctx: Context, node: Toleranced, wanted: Wanted): Quantity | null {
  const value = constant(ctx, node.value, wanted);
  const tolerance = constant(ctx, node.tolerance, wanted);
  if (value === null || tolerance === null) return null;
  return withTolerance(ctx, value, tolerance, node.tolerance.span);
}

/** True for values that stand for themselves: no text, list, `?` or relation. */
export function isExpression(value: { readonly kind: string }): value is Expression {
  return (
    value.kind !== "text" && value.kind !== "list" && value.kind !== "unknown" && value.kind !== "relation"
  );
}
