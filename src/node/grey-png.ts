import { encode } from "fast-png";

/** Greys from the top left, a byte each, as a PNG file; the same greys give the same bytes. */
export function greyPng(width: number, height: number, greys: Uint8Array): Uint8Array {
  return encode({ width, height, data: greys, channels: 1, depth: 8 });
}
