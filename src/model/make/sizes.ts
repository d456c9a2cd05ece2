import { writeNumber } from "../../core/write-number.js";
import { say } from "../../units/make.js";
import type { Length } from "../../units/quantity.js";
import type { PixelsValue, RectangleValue, VolumeValue } from "../values.js";

const oneNumberOneUnit = /^(-?\d+(?:\.\d+)?(?: \d+\/\d+)?|\d+(?:\.\d+)?\/\d+(?:\.\d+)?) (\S+)$/;

/** Lengths joined by "by"; the unit is written once where all share it. */
export function writeBy(lengths: readonly Length[]): string {
  const parts = lengths.map((length) => oneNumberOneUnit.exec(say(length)));
  const units = new Set(parts.map((part) => part?.[2] ?? ""));
  if (parts.every((part) => part !== null) && units.size === 1) {
    return `${parts.map((part) => part?.[1]).join(" x ")} ${[...units][0]}`;
  }
  if (parts.every((part) => part !== null)) return lengths.map(say).join(" x ");
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
