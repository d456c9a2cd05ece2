import { requiredIlluminance } from "../../physics/exposure.js";
import type { Scene } from "../../scene/types.js";
import { lightsOn } from "../plan.js";
import { shutterAtMost } from "../say/nominal.js";
import { fixed, floorTo } from "../say/number.js";
import { sayStops, sayTime } from "../say/quantity.js";
import { threshold } from "../settings.js";
import type { Rule } from "./rule.js";

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
    camera === null || camera.shutter === null
      ? null
      : shutterAtMost(camera.shutter * Math.exp((under - needed) * Math.LN2));
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
    const most = room.ambient * Math.exp((under - needed) * Math.LN2);
    ways.push(
      `${ways.length === 0 ? "Dim" : "dim"} the room to ${fixed(floorTo(most, most >= 20 ? 5 : 1), 0)} lx`,
    );
  }
  return `${ways.join(", or ")}; or more flash and a smaller aperture.`;
}

/** The room's own light is too near to the flash. */
export const ambient: Rule = {
  code: "ambient",
  thresholds: ["ambient", "ambient_stop"],
  safety: false,
  page: {
    when: "A flash is on, and `ambient` of the room over the shutter time lies less than `ambient` (5 stop) under what the set aperture and ISO ask for; less than `ambient_stop` (3 stop) it is a stop. At least 6 stops under is clean.",
    means: "Room light colours the shadows and blurs whatever moves.",
    todo: "A faster shutter as far as the camera syncs, a smaller aperture with more flash, lamps off, blinds down.",
    source: "Exposure: ISO 2720. The thresholds are common practice, no source.",
  },
  check: ({ scene, recipe }) => {
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
