/** Water as a substance: specific heat, latent heat and density with temperature. */

/** kJ/(kg·K) at °C. @see WATER_TABLE in sources.ts */
const SPECIFIC_HEAT: readonly (readonly [celsius: number, value: number])[] = [
  [10, 4.192],
  [20, 4.182],
  [40, 4.179],
  [60, 4.184],
  [80, 4.196],
  [100, 4.216],
];

/**
 * Specific heat of water, kJ/(kg·K), linear between the table's rows.
 * @param celsius 0–100 °C; beyond the table its last row holds
 * @see WATER_TABLE in sources.ts
 */
export function specificHeat(celsius: number): number {
  const rows = SPECIFIC_HEAT;
  if (celsius <= rows[0]![0]) return rows[0]![1];
  for (let index = 1; index < rows.length; index++) {
    const [fromC, from] = rows[index - 1]!;
    const [toC, to] = rows[index]!;
    if (celsius <= toC) return from + ((to - from) * (celsius - fromC)) / (toC - fromC);
  }
  return rows.at(-1)![1];
}

/**
 * Latent heat of vaporisation, kJ/kg: the line through 2256 at 100 °C and 2378 at 325 K (51.85 °C).
 * @param celsius 0–100 °C
 * @see WATER_TABLE in sources.ts; 2378: saturated water at 325 K in the property tables of heat transfer textbooks
 */
export function latentHeat(celsius: number): number {
  return 2256 + ((2378 - 2256) / (100 - 51.85)) * (100 - celsius);
}

/**
 * Density of water, kg/m³ (g/L).
 * @param celsius 0–100 °C
 * @see WATER_DENSITY in sources.ts
 */
export function density(celsius: number): number {
  return 997.18 + 3.1439e-3 * celsius - 3.7574e-3 * celsius ** 2;
}

/** Mass of a volume measured cold, kg. @param ml mL @param celsius temperature at which it was measured */
export function massKg(ml: number, celsius: number): number {
  return (ml * density(celsius)) / 1e6;
}
