/**
 * Heat that leaves a hot surface into still air: natural convection, radiation and, from open water, evaporation. Evaporation
 * follows convection by the analogy of heat and mass transfer, so no constant of cooling is fitted; the lighter vapour drives
 * the convection along with the warmth.
 */
import { vapourPressure } from './boiling-point.ts';
import { latentHeat } from './properties.ts';

const KELVIN = 273.15;
const GRAVITY = 9.81;
const GAS = 8.314;
const MOLAR = { air: 0.02897, water: 0.01802 };
const STEFAN_BOLTZMANN = 5.67e-8;
/** Ratio of thermal diffusivity of air to the diffusivity of vapour in it: 22.5e-6 to 26e-6 m²/s at 300 K. */
const LEWIS = 0.865;
export const WATER_EMISSIVITY = 0.95;
/** Of a steel pan that has seen use. From memory, not verified; textbooks' tables have 0.2 to 0.3. */
export const PAN_EMISSIVITY = 0.3;
/** Of a kitchen's air, where nothing is known of it. Common practice, without a source. */
export const ROOM_HUMIDITY = 0.5;

export interface Air {
  readonly roomC: number;
  /** Pressure, kPa. */
  readonly kPa: number;
}

/**
 * Air at the mean of surface and room temperature: conductivity W/(m·K), viscosity and diffusivity m²/s, specific heat J/(kg·K).
 * Lines through the tabled values at 300 and 350 K (from memory, not verified), the diffusivities set to the pressure.
 */
export function airAt(filmC: number, kPa: number) {
  const part = (filmC + KELVIN - 300) / 50;
  const thin = 101.325 / kPa;
  return {
    conductivity: 0.0263 + (0.03 - 0.0263) * part,
    viscosity: (15.89e-6 + (20.92e-6 - 15.89e-6) * part) * thin,
    diffusivity: (22.5e-6 + (29.9e-6 - 22.5e-6) * part) * thin,
    density: ((kPa * 1000) / GAS / (filmC + KELVIN)) * MOLAR.air,
    specificHeat: 1008,
  };
}

/** Density of moist air, kg/m³. @param vapourKPa pressure of the vapour in it */
const moistDensity = (celsius: number, vapourKPa: number, kPa: number): number =>
  (1000 * (vapourKPa * MOLAR.water + (kPa - vapourKPa) * MOLAR.air)) / (GAS * (celsius + KELVIN));

/** Coefficient of natural convection, W/(m²·K), from the share by which the air at the surface is lighter. */
function convection(lighter: number, lengthM: number, filmC: number, kPa: number, facing: 'up' | 'side'): number {
  const air = airAt(filmC, kPa);
  const rayleigh = (GRAVITY * Math.max(0, lighter) * lengthM ** 3) / (air.viscosity * air.diffusivity);
  const [slow, fast] = facing === 'up' ? [0.54, 0.15] : [0.59, 0.1];
  // The greater of the two laws is the one of its range, and nothing jumps where they meet.
  return (Math.max(slow * rayleigh ** 0.25, fast * rayleigh ** (1 / 3)) * air.conductivity) / lengthM;
}

/** Radiation between a surface and the room, W/m². */
export const radiationWPerM2 = (surfaceC: number, roomC: number, emissivity: number): number =>
  emissivity * STEFAN_BOLTZMANN * ((surfaceC + KELVIN) ** 4 - (roomC + KELVIN) ** 4);

/**
 * Loss of a dry surface, W/m²; none below the room's temperature.
 *
 * @param lengthM height of a wall; of a level surface its area through its rim
 * @see NATURAL_CONVECTION in sources.ts
 */
export function dryLossWPerM2(surfaceC: number, lengthM: number, air: Air, facing: 'up' | 'side'): number {
  const rise = surfaceC - air.roomC;
  if (rise <= 0 || lengthM <= 0) return 0;
  const filmC = (surfaceC + air.roomC) / 2;
  const coefficient = convection(rise / (filmC + KELVIN), lengthM, filmC, air.kPa, facing);
  return coefficient * rise + radiationWPerM2(surfaceC, air.roomC, PAN_EMISSIVITY);
}

/**
 * Vapour that leaves open water for a given coefficient of convection, kg/(s·m²).
 *
 * @param coefficient of convection, W/(m²·K)
 * @see MASS_TRANSFER in sources.ts
 */
export function evaporationKgPerM2S(
  coefficient: number,
  film: { readonly density: number; readonly specificHeat: number },
  vapourDensity: { readonly surface: number; readonly room: number },
  lewis: number = LEWIS,
): number {
  const metresPerSecond = coefficient / (film.density * film.specificHeat * lewis ** (2 / 3));
  return metresPerSecond * Math.max(0, vapourDensity.surface - vapourDensity.room);
}

export interface WetLoss {
  /** W/m². */
  readonly convection: number;
  readonly radiation: number;
  readonly evaporation: number;
  /** kg/(s·m²). */
  readonly vapour: number;
}

/**
 * Loss of an open water surface; none below the room's temperature.
 *
 * @param waterC of the surface, °C, up to the boiling point
 * @param lengthM area of the opening through its rim, m
 * @see NATURAL_CONVECTION and MASS_TRANSFER in sources.ts
 */
export function wetLoss(waterC: number, lengthM: number, air: Air): WetLoss {
  const rise = waterC - air.roomC;
  if (rise <= 0 || lengthM <= 0) return { convection: 0, radiation: 0, evaporation: 0, vapour: 0 };
  const filmC = (waterC + air.roomC) / 2;
  const atSurface = Math.min(air.kPa, vapourPressure(waterC));
  const inRoom = ROOM_HUMIDITY * vapourPressure(Math.max(1, air.roomC));
  const here = moistDensity(waterC, atSurface, air.kPa);
  const there = moistDensity(air.roomC, inRoom, air.kPa);
  const coefficient = convection(((there - here) * 2) / (there + here), lengthM, filmC, air.kPa, 'up');
  const vapourDensity = (kPa: number, celsius: number): number =>
    (1000 * kPa * MOLAR.water) / (GAS * (celsius + KELVIN));
  const vapour = evaporationKgPerM2S(coefficient, airAt(filmC, air.kPa), {
    surface: vapourDensity(atSurface, waterC),
    room: vapourDensity(inRoom, air.roomC),
  });
  return {
    convection: coefficient * rise,
    radiation: radiationWPerM2(waterC, air.roomC, WATER_EMISSIVITY),
    evaporation: vapour * latentHeat(waterC) * 1000,
    vapour,
  };
}
