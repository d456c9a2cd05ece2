/**
 * Surfaces by name, with their reflectance. Common practice unless a source is named; every value may be replaced by
 * a per cent in the recipe.
 */
export interface SurfaceRow {
  readonly name: string;
  readonly reflectance: number;
  readonly source: string;
}

/** Every surface that has a name. */
export const surfaces: readonly SurfaceRow[] = [
  {
    name: "white_board",
    reflectance: 0.85,
    source: "common practice, no source (white foam board 80 to 90 %)",
  },
  {
    name: "white_paper",
    reflectance: 0.85,
    source: "common practice, no source (white roll paper 80 to 90 %)",
  },
  { name: "white_cloth", reflectance: 0.75, source: "common practice, no source" },
  {
    name: "white_paint",
    reflectance: 0.8,
    source: "lighting handbooks' tables: white matt paint and plaster 0.8",
  },
  { name: "grey_paper", reflectance: 0.18, source: "common practice, no source: the photographic mid grey" },
  { name: "grey_paint", reflectance: 0.4, source: "lighting handbooks' tables: light grey 0.4" },
  { name: "wood", reflectance: 0.4, source: "lighting handbooks' tables: light oak 0.4" },
  { name: "concrete", reflectance: 0.3, source: "lighting handbooks' tables: concrete 0.3" },
  { name: "brick", reflectance: 0.2, source: "lighting handbooks' tables: brick 0.2" },
  { name: "black_board", reflectance: 0.05, source: "common practice, no source (4 to 6 %)" },
  { name: "black_cloth", reflectance: 0.012, source: "old reflection tables: black cloth 0.012" },
  { name: "black_velvet", reflectance: 0.004, source: "old reflection tables: black velvet 0.004" },
];
