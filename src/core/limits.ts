/** Every cap on untrusted text, each with its reason. A text that passes a cap gets that cap's own diagnostic. */

/** 256 KiB: the largest recipe that still checks in about a second on a cold start. */
export const MAX_SOURCE_BYTES = 262_144;
/** Tokens of one file; a 256 KiB text of one-letter words stays below it. */
export const MAX_TOKENS = 200_000;
/** Brackets and braces open at once; recovery recurses, and 213 unclosed blocks overflow the default stack. */
export const MAX_DEPTH = 64;
/** Operators in one expression; keeps every later walk over the tree shallow. */
export const MAX_OPERATORS = 256;
/** Diagnostics of one file; beyond this the rest is counted, not shown. */
export const MAX_DIAGNOSTICS = 100;
/** Kits that use kits that use kits; a real kit uses one or two. */
export const MAX_KIT_DEPTH = 16;
/** Kits that one recipe reads, however they are reached. */
export const MAX_KITS = 64;
/** 2 MiB: the text of all kits together; eight of the largest size. */
export const MAX_KIT_BYTES = 2_097_152;
/** 64 MiB: the largest photograph whose settings are read. */
export const MAX_PHOTO_BYTES = 67_108_864;
/** Rows of one lesson table in the command. */
export const MAX_ROWS = 10_000;
/** Cells of one lesson table in the command. */
export const MAX_CELLS = 100_000;
/** Variants of one file; each is checked as a whole set-up. */
export const MAX_VARIANTS = 200;
/** Characters that a file with variants is checked through altogether: its length times its variants. */
export const MAX_VARIANT_TEXT = 4_194_304;
