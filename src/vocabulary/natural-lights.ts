/** The natural lights that an intent may name, with the arguments each takes. */
export const naturalLights = [
  {
    name: "sunlight",
    args: ["elevation", "at", "on", "time"],
    help: "Direct sun at an elevation, or at a place, date and time.",
  },
  { name: "overcast", args: [], help: "The whole sky, grey all over." },
  { name: "window", args: ["size", "distance"], help: "Light from a window of a size at a distance." },
] as const;
