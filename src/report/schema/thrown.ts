import { array, boolean, enum as choice, number, type output as Output, object, string, tuple } from "zod";

const maybe = number().nullable();
const point = tuple([number(), number(), number()]);

const widths = object({
  least: number(),
  middle: number().meta({ description: "Half of the places have a wider edge" }),
  greatest: number(),
});

const edge = object({
  places: number().meta({ description: "At how many places of the outline it was worked out" }),
  gap: number().meta({
    description: "From what throws it to the surface along the ray, m, where it is of middle width",
  }),
  distance: number().meta({ description: "From the light to what throws it, m, there" }),
  full: widths.meta({ description: "From no light to full light, mm on the surface" }),
  ten_ninety: widths.nullable().meta({ description: "From 10 to 90 % of the light at the same places, mm" }),
  share: maybe.meta({ description: "The middle full width as a share of the frame's width" }),
  pixels: maybe.meta({
    description: "The same in pixels of the camera; null where it does not say how many it has",
  }),
});

const shadow = object({
  light: string(),
  of: string().meta({ description: "The subject, `subject` for the only one without a name, or the piece" }),
  kind: choice(["subject", "piece"]),
  surface: string().meta({ description: "The piece, wall or floor on which it falls" }),
  outlines: array(
    object({
      surface: string().meta({ description: "The flat surface: `roll.3`" }),
      hole: boolean().meta({ description: "True for a lit patch inside the shadow" }),
      ring: array(point).meta({ description: "Its closed outline, x, y, z in m, thinned to 1 mm" }),
    }),
  ),
  area: number().meta({ description: "m2" }),
  in_frame: maybe.meta({
    description: "Share of the area that lies inside the frame; null without a camera",
  }),
  reach: maybe.meta({
    description: "From the subject's place to its farthest point along the floor, m; null for a piece",
  }),
  low: number().meta({ description: "Its lowest point above the floor, m" }),
  high: number(),
  growth: maybe.meta({ description: "Size of the head's shadow over that of the head, square to the ray" }),
  depth: maybe.meta({
    description: "Stops by which the light is missed there; the row of `shadows` nearest to it",
  }),
  crosses: array(string()).meta({ description: "Surfaces on which it goes on over a seam" }),
  runs_over: boolean().meta({ description: "Whether it ends at the rim of the surface" }),
  edge: edge.nullable(),
});

/** Shadows as they fall, by the centre of each light. */
export const thrownSchema = object({
  shadows: array(shadow),
  fans: array(
    object({
      light: string(),
      degrees: maybe.meta({
        description:
          "Spread of the directions of its shadows across the upright set, seen from above; null without one",
      }),
    }),
  ),
  doubled: array(
    object({
      surface: string(),
      lights: array(object({ name: string(), depth: maybe })).meta({
        description: "Every light whose shadow of a subject falls there, with its depth in stops",
      }),
    }),
  ).meta({
    description:
      "Surfaces that get shadows of subjects from more than one light, inside the frame if there is one",
  }),
});

/** The shadows of a report as they fall. */
export type ReportThrown = Output<typeof thrownSchema>;
/** One shadow on one surface. */
export type ThrownShadow = ReportThrown["shadows"][number];
