import type { Vec3 } from "../../core/vector.js";
import { add, scale } from "../../math/vector.js";
import type { Plan } from "../plan.js";
import { rebuiltWith, withLight } from "./rebuild.js";

/** The plan with the head of a light at another distance from its cloth, on the line on which it stands. */
export function headAt(plan: Plan, light: string, middle: Vec3, direction: Vec3, away: number): Plan {
  const [x, y, z] = add(middle, scale(direction, away));
  const metres = (value: number) => ({ value, unit: "m", written: `${value} m` }) as const;
  const at = { kind: "coordinates", x: metres(x), y: metres(y), z: metres(z), written: "" } as const;
  const recipe = withLight(plan.recipe, light, (row) => {
    const { distance: _, floor_distance: __, bearing: ___, height: ____, ...bare } = row;
    const { elevation: _____, bottom_edge: ______, ...rest } = bare;
    return { ...rest, position: at };
  });
  return rebuiltWith(plan, recipe);
}
