import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import type { ReadKit } from "./read.js";

/** What a photograph says of how it was taken; null for what it does not say. */
export interface PhotoSettings {
  /** m */
  readonly focalLength: number | null;
  /** As the camera writes it: 11 for f/11. */
  readonly aperture: number | null;
  /** s, as the camera writes it: 0.008 for 1/125 s. */
  readonly shutter: number | null;
  readonly sensitivity: number | null;
  /** Of the stored picture, long side first. */
  readonly pixels: { readonly width: number; readonly height: number } | null;
  /** Size of the picture area in m, long side first. */
  readonly frame: { readonly width: number; readonly height: number } | null;
  readonly held: "upright" | "level" | null;
}

/** The settings of a photograph, or the finding that says why there are none. */
export type PhotoRead =
  | { readonly settings: PhotoSettings; readonly problem?: never }
  | { readonly settings?: never; readonly problem: Diagnostic };

/**
 * Gives the settings of the photograph that a recipe names.
 * @param path - What the recipe says, relative to the file that says it. It has no scheme, drive, pattern or hidden sign.
 * @param from - The name of the source that says it.
 */
export type ReadPhoto = (path: string, from: string) => PhotoRead;

/** How files other than kits are read for a recipe; null where nothing is read. */
export interface Files {
  /** Texts: photometric files. */
  readonly text: ReadKit | null;
  readonly photo: ReadPhoto | null;
}

/** Nothing is read. */
export const noFiles: Files = { text: null, photo: null };
