import { exp2 } from "../core/exp2.js";
import type { Vec3 } from "../core/vector.js";
import { distance } from "../math/vector.js";
import { axialIntensityPerEnergy } from "../physics/luminous-energy.js";
import { sourceBeam, sourceShape } from "../scene/lamp/optics.js";
import { seenLight } from "../scene/lit/seen.js";
import type { Scene, Source } from "../scene/types.js";
import type { MeasuredInput } from "./evaluate/inputs.js";
import { intervalOf } from "./evaluate/spread.js";
import { alongFloor, bearingOf, elevationOf } from "./geometry/directions.js";
import { fallOff } from "./light/fall-off.js";
import { floorShadow } from "./light/floor-shadow.js";
import { narrowestAcross, shadowEdge, shadowEdge10to90 } from "./light/shadow-edge.js";
import { type AngularSize, sizeFrom } from "./light/size.js";
import { firstSubject, headOf, type Plan, stationOf } from "./plan.js";
import { sayOpening } from "./say/opening.js";
import type { ReportLight } from "./schema/report.js";

/** Gaps for which shadow edges are reported, m: a nose, an arm before the body, a set half a metre and a metre behind. */
export const edgeGaps: readonly number[] = [0.025, 0.1, 0.5, 1];

/** One light of the report. */
export function reportLight(plan: Plan, source: Source, inputs: readonly MeasuredInput[]): ReportLight {
  const { scene, recipe } = plan;
  const subject = firstSubject(scene);
  // What a lamp lights is the light where it shines into a surface.
  const seen = seenLight(source);
  const eye = eyeFor(scene, source);
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
    head: reportHead(headOf(scene, source), source, eye),
    patch: reportPatch(source, eye),
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
      angular_size: size === null ? null : sizeInterval(plan, source.name, size, inputs),
    },
  };
}

function reportHead(head: Source, light: Source, eye: Vec3): ReportLight["head"] {
  if (head === light && light.patch === undefined) return null;
  const { centre } = head;
  return {
    position: [...centre],
    distance: distance(eye, centre),
    bearing: bearingOf(eye, centre),
    elevation: elevationOf(eye, centre),
    height: centre[2],
  };
}

function reportPatch({ patch }: Source, eye: Vec3): ReportLight["patch"] {
  if (patch === undefined) return null;
  const { surface, centre, width, height } = patch;
  return {
    surface,
    position: [...centre],
    distance: distance(eye, centre),
    height: centre[2],
    width,
    length: height,
  };
}

/** Where a light is judged from: the first face; without a person the place it is aimed at. */
const eyeFor = (scene: Scene, source: Source): Vec3 => firstSubject(scene)?.face ?? seenLight(source).aim;

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

/** The angular size with all measured inputs off by their tolerances; null where it cannot be had. */
function sizeInterval(
  plan: Plan,
  name: string,
  size: AngularSize,
  inputs: readonly MeasuredInput[],
): [number, number] | null {
  const found = intervalOf({ plan, alarms: null }, inputs, ({ plan: { scene } }) => {
    const source = scene.sources.find((row) => row.name === name);
    if (source === undefined) return null;
    return sizeFrom(seenLight(source), eyeFor(scene, source))?.equivalent ?? null;
  });
  return found === null ? null : [size.equivalent - found.below, size.equivalent + found.above];
}
