import { exp2 } from "../../core/exp2.js";
import { requiredIlluminance } from "../../physics/exposure.js";
import type { Scene } from "../../scene/types.js";
import { fNumberOf } from "../light/reading.js";
import { faceWords, lightsOn, type Plan } from "../plan.js";
import { shutterAtMost } from "../say/nominal.js";
import { fixed, floorTo, twoFigures } from "../say/number.js";
import { sayFNumber, sayStops, sayTime } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { faceReading, keyLight } from "./key-light.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Stops by which the room's own light lies under the exposure at a shutter time; null where it cannot be said. */
export function ambientUnder(scene: Scene, shutter: number | null): number | null {
  const { camera, room } = scene;
  if (camera === null || room === null || !(room.ambient > 0) || shutter === null) return null;
  if (camera.aperture === null || camera.iso === null) return null;
  return Math.log2(
    requiredIlluminance(camera.aperture, shutter, camera.iso, scene.meter.flat) / room.ambient,
  );
}

function remedyFor(scene: Scene, under: number, needed: number): string {
  const { camera, room } = scene;
  const ways: string[] = [];
  const faster =
    camera === null || camera.shutter === null ? null : shutterAtMost(camera.shutter * exp2(under - needed));
  const sync = camera?.sync ?? null;
  if (faster !== null && (sync === null || faster.exact >= sync * (1 - 1e-9))) {
    const there = ambientUnder(scene, faster.exact);
    const syncs = sync === null ? ", if the camera syncs there" : "";
    ways.push(`Set ${faster.text}${syncs} (room light then is ${fixed(there ?? 0, 1)} stop under)`);
  } else if (
    sync !== null &&
    camera !== null &&
    camera.shutter !== null &&
    sync < camera.shutter * (1 - 1e-9)
  ) {
    const there = ambientUnder(scene, sync);
    ways.push(`Set ${sayTime(sync)} (room light then is ${fixed(there ?? 0, 1)} stop under)`);
  }
  if (room !== null) {
    const most = room.ambient * exp2(under - needed);
    ways.push(
      `${ways.length === 0 ? "Dim" : "dim"} the room to ${fixed(floorTo(most, most >= 20 ? 5 : 1), 0)} lx`,
    );
  }
  return `${ways.join(", or ")}; or more flash and a smaller aperture.`;
}

/** The face under steady light alone: its reading without the room's own light, with it, and how far that is under. */
interface SteadyFace {
  readonly lux: number;
  readonly under: number;
  readonly shown: string | null;
}

/** The first face where the key is steady and no flash is on; null in any other case. */
function steadyFace(plan: Plan): SteadyFace | null {
  const { scene } = plan;
  const shutter = scene.camera?.shutter ?? null;
  const key = keyLight(plan);
  const reading = faceReading(plan);
  if (key === null || reading === null || shutter === null || scene.room === null) return null;
  if (key.source.kind !== "steady" || lightsOn(scene).some((source) => source.kind === "flash")) return null;
  const room = scene.room.ambient * shutter;
  if (!(room > 0) || !(reading.exposure > 0)) return null;
  const fNumber = fNumberOf(scene, reading.exposure + room, reading.constant);
  return {
    lux: reading.exposure / shutter,
    under: Math.log2(reading.exposure / room),
    shown: fNumber === null ? null : sayFNumber(fNumber),
  };
}

/** Steady lamps and the room add up: what no reading counts, the camera records. */
function besideSteady(plan: Plan, face: SteadyFace): readonly RuleFinding[] {
  const { scene, recipe } = plan;
  const needed = threshold(recipe, "ambient");
  const { lux, under, shown } = face;
  if (under >= needed - 1e-9) return [];
  const where = under < 0 ? `${sayStops(-under)} over` : `${sayStops(under)} under`;
  const adds = twoFigures(Math.log2(1 + exp2(-under)));
  const most = lux * exp2(-needed);
  const counted = shown === null ? "" : `, or count it: with it ${faceWords(scene)} reads ${shown}`;
  return [
    {
      severity: under < threshold(recipe, "ambient_stop") ? "check" : "note",
      message: `Room light of ${fixed(scene.room?.ambient ?? 0, 0)} lx is ${where} the ${fixed(lux, 0)} lx that the lamps give ${faceWords(scene)}: it adds ${adds} stop there and more in the shadows, and no reading counts it.`,
      remedy: `Dim the room to ${fixed(floorTo(most, most >= 20 ? 5 : most >= 2 ? 1 : 0.1), most >= 2 ? 0 : 1)} lx${counted}.`,
      about: null,
    },
  ];
}

/** The room's own light is too near to that of the lamps. */
export const ambient: Rule = {
  code: "ambient",
  thresholds: ["ambient", "ambient_stop"],
  safety: false,
  page: {
    when: "A flash is on, and `ambient` of the room over the shutter time lies less than `ambient` (5 stop) under what the set aperture and ISO ask for; less than `ambient_stop` (3 stop) it is a stop. At least 6 stops under is clean. Where only steady lamps are on, a longer shutter lets in more of both, so the room is held against what the lamps give the first face: less than `ambient` under it is a note, less than `ambient_stop` a check.",
    means:
      "Room light colours the shadows and blurs whatever moves. Beside steady lamps it adds to the exposure, and readings here leave it out.",
    todo: "A faster shutter as far as the camera syncs, a smaller aperture with more flash, lamps off, blinds down. Beside steady lamps: darken the room, or meter with it.",
    source: "Exposure: ISO 2720. The thresholds are common practice, no source.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const face = steadyFace(plan);
    if (face !== null) return besideSteady(plan, face);
    const under = ambientUnder(scene, scene.camera?.shutter ?? null);
    const needed = threshold(recipe, "ambient");
    if (under === null || under >= needed - 1e-9) return [];
    if (!lightsOn(scene).some((source) => source.kind === "flash")) return [];
    const words = under < 0 ? `${sayStops(-under)} over` : `only ${sayStops(under)} under`;
    return [
      {
        severity: under < threshold(recipe, "ambient_stop") ? "stop" : "check",
        message: `Room light of ${fixed(scene.room?.ambient ?? 0, 0)} lx is ${words} the exposure: it colours shadows and blurs what moves.`,
        remedy: remedyFor(scene, under, needed),
        about: null,
      },
    ];
  },
};
