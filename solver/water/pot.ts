/** A pan as heat sees it: its shape from volume and width, and the heat its metal takes. */
import type { Metal, Pan } from '../kitchen/kitchen.ts';

/** kJ/(kg·K). @see PAN_METALS in sources.ts */
export const METALS: Readonly<Record<Metal, number>> = {
  aluminium: 0.897,
  'cast-iron': 0.42,
  iron: 0.447,
  copper: 0.384,
  glass: 0.753,
  steel: 0.5,
};

/** Metal of a pan whose mass is not given, kg for each m² of bottom, wall and lid. Common practice, without a source. */
export const METAL_KG_PER_M2 = 10;

export interface Pot {
  readonly acrossM: number;
  /** Area of its bottom, of its opening and of its lid, m². */
  readonly topM2: number;
  readonly wallM: number;
  readonly wallM2: number;
  /** Heat that its metal takes for each kelvin, kJ/K. */
  readonly metalKJPerK: number;
}

/** A cylinder as wide as the pan that holds its volume. */
export function potOf(pan: Pick<Pan, 'volumeMl' | 'acrossCm' | 'lid' | 'massG' | 'metal'>): Pot {
  const acrossM = pan.acrossCm / 100;
  const topM2 = (Math.PI / 4) * acrossM ** 2;
  const wallM = pan.volumeMl / 1e6 / topM2;
  const wallM2 = Math.PI * acrossM * wallM;
  const metalKg = pan.massG === undefined ? METAL_KG_PER_M2 * (topM2 * (pan.lid ? 2 : 1) + wallM2) : pan.massG / 1000;
  return { acrossM, topM2, wallM, wallM2, metalKJPerK: metalKg * METALS[pan.metal ?? 'steel'] };
}

/** Water alone, without metal or losses: the least that any pan needs. */
export const BARE: Pot = { acrossM: 0, topM2: 0, wallM: 0, wallM2: 0, metalKJPerK: 0 };
