import { array, boolean, number, type output as Output, object, string, tuple } from "zod";

const maybe = number().nullable();

/** What the lens sees mirrored in the glossy pieces of the set. */
export const glossSchema = array(
  object({
    surface: string().meta({ description: "The glossy piece" }),
    light: string(),
    seen: boolean().meta({ description: "Whether any part of it is mirrored in the picture" }),
    share: number().meta({ description: "Of the nine points of the opening that are looked at, 0 to 1" }),
    at: tuple([number(), number(), number()])
      .nullable()
      .meta({ description: "Where on the surface the first mirrored point is, m" }),
    frame: tuple([number(), number()])
      .nullable()
      .meta({ description: "The same as shares of the picture from its left and from its bottom" }),
    width: maybe.meta({
      description: "Of the mirror image from the lens, as the cone of the same solid angle, deg",
    }),
    reason: string().nullable().meta({ description: "Why it is not seen" }),
  }),
);

/** Mirrored lights. */
export type ReportGloss = Output<typeof glossSchema>;
