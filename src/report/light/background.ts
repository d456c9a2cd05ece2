import type { Scene, Station } from "../../scene/types.js";
import { firstSubject, type Plan } from "../plan.js";

/** The middle of the first upright piece of the set behind the first subject, else of a wall that is set; null without one. */
export function backgroundStation(scene: Scene): Station | null {
  const subject = firstSubject(scene);
  if (subject === null) return null;
  return (
    scene.stations.find(
      (row) =>
        row.natural &&
        row.subject === null &&
        scene.stations.some((other) => other.name === `${row.name}.left`) &&
        row.at[1] > subject.place[1] &&
        Math.abs(row.facing[2]) < 0.5,
    ) ?? null
  );
}

/** Whether the wish is for a background as bright as the reading it is held against, or brighter: a white one. */
export function whiteWish({ recipe }: Plan): boolean {
  const wish = recipe.intent?.background;
  return wish !== undefined && (wish.side === "over" || wish.stops.value === 0);
}
