import type { LightModel, Recipe } from "../../model/types.js";
import type { ToleranceName } from "../settings.js";
import type { WrittenNumber } from "./written.js";

type Standing = ToleranceName | ((number: WrittenNumber) => ToleranceName | null);

const ACROSS: ReadonlySet<string> = new Set(["x", "y", "left", "right", "ahead", "behind", "tape"]);
const UPRIGHT: ReadonlySet<string> = new Set(["z", "up", "down"]);

/** A place: tapes along the floor, and heights. What lies at nought lies on the mark or its lines, and has no tape. */
const place: Standing = ({ leaf, quantity }) => {
  if (quantity.value === 0) return null;
  return ACROSS.has(leaf) ? "tape" : UPRIGHT.has(leaf) ? "height" : null;
};

const unlessNought =
  (name: ToleranceName): Standing =>
  ({ quantity }) =>
    quantity.value === 0 ? null : name;

/** Only the tape itself, not the point it starts from. */
const tape: Standing = ({ leaf }) => (leaf === "length" ? "tape" : null);

/** The tolerances that numbers of a kind of block have where nothing is written behind them. */
const everywhere: ReadonlyMap<string, Standing> = new Map<string, Standing>([
  ["subject.height", "stature"],
  ["subject.at", place],
  ["point.at", place],
  ["point.up", unlessNought("height")],
  ["point.ahead", unlessNought("tape")],
  ["point.left", unlessNought("tape")],
  ["point.right", unlessNought("tape")],
  ["camera.distance", tape],
  ["camera.bearing", "angle"],
  ["camera.height", "height"],
  ["camera.position", place],
  ["camera.focal_length", "lens"],
  ...["flat", "paper", "card", "scrim", "table", "box", "sphere", "capsule", "disc", "panel"].map(
    (kind) => [`${kind}.at`, place] as const,
  ),
  ["light.position", place],
  ["paper.hangs", "height"],
  ["flat.size", "board"],
  ["flat.opening", "hinge"],
]);

/** The same of a room, where more than bounced light hangs on its sizes. */
const inRoom: ReadonlyMap<string, Standing> = new Map<string, Standing>([
  ["room.size", ({ leaf }) => (leaf === "height" ? "height" : "tape")],
  ["room.mark", "tape"],
  ["opening.size", "size"],
  ["opening.at", place],
]);

/** The tolerance that a number has where nothing is written behind it; null where it is taken as it is. */
export function standingTolerance(recipe: Recipe, number: WrittenNumber): ToleranceName | null {
  const key = `${number.block.block}.${number.property}`;
  const found = everywhere.get(key) ?? (roomCounts(recipe) ? inRoom.get(key) : undefined);
  return typeof found === "function" ? found(number) : (found ?? null);
}

/** Whether the picture may show a surface of the room, it has a window, or a lamp shines into a surface of it. */
function roomCounts({ room, lights }: Recipe): boolean {
  if (room === null) return false;
  const shown = room.parts.some((part) => part.block === "opening" || part.belongs_to === "set");
  return (
    shown || lights.some(({ into }: LightModel) => into === "ceiling" || into?.startsWith("wall_") === true)
  );
}
