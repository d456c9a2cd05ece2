import type { Quantity } from "./quantity.js";
import { ANGULAR_QUANTITIES } from "./topics/angular.js";
import { CAVITY_QUANTITIES } from "./topics/cavity.js";
import { COLOUR_QUANTITIES } from "./topics/colour.js";
import { DAYLIGHT_QUANTITIES } from "./topics/daylight.js";
import { ELECTRIC_QUANTITIES } from "./topics/electric.js";
import { EXPOSURE_QUANTITIES } from "./topics/exposure.js";
import { FALLOFF_QUANTITIES } from "./topics/falloff.js";
import { FLASH_QUANTITIES } from "./topics/flash.js";
import { FRESNEL_QUANTITIES } from "./topics/fresnel.js";
import { GUIDE_NUMBER_QUANTITIES } from "./topics/guide-number.js";
import { IES_QUANTITIES } from "./topics/ies.js";
import { ILLUMINANCE_QUANTITIES } from "./topics/illuminance.js";
import { LENS_QUANTITIES } from "./topics/lens.js";
import { MIX_QUANTITIES } from "./topics/mix.js";
import { PENUMBRA_QUANTITIES } from "./topics/penumbra.js";
import { RATIO_QUANTITIES } from "./topics/ratio.js";
import { REFLECTANCE_QUANTITIES } from "./topics/reflectance.js";
import { SCENARIO_QUANTITIES } from "./topics/scenario.js";
import { STOPS_QUANTITIES } from "./topics/stops.js";
import { SUN_QUANTITIES } from "./topics/sun.js";
import { VIEW_FACTOR_QUANTITIES } from "./topics/view-factor.js";

/** Every quantity, by topic. A topic adds its own import line above and its own line here. */
const TOPICS: readonly (readonly Quantity[])[] = [
  ANGULAR_QUANTITIES,
  PENUMBRA_QUANTITIES,
  ILLUMINANCE_QUANTITIES,
  FALLOFF_QUANTITIES,
  EXPOSURE_QUANTITIES,
  STOPS_QUANTITIES,
  GUIDE_NUMBER_QUANTITIES,
  FLASH_QUANTITIES,
  RATIO_QUANTITIES,
  SUN_QUANTITIES,
  DAYLIGHT_QUANTITIES,
  LENS_QUANTITIES,
  FRESNEL_QUANTITIES,
  REFLECTANCE_QUANTITIES,
  COLOUR_QUANTITIES,
  MIX_QUANTITIES,
  VIEW_FACTOR_QUANTITIES,
  CAVITY_QUANTITIES,
  IES_QUANTITIES,
  ELECTRIC_QUANTITIES,
  SCENARIO_QUANTITIES,
];

/** All quantities in the order of their topics. */
export function allQuantities(): readonly Quantity[] {
  return TOPICS.flat();
}

/** The quantity of a name, or undefined. */
export function findQuantity(name: string): Quantity | undefined {
  return allQuantities().find((quantity) => quantity.name === name);
}
