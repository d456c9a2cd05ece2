/** The natural lights that an intent may name, with the arguments each takes. */
export const naturalLights = [
  {
    name: "sunlight",
    args: ["elevation", "at", "on", "time"],
    help: "Direct sun at an elevation, or at a place, date and time.",
  },
  {
    name: "overcast",
    args: ["elevation", "at", "on", "time", "metered"],
    help: "The whole sky, grey all over; as bright as with the sun at an elevation, or at a place, date and time, behind its clouds, or as metered on open level ground.",
  },
  {
    name: "window",
    args: ["size", "distance", "sky"],
    help: "Light from a window of a size at a distance; the `sky` before it is an `overcast` one.",
  },
] as const;
