import type { Vec3 } from "../core/vector.js";
import type { ArmsValue } from "../model/values.js";
import { type BodyFrame, onBody } from "./body-frame.js";
import { figure } from "./figure-numbers.js";
import type { PoseShape } from "./pose.js";
import type { Body } from "./types.js";

/** What a figure gives back besides its bodies. */
export interface FigurePlaces {
  readonly face: Vec3;
  readonly head: Vec3;
  readonly hair: Vec3;
  readonly chest: Vec3;
  readonly knee: Vec3;
  readonly shin: Vec3;
  /** Highest point of head and trunk, and of the fingertips, m above the floor. */
  readonly top: number;
  readonly fingertip: number;
}

/** Front of the trunk at the height of the chest station. */
const chestFront = /* @__PURE__ */ ((): number => {
  const { ahead, up, height } = figure.trunk;
  const share = (figure.stations.chest - height) / up;
  return ahead * Math.sqrt(1 - share * share);
})();

/** The direction of an arm, as shares across, to the front and up; `side` is 1 or -1. */
function armDirection(arms: ArmsValue | undefined, side: number): readonly [number, number, number] {
  if (arms === undefined || arms.kind === "hanging") return [0, 0, -1];
  if (arms.kind === "raised") return [0, 0, 1];
  const angle = (arms.elevation.value * Math.PI) / 180;
  const level = Math.cos(angle);
  return arms.kind === "spread" ? [side * level, 0, Math.sin(angle)] : [0, level, Math.sin(angle)];
}

function ellipsoid(
  name: string,
  frame: BodyFrame,
  lift: number,
  part: { readonly across: number; readonly ahead: number; readonly up: number; readonly height: number },
  reflectance: number,
): Body {
  const { across: a, front: f, up: u, stature: h } = frame;
  const [sa, sf, su] = [part.across * h, part.ahead * h, part.up * h];
  return {
    kind: "ellipsoid",
    of: "subject",
    name,
    centre: onBody(frame, 0, 0, part.height + lift),
    axes: [
      [a[0] * sa, a[1] * sa, a[2] * sa],
      [f[0] * sf, f[1] * sf, f[2] * sf],
      [u[0] * su, u[1] * su, u[2] * su],
    ],
    reflectance,
  };
}

const tube = (name: string, from: Vec3, to: Vec3, radius: number, reflectance: number): Body => ({
  kind: "capsule",
  of: "subject",
  name,
  from,
  to,
  radius,
  reflectance,
});

/**
 * Builds one figure in its frame and adds its bodies: head, neck, trunk, legs and arms, in this order. `prefix` stands
 * before their names (`ana.` or nothing).
 */
export function buildFigure(
  bodies: Body[],
  prefix: string,
  frame: BodyFrame,
  pose: PoseShape,
  arms: ArmsValue | undefined,
  skin: number,
  cloth: number,
): FigurePlaces {
  const h = frame.stature;
  const { lift } = pose;
  const head = ellipsoid(`${prefix}head`, frame, lift, figure.head, skin);
  const trunk = ellipsoid(`${prefix}trunk`, frame, lift, figure.trunk, cloth);
  const { neck, leg, arm } = figure;
  bodies.push(head);
  const [low, high] = [onBody(frame, 0, 0, neck.from + lift), onBody(frame, 0, 0, neck.to + lift)];
  bodies.push(tube(`${prefix}neck`, low, high, neck.radius * h, skin), trunk);
  for (const side of [1, -1]) {
    const joints: Vec3[] = [];
    for (const [front, up] of pose.leg) joints.push(onBody(frame, side * leg.side, front, up));
    for (let i = 1; i < joints.length; i++) {
      const name = prefix + (side > 0 ? "leg.right" : "leg.left") + (i > 1 ? ".lower" : "");
      bodies.push(tube(name, joints[i - 1] as Vec3, joints[i] as Vec3, leg.radius * h, cloth));
    }
  }
  let fingertip = 0;
  for (const side of [1, -1]) {
    const [across, front, up] = armDirection(arms, side);
    const reach = arm.length - arm.radius;
    const shoulder = arm.shoulder + lift;
    const to = onBody(frame, side * arm.side + across * reach, front * reach, shoulder + up * reach);
    const from = onBody(frame, side * arm.side, 0, shoulder);
    bodies.push(tube(prefix + (side > 0 ? "arm.right" : "arm.left"), from, to, arm.radius * h, cloth));
    fingertip = Math.max(fingertip, to[2] + arm.radius * h);
  }
  return {
    face: onBody(frame, 0, figure.head.ahead, figure.stations.face + lift),
    head: onBody(frame, 0, 0, figure.head.height + lift),
    hair: onBody(frame, 0, 0, figure.head.height + figure.head.up + lift),
    chest: onBody(frame, 0, chestFront, figure.stations.chest + lift),
    knee: onBody(frame, 0, ...pose.knee),
    shin: onBody(frame, 0, ...pose.shin),
    top: Math.max(topOf(head), topOf(trunk)),
    fingertip,
  };
}

/** Height of the highest point of an ellipsoid. */
function topOf(body: Body): number {
  if (body.kind !== "ellipsoid") return 0;
  const [a, b, c] = body.axes;
  return body.centre[2] + Math.sqrt(a[2] * a[2] + b[2] * b[2] + c[2] * c[2]);
}
