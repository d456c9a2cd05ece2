import { printNode } from "../../format/print-node.js";
import { comparable, wordsOf } from "../../model/result-types.js";
import type { MeasuredReading } from "../../model/session.js";
import type { Reading } from "../../syntax/ast.js";
import { expr } from "../claims/expr.js";
import { constant } from "../constant.js";
import { type Context, here, report } from "../context.js";

/** The readings of a day, each with a meter, a place of the set-up, and a value. What is wrong is reported and left out. */
export function checkReadings(ctx: Context, lines: readonly Reading[]): readonly MeasuredReading[] {
  const first = new Map<string, Reading>();
  return lines.flatMap((line): readonly MeasuredReading[] => {
    const what = printNode(line.reading);
    const before = first.get(what);
    if (before !== undefined) {
      const related = [{ place: here(ctx, before.span), text: "the first is here" }];
      report(ctx, "measured.twice", line.reading.span, { what }, { related });
      return [];
    }
    first.set(what, line);
    const checked = checkReading(ctx, line, what);
    return checked === null ? [] : [checked];
  });
}

function checkReading(ctx: Context, line: Reading, what: string): MeasuredReading | null {
  const reading = expr(ctx, line.reading);
  if (reading === null) return null;
  if (reading.kind !== "reading") {
    report(ctx, "measured.reading", line.reading.span, { what, words: wordsOf(reading.type) });
    return null;
  }
  const written = line.value.kind === "toleranced" ? line.value.value : line.value;
  const value = expr(ctx, written);
  if (value === null) return null;
  if (value.kind !== "value" || !comparable("reading", value.type)) {
    report(ctx, "measured.value", line.value.span, { written: printNode(line.value) });
    return null;
  }
  if (!(value.quantity.value > 0) && value.type !== "ev") {
    report(ctx, "measured.value", line.value.span, { written: printNode(line.value) });
    return null;
  }
  const tolerance = toleranceOf(ctx, line);
  if (tolerance === undefined) return null;
  return {
    what,
    written: printNode(line),
    reading,
    value,
    tolerance,
    origin: here(ctx, line.span),
  };
}

/** What stands after `+-`, stops; null where nothing does, undefined after a finding. */
function toleranceOf(ctx: Context, { value }: Reading): number | null | undefined {
  if (value.kind !== "toleranced") return null;
  const read = constant(ctx, value.tolerance, { words: "a tolerance", example: "0.2 stop" });
  if (read === null) return undefined;
  if (read.unit === "stop") return Math.abs(read.value);
  report(ctx, "measured.tolerance", value.tolerance.span, {});
  return undefined;
}
