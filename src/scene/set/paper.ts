import type { Vec3 } from "../../core/vector.js";
import { blockDirection, blockPoint } from "../points.js";
import { sheet } from "../sheet.js";
import { metres, placeOfBlock, report, type Site } from "../site.js";
import type { ScenePolygon } from "../types.js";
import { frontIsSeen } from "./leaf.js";
import { incomplete, type Piece, type PieceModel, sidesOf, surfaceStation } from "./piece.js";

/** Flat strips that stand for the sweep, whose edges lie on the quarter circle. */
const strips = 6;
/** Paper lies this far above the floor, m, so that the two never fill the same place. */
const above = 0.0005;

/**
 * A paper roll: the hanging part (named as the block), the strips of the sweep from its top down, and the run on the
 * floor (`roll.1`, `roll.2` ...); without a hanging part only the run, named as the block.
 */
export function buildPaper(site: Site, paper: PieceModel<"paper">): Piece {
  const name = paper.name ?? "paper";
  if (paper.width === undefined || paper.run === undefined)
    return incomplete(site, paper, "its width and run");
  const back = paper.at === undefined ? null : blockPoint(site, paper.origins, "at", paper.at);
  const at: Vec3 = back?.at ?? [0, 1, 0];
  const front =
    (paper.faces === undefined
      ? null
      : blockDirection(site, paper.origins, "faces", name, paper.faces, at, true)) ?? ([0, -1, 0] as const);
  const width = paper.width.value;
  const run = paper.run.value;
  const hangs = paper.hangs?.value;
  const radius = hangs === undefined ? 0 : (paper.curve?.value ?? 0);
  site.place = placeOfBlock(paper.origins, "curve");
  if (radius > run) {
    report(site, "paper.short", { name, radius: metres(radius), length: metres(run), part: "on the floor" });
  }
  if (hangs !== undefined && radius > hangs) {
    report(site, "paper.short", {
      name,
      radius: metres(radius),
      length: metres(hangs),
      part: "above the floor",
    });
  }
  const { front: share } = sidesOf(site, name, paper.reflectance, undefined, undefined, 0.85, "85 %");
  const right: Vec3 = [-front[1], front[0], 0];
  const put = (side: number, out: number, up: number): Vec3 => [
    at[0] + side * right[0] + out * front[0],
    at[1] + side * right[1] + out * front[1],
    at[2] + up,
  ];
  const polygons: ScenePolygon[] = [];
  const half = width / 2;
  /** A strip across the whole width between a lower and an upper line; each line is (out, up). */
  const strip = (lower: readonly [number, number], upper: readonly [number, number]): void => {
    const out = upper[0] - lower[0];
    const up = upper[1] - lower[1];
    const size = Math.sqrt(out * out + up * up);
    if (!(size > 0)) return;
    polygons.push(
      sheet({
        name: polygons.length === 0 ? name : `${name}.${polygons.length}`,
        kind: "paper",
        vertices: [put(-half, ...lower), put(half, ...lower), put(half, ...upper), put(-half, ...upper)],
        normal: [(front[0] * up) / size, (front[1] * up) / size, -out / size],
        frontReflectance: share,
        backReflectance: share,
      }),
    );
  };
  if (hangs !== undefined) {
    strip([0, radius + above], [0, Math.max(hangs, radius + above)]);
    for (let i = 0; i < strips && radius > 0; i++) strip(onSweep(radius, i + 1), onSweep(radius, i));
  }
  strip([run, above], [radius, above]);
  const sign = frontIsSeen(front, at) ? 1 : -1;
  const height = hangs === undefined ? above : (hangs + radius) / 2;
  const middle = hangs === undefined ? run / 2 : 0;
  const third = (sign * width) / 3;
  const centre = put(0, middle, height);
  const left = put(-third, middle, height);
  const far = put(third, middle, height);
  site.landmarks.set(name, { at: centre, ahead: null });
  site.landmarks.set(`${name}.left`, { at: left, ahead: null });
  site.landmarks.set(`${name}.right`, { at: far, ahead: null });
  site.landmarks.set(`${name}.top`, { at: put(0, 0, hangs ?? above), ahead: null });
  const stations =
    hangs === undefined
      ? [surfaceStation(name, centre, [0, 0, 1])]
      : [
          surfaceStation(`${name}.left`, left, front),
          surfaceStation(name, centre, front),
          surfaceStation(`${name}.right`, far, front),
        ];
  return { polygons, bodies: [], stations };
}

/** A line of the sweep, counted from its top (0) to the floor, as (out, up). */
function onSweep(radius: number, line: number): readonly [number, number] {
  if (line === 0) return [0, radius + above];
  if (line === strips) return [radius, above];
  const angle = ((line / strips) * Math.PI) / 2;
  return [radius * (1 - Math.cos(angle)), radius * (1 - Math.sin(angle)) + above];
}
