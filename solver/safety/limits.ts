/** The figures that a rule set asks for, each with the rule behind it. */
import {
  coreFoodOf,
  type CoreFood,
  type CorePair,
  type RuleKind,
  type RuleOf,
  type SafetyRules,
} from '../kitchen/safety-rules.ts';
import type { RawKind } from '../kitchen/values.ts';
import { STRICTEST_BUILT_IN } from './rules-in-force.ts';
import { storageRule, UNNAMED_CLASS } from './storage.ts';

/** A figure with the rule that asks for it. */
export interface Limit<K extends RuleKind = RuleKind> {
  readonly value: number;
  readonly unit: 'min' | 's' | '°C' | 'd';
  readonly rule: RuleOf<K>;
}

const rulesOf = <K extends RuleKind>(rules: SafetyRules, kind: K): readonly RuleOf<K>[] =>
  rules.rules.filter((rule): rule is RuleOf<K> => rule.kind === kind);

/** The limit with the smallest value; null: there is none. */
const least = <K extends RuleKind>(limits: readonly Limit<K>[]): Limit<K> | null =>
  [...limits].sort((a, b) => a.value - b.value)[0] ?? null;
const most = <K extends RuleKind>(limits: readonly Limit<K>[]): Limit<K> | null =>
  [...limits].sort((a, b) => b.value - a.value)[0] ?? null;

/** What cooks raw food through. */
export interface CookingThrough {
  readonly raw: RawKind;
  readonly cut?: 'whole' | 'minced' | undefined;
}

const foodOf = ({ raw, cut }: CookingThrough): CoreFood => coreFoodOf(raw, cut);

/**
 * Core temperatures, °C, with their holds, s, from cooler to hotter.
 *
 * @returns null where the rules say nothing of such food
 */
export const coreRule = (rules: SafetyRules, through: CookingThrough): RuleOf<'core'> | null =>
  rulesOf(rules, 'core').find(({ food }) => food === foodOf(through)) ?? null;

/** Least oven setting for cooking such food through, °C; null where the rules name none. */
export const leastOvenC = (rules: SafetyRules, through: CookingThrough): Limit<'oven-setting'> | null =>
  most(
    rulesOf(rules, 'oven-setting')
      .filter(({ food }) => food === foodOf(through))
      .map((rule) => ({ value: rule.leastC, unit: '°C', rule })),
  );

/** Least temperature at which food is kept hot, °C. */
export const hotHolding = (rules: SafetyRules): Limit<'hot-holding'> | null =>
  most(rulesOf(rules, 'hot-holding').map((rule) => ({ value: rule.leastC, unit: '°C', rule })));

/** Highest temperature of the fridge or freezer, °C. */
export const coldHolding = (rules: SafetyRules, where: 'fridge' | 'freezer'): Limit<'cold-holding'> | null =>
  least(
    rulesOf(rules, 'cold-holding')
      .filter((rule) => rule.where === where)
      .map((rule) => ({ value: rule.mostC, unit: '°C', rule })),
  );

/** Rules of cooling that are for food of a storage class in a room, °C. */
export const coolingRules = (
  rules: SafetyRules,
  storage: string | undefined,
  roomC: number,
): readonly RuleOf<'cooling'>[] =>
  rulesOf(rules, 'cooling').filter(
    ({ food, roomAboveC }) =>
      (food === undefined || food === storage) && (roomAboveC === undefined || roomC > roomAboveC),
  );

/**
 * Most minutes from the last heat to the fridge.
 *
 * @param storage class of the food; absent: any food
 */
export const fridgeDeadline = (
  rules: SafetyRules,
  storage: string | undefined,
  roomC: number,
): Limit<'cooling'> | null =>
  least(
    coolingRules(rules, storage, roomC)
      .filter(({ start, end }) => start.event !== 'made' && end.event === 'into-the-fridge')
      .map((rule) => ({ value: rule.mostMinutes, unit: 'min', rule })),
  );

/** How long food keeps in the fridge, and why that is what counts. */
export interface Keeping extends Limit<'storage'> {
  /** The component names no class; or one that no rule tells of: then cooked leftovers count. Absent: as it says. */
  readonly assumed?: 'no class' | 'unknown class';
}

/**
 * Days that a class of food keeps in the fridge; a range counts by its shorter end.
 *
 * @param storage class of the food; absent or unknown: that of cooked leftovers
 * @returns null where the class has no time in the fridge
 */
export function fridgeDays(rules: SafetyRules, storage: string | undefined): Keeping | null {
  const broader = storage === undefined ? undefined : storageRule(STRICTEST_BUILT_IN, storage)?.broader;
  const named = storage === undefined ? null : storageRule(rules, storage, broader);
  const rule = named ?? storageRule(rules, UNNAMED_CLASS) ?? storageRule(STRICTEST_BUILT_IN, UNNAMED_CLASS);
  if (rule?.fridgeDays === undefined) return null;
  const limit = { value: rule.fridgeDays.least, unit: 'd', rule } as const;
  if (named !== null) return limit;
  return { ...limit, assumed: storage === undefined ? 'no class' : 'unknown class' };
}

/** Least seconds of washing hands after raw food; null where no rule names any. */
export const handWash = (rules: SafetyRules): Limit<'washing'> | null =>
  most(
    rulesOf(rules, 'washing').flatMap((rule) =>
      rule.what !== 'hands' || rule.leastSeconds === undefined
        ? []
        : [{ value: rule.leastSeconds, unit: 's' as const, rule }],
    ),
  );

/** What soaking and boiling a toxin asks; null where the rules do not know it. */
export const toxinRule = (rules: SafetyRules, toxin: string): RuleOf<'toxin'> | null =>
  rulesOf(rules, 'toxin').find((rule) => rule.toxin === toxin) ?? null;

/** Toxins that the rules tell of. */
export const toxins = (rules: SafetyRules): readonly string[] => rulesOf(rules, 'toxin').map(({ toxin }) => toxin);

/** Pairs in words: "70 °C for 2 min, 75 °C for 30 s". */
export const pairsInWords = (pairs: readonly CorePair[]): string =>
  pairs.map(({ celsius, holdSeconds }) => `${celsius} °C${holdInWords(holdSeconds)}`).join(', ');

function holdInWords(seconds: number): string {
  if (seconds === 0) return '';
  return seconds % 60 === 0 ? ` for ${seconds / 60} min` : ` for ${seconds} s`;
}
