/** What is known of each tier of a plan, in words: while it is being proven, and of the plan that came of it. */
import type { PlanProgress } from '../../app/api.ts';
import type { PlanTier, TierId } from '../../solver/kitchen/plan.ts';
import { minutesWords } from '../chart/layout/wall-clock.ts';

/** `proven`; `now`: being proven; `next`: its turn comes; `bounded`: left with a bound; `open`: left without one. */
export type Stand = 'proven' | 'now' | 'next' | 'bounded' | 'open';

export interface TierStand {
  readonly id: TierId;
  readonly name: string;
  readonly stand: Stand;
  readonly words: string;
}

const NAMES: Readonly<Record<TierId, string>> = {
  finish: 'finish',
  'latest-start': 'latest start',
  'others-finish': 'finish of other work',
  waiting: 'food waiting',
  energy: 'energy',
  calm: 'calm',
};

/** An amount of what a tier counts: `12 min`, `0.3 kWh`, `1 change`. */
export function amountWords({ unit }: Pick<PlanTier, 'unit'>, amount: number): string {
  switch (unit) {
    case 'min':
      return minutesWords(amount);
    case 'weighted min':
      return `${amount} weighted min`;
    case 'Wh':
      return amount < 100 ? `${amount} Wh` : `${(amount / 1000).toFixed(1)} kWh`;
    case 'changes':
      return amount === 1 ? '1 change' : `${amount} changes`;
  }
}

function valueWords(tier: PlanTier): string {
  const amount = amountWords(tier, tier.value);
  switch (tier.id) {
    case 'finish':
      return `${amount} to the finish`;
    case 'latest-start':
      return `first hand ${amount} before the table`;
    case 'others-finish':
      return `${amount} to the finish of other work`;
    case 'waiting':
      return tier.value === 0 ? 'no food waits past its best' : `food waits ${amount}`;
    case 'energy':
      return amount;
    case 'calm':
      return `${amount} from dish to dish`;
  }
}

const gapOf = ({ value, bound }: PlanTier): number => Math.max(0, value - bound);
/** Nothing is proved of a tier whose bound is nothing at all, unless its value is nothing too. */
const hasBound = ({ value, bound }: PlanTier): boolean => bound > 0 || value === 0;

function mostBetter(tier: PlanTier): string {
  if (gapOf(tier) === 0) return 'as good as can be';
  return hasBound(tier)
    ? `at most ${amountWords(tier, gapOf(tier))} better is possible`
    : 'how much better is possible is not known yet';
}

/**
 * The best so far in a sentence or two: its first tier with what better is possible, then the tier that is being proven.
 *
 * @param tiers most important first; at least one
 * @param now the tier being proven; undefined: none
 */
export function bestSoFarWords(tiers: readonly PlanTier[], now: TierId | undefined): string {
  const [first] = tiers;
  if (first === undefined) return 'Best so far.';
  const best = `Best so far: ${valueWords(first)}; ${first.proven ? 'proven, no valid plan does better' : mostBetter(first)}.`;
  const tier = tiers.find(({ id }) => id === now);
  if (tier === undefined || tier === first) return best;
  return `${best} Now proving ${NAMES[tier.id]}: ${valueWords(tier)}, ${mostBetter(tier)}.`;
}

/** How far planning is, in a sentence or two. */
export function progressWords(progress: PlanProgress | null): string {
  if (progress === null) return 'Planning…';
  const { tiers = [], tier, bound } = progress;
  if (tiers.length > 0) return bestSoFarWords(tiers, tier);
  return `Planning… looking for a first plan${bound > 0 ? `; none can be under ${minutesWords(bound)}` : ''}`;
}

/** How each tier stands while one of them is being proven. */
export function standsWhile(tiers: readonly PlanTier[], now: TierId | undefined): readonly TierStand[] {
  const turn = tiers.findIndex(({ id }) => id === now);
  return tiers.map((tier, index): TierStand => {
    const common = { id: tier.id, name: NAMES[tier.id] };
    if (tier.proven) return { ...common, stand: 'proven', words: 'proven' };
    if (index === turn) return { ...common, stand: 'now', words: 'being proven' };
    return turn >= 0 && index > turn ? { ...common, stand: 'next', words: 'next' } : { ...common, ...left(tier, true) };
  });
}

/** How each tier of a plan was left. */
export function standsOf(tiers: readonly PlanTier[]): readonly TierStand[] {
  let above = true;
  return tiers.map((tier): TierStand => {
    const stand = tier.proven ? ({ stand: 'proven', words: 'proven' } as const) : left(tier, above);
    above = tier.proven;
    return { id: tier.id, name: NAMES[tier.id], ...stand };
  });
}

function left(tier: PlanTier, provenAbove: boolean): Pick<TierStand, 'stand' | 'words'> {
  // A bound of a later tier holds only under the values of those above it.
  const under = provenAbove ? '' : ', given those above';
  if (!hasBound(tier)) return { stand: 'open', words: 'not bounded yet' };
  if (gapOf(tier) === 0) return { stand: 'bounded', words: `as good as can be${under}` };
  return { stand: 'bounded', words: `within ${amountWords(tier, gapOf(tier))} of the best possible${under}` };
}
