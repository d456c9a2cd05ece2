import { expect } from "vitest";

/**
 * Proves that a law can fail: runs it on a spoilt formula and expects it to break. A law that a wrong formula passes
 * proves nothing.
 */
export function mustBreak(law: () => void): void {
  expect(law).toThrow();
}
