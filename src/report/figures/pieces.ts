import type { Vec3 } from "../../core/vector.js";
import { addScaled, distance, dot } from "../../math/vector.js";
import type { Body, Scene, ScenePolygon, Source } from "../../scene/types.js";
import { areaOf } from "../frame/region.js";
import { ownerOf } from "../say/surfaces.js";
import { area, line, type Mark, type Place } from "./drawing.js";
import { bodyOutline, onSheet, openingOutline, type Sheet } from "./outlines.js";

const isRoom = ({ kind }: ScenePolygon): boolean => kind === "wall" || kind === "floor" || kind === "ceiling";

/** The pieces of the set from below upwards, each sheet as what it looks like: an area, or a line seen on edge. */
export function setMarks(sheet: Sheet, { polygons }: Scene): readonly Mark[] {
  const lowest = ({ vertices }: ScenePolygon): number => Math.min(...vertices.map(([, , z]) => z));
  return polygons
    .filter((polygon) => !isRoom(polygon))
    .map((polygon, order) => ({ polygon, order, low: lowest(polygon) }))
    .sort((a, b) => a.low - b.low || a.order - b.order)
    .map(({ polygon }) => sheetMark(sheet, polygon));
}

/** A leaf shows its thickness where it is seen on edge. */
function sheetMark(sheet: Sheet, { name, kind, vertices, normal, thickness }: ScenePolygon): Mark {
  const ink = kind === "paper" ? "paper" : "set";
  const flat = vertices.map((vertex) => onSheet(sheet, vertex));
  const onEdge =
    Math.abs(dot(normal, sheet.right)) + Math.abs(dot(normal, sheet.up)) > 1e-6 &&
    Math.abs(areaOf([flat])) < 1e-6;
  if (!onEdge) return area(ink, ownerOf(name), flat);
  const [a, b] = farthest(vertices, sheet);
  if (thickness === undefined || !(thickness > 0))
    return line(ink, ownerOf(name), onSheet(sheet, a), onSheet(sheet, b));
  const back = (at: Vec3): Place => onSheet(sheet, addScaled(at, normal, -thickness));
  return area(ink, ownerOf(name), [onSheet(sheet, a), onSheet(sheet, b), back(b), back(a)]);
}

/** The two corners farthest from each other on the paper. */
function farthest(vertices: readonly Vec3[], sheet: Sheet): readonly [Vec3, Vec3] {
  let best: readonly [Vec3, Vec3] = [vertices[0] as Vec3, vertices[0] as Vec3];
  let most = -1;
  for (const a of vertices) {
    for (const b of vertices) {
      const [ax, ay] = onSheet(sheet, a);
      const [bx, by] = onSheet(sheet, b);
      const d = (ax - bx) * (ax - bx) + (ay - by) * (ay - by);
      if (d > most) {
        most = d;
        best = [a, b];
      }
    }
  }
  return best;
}

/** The height a body reaches along the direction of sight, for drawing what is nearer over what is farther. */
const depthOf = (body: Body, towards: Vec3): number =>
  body.kind === "capsule"
    ? Math.max(dot(body.from, towards), dot(body.to, towards))
    : dot(body.centre, towards);

/** People and rounded props, what is nearer to the viewer over what is farther; what carries lamps is drawn as stands. */
export function bodyMarks(sheet: Sheet, { bodies }: Pick<Scene, "bodies">, towards: Vec3): readonly Mark[] {
  return bodies
    .filter((body) => body.of !== "stand")
    .sort((a, b) => depthOf(a, towards) - depthOf(b, towards))
    .map((body) => area("person", ownerOf(body.name), bodyOutline(sheet, body)));
}

/** Length of the line that shows where a lamp looks, m, where its aim is farther. */
const BEAM = 0.9;

/** A lamp: its lit opening to scale, and where it looks. */
export function lampMarks(sheet: Sheet, source: Source): readonly Mark[] {
  const { name, centre, axis, aim, patch } = source;
  const to = addScaled(centre, axis, Math.min(BEAM, distance(centre, aim)));
  const marks: Mark[] = [
    line("beam", `${name} axis`, onSheet(sheet, centre), onSheet(sheet, to)),
    area("lit", name, openingOutline(sheet, source)),
  ];
  if (patch !== undefined) {
    const lit = { ...patch, shape: { kind: "rectangle", width: patch.width, height: patch.height } } as const;
    marks.unshift(area("beam", `${name} patch`, openingOutline(sheet, lit)));
  }
  return marks;
}

/** Places that a figure has to hold. */
export function extent(marks: readonly Mark[]): readonly Place[] {
  return marks.flatMap((mark): readonly Place[] => {
    switch (mark.kind) {
      case "line":
        return mark.through;
      case "area":
        return mark.outline;
      case "tape":
        return [mark.from, mark.to];
      case "label":
        return [mark.at];
      default:
        return mark satisfies never;
    }
  });
}
