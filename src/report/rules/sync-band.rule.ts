import { lightsOn } from "../plan.js";
import { sayPercent, sayStops, sayTime } from "../say/quantity.js";
import { ambientUnder } from "./ambient.rule.js";
import type { Rule } from "./rule.js";

/** The shutter is faster than the camera syncs. */
export const syncBand: Rule = {
  code: "sync-band",
  thresholds: [],
  safety: false,
  page: {
    when: "A flash is on and the shutter time is shorter than `sync` of the camera.",
    means:
      "The shutter is never wholly open: a dark band covers part of the frame. Its share is an estimate for a curtain that takes the sync time to cross.",
    todo: "Set the sync time or a longer one; with a radio trigger a third of a stop longer still.",
    source: "Common practice, no source.",
  },
  check: ({ scene }) => {
    const { camera } = scene;
    if (camera === null || camera.shutter === null || camera.sync === null) return [];
    if (camera.shutter >= camera.sync * (1 - 1e-9)) return [];
    if (!lightsOn(scene).some((source) => source.kind === "flash")) return [];
    const band = 1 - camera.shutter / camera.sync;
    const under = ambientUnder(scene, camera.sync);
    const room = under === null ? "" : `; room light then is ${sayStops(under)} under the exposure`;
    return [
      {
        severity: "stop",
        message: `At ${sayTime(camera.shutter)} the shutter is faster than the sync time: up to ${sayPercent(band)} of the frame stays dark.`,
        remedy: `Set ${sayTime(camera.sync)} or longer${room}.`,
        about: null,
      },
    ];
  },
};
