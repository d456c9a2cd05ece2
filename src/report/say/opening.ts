import type { Source } from "../../scene/types.js";
import { fixed } from "./number.js";

const centimetres = (metres: number): string => {
  const amount = metres * 100;
  return fixed(amount, Math.abs(amount - Math.round(amount)) < 0.05 ? 0 : 1);
};

/** The lit opening of a lamp in words: `a disc of 18 cm`. */
export function sayOpening(source: Source): string {
  const { shape } = source;
  switch (shape.kind) {
    case "disc":
      return `a disc of ${centimetres(2 * shape.radius)} cm`;
    case "sphere":
      return `a bare bulb of ${centimetres(2 * shape.radius)} cm`;
    case "rectangle":
      return `a rectangle of ${centimetres(shape.width)} x ${centimetres(shape.height)} cm`;
    case "capsule":
      return `a bare tube of ${centimetres(shape.length)} x ${centimetres(2 * shape.radius)} cm`;
    default:
      return shape satisfies never;
  }
}
