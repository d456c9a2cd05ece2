import { printNode } from "../format/print-node.js";
import { printPath } from "../format/print-value.js";
import { writeName } from "../model/make/points.js";
import { comparable, wordsOf } from "../model/result-types.js";
import type { HoldDial, HoldModel } from "../model/types.js";
import type { Hold, Path } from "../syntax/ast.js";
import { expr } from "./claims/expr.js";
import { type Context, here, report } from "./context.js";
import { suggestion } from "./suggest.js";

/** What may be turned or moved to hold a result. */
const dials: readonly HoldDial["property"][] = ["power", "distance", "floor_distance", "height", "elevation"];

/** One `hold`. Null after a finding. */
export function checkHold(ctx: Context, statement: Hold): HoldModel | null {
  const reading = expr(ctx, statement.reading);
  const target = statement.target === null ? null : expr(ctx, statement.target);
  const by = statement.by.flatMap((path) => dial(ctx, path) ?? []);
  if (reading === null || (statement.target !== null && target === null)) return null;
  if (by.length < statement.by.length || by.length === 0) return null;
  if (reading.type === "truth") {
    report(ctx, "hold.truth", statement.reading.span, { written: printNode(statement.reading) });
    return null;
  }
  if (target !== null && !comparable(reading.type, target.type)) {
    report(ctx, "claim.types", statement.span, { left: wordsOf(reading.type), right: wordsOf(target.type) });
    return null;
  }
  const second = statement.by[1];
  if (second !== undefined && by.some((one) => one.property !== "power")) {
    report(ctx, "hold.several", second.span, {});
    return null;
  }
  return { written: printNode(statement), reading, target, by, origin: here(ctx, statement.span) };
}

function dial(ctx: Context, path: Path): HoldDial | null {
  const [light, word, ...more] = path.parts;
  const property = dials.find((one) => one === word?.text);
  const lights = [...ctx.declared.values()].filter((one) => one.kind === "light").map((one) => one.name);
  if (light !== undefined && lights.includes(light.text) && property !== undefined && more.length === 0) {
    return { light: light.text, property };
  }
  const known = lights.flatMap((name) => dials.map((one) => `${writeName(name)}.${one}`));
  report(ctx, "hold.by", path.span, {
    path: printPath(path),
    known: suggestion([], known.slice(0, dials.length), "The recipe has no light."),
  });
  return null;
}
