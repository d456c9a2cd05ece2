import { exp2 } from "../../core/exp2.js";
import type { Vec3 } from "../../core/vector.js";
import type { LightModel } from "../../model/types.js";
import type { Beam } from "../../physics/beam.js";
import { axialIntensityPerEnergy } from "../../physics/luminous-energy.js";
import { emittingArea, type SourceShape } from "../../physics/source-shape.js";
import { assume, placeOfBlock, report, type Site } from "../site.js";
import type { Source } from "../types.js";
import { axisTo, feathered, lampFrame } from "./axis.js";
import { gelledColour, lossStops, meteredWithGrid } from "./losses.js";
import { measuredBeam } from "./measured.js";
import { sourceBeam, sourceShape } from "./optics.js";
import { fromFile, headOutput } from "./output.js";
import { aimOf, lampCentre } from "./place.js";
import { lowestBelow, settingBelow } from "./power.js";
import { halfHeight, lampShape } from "./shape.js";
import { standOf } from "./stand.js";

/** A lamp whose place is known and whose direction and light are not yet. */
export interface PlacedLamp {
  readonly light: LightModel;
  readonly shape: Source["shape"];
  readonly centre: Vec3;
}

/** Settles where a lamp's opening is, and makes its name a landmark. */
export function placeLamp(site: Site, light: LightModel): PlacedLamp {
  const name = light.name ?? "light";
  if (light.shape === undefined) {
    site.place = placeOfBlock(light.origins);
    report(site, "scene.incomplete", { name, what: "the shape of its lit opening" });
  }
  const shape: Source["shape"] =
    light.shape === undefined ? { kind: "sphere", radius: 0.05 } : lampShape(light.shape);
  const centre = lampCentre(site, light, shape) ?? [0, -2, 2];
  site.landmarks.set(name, { at: centre, ahead: null });
  return { light, shape, centre };
}

/** The beam of the head as defined, and the beam that leaves the lamp, which a grid decides. */
function beamsOf(
  site: Site,
  light: LightModel,
  shape: Source["shape"],
): { readonly head: Source["beam"]; readonly final: Source["beam"] } {
  const lambertian = { kind: "lambertian" } as const;
  const round = shape.kind === "sphere" || shape.kind === "capsule";
  const shaped = light.beam?.kind === "lambertian" ? undefined : light.beam;
  const name = light.name ?? "light";
  if (round) {
    const what = light.grid !== undefined ? "grid" : shaped !== undefined ? "beam" : undefined;
    if (what !== undefined) {
      site.place = placeOfBlock(light.origins, what);
      report(site, "light.beam-of-bulb", { name, what });
    }
    return { head: lambertian, final: lambertian };
  }
  const head: Source["beam"] =
    shaped === undefined
      ? lambertian
      : shaped.kind === "measured"
        ? measuredBeam(site, name, light, shaped)
        : { kind: "cosine-power", exponent: shaped.exponent.value };
  if (light.grid === undefined) {
    if (light.beam === undefined) {
      // Of an output by efficacy the beam decides how much goes along the axis; a reading is taken on it.
      const estimated = light.output === undefined && light.calibration?.kind === "efficacy";
      assume(
        site,
        `beam of ${name}`,
        "lambertian",
        estimated || light.output?.kind === "luminous_energy" || light.output?.kind === "flux",
      );
    }
    return { head, final: head };
  }
  if (shaped !== undefined) {
    site.place = placeOfBlock(light.origins, "grid");
    report(site, "light.grid-and-beam", { name });
  }
  return { head, final: { kind: "grid", cutoff: (light.grid.value * Math.PI) / 180 } };
}

/**
 * Luminous energy at full power after all losses: the intensity on the axis of the head as defined, less the losses in
 * stops, spread by the beam that leaves the lamp.
 */
function energyAfter(shape: SourceShape, energy: number, head: Beam, final: Beam, stops: number): number {
  const axial = energy * axialIntensityPerEnergy(shape, head) * exp2(-stops);
  return head === final || head.kind === final.kind
    ? energy * exp2(-stops)
    : axial / axialIntensityPerEnergy(shape, final);
}

/** Completes a lamp: its direction, what it gives, what carries it. `c` is the constant of the flat receptor. */
export function finishLamp(site: Site, placed: PlacedLamp, c: number): Source {
  const { light, shape, centre } = placed;
  const name = light.name ?? "light";
  const aim = aimOf(site, light);
  const straight = axisTo(centre, aim);
  if (straight === null) {
    site.place = placeOfBlock(light.origins, "aim");
    report(site, "placement.on-aim", { name });
  }
  const axis = feathered(straight ?? [0, 1, 0], light.feather);
  const frame = lampFrame(axis, light.roll);
  const optics = sourceShape({ shape, centre, axis, ...frame });
  const beams = beamsOf(site, light, shape);
  const finalBeam = sourceBeam({ beam: beams.final, ...frame });
  const headBeam = meteredWithGrid(light) ? finalBeam : sourceBeam({ beam: beams.head, ...frame });
  const output = headOutput(site, light, optics, headBeam, c);
  const kind =
    light.kind ??
    (light.output?.kind === "flux" || light.output?.kind === "intensity" || fromFile(light)
      ? "steady"
      : "flash");
  if (kind === "steady" && site.recipe.camera?.shutter === undefined) {
    assume(site, `time over which ${name} counts`, "1 s, since no shutter is set", true);
  }
  if (light.colour === undefined) assume(site, `colour of ${name}`, "5600 K", false);
  const full = energyAfter(optics, output.energy, headBeam, finalBeam, lossStops(site, light));
  const below = settingBelow(site, light);
  const share = below === null ? 0 : exp2(-below);
  const fullWattSeconds = light.full_power?.value ?? null;
  return {
    name,
    role: light.role ?? null,
    kind: kind as Source["kind"],
    shape,
    centre,
    axis,
    across: frame.across,
    along: frame.along,
    beam: beams.final,
    area: emittingArea(optics),
    energy: full * share,
    fullEnergy: full,
    uncertainty: output.uncertainty,
    known: output.known,
    wattSeconds: fullWattSeconds === null ? null : fullWattSeconds * share,
    fullWattSeconds,
    lowest: lowestBelow(light),
    below,
    colour: gelledColour(light),
    aim,
    headHeight: light.head_height?.value ?? 2 * halfHeight(shape, axis[2], frame),
    hotModellingLamp: light.modelling_lamp === "hot",
    stand: standOf(site, light),
    lasts: light.lasts?.value,
    recycles: light.recycles?.value,
    // What a lamp gets later stands here already, so that all lamps are of one kind to the engine.
    cloth: undefined,
    spillOf: undefined,
    patch: undefined,
  };
}
