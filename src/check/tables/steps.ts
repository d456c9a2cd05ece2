import { writeNumber } from "../../core/write-number.js";
import { printNode } from "../../format/print-node.js";
import { converted, type End } from "../../model/tables/ends.js";
import { countedSteps, equalSteps, goesInStops } from "../../model/tables/steps.js";
import { steppedNumber } from "../../model/tables/sweep-value.js";
import type { Steps } from "../../model/tables/types.js";
import type { Amount, Expression, Sweep } from "../../syntax/ast.js";
import { dimensionWords } from "../../units/dimension.js";
import { constant } from "../constant.js";
import { type Context, report } from "../context.js";
import { rowLimit, tooManyRows } from "./limits.js";

type Range = Extract<Sweep["range"], { kind: "steps" }>;

/** The steps between two ends, counted before any row is made. Null after a finding. */
export function stepsOf(ctx: Context, sweep: Sweep, path: string, from: End, to: End): Steps | null {
  const range = sweep.range as Range;
  if (from.form !== to.form || from.base !== to.base) {
    report(ctx, "sweep.ends", sweep.span, {
      path,
      from: printNode(range.from),
      to: printNode(range.to),
    });
    return null;
  }
  const target = converted(to, from.unit);
  if (range.count !== null) return counted(ctx, range.count, from, target);
  return range.step === null ? null : stepwise(ctx, sweep, path, from, target, range.step);
}

function counted(ctx: Context, amount: Amount, from: End, to: number): Steps | null {
  const count = amount.value;
  if (amount.unit !== null || !Number.isInteger(count) || count < 1) {
    report(ctx, "sweep.count", amount.span, { written: printAmount(amount) });
    return null;
  }
  if (count > rowLimit(ctx)) return tooManyRows(ctx, amount.span, count);
  return countedSteps(from, to, count);
}

const printAmount = ({ written, unit }: Amount): string =>
  unit === null ? written : `${written} ${unit.text}`;

function stepwise(
  ctx: Context,
  sweep: Sweep,
  path: string,
  from: End,
  to: number,
  node: Expression,
): Steps | null {
  const example = exampleStep(from);
  const read = constant(ctx, node, { words: "a step", example });
  if (read === null) return null;
  const byStops = goesInStops(from, read.unit);
  const wanted = byStops ? "stop" : from.base;
  if (read.unit !== wanted) {
    report(ctx, "sweep.step-unit", node.span, {
      path,
      wanted: dimensionWords(wanted),
      found: dimensionWords(read.unit),
      example,
    });
    return null;
  }
  if (!(read.value > 0)) {
    report(ctx, "sweep.step", node.span, { written: printNode(node) });
    return null;
  }
  const { steps, whole } = equalSteps(from, to, read, byStops);
  if (!(steps.count <= rowLimit(ctx))) return tooManyRows(ctx, sweep.span, steps.count);
  // A step beyond all measure leaves next to nothing of one, and not the other end.
  const met = Math.abs(whole - Math.round(whole)) <= 1e-9 && (whole === 0 || Math.round(whole) > 0);
  if (!met) {
    const last = steppedNumber(steps, steps.count - 1);
    const even = (whole * Math.abs(steps.step)) / steps.count;
    report(ctx, "sweep.rest", sweep.span, {
      last: said(last, from.unit),
      to: printNode((sweep.range as Range).to),
      step: said(even, byStops ? "stop" : from.unit),
    });
  }
  return steps;
}

/** A number with its unit, four figures: for a message only. */
function said(value: number, unit: string): string {
  const text = writeNumber(Number(value.toPrecision(4)));
  return unit === "f" ? `f/${text}` : unit === "ISO" ? `ISO ${text}` : `${text} ${unit}`.trimEnd();
}

function exampleStep({ base, unit, form }: End): string {
  if (base === "f" || base === "ISO" || form === "shutter" || base === "stop") return "1 stop";
  return unit === "" ? "1" : `${unit === "m" ? "0.5" : "10"} ${unit}`;
}
