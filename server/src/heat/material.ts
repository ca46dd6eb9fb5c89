/**
 * Knows how much heat a food holds at each temperature, and how it conducts: with ice below its freezing point, water that boils off at
 * 100 °C, and air in its pores. Refuses to know its shape.
 */
import { once } from '../measure/once.ts';
import { ATMOSPHERE_PA, evaporationHeat, KELVIN, vapourDensityRise, vapourPressure } from './steam.ts';
import { HELD_ABOVE, type Makeup, type Substance, substances } from './substances.ts';

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
/** Rows up to the first from which on no figure of a substance changes. */
const CHANGING = rowsUpTo(HELD_ABOVE + STEP);

/** Lean meat, fish and most wet food: milk freezes at −0.55 °C (Leighton 1927), what has more dissolved a little lower (judgement). */
const FREEZES_C = -1;
/** J/kg */
const ICE_HEAT = 333_600;
/** Of the protein's mass, water that never freezes (judgement, by Schwartzberg and Chen). */
const BOUND = 0.4;
/** Water boils between these: so a crust comes by itself. */
const BOILS_C = 100;
const BOILED_C = 101;
/** Of still air, W/(m K): 0.0257 at 15 °C, 0.0282 at 50 (Carroll 1968). */
const AIR_CONDUCTS = 0.027;
/** How straight the way through the pores is: 0.667 in soil (de Vries 1958). */
const STRAIGHT = 0.7;
/** How fast vapour goes through air, m²/s at 0 °C (Engineering ToolBox, air and gases: 0.219 cm²/s). */
const DIFFUSES = 2.2e-5;

export function materialOf({ makeup, porosity = 0, freezesC = FREEZES_C }: MaterialSaid): Material {
  const enthalpy = new Float64Array(ROWS);
  const conductivity = new Float64Array(ROWS);
  const density = densityAt(makeup, 20) * (1 - porosity);
  const unbound = Math.max(0, makeup.water - BOUND * makeup.protein);
  const { heat, volume, conducts, vapour } = atRows();
  let sum = 0;
  let iceBefore = iceAt(unbound, FROM, freezesC);
  for (let row = 0; row < CHANGING; row++) {
    const celsius = FROM + row * STEP;
    const ice = iceAt(unbound, celsius, freezesC);
    if (row > 0) {
      const boiled = Math.max(0, Math.min(celsius, BOILED_C) - Math.max(celsius - STEP, BOILS_C));
      sum += summed(heat, row, makeup, makeup.water - ice, ice) * STEP + ICE_HEAT * (iceBefore - ice);
      sum += (boiled / (BOILED_C - BOILS_C)) * makeup.water * evaporationHeat(BOILS_C);
    }
    enthalpy[row] = sum * density;
    const isWet = celsius <= BOILED_C;
    const water = isWet ? Math.max(0, makeup.water - ice) : 0;
    const frozen = isWet ? ice : 0;
    const solid = summed(conducts, row, makeup, water, frozen) / summed(volume, row, makeup, water, frozen);
    conductivity[row] =
      porosity === 0 ? solid : withAir(solid, porosity) + (isWet ? porosity * (vapour[row] as number) : 0);
    iceBefore = ice;
  }
  // What is dry takes as much for each row, and conducts alike.
  const each = summed(heat, CHANGING - 1, makeup, makeup.water, 0) * STEP;
  for (let row = CHANGING; row < ROWS; row++) {
    sum += each;
    enthalpy[row] = sum * density;
  }
  conductivity.fill(conductivity[CHANGING - 1] as number, CHANGING);
  return { enthalpy, conductivity, density };
}

/** Rows from the first to the one at or above so many °C. */
function rowsUpTo(celsius: number): number {
  return Math.ceil((celsius - FROM) / STEP) + 1;
}

type EachAtRows = Readonly<Record<Substance, Float64Array>>;

/** What a row has of a kilogram of each substance. */
interface AtRows {
  /** J/K, half a step below the row. */
  readonly heat: EachAtRows;
  /** m³ */
  readonly volume: EachAtRows;
  /** W m²/K: side by side each conducts by its volume. */
  readonly conducts: EachAtRows;
  /** W/(m K) of pores alone, by what goes through them as vapour. */
  readonly vapour: Float64Array;
}

/** The same for all foods, so that one of another makeup takes little more than its sums. */
const atRows = once((): AtRows => {
  const known = substances();
  // From where on a figure stays what it is, none is worked out: a start waits for them.
  const rows = (figure: (celsius: number) => number, staysFrom: number) => {
    const changing = rowsUpTo(staysFrom);
    const all = new Float64Array(ROWS).fill(figure(TO), changing);
    all.set(Float64Array.from({ length: changing }, (_, row) => figure(FROM + row * STEP)));
    return all;
  };
  const each = (figure: (of: Substance, celsius: number) => number): EachAtRows => {
    const one = (of: Substance, staysFrom = HELD_ABOVE + STEP) => rows((celsius) => figure(of, celsius), staysFrom);
    return {
      // There is none above.
      ice: one('ice', 0),
      water: one('water'),
      protein: one('protein'),
      fat: one('fat'),
      carbohydrate: one('carbohydrate'),
      ash: one('ash'),
    };
  };
  return {
    heat: each((of, celsius) => known.heat(of, celsius - STEP / 2)),
    volume: each((of, celsius) => 1 / known.density(of, celsius)),
    conducts: each((of, celsius) => known.conductivity(of, celsius) / known.density(of, celsius)),
    vapour: rows(vapourIn, VAPOUR_C),
  };
});

/** Of a kilogram of food. */
const summed = (of: EachAtRows, row: number, makeup: Makeup, water: number, ice: number): number =>
  (of.ice[row] as number) * ice +
  (of.water[row] as number) * water +
  (of.protein[row] as number) * makeup.protein +
  (of.fat[row] as number) * makeup.fat +
  (of.carbohydrate[row] as number) * makeup.carbohydrate +
  (of.ash[row] as number) * makeup.ash;

/** Share of ice at t °C, as Chen 1985 has it, which of all models lies nearest to measurements (Fricke and Becker 2001). */
const iceAt = (unbound: number, celsius: number, freezesC: number): number =>
  celsius < freezesC ? unbound * (1 - freezesC / celsius) : 0;

const SUBSTANCES = ['water', 'protein', 'fat', 'carbohydrate', 'ash'] as const satisfies readonly (keyof Makeup)[];

/** kg/m³ without pores, by volume. */
export function densityAt(makeup: Makeup, celsius: number): number {
  let volume = 0;
  let mass = 0;
  for (const each of SUBSTANCES) {
    volume += makeup[each] / substances().density(each, celsius);
    mass += makeup[each];
  }
  return mass / volume;
}

/** W/(m K) of so much solid with still air in it (Maxwell). */
function withAir(solid: number, porosity: number): number {
  const difference = porosity * (solid - AIR_CONDUCTS);
  return (solid * (2 * solid + AIR_CONDUCTS - 2 * difference)) / (2 * solid + AIR_CONDUCTS + difference);
}

/** W/(m K) of vapour that goes through a pore from the warm side to the cold. */
function vapourIn(celsius: number): number {
  if (celsius < 0) return 0;
  const t = Math.min(celsius, VAPOUR_C);
  const diffusion = DIFFUSES * ((t + KELVIN) / KELVIN) ** 1.8;
  const rise = vapourDensityRise(t) * evaporationHeat(t) * (ATMOSPHERE_PA / (ATMOSPHERE_PA - vapourPressure(t)));
  return STRAIGHT * diffusion * rise;
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
