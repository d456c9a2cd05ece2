import { cosinePower, lambertian } from "../../model/make/lamps.js";
import type { BeamValue } from "../../model/values.js";
import type { Value } from "../../syntax/ast.js";
import type { Plain } from "../../units/quantity.js";
import type { PropertyRow } from "../../vocabulary/property.js";
import type { Context } from "../context.js";
import { bare, singleWord } from "../words.js";
import { asCall } from "./calls.js";
import { readRowMeasure } from "./measure.js";
import { refuseArguments, refuseCall } from "./want.js";

/** `lambertian`, `cosine_power(4)` */
export function readBeam(ctx: Context, row: PropertyRow, value: Value): BeamValue | null {
  if (singleWord(bare(value)) === "lambertian") return lambertian;
  const call = asCall(value);
  if (call === null || call.word !== "cosine_power") return refuseCall(ctx, row, value);
  const first = call.args[0];
  if (first === undefined || call.args.length !== 1)
    return refuseArguments(ctx, call.call, "takes the exponent", row.example);
  const want: PropertyRow = { ...row, name: "cosine_power", example: "4", range: [0.1, 200] };
  const read = readRowMeasure(ctx, want, "1", first.value) as Plain | null;
  return read === null ? null : cosinePower(read);
}
