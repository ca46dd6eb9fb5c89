/**
 * Knows how heat goes through a body in one dimension: cells from the middle, or from the bottom, to the surface, step by step.
 * Refuses to know what the body is.
 *
 * Implicit in the temperature with the apparent heat capacity, then the heat of each cell by what flowed, and its temperature read back
 * from that (Pham's quasi-enthalpy step): stable at any step, and the heat balance is exact to rounding.
 */
import { at, celsiusAt, type Material, rowAt, STEP } from './material.ts';
import { evaporationHeat, vapourDensity, vapourPressure } from './steam.ts';

/** What lies at a surface. */
export interface Surface {
  /** °C of air or water after so many seconds. */
  readonly ambientC: (seconds: number) => number;
  /** W/(m² K). */
  readonly h: number;
  /** It gives off water. */
  readonly wet?: Wet;
}

export interface Wet {
  /** As if so much of it stood under water, 0 to 1. */
  readonly share: number;
  /** W/(m² K), of the air alone. */
  readonly convective: number;
  /** Pa of vapour in the air. */
  readonly airVapour: number;
}

export interface Shape {
  /** m from the coldest place, or from the bottom, to the surface. */
  readonly depth: number;
  /** The area grows as this less one: 1 a slab, 2 a cylinder, 3 a ball, and between. */
  readonly exponent: number;
}

export interface Conducted {
  /** °C from the inside out. */
  readonly cells: Float64Array;
  readonly surfaceC: number;
  readonly coldestC: number;
  readonly warmestC: number;
  /** kg/m² given off so far. */
  readonly evaporated: number;
  /** J into the body so far, for each m² of outer surface at exponent 1. */
  readonly taken: number;
  readonly seconds: number;
}

export const CELLS = 20;
/** At most so much of the heat that arrives is carried off again. */
const MOST_CARRIED = 0.75;
/** kg/m³ × J/(kg K) × Lewis^(2/3) of air: W/(m² K) to m/s. */
const LEWIS = 900;

export class Conduction implements Conducted {
  readonly cells: Float64Array;
  surfaceC: number;
  evaporated = 0;
  taken = 0;
  seconds = 0;
  readonly #material: Material;
  readonly #outer: Surface;
  readonly #inner: Surface | undefined;
  readonly #heat: Float64Array;
  readonly #area: Float64Array;
  readonly #volume: Float64Array;
  readonly #width: number;
  readonly #lower: Float64Array;
  readonly #middle: Float64Array;
  readonly #upper: Float64Array;
  readonly #right: Float64Array;
  readonly #old: Float64Array;

  constructor(
    material: Material,
    { depth, exponent }: Shape,
    startC: number | ArrayLike<number>,
    outer: Surface,
    inner?: Surface,
    cells = CELLS,
  ) {
    this.#material = material;
    this.#outer = outer;
    this.#inner = inner;
    this.cells = Float64Array.from({ length: cells }, (_, i) =>
      typeof startC === 'number' ? startC : (startC[i] ?? startC[startC.length - 1] ?? 0),
    );
    this.#heat = this.cells.map((celsius) => at(material.enthalpy, celsius));
    this.#width = depth / cells;
    const face = (i: number) => (i / cells) ** (exponent - 1);
    this.#area = Float64Array.from({ length: cells + 1 }, (_, i) => (exponent === 1 ? 1 : face(i)));
    this.#volume = Float64Array.from(
      { length: cells },
      (_, i) => (((i + 1) / cells) ** exponent - (i / cells) ** exponent) * (depth / exponent),
    );
    this.surfaceC = this.cells[cells - 1] as number;
    this.#lower = new Float64Array(cells);
    this.#middle = new Float64Array(cells);
    this.#upper = new Float64Array(cells);
    this.#right = new Float64Array(cells);
    this.#old = new Float64Array(cells);
  }

  get coldestC(): number {
    let least = Number.POSITIVE_INFINITY;
    for (const celsius of this.cells) least = Math.min(least, celsius);
    return least;
  }

  get warmestC(): number {
    let most = Number.NEGATIVE_INFINITY;
    for (const celsius of this.cells) most = Math.max(most, celsius);
    return most;
  }

  /** Goes on by so many seconds. */
  step(dt: number): void {
    const n = this.cells.length;
    const { conductivity } = this.#material;
    this.seconds += dt;
    this.#old.set(this.cells);
    let before = 0;
    for (let i = 0; i < n; i++) {
      const celsius = this.#old[i] as number;
      const stored = ((this.#volume[i] as number) * this.#capacity(celsius)) / dt;
      const next = i + 1 < n ? this.#between(conductivity, i) : 0;
      this.#lower[i] = -before;
      this.#upper[i] = -next;
      this.#middle[i] = stored + before + next;
      this.#right[i] = stored * celsius;
      before = next;
    }
    const outward = this.#exchange(this.#outer, n - 1, this.#area[n] as number);
    const inward = this.#inner === undefined ? undefined : this.#exchange(this.#inner, 0, this.#area[0] as number);
    this.#add(n - 1, outward);
    if (inward !== undefined) this.#add(0, inward);
    this.#solve();
    // What flowed, by the new temperatures, is what each cell gains.
    const flow = (i: number) =>
      -(this.#upper[i] as number) * ((this.cells[i + 1] as number) - (this.cells[i] as number));
    let from =
      inward === undefined ? 0 : inward.conductance * (inward.ambient - (this.cells[0] as number)) - inward.lost;
    const into = outward.conductance * (outward.ambient - (this.cells[n - 1] as number)) - outward.lost;
    this.taken += (from + into) * dt;
    this.evaporated += outward.vapour * dt;
    const last = this.cells[n - 1] as number;
    const k = at(conductivity, last);
    this.surfaceC = last + (into / (this.#area[n] as number)) * (this.#width / 2 / k);
    for (let i = 0; i < n; i++) {
      const to = i + 1 < n ? flow(i) : into;
      const gained = i + 1 < n ? from + to : from + into;
      this.#heat[i] = (this.#heat[i] as number) + (gained * dt) / (this.#volume[i] as number);
      from = -to;
    }
    for (let i = 0; i < n; i++)
      this.cells[i] = celsiusAt(this.#material, this.#heat[i] as number, rowAt(this.#old[i] as number));
  }

  /** J/(m³ K) around a temperature. */
  #capacity(celsius: number): number {
    const { enthalpy } = this.#material;
    const row = rowAt(celsius);
    return ((enthalpy[row + 1] as number) - (enthalpy[row] as number)) / STEP;
  }

  /** W/K from a cell to the next one out. */
  #between(conductivity: Float64Array, i: number): number {
    const a = at(conductivity, this.#old[i] as number);
    const b = at(conductivity, this.#old[i + 1] as number);
    return ((this.#area[i + 1] as number) * ((2 * a * b) / (a + b))) / this.#width;
  }

  #exchange({ ambientC, h, wet }: Surface, i: number, area: number): Exchange {
    const ambient = ambientC(this.seconds);
    const celsius = this.#old[i] as number;
    const inside = at(this.#material.conductivity, celsius) / (this.#width / 2);
    const conductance = (area * h * inside) / (h + inside);
    if (wet === undefined) return { conductance, ambient, lost: 0, vapour: 0 };
    let surface = (h * ambient + inside * celsius) / (h + inside);
    let carried = 0;
    let vapour = 0;
    for (let round = 0; round < 6; round++) {
      const t = Math.min(100, surface);
      const excess = vapourDensity(t) - (vapourDensity(t) * wet.airVapour) / vapourPressure(t);
      const flux = Math.max(0, (wet.share * wet.convective * excess) / LEWIS);
      const arrives = Math.max(0, h * (ambient - surface));
      const heat = flux * evaporationHeat(t);
      const most = ambient > celsius ? MOST_CARRIED * arrives : heat;
      const now = Math.min(heat, most);
      carried = (carried + now) / 2;
      vapour = carried / evaporationHeat(t);
      surface = (h * ambient - carried + inside * celsius) / (h + inside);
    }
    return { conductance, ambient, lost: (area * carried * inside) / (h + inside), vapour };
  }

  #add(i: number, { conductance, ambient, lost }: Exchange): void {
    this.#middle[i] = (this.#middle[i] as number) + conductance;
    this.#right[i] = (this.#right[i] as number) + conductance * ambient - lost;
  }

  /** Three diagonals (Thomas). */
  #solve(): void {
    const n = this.cells.length;
    for (let i = 1; i < n; i++) {
      const w = (this.#lower[i] as number) / (this.#middle[i - 1] as number);
      this.#middle[i] = (this.#middle[i] as number) - w * (this.#upper[i - 1] as number);
      this.#right[i] = (this.#right[i] as number) - w * (this.#right[i - 1] as number);
    }
    for (let i = n - 1; i >= 0; i--) {
      const next = i + 1 < n ? (this.#upper[i] as number) * (this.cells[i + 1] as number) : 0;
      this.cells[i] = ((this.#right[i] as number) - next) / (this.#middle[i] as number);
    }
  }
}

interface Exchange {
  /** W/K between the cell and what lies around. */
  readonly conductance: number;
  readonly ambient: number;
  /** W carried off by vapour. */
  readonly lost: number;
  /** kg/(m² s) */
  readonly vapour: number;
}
