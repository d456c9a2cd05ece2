import { writeNumber } from "../../core/write-number.js";
import type {
  BeamValue,
  CalibrationValue,
  DialValue,
  OutputValue,
  PowerValue,
  TapeValue,
} from "../../model/values.js";
import type { Length } from "../../units/quantity.js";
import type { CheckedBlock } from "../block.js";
import { type Context, here, report } from "../context.js";

/** What a light must have to be worked out: a shape, a place, and a known output. True when it has all. */
export function checkLight(ctx: Context, light: CheckedBlock): boolean {
  const name = light.name ?? "this light";
  const head = light.block.words[0]?.span ?? light.block.span;
  const has = (property: string): boolean => light.read.given.has(property);
  if (!light.complete) return false;
  let good = light.read.values.size === light.read.given.size;
  if (!has("shape")) {
    report(ctx, "property.missing", head, { kind: "light", name: "shape", example: "disc(18 cm)" });
    good = false;
  }
  return (
    checkPlacement(ctx, light, name) &&
    checkSurfaces(ctx, light, name) &&
    checkOutput(ctx, light, name) &&
    good
  );
}

/** A light shines through a cloth or into a surface: what comes through a cloth is not followed to a patch. */
function checkSurfaces(ctx: Context, light: CheckedBlock, name: string): boolean {
  const { given, places } = light.read;
  if (!given.has("through") || !given.has("into")) return true;
  const place = places.get("into") ?? here(ctx, light.block.span);
  const other = places.get("through");
  const related = other === undefined ? [] : [{ place: other, text: "`through` is given here" }];
  report(ctx, "light.through-and-into", place, { name }, { related });
  return false;
}

const tapes = ["distance", "floor_distance"] as const;
const heights = ["height", "elevation", "bottom_edge"] as const;

function checkPlacement(ctx: Context, light: CheckedBlock, name: string): boolean {
  const given = light.read.given;
  const tape = tapes.filter((word) => given.has(word));
  const height = heights.filter((word) => given.has(word));
  const polar = [...tape, ...height, ...(given.has("bearing") ? ["bearing"] : [])];
  const clash: readonly string[] =
    given.has("position") && polar.length > 0
      ? ["position", polar[0] ?? ""]
      : tape.length > 1
        ? tape
        : height.length > 1
          ? height
          : [];
  const [first, second] = clash;
  if (first !== undefined && second !== undefined) {
    const place = light.read.places.get(second) ?? here(ctx, light.block.span);
    const other = light.read.places.get(first);
    report(
      ctx,
      "placement.twice",
      place,
      { name, first, second, disagreement: disagreement(light, tape, height) },
      {
        related: other === undefined ? [] : [{ place: other, text: `placed by \`${first}\` here` }],
      },
    );
    return false;
  }
  if (given.has("position")) return light.read.values.has("position");
  if (tape.length === 1 && height.length === 1)
    return [...tape, ...height].every((word) => light.read.values.has(word));
  const head = light.block.words[0]?.span ?? light.block.span;
  const lacks =
    tape.length === 0 && height.length === 0
      ? "it has neither a tape nor a height"
      : tape.length === 0
        ? "it has no `distance` and no `floor_distance`"
        : "it has no `height`, `elevation` or `bottom_edge`";
  report(ctx, "placement.missing", head, { name, lacks });
  return false;
}

/** Where slant, floor tape and a height of the lamp are all given: what the slant would say. */
function disagreement(light: CheckedBlock, tape: readonly string[], height: readonly string[]): string {
  const slant = light.read.values.get("distance") as TapeValue | undefined;
  const floor = light.read.values.get("floor_distance") as TapeValue | undefined;
  if (tape.length < 2 || slant === undefined || floor === undefined) {
    return height.length > 1 ? "A lamp has one height." : "`position` says it all.";
  }
  const rise = slant.length.value * slant.length.value - floor.length.value * floor.length.value;
  const lamp = light.read.values.get("height") as Length | undefined;
  if (rise < 0) return "The slant tape cannot be shorter than the tape along the floor.";
  const up = writeNumber(Math.round(Math.sqrt(rise) * 100) / 100);
  const said = lamp === undefined ? "" : `; \`height\` says ${lamp.written} above the floor`;
  return `Together they put the lamp ${up} m above or below the tape's zero${said}.`;
}

function checkOutput(ctx: Context, light: CheckedBlock, name: string): boolean {
  const values = light.read.values;
  const given = light.read.given;
  const head = light.block.words[0]?.span ?? light.block.span;
  if (given.has("calibration") && given.has("output")) {
    report(ctx, "calibration.twice", light.read.places.get("output") ?? here(ctx, head), { name });
    return false;
  }
  const beam = values.get("beam") as BeamValue | undefined;
  if (!given.has("calibration") && !given.has("output") && beam?.kind === "measured") {
    if (values.get("kind") !== "flash")
      return checkScale(ctx, light, "power") && checkScale(ctx, light, "lowest_power");
    report(ctx, "calibration.missing", head, { name });
    return false;
  }
  if (!given.has("calibration") && !given.has("output")) {
    report(ctx, "calibration.missing", head, { name });
    return false;
  }
  const calibration = values.get("calibration") as CalibrationValue | undefined;
  const output = values.get("output") as OutputValue | undefined;
  if (calibration === undefined && output === undefined) return false;
  if (light.unpaired !== null && (calibration?.kind === "metered" || calibration?.kind === "guide_number")) {
    report(ctx, "calibration.pair", head, { name, modifier: light.unpaired });
    return false;
  }
  if (calibration?.kind === "efficacy" && !given.has("full_power")) {
    report(ctx, "calibration.energy", light.read.places.get("calibration") ?? here(ctx, head), {});
    return false;
  }
  if (!checkKind(ctx, light, name, calibration, output)) return false;
  return checkScale(ctx, light, "power") && checkScale(ctx, light, "lowest_power");
}

/** A flash gives an amount of light, a steady lamp a rate; what says how much must be of the same kind as the lamp. */
function checkKind(
  ctx: Context,
  light: CheckedBlock,
  name: string,
  calibration: CalibrationValue | undefined,
  output: OutputValue | undefined,
): boolean {
  const kind = light.read.values.get("kind") as "flash" | "steady" | undefined;
  if (kind === "steady" && calibration !== undefined) {
    const place = light.read.places.get("calibration") ?? here(ctx, light.block.span);
    report(ctx, "calibration.steady", place, { name });
    return false;
  }
  const rate = output?.kind === "flux" || output?.kind === "intensity";
  if (kind === undefined || output === undefined || rate === (kind === "steady")) return true;
  report(ctx, "output.kind", light.read.places.get("output") ?? here(ctx, light.block.span), {
    name,
    kind: kind === "steady" ? "steady lamp" : "flash",
    written: output.written,
    wanted: kind === "steady" ? "lm or cd" : "lm s or cd s",
  });
  return false;
}

/** A power in watt-seconds needs full power, a dial number needs the dial. */
function checkScale(ctx: Context, light: CheckedBlock, property: "power" | "lowest_power"): boolean {
  const power = light.read.values.get(property) as PowerValue | undefined;
  if (power === undefined) return !light.read.given.has(property);
  const place = light.read.places.get(property) ?? here(ctx, light.block.span);
  if (power.kind === "energy") {
    const full = light.read.values.get("full_power") as
      | { readonly value: number; readonly written: string }
      | undefined;
    if (full === undefined) {
      report(ctx, "power.scale", place, {
        written: power.written,
        needs: "`full_power`, to be a share of it",
      });
      return false;
    }
    if (power.energy.value > full.value) {
      report(ctx, "value.range", place, {
        name: property,
        written: power.written,
        low: "off",
        high: `full power, ${full.written}`,
      });
      return false;
    }
  }
  if (power.kind === "dial") {
    const dial = light.read.values.get("dial") as DialValue | undefined;
    if (dial === undefined) {
      report(ctx, "power.scale", place, {
        written: power.written,
        needs: "`dial: numbers(...)`, to know what its numbers mean",
      });
      return false;
    }
    if (power.number.value > dial.full.value) {
      report(ctx, "value.range", place, {
        name: property,
        written: power.written,
        low: "off",
        high: `full, dial(${dial.full.written})`,
      });
      return false;
    }
  }
  return true;
}
