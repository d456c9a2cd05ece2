import { figure } from "./figure-numbers.js";

/** How a held body: standing, seated, kneeling, or lying on its back. */
export type Pose = "standing" | "seated" | "kneeling" | "lying";

/** A place in the middle plane of a leg, as shares of the stature: out of the front of the body, and up it. */
export type LegPoint = readonly [front: number, up: number];

/** What a pose makes of the figure, in shares of the stature. */
export interface PoseShape {
  /** By how much everything from the hips up is moved up the body. */
  readonly lift: number;
  /** The joints of each leg, from the hip down; straight legs have two. */
  readonly leg: readonly LegPoint[];
  /** Where the knee and shin stations lie. */
  readonly knee: LegPoint;
  readonly shin: LegPoint;
}

const { hip, knee, ankle, radius } = figure.leg;
const thigh = hip - knee;
const shank = knee - ankle;
/** How far down the lower leg the shin station lies. */
const shinShare = (knee - figure.stations.shin) / shank;

const straight: PoseShape = {
  lift: 0,
  leg: [
    [0, hip],
    [0, ankle],
  ],
  knee: [radius, figure.stations.knee],
  shin: [radius, figure.stations.shin],
};

/** Knees on the floor, thighs and trunk upright, lower legs along the floor behind. */
const kneeling: PoseShape = {
  lift: radius + thigh - hip,
  leg: [
    [0, radius + thigh],
    [0, radius],
    [-shank, radius],
  ],
  knee: [radius, radius],
  shin: [-shank * shinShare, 2 * radius],
};

/**
 * Thighs level on a seat at `seat` (share of the stature above the soles), lower legs down to the floor: forward
 * where the seat is low, hanging straight where it is too high for the feet to reach the floor.
 */
function seated(seat: number): PoseShape {
  const height = seat + radius;
  const drop = height - ankle;
  const bent = Math.abs(drop) < shank;
  const out = bent ? Math.sqrt(shank * shank - drop * drop) : 0;
  const down = bent ? drop : shank;
  return {
    lift: height - hip,
    leg: [
      [0, height],
      [thigh, height],
      [thigh + out, height - down],
    ],
    knee: [thigh + radius, height],
    shin: [thigh + out * shinShare + radius, height - down * shinShare],
  };
}

/** The shape of a pose; `seat` is the height of a seat above the soles as a share of the stature. */
export function poseShape(pose: Pose, seat: number): PoseShape {
  switch (pose) {
    case "standing":
    case "lying":
      return straight;
    case "seated":
      return seated(seat);
    case "kneeling":
      return kneeling;
    default:
      return pose satisfies never;
  }
}
