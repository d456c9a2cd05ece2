import { candelas, efficacy, guideNumber, metered } from "../../model/make/lamps.js";
import type { CalibrationValue } from "../../model/values.js";
import { candelaAt } from "../../photometry/index.js";
import type { Reference, Value } from "../../syntax/ast.js";
import { iso as isoOf } from "../../units/make.js";
import type { Efficacy, FStop, Length, Sensitivity } from "../../units/quantity.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import { type Context, report } from "../context.js";
import { argumentTrouble, asCall, sortArguments } from "./calls.js";
import { readMeasure, readRowMeasure } from "./measure.js";
import { readPhotometricFile } from "./photometric-file.js";
import { refuseArguments, refuseCall } from "./want.js";

const argument = (name: string, example: string, range: readonly [number, number]): PropertyRow => ({
  name,
  type: "length",
  help: "",
  example,
  default: "",
  range,
});

/** `metered(f/8, at: 2 m, ISO 100)`, `guide_number(58 m)`, `efficacy(35 lm/W)`, `candelas("file.ies")` */
export function readCalibration(ctx: Context, row: PropertyRow, value: Value): CalibrationValue | null {
  const call = asCall(value);
  if (call === null || call.call.args === null) return refuseCall(ctx, row, value);
  const sorted = sortArguments(call.args);
  switch (call.word) {
    case "metered":
      return readMetered(ctx, call.call);
    case "guide_number": {
      const trouble = argumentTrouble(sorted, [], 2);
      const [first, second] = sorted.plain;
      if (trouble !== null || first === undefined) {
        return refuseArguments(ctx, call.call, trouble ?? "takes a length", "guide_number(58 m, ISO 100)");
      }
      const range = argument("guide_number", "guide_number(58 m)", [0.1, 2000]);
      const metres = readRowMeasure(ctx, range, "m", first) as Length | null;
      const iso =
        second === undefined
          ? isoOf(100)
          : readMeasure(ctx, { name: "guide_number", unit: "ISO", example: "ISO 100" }, second);
      return metres === null || iso === null ? null : guideNumber(metres, iso as Sensitivity);
    }
    case "efficacy": {
      const trouble = argumentTrouble(sorted, [], 1);
      const first = sorted.plain[0];
      if (trouble !== null || first === undefined) {
        return refuseArguments(ctx, call.call, trouble ?? "takes lumens to the watt", "efficacy(35 lm/W)");
      }
      const want = argument("efficacy", "efficacy(35 lm/W)", [0.1, 683]);
      const read = readRowMeasure(ctx, want, "lm/W", first) as Efficacy | null;
      return read === null ? null : efficacy(read);
    }
    case "candelas": {
      const file = sorted.plain[0];
      if (file === undefined || file.kind !== "text" || call.args.length !== 1) {
        return refuseArguments(ctx, call.call, "takes the name of a file", 'candelas("dish.ies")');
      }
      const photometry = readPhotometricFile(ctx, file);
      if (photometry === null) return null;
      const axial = candelaAt(photometry, 0, photometry.system === "C" ? (photometry.horizontal[0] ?? 0) : 0);
      if (axial > 0) return candelas(file.value, axial);
      const problem = "there is no light along the axis";
      report(ctx, "beam.file", file.span, { path: file.value, line: 1, problem });
      return null;
    }
    default:
      return refuseCall(ctx, row, value);
  }
}

function readMetered(ctx: Context, call: Reference): CalibrationValue | null {
  const shown = "metered(f/8, at: 2 m, ISO 100)";
  const sorted = sortArguments(call.args ?? []);
  const trouble = argumentTrouble(sorted, ["at"], 2);
  const at = sorted.named.get("at");
  const [first, second] = sorted.plain;
  if (trouble !== null || at === undefined || first === undefined || second === undefined) {
    return refuseArguments(ctx, call, trouble ?? "takes an f-number, a distance and an ISO value", shown);
  }
  const fNumber = readMeasure(ctx, { name: "metered", unit: "f", example: shown }, first);
  const distance = readRowMeasure(ctx, argument("at", "2 m", [0.05, 100]), "m", at.value);
  const iso = readMeasure(ctx, { name: "metered", unit: "ISO", example: shown }, second);
  if (fNumber === null || distance === null || iso === null) return null;
  if (!(fNumber.value > 0) || !(iso.value > 0))
    return refuseArguments(ctx, call, "needs values above zero", shown);
  return metered(fNumber as FStop, distance as Length, iso as Sensitivity);
}
