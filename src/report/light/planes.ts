import type { SceneSubject } from "../../scene/types.js";
import type { Meter } from "../../transport/meter.js";
import type { Lit } from "../plan.js";
import { readingAt, stopsOver } from "./reading.js";

/** Between the head and a meter held over it, m. */
const FREE = 0.01;

/** A flat receptor on top of the head that looks up; null for one who lies. */
export function topPlane(subject: SceneSubject): Meter | null {
  const { head, top, pose } = subject;
  return pose === "lying"
    ? null
    : { at: [head[0], head[1], top + FREE], facing: [0, 0, 1], receptor: "disc" };
}

/** A flat receptor at the face that looks along the nose. */
export function frontPlane({ face, nose }: SceneSubject): Meter {
  return { at: face, facing: nose, receptor: "disc" };
}

/** Flat receptors at the face, upright, that look to either side of the nose. */
export function sidePlanes({ face, across }: SceneSubject): readonly [Meter, Meter] {
  const [x, y, z] = across;
  return [
    { at: face, facing: across, receptor: "disc" },
    { at: face, facing: [-x, -y, -z], receptor: "disc" },
  ];
}

/** Stops by which the top of the head gets more than the darker side; null for one who lies or without light. */
export function topOverSides(lit: Lit, subject: SceneSubject): number | null {
  const top = topPlane(subject);
  if (top === null) return null;
  const above = readingAt(lit, top);
  const [one, other] = sidePlanes(subject).map((side) => stopsOver(above, readingAt(lit, side)));
  return one === null || other === null ? null : Math.max(one as number, other as number);
}

/** Stops by which the top of the head gets more than the front of the face; null for one who lies or without light. */
export function topOverFront(lit: Lit, subject: SceneSubject): number | null {
  const top = topPlane(subject);
  return top === null ? null : stopsOver(readingAt(lit, top), readingAt(lit, frontPlane(subject)));
}
