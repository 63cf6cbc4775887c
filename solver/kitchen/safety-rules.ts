/**
 * The safety-rules document: what one authority asks of cooking, holding, cooling and keeping food, each rule with its source. The
 * user can write further ones, alone or on top of others.
 */
import * as v from 'valibot';
import { Celsius, Id, Name, Note, RawKind, numberBetween, wholeBetween } from './values.ts';

/** Foods that core temperatures are told for. Meat is whole (an uncut muscle) or minced. */
export const CORE_FOODS = ['whole-meat', 'minced-meat', 'poultry', 'fish', 'egg'] as const;
export const CoreFood = v.picklist(CORE_FOODS, `one of ${CORE_FOODS.join(', ')}`);
export type CoreFood = v.InferOutput<typeof CoreFood>;

/** Where a rule is from: see `Source`. */
export const RuleSource = v.strictObject({
  standing: v.picklist(
    ['published', 'secondary', 'derived', 'common-practice', 'from-memory', 'invented', 'reading'],
    'one of published, secondary, derived, common-practice, from-memory, invented, reading',
  ),
  cite: v.pipe(v.string(), v.nonEmpty('a document'), v.maxLength(1000, 'at most 1,000 characters')),
  region: v.optional(Name),
});

const base = {
  id: Id,
  source: RuleSource,
  /** Year or number of the edition, or when it was read. */
  edition: Name,
  /** Ids of the rule sets that it came from, where several were taken together. */
  from: v.optional(v.array(Id)),
};

/** A core temperature, °C, with the seconds it must be held there; warmer counts the same. */
export const CorePair = v.strictObject({ celsius: Celsius, holdSeconds: numberBetween(0, 100_000, 's') });
export type CorePair = v.InferOutput<typeof CorePair>;

/** From cooler to hotter, none with a longer hold than the one before it. */
const Pairs = v.pipe(v.array(CorePair), v.nonEmpty('at least one pair'));

/** When the time of a limit begins or ends. */
export const SafetyEvent = v.variant('event', [
  /** The food leaves the last heat that it gets. */
  v.strictObject({ event: v.literal('off-the-heat') }),
  /** Its core falls below this, °C. */
  v.strictObject({ event: v.literal('core-below'), celsius: Celsius }),
  /** Its core is at or below this, °C. */
  v.strictObject({ event: v.literal('core-at-most'), celsius: Celsius }),
  v.strictObject({ event: v.literal('into-the-fridge') }),
  /** Food that was never hot is made. */
  v.strictObject({ event: v.literal('made') }),
]);
export type SafetyEvent = v.InferOutput<typeof SafetyEvent>;

const Span = v.strictObject({
  least: numberBetween(0, 3650, '(time)'),
  most: numberBetween(0, 3650, '(time)'),
});

export const SafetyRule = v.variant('kind', [
  /** The core reaches one of the pairs; whole meat then rests. */
  v.strictObject({
    kind: v.literal('core'),
    ...base,
    food: CoreFood,
    pairs: Pairs,
    restSeconds: v.optional(numberBetween(0, 36_000, 's')),
  }),
  /** Least setting of an oven that cooks the food through. */
  v.strictObject({ kind: v.literal('oven-setting'), ...base, food: CoreFood, leastC: Celsius }),
  v.strictObject({ kind: v.literal('hot-holding'), ...base, leastC: Celsius }),
  v.strictObject({
    kind: v.literal('cold-holding'),
    ...base,
    where: v.picklist(['fridge', 'freezer'], 'fridge or freezer'),
    mostC: Celsius,
  }),
  /** From one event to another in at most so many minutes. */
  v.strictObject({
    kind: v.literal('cooling'),
    ...base,
    /** Storage class that it is for; absent: all food. */
    food: v.optional(Id),
    start: SafetyEvent,
    end: SafetyEvent,
    mostMinutes: wholeBetween(1, 10_000, 'minutes'),
    /** Only in rooms warmer than this, °C. */
    roomAboveC: v.optional(Celsius),
  }),
  /** How long a class of food keeps. */
  v.strictObject({
    kind: v.literal('storage'),
    ...base,
    food: Id,
    name: Name,
    /** The wider class: what is said of it holds for this one where nothing is said of this. */
    broader: v.optional(Id),
    /** A range counts by its shorter end. */
    fridgeDays: v.optional(Span),
    /** For quality alone: frozen food stays safe. */
    freezerMonths: v.optional(Span),
  }),
  v.strictObject({
    kind: v.literal('reheating'),
    ...base,
    pairs: Pairs,
    times: v.optional(wholeBetween(1, 10, 'times')),
  }),
  /** What is washed after raw food, before it touches anything that is not cooked. */
  v.strictObject({
    kind: v.literal('washing'),
    ...base,
    after: v.array(RawKind),
    what: v.picklist(['hands', 'board-and-knife'], 'hands or board-and-knife'),
    leastSeconds: v.optional(numberBetween(0, 1800, 's')),
  }),
  /** Raw and ready-to-eat food are kept apart, as the sentence says. */
  v.strictObject({ kind: v.literal('separation'), ...base, says: Note }),
  /** A food that is rinsed before use, or must not be. */
  v.strictObject({ kind: v.literal('rinsing'), ...base, food: Name, rinse: v.boolean(), says: Note }),
  /** A toxin that soaking and boiling destroy: its water is poured away. */
  v.strictObject({
    kind: v.literal('toxin'),
    ...base,
    toxin: Id,
    name: Name,
    soakMinutes: wholeBetween(0, 10_000, 'minutes'),
    boilMinutes: wholeBetween(0, 1000, 'minutes'),
  }),
]);
export type SafetyRule = v.InferOutput<typeof SafetyRule>;
export type RuleKind = SafetyRule['kind'];
export type RuleOf<K extends RuleKind> = Extract<SafetyRule, { kind: K }>;

export const SafetyRules = v.strictObject({
  kind: v.literal('safety-rules'),
  version: v.literal(1),
  id: Id,
  name: Name,
  note: v.optional(Note),
  /** Country or union that it holds in. */
  region: Name,
  /** Whose rules they are. */
  authority: Name,
  /** Ids of further rule sets that it is added to: the stricter of each two rules holds. */
  and: v.optional(v.array(Id)),
  rules: v.array(SafetyRule),
});
export type SafetyRules = v.InferOutput<typeof SafetyRules>;

/** The raw kinds that a core rule is for. */
export const coreFoodOf = (raw: RawKind, cut?: 'whole' | 'minced'): CoreFood =>
  // Meat that does not say so may be minced, of which more is asked.
  raw === 'meat' ? (cut === 'whole' ? 'whole-meat' : 'minced-meat') : raw;
