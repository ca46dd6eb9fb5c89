/**
 * Knows how much heat a food holds at each temperature, and how it conducts: with ice below its freezing point, water that boils off at
 * 100 °C, and air in its pores. Refuses to know its shape.
 */
import { ATMOSPHERE_PA, evaporationHeat, KELVIN, vapourDensityRise, vapourPressure } from './steam.ts';
import { type Makeup, type Substance, substances } from './substances.ts';

/** Rows, `STEP` apart from `FROM` on. */
export interface Material {
  /** J/m³, grows with each row. */
  readonly enthalpy: Float64Array;
  /** W/(m K). */
  readonly conductivity: Float64Array;
  /** kg/m³ with its pores, at 20 °C. */
  readonly density: number;
}

export interface MaterialSaid {
  readonly makeup: Makeup;
  /** Of the volume, 0 to 1, while it is heated. */
  readonly porosity?: number;
  /** °C at which its ice begins. */
  readonly freezesC?: number;
}

/** °C of the first row, and between two. */
export const FROM = -45;
export const STEP = 0.2;
const TO = 260;
const ROWS = Math.round((TO - FROM) / STEP) + 1;

/** Lean meat, fish and most wet food (ASHRAE, from memory). */
const FREEZES_C = -1;
/** J/kg */
const ICE_HEAT = 333_600;
/** Of the protein's mass, water that never freezes (Schwartzberg; Chen; from memory). */
const BOUND = 0.4;
/** Water boils between these: so a crust comes by itself. */
const BOILS_C = 100;
const BOILED_C = 101;
/** Of still air, W/(m K) (standard tables, from memory). */
const AIR_CONDUCTS = 0.027;
/** How straight the way through the pores is, and how fast vapour goes, m²/s at 0 °C (from memory). */
const STRAIGHT = 0.7;
const DIFFUSES = 2.2e-5;

export function materialOf({ makeup, porosity = 0, freezesC = FREEZES_C }: MaterialSaid): Material {
  const enthalpy = new Float64Array(ROWS);
  const conductivity = new Float64Array(ROWS);
  const dense = densityAt(makeup, 20);
  const density = dense * (1 - porosity);
  const unbound = Math.max(0, makeup.water - BOUND * makeup.protein);
  let sum = 0;
  let iceBefore = iceAt(unbound, FROM, freezesC);
  for (let row = 0; row < ROWS; row++) {
    const celsius = FROM + row * STEP;
    const ice = iceAt(unbound, celsius, freezesC);
    if (row > 0) {
      const boiled = Math.max(0, Math.min(celsius, BOILED_C) - Math.max(celsius - STEP, BOILS_C));
      sum += heatAt(makeup, celsius - STEP / 2, ice) * STEP + ICE_HEAT * (iceBefore - ice);
      sum += (boiled / (BOILED_C - BOILS_C)) * makeup.water * evaporationHeat(BOILS_C);
    }
    enthalpy[row] = sum * density;
    const wet = celsius <= BOILED_C;
    conductivity[row] = porous(conductivityAt(makeup, celsius, wet ? ice : 0, wet), porosity, celsius, wet);
    iceBefore = ice;
  }
  return { enthalpy, conductivity, density };
}

/** Share of ice at t °C (Schwartzberg, Chen; ASHRAE, from memory). */
const iceAt = (unbound: number, celsius: number, freezesC: number): number =>
  celsius < freezesC ? unbound * (1 - freezesC / celsius) : 0;

const DRY = ['protein', 'fat', 'carbohydrate', 'ash'] as const satisfies readonly Substance[];

/** J/(kg K), by mass. */
function heatAt(makeup: Makeup, celsius: number, ice: number): number {
  const { heat } = substances();
  let sum = heat('ice', celsius) * ice + heat('water', celsius) * (makeup.water - ice);
  for (const each of DRY) sum += heat(each, celsius) * makeup[each];
  return sum;
}

/** kg/m³ without pores, by volume. */
export function densityAt(makeup: Makeup, celsius: number, ice = 0): number {
  let volume = 0;
  let mass = 0;
  for (const [each, share] of sharesOf(makeup, ice)) {
    volume += share / substances().density(each, celsius);
    mass += share;
  }
  return mass / volume;
}

/** W/(m K) without pores: side by side, by volume; of what has boiled dry, without the water. */
function conductivityAt(makeup: Makeup, celsius: number, ice: number, wet = true): number {
  const { density, conductivity } = substances();
  let volume = 0;
  let sum = 0;
  for (const [each, share] of sharesOf(wet ? makeup : { ...makeup, water: 0 }, ice)) {
    const part = share / density(each, celsius);
    volume += part;
    sum += part * conductivity(each, celsius);
  }
  return sum / volume;
}

const sharesOf = (makeup: Makeup, ice: number): readonly (readonly [Substance, number])[] => [
  ['ice', ice],
  ['water', Math.max(0, makeup.water - ice)],
  ...DRY.map((each) => [each, makeup[each]] as const),
];

/** With air in it (Maxwell), and vapour that goes through the pores from the warm side to the cold. */
function porous(solid: number, porosity: number, celsius: number, wet: boolean): number {
  if (porosity === 0) return solid;
  const difference = porosity * (solid - AIR_CONDUCTS);
  const still = (solid * (2 * solid + AIR_CONDUCTS - 2 * difference)) / (2 * solid + AIR_CONDUCTS + difference);
  if (!wet || celsius < 0) return still;
  const t = Math.min(celsius, VAPOUR_C);
  const diffusion = DIFFUSES * ((t + KELVIN) / KELVIN) ** 1.8;
  const rise = vapourDensityRise(t) * evaporationHeat(t) * (ATMOSPHERE_PA / (ATMOSPHERE_PA - vapourPressure(t)));
  return still + porosity * STRAIGHT * diffusion * rise;
}
/** Towards 100 °C the vapour alone fills the pore, and the formula has no end. */
const VAPOUR_C = 90;

/** °C of so much heat; `near`: a row to look from. */
export function celsiusAt({ enthalpy }: Material, heat: number, near: number): number {
  let row = near;
  while (row < ROWS - 2 && (enthalpy[row + 1] as number) <= heat) row++;
  while (row > 0 && (enthalpy[row] as number) > heat) row--;
  const low = enthalpy[row] as number;
  return FROM + STEP * (row + (heat - low) / ((enthalpy[row + 1] as number) - low));
}

/** The row below a temperature. */
export const rowAt = (celsius: number): number =>
  Math.max(0, Math.min(ROWS - 2, Math.floor((celsius - FROM) / STEP + 1e-9)));

/** Between the rows. */
export function at(rows: Float64Array, celsius: number): number {
  const row = rowAt(celsius);
  const low = rows[row] as number;
  return low + ((rows[row + 1] as number) - low) * ((celsius - FROM) / STEP - row);
}
