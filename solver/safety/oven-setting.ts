/** The lowest oven setting at which an authority lets raw food be roasted through. */
import type { RawKind } from '../kitchen/values.ts';

/** 325 °F. */
const ROASTING_C = 162.8;

/**
 * Least oven setting for cooking raw food through, °C.
 *
 * @returns `null` where no authority names one (fish and egg)
 * @see source: US Department of Agriculture, Food Safety and Inspection Service, "How Temperatures Affect Food" (2020): meat and
 *   poultry are roasted in an oven set no lower than 325 °F. Region: United States; the strictest found, used until one is picked.
 */
export function leastOvenC(raw: RawKind): number | null {
  switch (raw) {
    case 'meat':
    case 'poultry':
      return ROASTING_C;
    case 'fish':
    case 'egg':
      return null;
  }
}
