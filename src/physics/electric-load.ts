/**
 * Power that a circuit can carry for long: P = U I share (arithmetic; wiring rules set the share).
 *
 * @param volts - Mains voltage.
 * @param amperes - Rating of the fuse or breaker.
 * @param share - Share of the rating that may be used for long, 0 to 1.
 * @returns Watts.
 */
export function circuitCapacity(volts: number, amperes: number, share: number): number {
  return volts * amperes * share;
}

/**
 * Current of several appliances on one circuit: I = sum of watts / (U x power factor).
 *
 * @param watts - Power of each in watts.
 * @param volts - Mains voltage, above 0.
 * @param powerFactor - Above 0, at most 1.
 * @returns Amperes.
 */
export function totalCurrent(watts: readonly number[], volts: number, powerFactor: number): number {
  let sum = 0;
  for (const each of watts) sum += each;
  return sum / (volts * powerFactor);
}

/**
 * Mean power that a flash generator draws while it recharges: energy / recycle time / efficiency.
 *
 * @param energy - Stored energy in joules (watt-seconds).
 * @param recycle - Recycle time in seconds, above 0.
 * @param efficiency - Share of the drawn energy that reaches the capacitors, above 0, at most 1.
 * @returns Watts.
 */
export function flashAveragePower(energy: number, recycle: number, efficiency: number): number {
  return energy / recycle / efficiency;
}

/**
 * Energy stored in a capacitor: E = C U U / 2.
 *
 * @param capacitance - Farads.
 * @param volts - Voltage across it.
 * @returns Joules.
 */
export function capacitorEnergy(capacitance: number, volts: number): number {
  return (capacitance * volts * volts) / 2;
}
