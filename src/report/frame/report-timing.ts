import { keyOf, lightsOn, type Plan } from "../plan.js";
import type { Report } from "../schema/report.js";
import {
  actingTime,
  burstStops,
  flashesOn,
  halfDuration,
  motionOf,
  openTime,
  recycleTime,
  tailStops,
} from "./timing.js";

type Timing = Report["timing"];

/** The times of the report: flashes, bursts and what moves. */
export function reportTiming(plan: Plan): Timing {
  return { flashes: flashes(plan), recycling: recycling(plan), motion: motion(plan) };
}

function flashes(plan: Plan): Timing["flashes"] {
  const open = openTime(plan);
  return flashesOn(plan.scene).flatMap(({ name, lasts }) =>
    lasts === undefined
      ? []
      : [
          {
            light: name,
            lasts,
            lasts_half: halfDuration(lasts),
            open: open === null ? null : Math.max(0, open),
            tail_lost: open === null ? null : tailStops(lasts, open),
          },
        ],
  );
}

function recycling({ scene }: Plan): Timing["recycling"] {
  const interval = scene.camera?.interval ?? null;
  return flashesOn(scene).flatMap((source) => {
    const recycle = recycleTime(source);
    if (recycle === null) return [];
    return [{ light: source.name, recycle, under: interval === null ? null : burstStops(recycle, interval) }];
  });
}

function motion({ scene }: Plan): Timing["motion"] {
  const key = keyOf(scene);
  const acts = key === null || !lightsOn(scene).includes(key) ? null : actingTime(scene, key);
  if (key === null || acts === null) return [];
  return scene.subjects.flatMap((subject) => {
    const found = subject.speed > 0 ? motionOf(scene, subject, acts) : null;
    if (found === null) return [];
    const { path, blur, pixels } = found;
    return [
      {
        subject: subject.name === "" ? null : subject.name,
        speed: subject.speed,
        light: key.name,
        acts,
        path: path * 1000,
        blur: blur * 1000,
        pixels,
      },
    ];
  });
}
