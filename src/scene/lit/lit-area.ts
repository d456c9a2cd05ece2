import type { Vec3 } from "../../core/vector.js";
import { gaussLegendre } from "../../math/quadrature.js";
import { dot, subtract } from "../../math/vector.js";
import { uprightFrame } from "../frame.js";
import type { ScenePolygon, Source } from "../types.js";
import { headLight } from "./head-light.js";

/** Points along each side of a surface. */
const COUNT = 32;
const rule = /* @__PURE__ */ gaussLegendre(COUNT);

/**
 * The evenly lit rectangle that stands for the light of a head on one side of a surface: the same flux, the same
 * middle, and the area (sum of E)^2 / (sum of E^2), which for an even light is the surface itself.
 */
export interface LitArea {
  /** Luminous energy on the surface per lumen-second of the head. */
  readonly flux: number;
  readonly centre: Vec3;
  /** Unit vector out of the lit side. */
  readonly normal: Vec3;
  readonly across: Vec3;
  readonly along: Vec3;
  readonly width: number;
  readonly height: number;
  /** Width and height of the rectangle round the whole surface. */
  readonly fullWidth: number;
  readonly fullHeight: number;
  /** Whether the lit side is the front of the polygons. */
  readonly front: boolean;
}

/** How the proportions of the patch are found: those of the surface, or the light's own spread along both sides. */
export type Proportions = "surface" | "light";

/** The rectangle round some polygons of one plane, in coordinates along `across` and `along`. */
interface Bounds {
  readonly origin: Vec3;
  readonly across: Vec3;
  readonly along: Vec3;
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

function boundsOf(polygons: readonly ScenePolygon[], normal: Vec3): Bounds {
  const { across, along } = uprightFrame(normal);
  const origin = polygons[0]?.vertices[0] ?? [0, 0, 0];
  let left = 0;
  let right = 0;
  let low = 0;
  let high = 0;
  for (const { vertices } of polygons) {
    for (const vertex of vertices) {
      const from = subtract(vertex, origin);
      const a = dot(from, across);
      const b = dot(from, along);
      left = Math.min(left, a);
      right = Math.max(right, a);
      low = Math.min(low, b);
      high = Math.max(high, b);
    }
  }
  return { origin, across, along, left, right, low, high };
}

/** True where a place in the plane lies on one of the polygons, which are convex. */
function on(polygons: readonly ScenePolygon[], at: Vec3): boolean {
  return polygons.some(({ vertices, normal }) =>
    vertices.every((a, i) => {
      const b = vertices[i + 1 < vertices.length ? i + 1 : 0] ?? a;
      const ex = b[0] - a[0];
      const ey = b[1] - a[1];
      const ez = b[2] - a[2];
      const px = at[0] - a[0];
      const py = at[1] - a[1];
      const pz = at[2] - a[2];
      const turn =
        normal[0] * (ey * pz - ez * py) + normal[1] * (ez * px - ex * pz) + normal[2] * (ex * py - ey * px);
      return turn >= -1e-12;
    }),
  );
}

/** Points and weights from `low` to `high`, crowded round `middle` over a length of about `size`. */
function crowded(
  low: number,
  high: number,
  middle: number,
  size: number,
): readonly (readonly [number, number])[] {
  const from = Math.asinh((low - middle) / size);
  const to = Math.asinh((high - middle) / size);
  const half = (to - from) / 2;
  return rule.points.map((x, i) => {
    const s = (from + to) / 2 + half * x;
    return [middle + size * Math.sinh(s), (rule.weights[i] as number) * half * size * Math.cosh(s)] as const;
  });
}

const within = (x: number, low: number, high: number): number =>
  low > high ? (low + high) / 2 : Math.min(high, Math.max(low, x));

/**
 * Finds the lit patch of a surface, which may come in several pieces of one plane, on the side on which the head is.
 * Nothing is taken to stand between. Null where the head gives it no light.
 */
export function litArea(
  head: Source,
  polygons: readonly ScenePolygon[],
  proportions: Proportions,
): LitArea | null {
  const first = polygons[0];
  const corner = first?.vertices[0];
  if (first === undefined || corner === undefined) return null;
  const height = dot(subtract(head.centre, corner), first.normal);
  const front = height >= 0;
  const normal: Vec3 = front ? first.normal : [-first.normal[0], -first.normal[1], -first.normal[2]];
  const bounds = boundsOf(polygons, normal);
  const { origin, across, along } = bounds;
  const away = Math.max(Math.abs(height), 0.02);
  const spot = beamFoot(head, normal, Math.abs(height));
  const middle = subtract(spot, origin);
  const columns = crowded(bounds.left, bounds.right, dot(middle, across), away);
  const rows = crowded(bounds.low, bounds.high, dot(middle, along), away);
  const light = headLight(head);
  const sum = { e: 0, ee: 0, a: 0, b: 0, aa: 0, bb: 0 };
  for (const [b, db] of rows) {
    for (const [a, da] of columns) {
      const at: Vec3 = [
        origin[0] + a * across[0] + b * along[0],
        origin[1] + a * across[1] + b * along[1],
        origin[2] + a * across[2] + b * along[2],
      ];
      if (!on(polygons, at)) continue;
      const e = light(at, normal);
      const weight = e * da * db;
      sum.e += weight;
      sum.ee += e * weight;
      sum.a += weight * a;
      sum.b += weight * b;
      sum.aa += weight * a * a;
      sum.bb += weight * b * b;
    }
  }
  if (!(sum.e > 0) || !(sum.ee > 0)) return null;
  const fullWidth = bounds.right - bounds.left;
  const fullHeight = bounds.high - bounds.low;
  const area = Math.min((sum.e * sum.e) / sum.ee, fullWidth * fullHeight);
  const ma = sum.a / sum.e;
  const mb = sum.b / sum.e;
  const aspect =
    proportions === "surface"
      ? fullWidth / fullHeight
      : Math.sqrt(Math.max(1e-12, sum.aa / sum.e - ma * ma) / Math.max(1e-12, sum.bb / sum.e - mb * mb));
  const wide = Math.min(fullWidth, Math.sqrt(area * aspect));
  const tall = Math.min(fullHeight, area / wide);
  const width = Math.min(fullWidth, area / tall);
  const ca = within(ma, bounds.left + width / 2, bounds.right - width / 2);
  const cb = within(mb, bounds.low + tall / 2, bounds.high - tall / 2);
  return {
    flux: Math.min(1, sum.e),
    centre: [
      origin[0] + ca * across[0] + cb * along[0],
      origin[1] + ca * across[1] + cb * along[1],
      origin[2] + ca * across[2] + cb * along[2],
    ],
    normal,
    across,
    along,
    width,
    height: tall,
    fullWidth,
    fullHeight,
    front,
  };
}

/** Where the beam's axis meets the plane `height` below the head; the foot of the head where it does not. */
function beamFoot(head: Source, normal: Vec3, height: number): Vec3 {
  const { centre, axis, shape } = head;
  const down = -dot(axis, normal);
  const round = shape.kind === "sphere" || shape.kind === "capsule";
  const [way, step] =
    round || down < 0.2 ? [[-normal[0], -normal[1], -normal[2]], height] : [axis, height / down];
  return [
    centre[0] + (step as number) * (way as Vec3)[0],
    centre[1] + (step as number) * (way as Vec3)[1],
    centre[2] + (step as number) * (way as Vec3)[2],
  ];
}
