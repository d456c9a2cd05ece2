import { describe, expect, test } from "vitest";
import { once } from "../../src/core/once.js";

describe("once", () => {
  test("makes nothing before it is asked, and one thing for all who ask", () => {
    let made = 0;
    const count = once(() => ({ made: ++made }));
    expect(made).toBe(0);
    const first = count();
    expect(count()).toBe(first);
    expect(made).toBe(1);
  });

  test("keeps what has no value as well", () => {
    let asked = 0;
    const none = once(() => {
      asked++;
      return undefined;
    });
    expect([none(), none()]).toEqual([undefined, undefined]);
    expect(asked).toBe(1);
  });
});
