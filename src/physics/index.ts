export { bounceFromFloor, bounceFromPanel } from "./bounce.js";
export { type CubeFaces, cubeIlluminance, cubeIlluminanceConverged } from "./cavity-cube.js";
export { type PlateRadiosity, plateRadiosity } from "./cavity-plates.js";
export { sphereGain, sphereMultiplier, sphereWallIlluminance } from "./cavity-sphere.js";
export { type Chromaticity, type Uv, uvFromXy, xyFromUv } from "./chromaticity.js";
export { type ColouredLight, mixLights } from "./colour-mixture.js";
export { type CorrelatedTemperature, correlatedTemperature, GREATEST_DUV } from "./correlated-temperature.js";
export { daylightChromaticity } from "./daylight-locus.js";
export { densityFromReflectance, reflectanceFromDensity } from "./density.js";
export { blurDisc, depthOfField, farLimit, hyperfocalDistance, nearLimit } from "./depth-of-field.js";
export { capacitorEnergy, circuitCapacity, flashAveragePower, totalCurrent } from "./electric-load.js";
export { angleOfView, backdropWidth, distanceForFrame, fieldAtDistance } from "./field-of-view.js";
export { footcandlesFromLux, luxFromFootcandles } from "./footcandle.js";
export { formFactor, formFactorByContour } from "./form-factor.js";
export { formFactorByPoints } from "./form-factor-points.js";
export { brewsterAngle, fresnelReflectance, type Polarisation } from "./fresnel.js";
export { groundShadowLength } from "./ground-shadow.js";
export { lightnessFromReflectance, reflectanceFromLightness } from "./lightness.js";
export { closeFocusLoss, magnification } from "./magnification.js";
export { miredFromKelvin, miredShift, shiftedTemperature } from "./mired.js";
export {
  PLANCK_RANGE_K,
  planckChromaticity,
  planckUv,
  SECOND_RADIATION_CONSTANT,
} from "./planck.js";
export { planckKang, planckKrystek } from "./planck-approximations.js";
export { type RadiosityPatch, type RadiositySolution, solveRadiosity } from "./radiosity.js";
export { circleOfConfusion, cropFactor, diagonal } from "./sensor-format.js";
export {
  directHorizontalSun,
  directNormalSun,
  EXTINCTION_CLEAR,
  EXTINCTION_PARTLY_CLOUDY,
  extraterrestrialIlluminance,
  SOLAR_ILLUMINANCE_LX,
} from "./sun-illuminance.js";
export { type SunPosition, sunDistance, sunPosition } from "./sun-position.js";
export { ASTRONOMICAL_UNIT_KM, SUN_RADIUS_KM, sunAngularDiameter } from "./sun-size.js";
export { temperatureHernandez, temperatureMcCamy } from "./temperature-approximations.js";
export { temperatureRobertson } from "./temperature-robertson.js";
export { dayOfYear, daysInMonth, daysSinceJ2000, isLeapYear } from "./utc.js";
export { viewFactorAtAngle } from "./view-factor-angle.js";
export { viewFactorCoaxialDiscs, viewFactorSphereToDisc } from "./view-factor-discs.js";
export {
  elementToCentredRectangle,
  elementToCoaxialDisc,
  elementToParallelCorner,
  elementToPerpendicularCorner,
} from "./view-factor-element.js";
export { type AxisRectangle, viewFactorOffsetParallel, viewFactorParallel } from "./view-factor-parallel.js";
export {
  type LedgeRectangle,
  viewFactorOffsetPerpendicular,
  viewFactorPerpendicular,
} from "./view-factor-perpendicular.js";
export { viewFactorStrips, viewFactorWedge } from "./view-factor-strips.js";
export { cosinePowerFlux, lambertianFlux, zonalConstant } from "./zonal-flux.js";
