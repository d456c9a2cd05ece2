import { ambient } from "./ambient.rule.js";
import { backgroundOff } from "./background-off.rule.js";
import { bareFrame } from "./bare-frame.rule.js";
import { belowMinimum } from "./below-minimum.rule.js";
import { bgUneven } from "./bg-uneven.rule.js";
import { blocked } from "./blocked.rule.js";
import { boomBalance } from "./boom-balance.rule.js";
import { bounceColour } from "./bounce-colour.rule.js";
import { burstTooFast } from "./burst-too-fast.rule.js";
import { cameraInside } from "./camera-inside.rule.js";
import { cameraThroughWall } from "./camera-through-wall.rule.js";
import { circuitLoad } from "./circuit-load.rule.js";
import { clippedLit } from "./clipped-lit.rule.js";
import { colourMix } from "./colour-mix.rule.js";
import { crossingNoses } from "./crossing-noses.rule.js";
import { darkSockets } from "./dark-sockets.rule.js";
import { diffraction } from "./diffraction.rule.js";
import { diffuserNoSofter } from "./diffuser-no-softer.rule.js";
import { doubleEdge } from "./double-edge.rule.js";
import { edgeStretch } from "./edge-stretch.rule.js";
import { elevationChangesDownBody } from "./elevation-changes-down-body.rule.js";
import { fan } from "./fan.rule.js";
import { flare } from "./flare.rule.js";
import { flashRate } from "./flash-rate.rule.js";
import { foldAtHead } from "./fold-at-head.rule.js";
import { glassesGlare } from "./glasses-glare.rule.js";
import { headPastSurface } from "./head-spill.rule.js";
import { headToToe } from "./head-to-toe.rule.js";
import { heatNear } from "./heat-near.rule.js";
import { hotSpotScrim } from "./hot-spot-scrim.rule.js";
import { lampInFrame } from "./lamp-in-frame.rule.js";
import { lampInside } from "./lamp-inside.rule.js";
import { lampNearCeiling } from "./lamp-near-ceiling.rule.js";
import { lampThroughCeiling } from "./lamp-through-ceiling.rule.js";
import { lampThroughWall } from "./lamp-through-wall.rule.js";
import { looseFlat } from "./loose-flat.rule.js";
import { lowSun } from "./low-sun.rule.js";
import { meterInside } from "./meter-inside.rule.js";
import { meterTrap } from "./meter-trap.rule.js";
import { motionBlur } from "./motion-blur.rule.js";
import { nearField } from "./near-field.rule.js";
import { noCatchlight } from "./no-catchlight.rule.js";
import { noDetail } from "./no-detail.rule.js";
import { noReserve } from "./no-reserve.rule.js";
import { noseOnLip } from "./nose-on-lip.rule.js";
import { notEnoughPower } from "./not-enough-power.rule.js";
import { notOvercast } from "./not-overcast.rule.js";
import { notSunHard } from "./not-sun-hard.rule.js";
import { offAperture } from "./off-aperture.rule.js";
import { outOfFocus } from "./out-of-focus.rule.js";
import { outsideRoom } from "./outside-room.rule.js";
import { overlap } from "./overlap.rule.js";
import { ownShadow } from "./own-shadow.rule.js";
import { panelShadesKey } from "./panel-shades-key.rule.js";
import { paperEdge } from "./paper-edge.rule.js";
import { patternLost } from "./pattern-lost.rule.js";
import { peopleUneven } from "./people-uneven.rule.js";
import { ratioOff } from "./ratio-off.rule.js";
import { reflectanceAssumed } from "./reflectance-assumed.rule.js";
import type { Rule } from "./rule.js";
import { samePlace } from "./same-place.rule.js";
import { setShortTop } from "./set-short-top.rule.js";
import { setTopPose } from "./set-top-pose.rule.js";
import { shadowOffPaper } from "./shadow-off-paper.rule.js";
import { sideSlip } from "./side-slip.rule.js";
import { softTooFar } from "./soft-too-far.rule.js";
import { standInside } from "./stand-inside.rule.js";
import { standTip } from "./stand-tip.rule.js";
import { standTooShort } from "./stand-too-short.rule.js";
import { sunFlat } from "./sun-flat.rule.js";
import { sunHarsh } from "./sun-harsh.rule.js";
import { syncBand } from "./sync-band.rule.js";
import { tailCut } from "./tail-cut.rule.js";
import { tooClose } from "./too-close.rule.js";
import { twoSuns } from "./two-suns.rule.js";
import { uncalibrated } from "./uncalibrated.rule.js";
import { wayOut } from "./way-out.rule.js";
import { whiteBalanceOff } from "./white-balance-off.rule.js";
import { whiteTooDim } from "./white-too-dim.rule.js";
import { whiteTooHot } from "./white-too-hot.rule.js";
import { wrap } from "./wrap.rule.js";

/** Every rule: room and stands, set, look, exposure, camera, safety. Findings of like weight keep this order. */
export const rules: readonly Rule[] = [
  lampThroughCeiling,
  lampNearCeiling,
  standTooShort,
  lampThroughWall,
  cameraThroughWall,
  cameraInside,
  lampInside,
  standInside,
  meterInside,
  overlap,
  outsideRoom,
  samePlace,
  setShortTop,
  setTopPose,
  bareFrame,
  paperEdge,
  foldAtHead,
  panelShadesKey,
  blocked,
  lampInFrame,
  ownShadow,
  notSunHard,
  sunFlat,
  sunHarsh,
  lowSun,
  elevationChangesDownBody,
  fan,
  twoSuns,
  doubleEdge,
  shadowOffPaper,
  notOvercast,
  headPastSurface,
  hotSpotScrim,
  diffuserNoSofter,
  softTooFar,
  patternLost,
  sideSlip,
  crossingNoses,
  noseOnLip,
  darkSockets,
  noCatchlight,
  glassesGlare,
  notEnoughPower,
  noReserve,
  belowMinimum,
  offAperture,
  uncalibrated,
  nearField,
  meterTrap,
  ratioOff,
  noDetail,
  headToToe,
  peopleUneven,
  backgroundOff,
  whiteTooHot,
  whiteTooDim,
  bgUneven,
  wrap,
  clippedLit,
  ambient,
  syncBand,
  whiteBalanceOff,
  tailCut,
  motionBlur,
  burstTooFast,
  colourMix,
  bounceColour,
  reflectanceAssumed,
  outOfFocus,
  diffraction,
  tooClose,
  edgeStretch,
  flare,
  standTip,
  boomBalance,
  heatNear,
  circuitLoad,
  flashRate,
  looseFlat,
  wayOut,
];

/** The rule of a code; null for a word that is none. */
export function findRule(code: string): Rule | null {
  return rules.find((rule) => rule.code === code) ?? null;
}
