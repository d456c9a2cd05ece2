import { writeNumber } from "../../core/write-number.js";
import type { Length } from "../../units/quantity.js";
import type { PixelsValue, RectangleValue, VolumeValue } from "../values.js";

const oneNumberOneUnit = /^(-?\d+(?:\.\d+)?(?: \d+\/\d+)?|\d+(?:\.\d+)?\/\d+(?:\.\d+)?) (\S+)$/;

/**
 * Lengths joined by "by"; the unit is written once where all share it, and the tolerance behind the last. Throws where
 * only some have a tolerance, or not the same one, which no recipe can say.
 */
export function writeBy(lengths: readonly Length[]): string {
  const [tolerance, ...others] = new Set(lengths.map(({ plusMinus }) => plusMinus?.written ?? ""));
  if (others.length > 0) throw new Error("the sides of a size have one tolerance, the same for each");
  return `${bareBy(lengths)}${tolerance === undefined || tolerance === "" ? "" : ` +- ${tolerance}`}`;
}

function bareBy(lengths: readonly Length[]): string {
  const parts = lengths.map(({ written }) => oneNumberOneUnit.exec(written));
  const units = new Set(parts.map((part) => part?.[2] ?? ""));
  if (parts.every((part) => part !== null) && units.size === 1) {
    return `${parts.map((part) => part?.[1]).join(" x ")} ${[...units][0]}`;
  }
  if (parts.every((part) => part !== null)) return lengths.map(({ written }) => written).join(" x ");
  return `${lengths.map((length) => writeNumber(length.value)).join(" x ")} m`;
}

/** Width x height. */
export function size(width: Length, height: Length): RectangleValue {
  return { width, height, written: writeBy([width, height]) };
}

/** Width x depth x height. */
export function volume(width: Length, depth: Length, height: Length): VolumeValue {
  return { width, depth, height, written: writeBy([width, depth, height]) };
}

/** Width x height in pixels. */
export function pixels(width: number, height: number): PixelsValue {
  return { width, height, written: `${writeNumber(width)} x ${writeNumber(height)}` };
}
