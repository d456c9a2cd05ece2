import type { Source } from "../scene/types.js";

/** Lengths and directions nearer than this (m, or a share of 1) are the same. */
const STEP = 1e-9;

const whole = (x: number): string => String(Math.round(x / STEP) + 0);

/** A text that is the same for sources whose light differs in nothing but its amount and colour. */
export function sourceKey({ shape, beam, centre, axis, across, along }: Source): string {
  const opening = Object.values(shape).map((part) => (typeof part === "number" ? whole(part) : part));
  const spread =
    beam.kind === "table"
      ? [beam.kind, beam.table.id]
      : Object.values(beam).map((part) => (typeof part === "number" ? whole(part) : part));
  const place = [...centre, ...axis, ...across, ...along].map(whole);
  return [...opening, ...spread, ...place].join(" ");
}
