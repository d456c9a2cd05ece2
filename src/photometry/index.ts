export { beamAngle } from "./beam-angle.js";
export { candelaAt, meanCandela } from "./candela.js";
export { candelaTowards } from "./direction.js";
export { lumensByZones, totalLumens, zonalLumens } from "./flux.js";
export type {
  AngleSystem,
  CandelaTable,
  Keyword,
  Lm63Edition,
  Lm63Result,
  Opening,
  Photometry,
  TiltTable,
} from "./photometry.js";
export { readLm63 } from "./read-lm63.js";
