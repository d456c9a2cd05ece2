import { quote } from "../../core/quote.js";
import { printNode } from "../../format/print-node.js";
import { printPath } from "../../format/print-value.js";
import { writeName } from "../../model/make/points.js";
import { converted, type End, endOf, quantityEnd, stepped } from "../../model/tables/ends.js";
import type { ListedValue, SweepModel, SweepTarget } from "../../model/tables/types.js";
import type { Expression, File, Sweep, Value } from "../../syntax/ast.js";
import { dimensionWords } from "../../units/dimension.js";
import { changeFile } from "../change/change.js";
import { constant, isExpression } from "../constant.js";
import { type Context, here, report } from "../context.js";
import { lookOf } from "../kits/look.js";
import { nearNames, suggestion } from "../suggest.js";
import { ofDimension } from "../values/measure.js";
import { readValue } from "../values/read.js";
import { bare, singleWord } from "../words.js";
import { stepsOf } from "./steps.js";
import { type Led, whereTo } from "./target.js";

/** What a sweep may be over: reads one value, and turns it into an end of a stepped sweep. */
interface Kind {
  readonly target: SweepTarget;
  /** A value as it may be written, for messages. */
  readonly example: string;
  /** The value of the checked model; undefined after a finding. */
  readonly read: (value: Value) => unknown;
  /** Null where there are no steps at all. */
  readonly end: ((value: unknown) => End | null) | null;
}

/** One `sweep`, its values read. Null after a finding. */
export function checkSweep(ctx: Context, file: File, sweep: Sweep): SweepModel | null {
  const path = printPath(sweep.path);
  const led = whereTo(file, sweep.path, lookOf(ctx));
  if (led === null) {
    explain(ctx, file, sweep);
    return null;
  }
  const kind = kindOf(ctx, file, led);
  if (kind === null) return null;
  const range = sweep.range.kind === "over" ? listed(ctx, sweep, kind) : steppedRange(ctx, sweep, path, kind);
  return range === null ? null : { path, target: kind.target, range, origin: here(ctx, sweep.span) };
}

/** Says why a path leads nowhere, as a change of that path would. */
function explain(ctx: Context, file: File, sweep: Sweep): void {
  const value: Value =
    sweep.range.kind === "over"
      ? sweep.range.values.kind === "list"
        ? (sweep.range.values.items[0] ?? sweep.range.values)
        : sweep.range.values
      : sweep.range.from;
  const span = sweep.path.span;
  changeFile(file, [{ kind: "set", path: sweep.path, value, companion: null, span }], ctx, lookOf(ctx));
}

function kindOf(ctx: Context, file: File, led: Led): Kind | null {
  switch (led.kind) {
    case "variant":
      return {
        target: { kind: "variant" },
        example: 'base, "No fill"',
        read: (value) => readVariant(ctx, file, value),
        end: null,
      };
    case "like":
      return {
        target: { kind: "text" },
        example: "bench_head",
        read: (value) => readItem(ctx, led.block, value),
        end: null,
      };
    case "let": {
      const now = ctx.letValue(led.name);
      if (now === null || now === "none") return null;
      const want = { name: led.name, unit: now.unit, example: now.written };
      const read = (value: Value): unknown => {
        const words = dimensionWords(now.unit);
        if (!isExpression(value)) return undefined;
        const q = constant(ctx, value, { words, example: now.written, unit: now.unit });
        return (q === null ? null : ofDimension(ctx, want, q, value)) ?? undefined;
      };
      return {
        target: { kind: "text" },
        example: now.written,
        read,
        end: (value) => quantityEnd(value as never),
      };
    }
    case "property": {
      const { row, target } = led;
      return {
        target,
        example: row.example,
        read: (value) => readValue(ctx, row, value) ?? undefined,
        end: stepped.has(row.type) ? (value) => endOf(row.type, value, row.name) : null,
      };
    }
    default:
      return led satisfies never;
  }
}

function listed(ctx: Context, sweep: Sweep, kind: Kind): SweepModel["range"] | null {
  const { values } = sweep.range as Extract<Sweep["range"], { kind: "over" }>;
  if (values.kind === "damaged") return null;
  if (values.kind !== "list" || values.items.length === 0) {
    report(ctx, "sweep.list", values.span, { example: kind.example });
    return null;
  }
  const read: { readonly item: Value; readonly value: unknown }[] = [];
  for (const item of values.items) {
    const value = item.kind === "damaged" ? undefined : kind.read(item);
    if (value !== undefined) read.push({ item, value });
  }
  if (read.length < values.items.length) return null;
  const ends = read.map(({ value }) => kind.end?.(value) ?? null);
  const first = ends[0] ?? null;
  const alike = first !== null && ends.every((end) => end?.form === first.form && end.base === first.base);
  const listedValues = read.map(
    ({ item, value }, i): ListedValue => ({
      written: printNode(item),
      value: kind.target.kind === "text" ? null : value,
      number: alike ? converted(ends[i] ?? first, first.unit) : null,
    }),
  );
  return { kind: "list", unit: alike ? first.unit : null, values: listedValues };
}

function steppedRange(ctx: Context, sweep: Sweep, path: string, kind: Kind): SweepModel["range"] | null {
  const { from, to } = sweep.range as Extract<Sweep["range"], { kind: "steps" }>;
  if (kind.end === null) {
    report(ctx, "sweep.words", sweep.span, { path, example: kind.example });
    return null;
  }
  const [first, last] = [from, to].map((node: Expression) => kind.read(node));
  if (first === undefined || last === undefined) return null;
  const [a, b] = [kind.end(first), kind.end(last)];
  if (a === null || b === null) {
    report(ctx, "sweep.ends", sweep.span, {
      path,
      from: printNode(from),
      to: printNode(to),
    });
    return null;
  }
  const steps = stepsOf(ctx, sweep, path, a, b);
  return steps === null ? null : { kind: "steps", steps };
}

/** `base` or the title of a variant: the title, null for the recipe itself, undefined after a finding. */
function readVariant(ctx: Context, file: File, value: Value): string | null | undefined {
  if (singleWord(bare(value)) === "base") return null;
  const titles = file.items.flatMap((item) => (item.kind === "variant" ? [item.title.value] : []));
  if (value.kind === "text" && titles.includes(value.value)) return value.value;
  const near = value.kind === "text" ? nearNames(value.value, titles) : [];
  const known = ["base", ...titles.map(quote)];
  report(ctx, "sweep.variant", value.span, {
    written: printNode(value),
    known: suggestion(near.map(quote), known, ""),
  });
  return undefined;
}

/** The name of a definition of a kind; undefined after a finding. */
function readItem(ctx: Context, kind: string, value: Value): string | undefined {
  const word = singleWord(bare(value));
  const known = [...ctx.definitions.values()]
    .filter((entry) => entry.kind === kind)
    .map((entry) => entry.name);
  if (word !== null && known.includes(word)) {
    const entry = ctx.definitions.get(word);
    if (entry !== undefined) entry.used = true;
    return word;
  }
  const near = word === null ? [] : nearNames(word, known);
  report(ctx, "sweep.item", value.span, {
    written: printNode(value),
    kind,
    known: suggestion(
      near.map(writeName),
      known.map(writeName),
      `Write \`define ${kind} NAME { ... }\` first.`,
    ),
  });
  return undefined;
}
