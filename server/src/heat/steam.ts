/** Knows what water takes with it as vapour. Refuses to know where it comes from. */

/** Pa over water at t °C (Buck 1996, as public code has it). */
export const vapourPressure = (celsius: number): number =>
  611.21 * Math.exp(((18.678 - celsius / 234.5) * celsius) / (257.14 + celsius));

/** J/kg at t °C (linear between 2501 kJ/kg at 0 and 2257 at 100 °C). */
export const evaporationHeat = (celsius: number): number => 2_501_000 - 2361 * celsius;

/** kg/m³ of saturated vapour at t °C: of an ideal gas. */
export const vapourDensity = (celsius: number): number => vapourPressure(celsius) / (GAS * (celsius + KELVIN));

/** kg/(m³ K), how that grows with the temperature. */
export const vapourDensityRise = (celsius: number): number =>
  vapourDensity(celsius + 0.5) - vapourDensity(celsius - 0.5);

/** Of water vapour, J/(kg K). */
const GAS = 461.5;
export const KELVIN = 273.15;
export const ATMOSPHERE_PA = 101_325;
