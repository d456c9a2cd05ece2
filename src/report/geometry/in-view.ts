import { add, addScaled, dot, normalise, scale } from "../../math/vector.js";
import { imageDistance } from "../../scene/lens.js";
import type { Scene, Station } from "../../scene/types.js";
import type { Meter } from "../../transport/meter.js";
import { ownerOf } from "../say/surfaces.js";
import { sightOf } from "./sight.js";

/** Lines of sight along each side of the frame: more of them where the surface is small in the picture. */
const FINENESS = [5, 9, 17, 33];
/** Fewest places that stand for a surface. */
const FEWEST = 9;
/** How far into the corners the lines of sight go, in halves of the frame. */
const REACH = 0.98;

/**
 * Places spread evenly over the part of a flat surface that the picture shows: inside the frame, and not behind a person
 * or anything else. A text says why there are none.
 */
export function placesInView(scene: Scene, station: Station): readonly Meter[] | string {
  const { camera } = scene;
  const image = camera === null ? null : imageDistance(camera);
  if (camera === null || image === null) return "there is no camera, or its focal length is not known";
  const look = sightOf(scene);
  for (const count of FINENESS) {
    const places: Meter[] = [];
    for (let j = 0; j < count; j++) {
      for (let i = 0; i < count; i++) {
        const x = REACH * ((2 * i) / (count - 1) - 1) * (camera.frameWidth / 2);
        const y = REACH * ((2 * j) / (count - 1) - 1) * (camera.frameHeight / 2) + camera.shift;
        const way = addScaled(add(scale(camera.forward, image), scale(camera.right, x)), camera.up, y);
        const seen = look(camera.at, normalise(way) ?? camera.forward);
        const same = seen !== null && seen.owner === ownerOf(station.name);
        if (same && dot(seen.meter.facing, station.facing) > 0.999) places.push(seen.meter);
      }
    }
    if (places.length >= FEWEST) return places;
  }
  return `the picture shows too little of ${station.name}`;
}
