export { dayOfYear, daysInMonth, daysSinceJ2000, isLeapYear } from "../core/utc.js";
export { relativeAirMass } from "./air-mass.js";
export {
  type AngularWidths,
  angularWidths,
  coneSolidAngle,
  equivalentCone,
  SUN_ANGULAR_DIAMETER_DEG,
  sphereWidth,
  timesSun,
  widthSquareOn,
  widthTurned,
} from "./angular-size.js";
export { type FNumberReading, fNumberOfThirds, splitFNumber, stopsFromFOne } from "./aperture-scale.js";
export { type Beam, beamEnergyShare, beamShare } from "./beam.js";
export { type BeamReading, beamReading, type Receptor } from "./beam-reading.js";
export { bounceFromFloor, bounceFromPanel } from "./bounce.js";
export {
  axialExposurePerEnergy,
  energyFromAxialIntensity,
  energyFromGuideNumber,
  energyFromReading,
  energyFromWattSeconds,
  type MeterReading,
} from "./calibration.js";
export { type CubeFaces, cubeIlluminance, cubeIlluminanceConverged } from "./cavity-cube.js";
export { type PlateRadiosity, plateRadiosity } from "./cavity-plates.js";
export { sphereGain, sphereMultiplier, sphereWallIlluminance } from "./cavity-sphere.js";
export { type Chromaticity, type Uv, uvFromXy, xyFromUv } from "./chromaticity.js";
export { type ColouredLight, mixLights } from "./colour-mixture.js";
export { type CorrelatedTemperature, correlatedTemperature, GREATEST_DUV } from "./correlated-temperature.js";
export { daylightChromaticity } from "./daylight-locus.js";
export { densityFromReflectance, reflectanceFromDensity } from "./density.js";
export { blurDisc, depthOfField, farLimit, hyperfocalDistance, nearLimit } from "./depth-of-field.js";
export { airyDisc } from "./diffraction.js";
export { type EdgePlanes, edgePlanes } from "./edge-angles.js";
export {
  discEdgePlace,
  discShare,
  type EdgeOutline,
  edgeShareOfWidth,
  rectangleEdgePlace,
} from "./edge-profile.js";
export {
  type EdgeSection,
  edgeFullWidth,
  edgeLightShare,
  edgeSection,
  edgeWidthBetween,
  type ShadowEdge,
} from "./edge-share.js";
export { capacitorEnergy, circuitCapacity, flashAveragePower, totalCurrent } from "./electric-load.js";
export {
  ambientShare,
  calibratedReflectance,
  flashFNumber,
  flashRequiredExposure,
  focalPlaneExposure,
  incidentFNumber,
  incidentTime,
  mixedFNumber,
  reflectedTime,
  requiredIlluminance,
  requiredLuminance,
} from "./exposure.js";
export {
  exposureValue,
  exposureValue100,
  exposureValueOfIlluminance,
  exposureValueOfLuminance,
  illuminanceAtExposureValue,
  luminanceAtExposureValue,
  sunnySixteenIlluminance,
} from "./exposure-value.js";
export { depthFalloff, discFalloff, distanceForStops, pointFalloff } from "./falloff.js";
export { angleOfView, backdropWidth, distanceForFrame, fieldAtDistance } from "./field-of-view.js";
export {
  durationAbove,
  durationRatio,
  motionBlur,
  schwarzschildTime,
  shareInsideShutter,
  tailShare,
} from "./flash-duration.js";
export {
  bareFlashDistance,
  coneExposure,
  isotropicExposure,
  lambertianExposure,
  rectangularDiffuserExposure,
} from "./flash-exposure.js";
export { floorShadowLength, shadowGrowth } from "./floor-shadow.js";
export { footcandlesFromLux, luxFromFootcandles } from "./footcandle.js";
export { formFactor, formFactorByContour } from "./form-factor.js";
export { formFactorByPoints } from "./form-factor-points.js";
export { brewsterAngle, fresnelReflectance, type Polarisation } from "./fresnel.js";
export { groundShadowLength } from "./ground-shadow.js";
export {
  combinedGuideNumber,
  guideNumberAtPower,
  guideNumberDistance,
  guideNumberFNumber,
  guideNumberFromIntensity,
  guideNumberInFeet,
  intensityFromGuideNumber,
} from "./guide-number.js";
export { clippedLightVector, discReading, domeReading, lightVector, solidAngle } from "./illuminance.js";
export { emptyVector, type LightVector } from "./light-vector.js";
export { lightnessFromReflectance, reflectanceFromLightness } from "./lightness.js";
export { axialIntensityPerEnergy, luminancePerEnergy } from "./luminous-energy.js";
export { closeFocusLoss, magnification } from "./magnification.js";
export { miredFromKelvin, miredShift, shiftedTemperature } from "./mired.js";
export { overcastLuminance, overcastOnPlane } from "./overcast-sky.js";
export { type OvercastWindow, overcastThroughWindow } from "./overcast-window.js";
export { obliquePenumbra, planarPenumbra, spherePenumbra, umbraLength } from "./penumbra-width.js";
export {
  PLANCK_RANGE_K,
  planckChromaticity,
  planckUv,
  SECOND_RADIATION_CONSTANT,
} from "./planck.js";
export { planckKang, planckKrystek } from "./planck-approximations.js";
export { pointErrorOfDisc, pointErrorOfSquare, pointErrorOfSquareByDiagonal } from "./point-error.js";
export { polygonIlluminance } from "./polygon-illuminance.js";
export { type RadiosityPatch, type RadiositySolution, solveRadiosity } from "./radiosity.js";
export { fillForRatio, keyToFill, litShadowStops, litToShadow } from "./ratio.js";
export { circleOfConfusion, cropFactor, diagonal } from "./sensor-format.js";
export { levelIlluminance, mattLuminance, pointIlluminance, stripIlluminance } from "./simple-illuminance.js";
export { clearSkyIlluminance, overcastSkyIlluminance } from "./sky-illuminance.js";
export { extentAlong, rectangleExtent } from "./source-extent.js";
export { sourceOutline } from "./source-outline.js";
export {
  type CapsuleSource,
  type DiscSource,
  emittingArea,
  type PolygonSource,
  polygonSource,
  rectangleSource,
  type SourceShape,
  type SphereSource,
} from "./source-shape.js";
export {
  densityOfStops,
  factorOfStops,
  stopsBetween,
  stopsBetweenFNumbers,
  stopsBetweenIso,
  stopsBetweenTimes,
  stopsFromGrey,
  stopsOfDensity,
  stopsOfPops,
  stopsOfPower,
  stopsOfTransmittance,
  sumOfFNumbers,
} from "./stops.js";
export { SUN_COLOUR_SPREAD, sunColour } from "./sun-colour.js";
export {
  curvedAirSun,
  directHorizontalSun,
  directNormalSun,
  EXTINCTION_CLEAR,
  EXTINCTION_PARTLY_CLOUDY,
  extraterrestrialIlluminance,
  SOLAR_ILLUMINANCE_LX,
  sunThroughAir,
} from "./sun-illuminance.js";
export { sunPenumbraOfLevelEdge, sunPenumbraOfUprightEdge } from "./sun-penumbra.js";
export { type SunPosition, sunDistance, sunPosition } from "./sun-position.js";
export { ASTRONOMICAL_UNIT_KM, SUN_RADIUS_KM, sunAngularDiameter } from "./sun-size.js";
export { temperatureHernandez, temperatureMcCamy } from "./temperature-approximations.js";
export { temperatureRobertson } from "./temperature-robertson.js";
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
