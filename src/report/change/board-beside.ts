import { rectangleCorners, uprightFrame } from "../../scene/frame.js";
import { sheet } from "../../scene/sheet.js";
import type { ScenePolygon, Station } from "../../scene/types.js";
import type { Plan } from "../plan.js";
import { whiteBoard, withPiece } from "./surfaces.js";

/** The board that is tried: its size, and how far from the cheek it stands, m. */
const BOARD = { width: 1.2, height: 2, away: 0.6 } as const;
/** The board and where it stands, in words. */
export const boardWords = "A white board of 1.2 x 2 m, 60 cm from the shaded cheek,";

/** A white board that stands upright on the shaded side of a face and looks at it. */
function boardBeside({ at, facing }: Station): ScenePolygon | null {
  const level = Math.sqrt(facing[0] * facing[0] + facing[1] * facing[1]);
  if (level < 0.1) return null;
  const [x, y] = [facing[0] / level, facing[1] / level];
  const normal = [-x, -y, 0] as const;
  const centre = [at[0] + BOARD.away * x, at[1] + BOARD.away * y, BOARD.height / 2 + 1e-3] as const;
  return sheet({
    name: "white board",
    kind: "card",
    vertices: rectangleCorners(centre, uprightFrame(normal), BOARD.width, BOARD.height),
    normal,
    frontReflectance: whiteBoard,
    backReflectance: whiteBoard,
  });
}

/** The plan with such a board brought in; null where the cheek looks up or down. */
export function withBoardBeside(plan: Plan, cheek: Station): Plan | null {
  const board = boardBeside(cheek);
  return board === null ? null : withPiece(plan, board);
}
