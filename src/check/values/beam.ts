import { cosinePower, lambertian, measured } from "../../model/make/lamps.js";
import type { BeamValue } from "../../model/values.js";
import type { Value } from "../../syntax/ast.js";
import type { Plain } from "../../units/quantity.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import type { Context } from "../context.js";
import { bare, singleWord } from "../words.js";
import { asCall } from "./calls.js";
import { readRowMeasure } from "./measure.js";
import { readPhotometricFile } from "./photometric-file.js";
import { refuseArguments, refuseCall } from "./want.js";

/** `lambertian`, `cosine_power(4)`, `measured("dish.ies")` */
export function readBeam(ctx: Context, row: PropertyRow, value: Value): BeamValue | null {
  if (singleWord(bare(value)) === "lambertian") return lambertian;
  const call = asCall(value);
  if (call?.word === "measured") return readMeasured(ctx, row, call);
  if (call === null || call.word !== "cosine_power") return refuseCall(ctx, row, value);
  const first = call.args[0];
  if (first === undefined || call.args.length !== 1)
    return refuseArguments(ctx, call.call, "takes the exponent", row.example);
  const want: PropertyRow = { ...row, name: "cosine_power", example: "4", range: [0.1, 200] };
  const read = readRowMeasure(ctx, want, "1", first.value) as Plain | null;
  return read === null ? null : cosinePower(read);
}

/** The table of an LM-63 file that lies beside the recipe. */
function readMeasured(
  ctx: Context,
  row: PropertyRow,
  { call, args }: NonNullable<ReturnType<typeof asCall>>,
): BeamValue | null {
  const file = args[0]?.value;
  if (args.length !== 1 || args[0]?.name !== null || file?.kind !== "text") {
    return refuseArguments(ctx, call, "takes the name of a file", `${row.name}: measured("dish.ies")`);
  }
  const photometry = readPhotometricFile(ctx, file);
  return photometry === null ? null : measured(file.value, photometry);
}
