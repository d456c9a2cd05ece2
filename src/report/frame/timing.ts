import { exp2 } from "../../core/exp2.js";
import { dot, subtract } from "../../math/vector.js";
import { durationRatio, motionBlur, tailShare } from "../../physics/flash-duration.js";
import { imageDistance } from "../../scene/lens.js";
import type { Scene, SceneSubject, Source } from "../../scene/types.js";
import { lightsOn, type Plan } from "../plan.js";
import { threshold } from "../settings.js";
import { pixelPitch } from "./sharpness.js";

/** The time above half of the peak, for a flash that dies away exponentially, s. */
export function halfDuration(lasts: number): number {
  return lasts / durationRatio();
}

/**
 * How long the whole frame stays open to a flash, s: the shutter time less the time that a curtain takes to cross and
 * the lag of the trigger. Null where shutter or sync time are not known.
 */
export function openTime({ scene, recipe }: Plan): number | null {
  const { camera } = scene;
  if (camera === null || camera.shutter === null || camera.sync === null) return null;
  return camera.shutter - threshold(recipe, "curtain") * camera.sync - threshold(recipe, "tail_lag");
}

/** Stops by which the side of the frame that closes first gets less of a flash; null where nothing is open. */
export function tailStops(lasts: number, open: number): number | null {
  return open > 0 ? -Math.log2(1 - tailShare(lasts, open)) : null;
}

/** From one flash to the next at the set power, s: charging takes as long as there is energy to store. */
export function recycleTime(source: Source): number | null {
  if (source.recycles === undefined || source.below === null) return null;
  return source.recycles * exp2(-source.below);
}

/** Stops by which the next flash of a burst is under; 0 where it is full again. */
export function burstStops(recycle: number, interval: number): number {
  return interval >= recycle ? 0 : Math.log2(recycle / interval);
}

/** The blur that a subject's own movement draws. */
export interface Motion {
  /** On the subject, m. */
  readonly path: number;
  /** On the sensor, m, and in pixels. */
  readonly blur: number;
  readonly pixels: number | null;
}

/** The blur of something that moves across the line of sight for a time, at the subject; null without a lens. */
export function motionOf(scene: Scene, subject: SceneSubject, time: number): Motion | null {
  const { camera } = scene;
  const image = camera === null ? null : imageDistance(camera);
  if (camera === null || image === null) return null;
  const depth = dot(subtract(subject.face, camera.at), camera.forward);
  if (!(depth > 0)) return null;
  const blur = motionBlur(subject.speed, time, image / depth);
  const pitch = pixelPitch(camera);
  return { path: subject.speed * time, blur, pixels: pitch === null ? null : blur / pitch };
}

/** How long a light acts on the picture, s: a flash by its t0.1, but no longer than the shutter; null where unknown. */
export function actingTime(scene: Scene, source: Source): number | null {
  const shutter = scene.camera?.shutter ?? null;
  if (source.kind === "steady") return shutter;
  if (source.lasts === undefined) return null;
  return shutter === null ? source.lasts : Math.min(source.lasts, shutter);
}

/** The flashes that are on. */
export function flashesOn(scene: Scene): readonly Source[] {
  return lightsOn(scene).filter((source) => source.kind === "flash");
}
