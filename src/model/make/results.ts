import { writeNumber } from "../../core/write-number.js";
import { type BaseUnit, dimensionWords } from "../../units/dimension.js";
import { quantity, say } from "../../units/make.js";
import type { Quantity } from "../../units/quantity.js";
import { type ArgumentType, findResult, type ResultRow, type results } from "../../vocabulary/results.js";
import { adding, valueExpr, wordsOf } from "../result-types.js";
import type { Expr, PointValue, ResultType } from "../values.js";
import { writePath } from "./points.js";

/**
 * A reading, a result or arithmetic on them, made by code: typed, with the words in which a recipe says it. Claims,
 * holds and columns are made of these.
 */
export interface Said<T extends ResultType = ResultType> {
  readonly type: T;
  readonly expr: Expr;
  readonly written: string;
  /** What has to go into brackets where it becomes part of something else. */
  readonly form: "whole" | "negation" | "sum" | "product" | "toleranced";
}

/** The unit of a quantity that is a value of a type. */
interface Units {
  readonly angle: "deg";
  readonly length: "m";
  readonly number: "1";
  readonly stops: "stop";
  readonly "f-number": "f";
  readonly exposure: "lx s";
  readonly illuminance: "lx";
  readonly ev: "EV";
  readonly "colour-temperature": "K";
  readonly mired: "mired";
  readonly energy: "J";
  readonly "luminous-energy": "lm s";
  readonly time: "s";
}

/** The type of which a quantity in a unit is a value. */
export type TypeOfUnit<U> = { readonly [T in keyof Units]: Units[T] extends U ? T : never }[keyof Units];

/** Something of a type: what was said before, or a quantity. */
export type ValueOf<T extends ResultType> = Said<T> | (T extends keyof Units ? Quantity<Units[T]> : never);

/** The types with which a type may be compared: all that say how much light there is, and contrasts with stops. */
export type Beside<T extends ResultType> = T extends "reading"
  ? "reading" | "f-number" | "exposure" | "ev"
  : T extends "f-number" | "exposure" | "ev"
    ? T | "reading"
    : T extends "contrast" | "stops"
      ? "contrast" | "stops"
      : T extends "truth"
        ? never
        : T;

type Row = (typeof results)[number];
type RowNamed<Of extends ResultRow["of"], N> = Extract<Row, { of: Of; name: N }>;

/** The names of results of a light: `angular_size`, `shadow_edge` ... */
export type LightResultName = Extract<Row, { of: "light" }>["name"];
/** The names of all other results: `stops`, `lit_to_shadow`, `coverage` ... */
export type ResultName = Extract<Row, { of: "nothing" }>["name"];

interface Shapes {
  readonly length: ValueOf<"length">;
  readonly angle: ValueOf<"angle">;
  readonly point: PointValue;
  readonly light: string;
  readonly lights: string;
  readonly face: string;
  readonly outline: string;
  readonly reading: ValueOf<"reading" | "f-number" | "exposure" | "ev">;
  readonly extent: "width" | "height" | ValueOf<"angle">;
  readonly side: "left" | "right" | "top";
  readonly "frame-side": "left" | "right" | "top" | "bottom";
  readonly "surface-name": string;
}

type ShapeOf<P> = P extends { type: infer T extends ArgumentType; many: true }
  ? readonly Shapes[T][]
  : P extends { type: infer T extends ArgumentType }
    ? Shapes[T]
    : never;
type Parameters<R> = R extends { args: readonly (infer P)[] } ? P : never;
type Needed<R> = Extract<Parameters<R>, { needed: true }>;
type Optional<R> = Extract<Parameters<R>, { needed: false }>;
type NameOf<P> = P extends { name: infer N extends string } ? N : never;

/** The arguments of a result by their names, as the vocabulary types them. */
export type ArgumentsOf<R> = {
  readonly [N in NameOf<Needed<R>>]: ShapeOf<Extract<Needed<R>, { name: N }>>;
} & {
  readonly [N in NameOf<Optional<R>>]?: ShapeOf<Extract<Optional<R>, { name: N }>>;
};

type Given<R> = [Needed<R>] extends [never] ? [args?: ArgumentsOf<R>] : [args: ArgumentsOf<R>];

/** A result of a light: `resultOf("key", "shadow_edge", { gap: cm(12) })`. */
export function resultOf<N extends LightResultName>(
  light: string,
  name: N,
  ...[args]: Given<RowNamed<"light", N>>
): Said<RowNamed<"light", N>["type"]> {
  return made(findResult(name, "light"), light, args ?? {}) as Said<RowNamed<"light", N>["type"]>;
}

/** Any other result: `result("stops", { a: reading("back"), b: reading("floor") })`, `result("no_warnings")`. */
export function result<N extends ResultName>(
  name: N,
  ...[args]: Given<RowNamed<"nothing", N>>
): Said<RowNamed<"nothing", N>["type"]> {
  return made(findResult(name, "nothing"), null, args ?? {}) as Said<RowNamed<"nothing", N>["type"]>;
}

/** Arguments that stand without their name. */
const plain: ReadonlySet<ArgumentType> = new Set(["reading", "light", "face", "outline"]);

function made(row: ResultRow | null, of: string | null, args: object): Said {
  if (row === null) throw new TypeError("There is no such result.");
  const values = new Map<string, unknown>(Object.entries(args));
  const given = row.args.flatMap(({ name, type, many }) => {
    const value = values.get(name);
    if (value === undefined) return [];
    return (many === true ? (value as readonly unknown[]) : [value]).map((one) => {
      const { said, written } = argument(type, one);
      return { name, value: said, written: plain.has(type) ? written : `${name}: ${written}` };
    });
  });
  const head = of === null ? row.name : `${writePath(of)}.${row.name}`;
  return {
    type: row.type,
    expr: {
      kind: "result",
      type: row.type,
      name: row.name,
      of,
      args: given.map(({ name, value }) => ({ name, value })),
    },
    written: given.length === 0 ? head : `${head}(${given.map(({ written }) => written).join(", ")})`,
    form: "whole",
  };
}

function argument(
  type: ArgumentType,
  value: unknown,
): { readonly said: Expr | PointValue | string; readonly written: string } {
  if (type === "point") {
    const point = value as PointValue;
    return { said: point, written: point.written };
  }
  if (typeof value === "string") return { said: value, written: writePath(value) };
  const { expr, written } = saidOf(value as ValueOf<ResultType>);
  return { said: expr, written };
}

/** How a meter is held: flat or under a dome, where it looks, and which lights alone it sees. */
export interface MeterHeld {
  readonly receptor?: "disc" | "dome";
  readonly towards?: PointValue;
  readonly only?: readonly string[];
}

/**
 * A reading: `reading("face", { towards: named("key") })`; of a surface, or of a point that says what it faces,
 * `reading("back")`. A place of one of several subjects has the name of the subject before a point.
 */
export function reading(place: string, held?: MeterHeld): Said<"reading"> {
  const { receptor = "disc", towards = null, only = [] } = held ?? {};
  const words = [
    ...(towards === null ? [] : [`towards: ${towards.written}`]),
    ...(only.length === 0 ? [] : [`only: ${listOf(only.map(writePath))}`]),
  ];
  const path = writePath(place);
  const said = words.length === 0 ? "" : `(${words.join(", ")})`;
  return {
    type: "reading",
    expr: { kind: "reading", type: "reading", station: place, receptor, towards, lights: only },
    written: held === undefined ? path : `${path}.${receptor}${said}`,
    form: "whole",
  };
}

const listOf = (items: readonly string[]): string =>
  items.length === 1 ? (items[0] ?? "") : `[${items.join(", ")}]`;

/** A contrast as a ratio, beside which a contrast is put: `proportion(3, 1)` is 3:1. */
export function proportion(left: number, right: number): Said<"contrast"> {
  const written = `${writeNumber(left)}:${writeNumber(right)}`;
  return saidOf<ResultType>(quantity("1", left / right, written)) as Said<"contrast">;
}

/** A quantity, or what was said before, with its words. */
export function saidOf<T extends ResultType>(value: ValueOf<T>): Said<T> {
  if ("expr" in value) return value;
  const q = value as Quantity;
  const expr = valueExpr(q);
  const form =
    q.plusMinus !== undefined ? "toleranced" : q.written.startsWith("-") ? "negation" : ("whole" as const);
  return { type: expr.type as T, expr, written: say(q), form };
}

const inside = ({ form, written }: Said, wrapped: readonly Said["form"][]): string =>
  wrapped.includes(form) ? `(${written})` : written;

/** The sum of two results of one kind: angles, lengths, numbers, stops, exposures, energies or times. */
export function plus<T extends ResultType>(a: Said<T>, b: ValueOf<T>): Said<T> {
  return sum(a, "+", saidOf(b));
}

/** The difference of two results of one kind. */
export function minus<T extends ResultType>(a: Said<T>, b: ValueOf<T>): Said<T> {
  return sum(a, "-", saidOf(b));
}

function sum<T extends ResultType>(a: Said<T>, sign: "+" | "-", b: Said<T>): Said<T> {
  needsWork(a);
  if (a.type !== b.type || !adding.includes(a.type))
    throw new TypeError(`${wordsOf(a.type)} and ${wordsOf(b.type)} do not add up.`);
  return {
    type: a.type,
    expr: {
      kind: "sum",
      type: a.type,
      terms: [
        { sign: "+", value: a.expr },
        { sign, value: b.expr },
      ],
    },
    written: `${inside(a, ["sum", "toleranced"])} ${sign} ${inside(b, ["sum", "toleranced"])}`,
    form: "sum",
  };
}

/** A result so many times. */
export function times<T extends ResultType>(a: Said<T>, by: ValueOf<"number">): Said<T> {
  return product(a, "*", saidOf(by), a.type);
}

/** A result divided by a number. */
export function dividedBy<T extends ResultType>(a: Said<T>, by: ValueOf<"number">): Said<T> {
  return product(a, "/", saidOf(by), a.type);
}

/** How many times a result is another of its kind. */
export function quotient<T extends ResultType>(a: Said<T>, b: ValueOf<T>): Said<"number"> {
  return product(a, "/", saidOf(b), "number");
}

function product<T extends ResultType>(a: Said, sign: "*" | "/", b: Said, type: T): Said<T> {
  needsWork(a);
  for (const { type: one } of [a, b])
    if (!adding.includes(one)) throw new TypeError(`${wordsOf(one)} is not multiplied or divided.`);
  return {
    type,
    expr: {
      kind: "product",
      type,
      factors: [
        { sign: "*", value: a.expr },
        { sign, value: b.expr },
      ],
    },
    written: `${inside(a, ["sum", "product", "toleranced"])} ${sign} ${inside(b, ["sum", "product", "toleranced"])}`,
    form: "product",
  };
}

/** A result with the other sign. */
export function negative<T extends ResultType>(a: Said<T>): Said<T> {
  needsWork(a);
  return {
    type: a.type,
    expr: { kind: "negation", type: a.type, operand: a.expr },
    written: `-${inside(a, ["sum", "product", "negation", "toleranced"])}`,
    form: "negation",
  };
}

/** Arithmetic on plain values is done by the program: the language works it out at once. */
function needsWork({ expr, written }: Said): void {
  if (expr.kind !== "value") return;
  const words = dimensionWords(expr.quantity.unit as BaseUnit);
  throw new TypeError(`${written} is ${words} and no result: work it out in the program.`);
}
