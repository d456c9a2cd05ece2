import { at, between, midpoint, named, offset } from "../../model/make/points.js";
import type { PointValue } from "../../model/values.js";
import type { Group, Reference, Value } from "../../syntax/ast.js";
import type { Length } from "../../units/quantity.js";
import { type Context, report } from "../context.js";
import { resolvePlace } from "../places.js";
import { bare } from "../words.js";
import { argumentTrouble, asCall, sortArguments } from "./calls.js";
import { readMeasure } from "./measure.js";
import { refuseArguments, refuseKind } from "./want.js";

const example = "offset(left: 40 cm, behind: 30 cm, up: 1 m)";

/** Reads a point in any of its forms. Null after a finding. */
export function readPoint(ctx: Context, name: string, value: Value): PointValue | null {
  const inner = bare(value);
  if (inner.kind === "damaged") return null;
  if (inner.kind === "unknown") {
    report(ctx, "value.open", inner.span, { name });
    return null;
  }
  if (inner.kind === "group") return coordinates(ctx, name, inner);
  if (inner.kind !== "reference") return notAPoint(ctx, name, value);
  if (inner.args === null) {
    const path = resolvePlace(ctx, inner);
    return path === null ? null : named(...path);
  }
  const call = asCall(inner);
  switch (call?.word) {
    case "offset":
      return readOffset(ctx, inner);
    case "between":
      return readBetween(ctx, inner);
    case "midpoint":
      return readMidpoint(ctx, inner);
    default:
      return notAPoint(ctx, name, value);
  }
}

function notAPoint(ctx: Context, name: string, value: Value): null {
  return refuseKind(ctx, { name, example }, value, "a point");
}

function length(ctx: Context, name: string, value: Value): Length | null {
  const want = { name, unit: "m", example: "40 cm" } as const;
  return readMeasure(ctx, want, value) as Length | null;
}

function coordinates(ctx: Context, name: string, group: Group): PointValue | null {
  if (group.members.length !== 3) {
    report(ctx, "value.argument", group.span, {
      call: "(...)",
      trouble: `has ${group.members.length} coordinates; a point has three`,
      example: `${name}: (1 m, -2 m, 1.5 m)`,
    });
    return null;
  }
  const [x, y, z] = group.members.map((member, index) => length(ctx, "xyz"[index] ?? name, member));
  return x == null || y == null || z == null ? null : at(x, y, z);
}

const steps = ["left", "right", "ahead", "behind", "up", "down"] as const;

function readOffset(ctx: Context, call: Reference): PointValue | null {
  const sorted = sortArguments(call.args ?? []);
  const trouble = argumentTrouble(sorted, [...steps, "from"], 0);
  if (trouble !== null) return refuseArguments(ctx, call, trouble, example);
  if (sorted.named.has("left") && sorted.named.has("right")) {
    return refuseArguments(ctx, call, "goes both left and right", example);
  }
  const read: Partial<Record<(typeof steps)[number], Length | null>> = {};
  for (const step of steps) {
    const argument = sorted.named.get(step);
    if (argument === undefined) continue;
    const value = length(ctx, step, argument.value);
    if (value === null) return null;
    read[step] = value;
  }
  if (Object.keys(read).length === 0) return refuseArguments(ctx, call, "goes nowhere", example);
  const from = sorted.named.get("from");
  const start = from === undefined ? null : readPoint(ctx, "from", from.value);
  return from !== undefined && start === null ? null : offset({ ...read, from: start });
}

function readBetween(ctx: Context, call: Reference): PointValue | null {
  const shown = "between(face, key, 40 cm from key)";
  const sorted = sortArguments(call.args ?? []);
  const [first, second, third] = sorted.plain;
  const trouble = argumentTrouble(sorted, [], 3);
  if (
    trouble !== null ||
    first === undefined ||
    second === undefined ||
    third === undefined ||
    third.kind !== "relation"
  ) {
    return refuseArguments(ctx, call, trouble ?? "takes two points and a tape from one of them", shown);
  }
  const a = readPoint(ctx, "between", first);
  const b = readPoint(ctx, "between", second);
  if (a === null || b === null) return null;
  const tape = length(ctx, "between", third.left);
  const end = third.word === "from" ? readPoint(ctx, "between", third.right) : null;
  if (tape === null || end === null) return null;
  if (end.written !== a.written && end.written !== b.written) {
    return refuseArguments(ctx, call, "measures from neither of its two points", shown);
  }
  return between(a, b, tape, end.written === a.written ? "a" : "b");
}

function readMidpoint(ctx: Context, call: Reference): PointValue | null {
  const sorted = sortArguments(call.args ?? []);
  const [first, second] = sorted.plain;
  const trouble = argumentTrouble(sorted, [], 2);
  if (trouble !== null || first === undefined || second === undefined) {
    return refuseArguments(ctx, call, trouble ?? "takes two points", "midpoint(ana.face, ben.face)");
  }
  const a = readPoint(ctx, "midpoint", first);
  const b = readPoint(ctx, "midpoint", second);
  return a === null || b === null ? null : midpoint(a, b);
}
