import type { Vec3 } from "../../core/vector.js";
import type { Expr, PointValue } from "../../model/values.js";
import { placeOf } from "../../scene/places.js";
import type { Plan } from "../plan.js";

/** A result of the vocabulary as the checked model has it. */
export type ResultExpr = Extract<Expr, { kind: "result" }>;
type Argument = ResultExpr["args"][number]["value"];

const expressionKinds: ReadonlySet<string> = new Set([
  "value",
  "reading",
  "result",
  "sum",
  "product",
  "negation",
]);

function isExpr(argument: Argument): argument is Expr {
  return typeof argument !== "string" && expressionKinds.has(argument.kind);
}

function find(expr: ResultExpr, name: string): Argument | undefined {
  return expr.args.find((row) => row.name === name)?.value;
}

/** The argument as an expression; null where it is missing or something else. */
export function exprArg(expr: ResultExpr, name: string): Expr | null {
  const found = find(expr, name);
  return found !== undefined && isExpr(found) ? found : null;
}

/** Every argument of a name that may be repeated, as expressions in their order. */
export function exprArgs(expr: ResultExpr, name: string): readonly Expr[] {
  return expr.args.flatMap((row) => (row.name === name && isExpr(row.value) ? [row.value] : []));
}

/** The argument as a name: a text, or a point that is one name. */
export function nameArg(expr: ResultExpr, name: string): string | null {
  const found = find(expr, name);
  if (found === undefined || typeof found === "string") return found ?? null;
  return found.kind === "named" ? found.path.join(".") : null;
}

/** The argument as a place; undefined where it is not given, null where the scene has no such place. */
export function placeArg(plan: Plan, expr: ResultExpr, name: string): Vec3 | null | undefined {
  const found = find(expr, name);
  if (found === undefined) return undefined;
  const point: PointValue | null =
    typeof found === "string"
      ? { kind: "named", path: found.split("."), written: found }
      : isExpr(found)
        ? null
        : found;
  return point === null ? null : placeOf(plan.scene, point);
}
