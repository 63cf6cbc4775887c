/**
 * Heat properties of food from what it is made of: specific heat, conductivity, density, diffusivity, for unfrozen food.
 *
 * Each part of the food (water, protein, fat, carbohydrate, fibre, ash) has properties that are polynomials of temperature; the
 * food's are mixed from them by mass (specific heat) and by volume (density, conductivity).
 *
 * @source Choi and Okos (1986), as tabulated in ASHRAE Handbook, Refrigeration (2006), chapter 9, Tables 1 and 2, valid −40 to 150 °C
 *   (water 0 to 150 °C); constant of the specific heat of water below
 */
import type { Source } from '../source.ts';

/** Mass fractions of a food, together 1 but for rounding. Carbohydrate is without fibre. */
export interface Composition {
  readonly water: number;
  readonly protein: number;
  readonly fat: number;
  readonly carbohydrate: number;
  readonly fibre: number;
  readonly ash: number;
}
export const PARTS = ['water', 'protein', 'fat', 'carbohydrate', 'fibre', 'ash'] as const;
type Part = (typeof PARTS)[number];

export const CHOI_OKOS: Source = {
  standing: 'secondary',
  cite: 'Choi and Okos (1986), as tabulated in ASHRAE Handbook, Refrigeration (2006), chapter 9, Tables 1 and 2',
};

/** a + b·t + c·t², t in °C. */
type Polynomial = readonly [a: number, b: number, c: number];
interface PartProperties {
  /** kJ/(kg·K) */
  readonly heat: Polynomial;
  /** W/(m·K) */
  readonly conductivity: Polynomial;
  /** kg/m³ */
  readonly density: Polynomial;
}

const TABLE: Readonly<Record<Part, PartProperties>> = {
  water: {
    // The handbook prints 4.1289, which makes water 1.2 % too light a load at 25 °C. The constant that meets the tables of water
    // (4.182 at 20 °C, 4.184 at 60 °C) is 4.1762: more heat to carry away, so no cooling time comes out too short.
    heat: [4.1762, -9.0864e-5, 5.4731e-6],
    conductivity: [0.57109, 1.7625e-3, -6.7036e-6],
    density: [997.18, 3.1439e-3, -3.7574e-3],
  },
  protein: {
    heat: [2.0082, 1.2089e-3, -1.3129e-6],
    conductivity: [0.17881, 1.1958e-3, -2.7178e-6],
    density: [1329.9, -0.5184, 0],
  },
  fat: {
    heat: [1.9842, 1.4733e-3, -4.8008e-6],
    conductivity: [0.18071, -2.7604e-4, -1.7749e-7],
    density: [925.59, -0.41757, 0],
  },
  carbohydrate: {
    heat: [1.5488, 1.9625e-3, -5.9399e-6],
    conductivity: [0.20141, 1.3874e-3, -4.3312e-6],
    density: [1599.1, -0.31046, 0],
  },
  fibre: {
    heat: [1.8459, 1.8306e-3, -4.6509e-6],
    conductivity: [0.18331, 1.2497e-3, -3.1683e-6],
    density: [1311.5, -0.36589, 0],
  },
  ash: {
    heat: [1.0926, 1.8896e-3, -3.6817e-6],
    conductivity: [0.32962, 1.4011e-3, -2.9069e-6],
    density: [2423.8, -0.28063, 0],
  },
};

const at = ([a, b, c]: Polynomial, celsius: number): number => a + b * celsius + c * celsius ** 2;

export interface HeatProperties {
  /** Specific heat, J/(kg·K). */
  readonly specificHeat: number;
  /** W/(m·K) */
  readonly conductivity: number;
  /** Of the solid food without air between the pieces, kg/m³. */
  readonly density: number;
  /** Conductivity ÷ (density × specific heat), m²/s. */
  readonly diffusivity: number;
}

/**
 * Heat properties of unfrozen food, from its composition.
 *
 * @param composition mass fractions, all ≥ 0 and not all 0; they are scaled to 1
 * @param celsius mean temperature, °C, 0–150
 * @source Choi and Okos (1986); mixing c = Σ x·c, 1/ρ = Σ x/ρ, k = Σ (volume fraction)·k: ASHRAE Handbook, Refrigeration (2006), ch. 9
 */
export function heatProperties(composition: Composition, celsius: number): HeatProperties {
  const total = PARTS.reduce((sum, part) => sum + composition[part], 0);
  if (!(total > 0)) throw new Error('a composition of nothing');
  let heat = 0;
  let volume = 0;
  let conductance = 0;
  for (const part of PARTS) {
    const share = composition[part] / total;
    const each = TABLE[part];
    const partVolume = share / at(each.density, celsius);
    heat += share * at(each.heat, celsius);
    volume += partVolume;
    conductance += partVolume * at(each.conductivity, celsius);
  }
  const specificHeat = heat * 1000;
  const density = 1 / volume;
  const conductivity = conductance / volume;
  return { specificHeat, conductivity, density, diffusivity: conductivity / (density * specificHeat) };
}

/**
 * Specific heat of unfrozen food from its water alone, J/(kg·K).
 * @param waterFraction 0–1
 * @source Siebel's equation above freezing (from memory, not verified; it gives a printed table of specific heats to 0.01 kJ/(kg·K))
 */
export const siebelSpecificHeat = (waterFraction: number): number => 837 + 3349 * waterFraction;

/**
 * Specific heat of unfrozen food from its solids alone, J/(kg·K).
 * @param solidsFraction 0–1
 * @source Chen (1985), as ASHRAE Handbook, Refrigeration (2006), chapter 9, equation 15
 */
export const chenSpecificHeat = (solidsFraction: number): number =>
  4190 - 2300 * solidsFraction - 628 * solidsFraction ** 3;
