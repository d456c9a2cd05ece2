import { exp2 } from "../core/exp2.js";
import type { Vec3 } from "../core/vector.js";
import { distance } from "../math/vector.js";
import { axialIntensityPerEnergy } from "../physics/luminous-energy.js";
import { sourceBeam, sourceShape } from "../scene/lamp/optics.js";
import { seenLight } from "../scene/lit/seen.js";
import type { Source } from "../scene/types.js";
import { misplaced } from "./change/misplaced.js";
import { alongFloor, bearingOf, elevationOf } from "./geometry/directions.js";
import { fallOff } from "./light/fall-off.js";
import { floorShadow } from "./light/floor-shadow.js";
import { narrowestAcross, shadowEdge, shadowEdge10to90 } from "./light/shadow-edge.js";
import { type AngularSize, sizeFrom } from "./light/size.js";
import { firstSubject, type Plan, stationOf } from "./plan.js";
import { sayOpening } from "./say/opening.js";
import type { ReportLight } from "./schema/report.js";
import { tolerance } from "./settings.js";

/** Gaps for which shadow edges are reported, m: a nose, an arm before the body, a set half a metre and a metre behind. */
export const edgeGaps: readonly number[] = [0.025, 0.1, 0.5, 1];

/** One light of the report. */
export function reportLight(plan: Plan, source: Source): ReportLight {
  const { scene, recipe } = plan;
  const subject = firstSubject(scene);
  // What a lamp lights is the light where it shines into a surface.
  const seen = seenLight(source);
  // Without a person the light is judged from the place it is aimed at.
  const eye = subject?.face ?? seen.aim;
  const size = sizeFrom(seen, eye);
  const light = recipe.lights.find((row) => row.name === source.name);
  const shadow = floorShadow(scene, seen);
  const narrow = narrowestAcross(seen);
  const axial = axialIntensityPerEnergy(sourceShape(source), sourceBeam(source));
  return {
    name: source.name,
    role: source.role,
    kind: source.kind,
    shape: sayOpening(source),
    on: source.below !== null,
    position: [...source.centre],
    seen_from: subject === null ? "aim" : "face",
    distance: distance(eye, source.centre),
    floor_distance: alongFloor([0, 0, 0], source.centre),
    height: source.centre[2],
    bearing: bearingOf(eye, seen.centre),
    elevation: elevationOf(eye, seen.centre),
    elevation_at_feet: subject === null ? null : elevationOf(subject.place, seen.centre),
    angular_size: {
      equivalent: size?.equivalent ?? null,
      least: size?.least ?? null,
      greatest: size?.greatest ?? null,
      diagonal: size?.diagonal ?? null,
      times_sun: size?.timesSun ?? null,
    },
    solid_angle: size?.solidAngle ?? null,
    projected_solid_angle: size?.projected ?? null,
    energy: source.energy,
    energy_at_full: source.fullEnergy,
    axial_intensity: source.energy * axial,
    uncertainty: source.uncertainty,
    known_by: source.known,
    power: {
      setting: light?.power?.written ?? "full",
      below_full: source.below,
      watt_seconds: source.wattSeconds,
      full_watt_seconds: source.fullWattSeconds,
    },
    colour: source.colour,
    shadow_edges: edgeGaps.map((gap) => ({
      gap,
      full: inMillimetres(shadowEdge(seen, gap)),
      ten_ninety: inMillimetres(shadowEdge10to90(seen, gap)),
      full_least: inMillimetres(shadowEdge(seen, gap, narrow)),
      ten_ninety_least: inMillimetres(shadowEdge10to90(seen, gap, narrow)),
    })),
    shadow,
    head_to_shin: headToShin(plan, source),
    reason:
      size === null
        ? `the lit side of ${source.name} is not seen from the ${subject === null ? "aim" : "face"}`
        : null,
    intervals: {
      energy: energyInterval(source),
      angular_size: size === null || seen !== source ? null : sizeInterval(plan, source, eye, size),
    },
  };
}

function inMillimetres(metres: number | null): number | null {
  return metres === null ? null : metres * 1000;
}

function headToShin(plan: Plan, source: Source): number | null {
  const { scene } = plan;
  const subject = firstSubject(scene);
  const shin = subject === null ? null : stationOf(scene, subject, "shin");
  if (subject === null || shin === null) return null;
  return fallOff(plan, source, subject.face, shin.before?.at ?? shin.at).stops;
}

/** The output to either side by its uncertainty in stops; null where it is taken as stated. */
function energyInterval(source: Source): [number, number] | null {
  if (!(source.uncertainty > 0)) return null;
  const factor = exp2(source.uncertainty);
  return [source.energy / factor, source.energy * factor];
}

/** The angular size with the tape too long and too short by its tolerance. */
function sizeInterval(plan: Plan, source: Source, eye: Vec3, size: AngularSize): [number, number] | null {
  const light = plan.recipe.lights.find((row) => row.name === source.name);
  const tape = light?.distance ?? light?.floor_distance;
  const given = tape?.length.plusMinus;
  const standard = tolerance(plan.recipe, "tape");
  const away = distance(eye, source.centre);
  const by =
    given === undefined
      ? standard
      : given.unit === "%"
        ? given.value * (tape?.length.value ?? away)
        : given.value;
  if (!(by > 0) || by >= away) return null;
  const one = sizeFrom(misplaced(plan.scene, source, light, { tape: by }), eye);
  const other = sizeFrom(misplaced(plan.scene, source, light, { tape: -by }), eye);
  if (one === null || other === null) return null;
  const all = [one.equivalent, other.equivalent, size.equivalent];
  return [Math.min(...all), Math.max(...all)];
}
