/** Throws when one of our own assumptions fails. Never used for what a user wrote. */
export function invariant(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(`broken assumption: ${message}`);
}
