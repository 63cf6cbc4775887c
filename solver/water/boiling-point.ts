/** Vapour pressure, the standard atmosphere, and the boiling point with altitude. */

const MMHG_KPA = 101.325 / 760;
const ANTOINE = { a: 8.07131, b: 1730.63, c: 233.426 };

/**
 * Pressure of the standard atmosphere, kPa.
 * @param altitudeM −500 to 9000 m
 * @see STANDARD_ATMOSPHERE in sources.ts
 */
export function airPressure(altitudeM: number): number {
  return 101.325 * (1 - 2.25577e-5 * altitudeM) ** 5.25588;
}

/**
 * Saturation pressure of water vapour by the Antoine equation, kPa.
 * @param celsius 1–100 °C
 */
export function vapourPressure(celsius: number): number {
  return 10 ** (ANTOINE.a - ANTOINE.b / (ANTOINE.c + celsius)) * MMHG_KPA;
}

/**
 * Temperature at which water boils, °C: where its vapour pressure is that of the air. Salt is left out (a few tenths of a
 * kelvin in a cook's brine).
 * @param altitudeM −500 to 9000 m
 * @see STANDARD_ATMOSPHERE in sources.ts
 */
export function boilingPointC(altitudeM: number): number {
  return ANTOINE.b / (ANTOINE.a - Math.log10(airPressure(altitudeM) / MMHG_KPA)) - ANTOINE.c;
}
