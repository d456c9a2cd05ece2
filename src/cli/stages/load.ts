/** The stages of the program, each loaded when it is first asked for. The build makes a file of its own of each. */
export type Language = typeof import("./language.js");
/** The stage that computes light and shows reports. */
export type Light = typeof import("./light.js");
/** The stage of single formulas. */
export type Quantities = typeof import("./quantities.js");

/** The threads that check many files. */
export type CrewStage = typeof import("./crew.js");

/** The stage of pages in Markdown. */
export type Pages = typeof import("./pages.js");

/** The stage that draws figures. */
export type Draw = typeof import("./draw.js");

/** Loads the threads that check many files. */
export const crew = (): Promise<CrewStage> => import("./crew.js");
/** Loads the stage that draws figures. */
export const draw = (): Promise<Draw> => import("./draw.js");
/** Loads the stage of the text of a recipe. */
export const language = (): Promise<Language> => import("./language.js");
/** Loads the stage that computes light and shows reports. */
export const light = (): Promise<Light> => import("./light.js");
/** Loads the stage of pages in Markdown. */
export const pages = (): Promise<Pages> => import("./pages.js");
/** Loads the stage of single formulas. */
export const quantities = (): Promise<Quantities> => import("./quantities.js");
