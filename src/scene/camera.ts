import type { Vec3 } from "../core/vector.js";
import { cross } from "../math/vector.js";
import type { CameraModel } from "../model/types.js";
import { axisTo } from "./lamp/axis.js";
import { bearingDirection, blockPoint } from "./points.js";
import { assume, faceOfSubject, placeOfBlock, report, type Site } from "./site.js";
import type { SceneCamera } from "./types.js";

/** Where the lens is: `position`, or a tape along the floor with a bearing and a height. */
export function placeCamera(site: Site, camera: CameraModel): Vec3 {
  const at = lensOf(site, camera);
  site.landmarks.set("camera", { at, ahead: null });
  return at;
}

function lensOf(site: Site, camera: CameraModel): Vec3 {
  if (camera.position !== undefined) {
    return blockPoint(site, camera.origins, "position", camera.position)?.at ?? [0, -4, 1.5];
  }
  if (camera.distance === undefined || camera.height === undefined) {
    site.place = placeOfBlock(camera.origins);
    report(site, "scene.incomplete", { name: "camera", what: "where it stands" });
    return [0, -4, camera.height?.value ?? 1.5];
  }
  const from = camera.distance.from;
  const start = from === null ? null : blockPoint(site, camera.origins, "distance", from);
  const way = camera.bearing === undefined ? ([0, -1, 0] as const) : bearingDirection(camera.bearing);
  const tape = camera.distance.length.value;
  const [x, y] = start?.at ?? [0, 0];
  return [x + tape * way[0], y + tape * way[1], camera.height.value];
}

/** The unit vector into the picture: to the aim, or level towards the mark. */
function forwardOf(site: Site, camera: CameraModel, at: Vec3): Vec3 {
  if (camera.aim === undefined) return axisTo(at, [0, 0, at[2]]) ?? [0, 1, 0];
  const aim = blockPoint(site, camera.origins, "aim", camera.aim);
  if (aim === null) return [0, 1, 0];
  const forward = axisTo(at, aim.at);
  if (forward !== null) return forward;
  site.place = placeOfBlock(camera.origins, "aim");
  report(site, "placement.on-aim", { name: "camera" });
  return [0, 1, 0];
}

/** Completes the camera: where it looks, its frame as held, and its settings. */
export function finishCamera(site: Site, camera: CameraModel, at: Vec3): SceneCamera {
  const forward = forwardOf(site, camera, at);
  const level = Math.sqrt(forward[0] * forward[0] + forward[1] * forward[1]);
  const right: Vec3 = level > 1e-9 ? [forward[1] / level, -forward[0] / level, 0] : [1, 0, 0];
  if (camera.frame === undefined) assume(site, "frame", "36 x 24 mm", false);
  if (camera.held === undefined) {
    site.place = placeOfBlock(camera.origins);
    report(site, "scene.incomplete", { name: "camera", what: "how it is held, upright or level" });
  }
  const a = camera.frame?.width.value ?? 0.036;
  const b = camera.frame?.height.value ?? 0.024;
  if (camera.balance === undefined) assume(site, "white balance", "5600 K", false);
  if (camera.circle_of_confusion === undefined) assume(site, "circle of confusion", "diagonal / 1500", false);
  const upright = camera.held === "upright";
  const long = Math.max(a, b);
  const short = Math.min(a, b);
  const focus =
    camera.focus === undefined
      ? faceOfSubject(site)
      : blockPoint(site, camera.origins, "focus", camera.focus);
  const pixels = camera.pixels;
  return {
    at,
    forward,
    right,
    up: cross(right, forward),
    frameWidth: upright ? short : long,
    frameHeight: upright ? long : short,
    focalLength: camera.focal_length?.value ?? null,
    shift: camera.shift?.value ?? 0,
    focus: focus?.at ?? null,
    aperture: camera.aperture?.value ?? null,
    shutter: camera.shutter?.value ?? null,
    iso: camera.sensitivity?.value ?? null,
    sync: camera.sync?.value ?? null,
    interval: camera.interval?.value ?? null,
    balance: camera.balance?.value ?? 5600,
    circleOfConfusion: camera.circle_of_confusion?.value ?? Math.sqrt(a * a + b * b) / 1500,
    pixels:
      pixels === undefined
        ? null
        : upright
          ? { width: Math.min(pixels.width, pixels.height), height: Math.max(pixels.width, pixels.height) }
          : { width: Math.max(pixels.width, pixels.height), height: Math.min(pixels.width, pixels.height) },
  };
}
