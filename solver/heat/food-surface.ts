/**
 * How readily the surface of food, or of the thing it is in, gives heat to what is around it: natural convection in still air or
 * water, radiation, and evaporation from a wet open surface. Coefficients in W/(m²·K), for surfaces warmer than what is around.
 */
import type { Source } from '../source.ts';

export const CONVECTION: Source = {
  standing: 'secondary',
  cite: 'Natural convection from a horizontal plate (Nu = 0.54·Ra^¼, from Ra 10⁷ 0.15·Ra^⅓ facing up; 0.27·Ra^¼ facing down) and from a sphere (Churchill): Incropera and DeWitt, Fundamentals of Heat and Mass Transfer; Çengel, Heat and Mass Transfer, Table 9-1',
};
export const EMISSIVITY: Source = {
  standing: 'common-practice',
  cite: 'common practice: food, glass, plastic and water 0.9, bright metal 0.2',
};
export const EVAPORATION: Source = {
  standing: 'secondary',
  cite: 'Saturation vapour pressure and psychrometric constant at sea level: Allen and others, Crop evapotranspiration, FAO Irrigation and Drainage Paper 56 (1998), equations 8 and 11; that evaporation follows convection by them: Bowen, Physical Review 27 (1926)',
};

/** Diffusivities in m²/s, conductivity in W/(m·K), expansion per K. */
interface Fluid {
  readonly conductivity: number;
  readonly viscosity: number;
  readonly diffusivity: number;
  readonly expansion: number;
}
/** @source air at 30 °C: Çengel, Heat and Mass Transfer, Table A-15; expansion 1/303 K of an ideal gas */
const AIR: Fluid = { conductivity: 0.02588, viscosity: 1.608e-5, diffusivity: 2.208e-5, expansion: 1 / 303 };
/**
 * @source water at 16 °C: conductivity, viscosity and density in Earle, Unit Operations in Food Processing, appendix 6 (after Fishenden
 *   and Saunders); expansion from the density polynomial of ASHRAE Handbook, Refrigeration (2006), ch. 9: 2·3.7574e-3·16 ÷ 996
 */
const WATER: Fluid = { conductivity: 0.59, viscosity: 1.16e-6, diffusivity: 1.41e-7, expansion: 1.2e-4 };
export type Around = 'air' | 'water';
const fluidOf = (around: Around): Fluid => (around === 'air' ? AIR : WATER);

const GRAVITY = 9.81;
const rayleigh = (fluid: Fluid, deltaK: number, lengthM: number): number =>
  (GRAVITY * fluid.expansion * deltaK * lengthM ** 3) / (fluid.viscosity * fluid.diffusivity);

/**
 * Natural convection from a horizontal plate that is warmer than what is around it.
 *
 * @param deltaK how much warmer, K, > 0
 * @param lengthM area ÷ perimeter, m
 * @source CONVECTION above
 */
export function plateConvection(around: Around, facing: 'up' | 'down', deltaK: number, lengthM: number): number {
  const fluid = fluidOf(around);
  const ra = rayleigh(fluid, deltaK, lengthM);
  // Facing up, the greater of the two laws is the one of its range; so nothing jumps where they meet.
  const nusselt = facing === 'down' ? 0.27 * ra ** 0.25 : Math.max(0.54 * ra ** 0.25, 0.15 * ra ** (1 / 3));
  return (nusselt * fluid.conductivity) / lengthM;
}

/**
 * Natural convection from a sphere that is warmer than what is around it.
 * @param diameterM m, > 0
 * @source CONVECTION above: Nu = 2 + 0.589·Ra^¼ ÷ (1 + (0.469/Pr)^(9/16))^(4/9)
 */
export function sphereConvection(around: Around, deltaK: number, diameterM: number, fluid = fluidOf(around)): number {
  const prandtl = fluid.viscosity / fluid.diffusivity;
  const nusselt =
    2 + (0.589 * rayleigh(fluid, deltaK, diameterM) ** 0.25) / (1 + (0.469 / prandtl) ** (9 / 16)) ** (4 / 9);
  return (nusselt * fluid.conductivity) / diameterM;
}

const STEFAN_BOLTZMANN = 5.67e-8;
const kelvin = (celsius: number): number => celsius + 273.15;

/** Radiation between a surface and walls all around it, as a coefficient: ε·σ·(T₁² + T₂²)·(T₁ + T₂). */
export function radiation(emissivity: number, surfaceC: number, aroundC: number): number {
  const [one, other] = [kelvin(surfaceC), kelvin(aroundC)];
  return emissivity * STEFAN_BOLTZMANN * (one ** 2 + other ** 2) * (one + other);
}
export const MATT = 0.9;
export const BRIGHT = 0.2;

/**
 * Saturation vapour pressure of water, kPa.
 * @source FAO Irrigation and Drainage Paper 56 (1998), equation 11
 */
export const saturationKPa = (celsius: number): number => 0.6108 * Math.exp((17.27 * celsius) / (celsius + 237.3));

/** Psychrometric constant at sea level, kPa/K: c·p/(ε·λ) = 1.013e-3 × 101.3 ÷ (0.622 × 2.45). @source FAO paper 56 (1998), equation 8 */
const PSYCHROMETRIC = 0.0673;

/**
 * How many times the convection from a wet surface evaporation carries away on top of it. The air is taken as moist as it can be,
 * since a kitchen with pots on is; drier air would only carry more.
 */
export function evaporationRatio(surfaceC: number, aroundC: number): number {
  return (saturationKPa(surfaceC) - saturationKPa(aroundC)) / (surfaceC - aroundC) / PSYCHROMETRIC;
}
