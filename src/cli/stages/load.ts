/** The stages of the program, each loaded when it is first asked for. The build makes a file of its own of each. */
export type Language = typeof import("./language.js");
export type Light = typeof import("./light.js");
export type Quantities = typeof import("./quantities.js");

export const language = (): Promise<Language> => import("./language.js");
export const light = (): Promise<Light> => import("./light.js");
export const quantities = (): Promise<Quantities> => import("./quantities.js");
