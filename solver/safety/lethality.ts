/**
 * Core temperatures and holds: whether a method meets a table of pairs, and what hold at another temperature does the same.
 *
 * Notation: T core temperature, °C; t hold, s; z the rise in T that shortens t tenfold, °C.
 */
import type { CorePair } from '../kitchen/safety-rules.ts';

/**
 * The hold that a table asks for at a core temperature, s. Between two rows the longer hold of the cooler one counts: never less
 * than the authority asks, whatever the curve between them.
 *
 * @param pairs rows from cooler to hotter
 * @returns `Infinity` below the coolest row: no hold is long enough
 */
export function holdAsked(pairs: readonly CorePair[], celsius: number): number {
  return pairs.filter((pair) => pair.celsius <= celsius).at(-1)?.holdSeconds ?? Infinity;
}

/** Whether a core temperature, °C, held for some seconds meets a table of pairs. */
export const meetsPairs = (pairs: readonly CorePair[], celsius: number, holdSeconds: number): boolean =>
  holdSeconds >= holdAsked(pairs, celsius);

/**
 * The pairs that meet every one of several tables: at each temperature that some table names, the longest hold that any asks for.
 *
 * @param tables at least one, each from cooler to hotter
 */
export function pairsForAll(tables: readonly (readonly CorePair[])[]): CorePair[] {
  const named = [...new Set(tables.flatMap((pairs) => pairs.map(({ celsius }) => celsius)))].sort((a, b) => a - b);
  const rows = named
    .map((celsius) => ({ celsius, holdSeconds: Math.max(...tables.map((pairs) => holdAsked(pairs, celsius))) }))
    .filter(({ holdSeconds }) => Number.isFinite(holdSeconds));
  // A row that asks for no less than the cooler one before it says nothing new.
  return rows.filter(({ holdSeconds }, index) => index === 0 || holdSeconds < rows[index - 1]!.holdSeconds);
}

/**
 * A hold at another temperature that does the same: t₂ = t₁ · 10^((T₁ − T₂) / z). Arithmetic for reading tables; no method is
 * accepted by it, since z differs with the food and the germ.
 *
 * @param zC °C, > 0
 * @returns seconds
 */
export const equalHold = (pair: CorePair, celsius: number, zC: number): number =>
  pair.holdSeconds * 10 ** ((pair.celsius - celsius) / zC);

/**
 * The z that two rows of a table imply: z = (T₂ − T₁) / log₁₀(t₁ / t₂).
 *
 * @returns °C; NaN where a hold is 0
 */
export function impliedZ(cooler: CorePair, hotter: CorePair): number {
  if (cooler.holdSeconds <= 0 || hotter.holdSeconds <= 0) return NaN;
  return (hotter.celsius - cooler.celsius) / Math.log10(cooler.holdSeconds / hotter.holdSeconds);
}
