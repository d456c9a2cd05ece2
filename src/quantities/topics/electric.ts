import {
  capacitorEnergy,
  circuitCapacity,
  flashAveragePower,
  totalCurrent,
} from "../../physics/electric-load.js";
import { nonNegative, number, numbers, optional, positive, type Quantity, value } from "../quantity.js";

const SHARE = { above: 0, atMost: 1 } as const;

/** Electrical load. */
export const ELECTRIC_QUANTITIES: readonly Quantity[] = [
  {
    name: "circuit_capacity",
    inputs: [positive("volts", "V"), positive("amps", "A"), optional(number("share", "1", SHARE), 1)],
    unit: "W",
    title: "Power that a circuit can carry for long",
    source: "P = U I share, arithmetic; the share for long use is set by wiring rules",
    compute: (inputs) =>
      value(circuitCapacity(inputs.number("volts"), inputs.number("amps"), inputs.number("share"))),
  },
  {
    name: "total_current",
    inputs: [
      numbers("watts", "W", { atLeast: 0 }),
      positive("volts", "V"),
      optional(number("power_factor", "1", SHARE), 1),
    ],
    unit: "A",
    title: "Current of several appliances on one circuit",
    source: "I = sum of watts / (U x power factor), arithmetic",
    compute: (inputs) =>
      value(totalCurrent(inputs.numbers("watts"), inputs.number("volts"), inputs.number("power_factor"))),
  },
  {
    name: "flash_average_power",
    inputs: [
      nonNegative("energy_J", "J"),
      positive("recycle_s", "s"),
      optional(number("efficiency", "1", SHARE), 1),
    ],
    unit: "W",
    title: "Mean power that a flash generator draws while it recharges",
    source: "stored energy / recycle time / charger efficiency, arithmetic",
    compute: (inputs) =>
      value(
        flashAveragePower(inputs.number("energy_J"), inputs.number("recycle_s"), inputs.number("efficiency")),
      ),
  },
  {
    name: "capacitor_energy",
    inputs: [nonNegative("capacitance_uF", "uF"), nonNegative("volts", "V")],
    unit: "J",
    title: "Energy stored in a capacitor",
    source: "E = C U^2 / 2",
    compute: (inputs) =>
      value(capacitorEnergy(inputs.number("capacitance_uF") * 1e-6, inputs.number("volts"))),
  },
];
