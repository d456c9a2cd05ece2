import { type AreaMark, area, type Place } from "./drawing.js";
import { circle } from "./outlines.js";

/** Radius of the point that is the lens, m. */
const RADIUS = 0.035;

/** The lens: a point. */
export const lensMark = (at: Place): AreaMark => area("lens", "lens", circle(at, RADIUS, 16));
