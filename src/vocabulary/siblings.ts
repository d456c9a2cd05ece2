/**
 * Properties that say the same thing in different ways. Where a block takes over properties from another, or a
 * variant changes one, giving one of a group drops the others of it.
 */
const groups: ReadonlyMap<string, readonly (readonly string[])[]> = new Map([
  [
    "light",
    [
      ["distance", "floor_distance", "position"],
      ["height", "elevation", "bottom_edge", "position"],
      ["bearing", "position"],
      ["calibration", "output"],
      ["through", "into"],
    ],
  ],
  [
    "camera",
    [
      ["distance", "position"],
      ["bearing", "position"],
      ["height", "position"],
    ],
  ],
  [
    "point",
    [
      ["at", "up"],
      ["at", "ahead"],
      ["at", "left"],
      ["at", "right"],
      ["left", "right"],
    ],
  ],
  ["gel", [["warms", "cools"]]],
  [
    "flat",
    [
      ["at", "hinge"],
      ["faces", "hinge"],
    ],
  ],
]);

/** The other properties of a kind that giving `name` replaces. */
export function siblingsOf(kind: string, name: string): readonly string[] {
  const found = new Set<string>();
  for (const group of groups.get(kind) ?? []) {
    if (group.includes(name)) for (const other of group) if (other !== name) found.add(other);
  }
  return [...found];
}
