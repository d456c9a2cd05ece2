import type { Span } from "../../core/span.js";
import { printNode } from "../../format/print-node.js";
import { writeName } from "../../model/make/points.js";
import type { Expr, PointValue, PowerValue } from "../../model/values.js";
import type { Expression } from "../../syntax/ast.js";
import type { ResultNeed, ResultRow } from "../../vocabulary/results.js";
import { type Context, report } from "../context.js";

type Given = { readonly name: string; readonly value: Expr | PointValue | string };

/** What is missing, and what to do about it. */
interface Absence {
  readonly cause: string;
  readonly remedy: string;
}

const lacks: Readonly<Record<ResultNeed, Absence>> = {
  subject: {
    cause: "there is no subject",
    remedy: "Add `subject { height: 1.7 m }`, or name a point where one may be named.",
  },
  camera: {
    cause: "there is no camera",
    remedy: "Add a `camera { ... }`; `halfshade words camera` shows one.",
  },
  set: { cause: "there is no set", remedy: "Add a `set { ... }` with what stands behind the head." },
  surface: {
    cause: "nothing stands behind the head",
    remedy: "Add a `set { ... }` or a `room { ... }`.",
  },
  light: { cause: "no light is on", remedy: "Add a `light`, or give one of them some power." },
};

/** Notes a result that this recipe cannot have: what it is taken of is not there, or is off. */
export function noteAbsent(
  ctx: Context,
  node: Expression,
  row: ResultRow,
  of: string | null,
  given: readonly Given[],
): void {
  const names = new Set(given.map(({ name }) => name));
  const wanted = [
    ...(row.needs ?? []),
    ...row.args.flatMap((parameter) =>
      parameter.instead === undefined || names.has(parameter.name) ? [] : [parameter.instead],
    ),
  ];
  // Of one surface it is asked over the part that the picture shows.
  if (row.name === "evenness" && given.length === 1) wanted.push("camera");
  const need = wanted.find((one) => !has(ctx, one));
  if (need !== undefined) {
    say(ctx, node.span, printNode(node), lacks[need]);
    return;
  }
  if (row.lit !== true) return;
  const lights = row.args.flatMap((parameter) =>
    parameter.type === "light" ? given.filter(({ name }) => name === parameter.name) : [],
  );
  const off = [of, ...lights.map(({ value }) => value)].find(
    (name): name is string => typeof name === "string" && isOff(ctx, name),
  );
  if (off !== undefined) sayOff(ctx, node, off);
}

/** Notes a reading that this recipe cannot have. */
export function noteAbsentReading(
  ctx: Context,
  node: Expression,
  station: string,
  towards: PointValue | null,
  only: readonly string[],
): void {
  const cheek = /(^|\.)(lit|shaded)_cheek$/.test(station);
  const isCamera = towards?.kind === "named" && towards.path.join(".") === "camera";
  const need = isCamera && !has(ctx, "camera") ? "camera" : cheek && !has(ctx, "light") ? "light" : null;
  const [first] = only;
  if (need !== null) say(ctx, node.span, printNode(node), lacks[need]);
  else if (first !== undefined && only.every((name) => isOff(ctx, name))) sayOff(ctx, node, first);
}

/** Notes that a reading is held against an f-number or an exposure value where no camera says what it takes. */
export function noteNoFNumber(ctx: Context, node: Expression, sides: readonly (Expr | null)[]): void {
  const lit = sides.some((side) => side?.type === "reading" || side?.type === "exposure");
  const dialled = sides.some(
    (side) => side?.kind === "value" && (side.type === "f-number" || side.type === "ev"),
  );
  if (!lit || !dialled || has(ctx, "camera")) return;
  say(ctx, node.span, printNode(node), {
    cause: "there is no camera, and without its ISO a reading has no f-number",
    remedy: "Add a `camera { ... }`, or write the light in lx s.",
  });
}

function has(ctx: Context, need: ResultNeed): boolean {
  switch (need) {
    case "subject":
      return ctx.subjects.length > 0;
    case "light":
      return ctx.made.some(({ kind, name }) => kind === "light" && !isOff(ctx, name ?? ""));
    case "surface":
      return ctx.made.some(({ kind }) => kind === "set" || kind === "room");
    default:
      return ctx.made.some(({ kind }) => kind === need);
  }
}

function isOff(ctx: Context, name: string): boolean {
  const light = ctx.made.find((block) => block.kind === "light" && block.name === name);
  return (light?.read.values.get("power") as PowerValue | undefined)?.kind === "off";
}

function sayOff(ctx: Context, node: Expression, light: string): void {
  const name = writeName(light);
  say(ctx, node.span, printNode(node), {
    cause: `\`${name}\` is off`,
    remedy: `Give it some \`power\`, or leave this out; a variant may say it where \`${name}\` is on.`,
  });
}

function say(ctx: Context, span: Span, name: string, absence: Absence): void {
  report(ctx, "result.not-here", span, { name, ...absence });
}
