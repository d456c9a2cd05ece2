/** What a stretch of printed text is, for whoever colours it. */
export type Tone = "error" | "note" | "mark" | "faint" | "strong" | "stop" | "check" | "passed" | "failed";

/** Colours a text, or gives it back as it is. */
export type Paint = (tone: Tone, text: string) => string;

/** No colour. */
export const plain: Paint = (_tone, text) => text;
