/**
 * The cautions to show with a plan, from what the plan holds: what it claims, what it leaves to the cook, and whose rules it was made
 * under. They go onto every face of a plan: screen, paper and text.
 */
import type { Component } from '../kitchen/component.ts';
import type { Plan } from '../kitchen/plan.ts';
import type { RuleKind, RuleOf, SafetyRules } from '../kitchen/safety-rules.ts';
import { packedDishes } from '../kitchen/packed-dishes.ts';
import type { RawKind } from '../kitchen/values.ts';
import { lastHeat } from './last-heat.ts';
import { coldHolding, fridgeDays, fridgeDeadline, handWash, hotHolding, pairsInWords } from './limits.ts';
import { STRICTEST_BUILT_IN } from './rules-in-force.ts';
import { STRICTEST } from './strictest.ts';

export interface Caution {
  readonly id:
    | 'probe'
    | 'local-rules'
    | 'raw'
    | 'cooling'
    | 'not-put-away'
    | 'keeping'
    | 'reheating'
    | 'hot-holding'
    | 'toxin'
    | 'pulses'
    | 'unsourced'
    | 'allergies';
  /** One to three sentences. */
  readonly words: string;
}

const list = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`;
const names = (components: readonly Component[]): string => list(components.map(({ name }) => name));

/** The cautions of a plan, the ones that hold for every plan among them. */
export function cautionsOf(plan: Plan): readonly Caution[] {
  const rules = plan.rules ?? STRICTEST_BUILT_IN;
  const say = (id: Caution['id'], words: string | null): readonly Caution[] => (words === null ? [] : [{ id, words }]);
  return [
    ...say('probe', probeWords(plan)),
    ...say('local-rules', rulesWords(rules)),
    ...say('raw', rawWords(plan, rules)),
    ...say('cooling', coolingWords(plan, rules)),
    ...say('not-put-away', leftOutWords(plan, rules)),
    ...say('keeping', keepingWords(plan, rules)),
    ...say('reheating', reheatingWords(plan, rules)),
    ...say('hot-holding', holdingWords(plan, rules)),
    ...say('toxin', toxinWords(plan, rules)),
    ...say('pulses', pulseWords(plan)),
    ...say('unsourced', unsourcedWords(rules)),
    ...say(
      'allergies',
      'Allergen handling at home is no guarantee for someone with a severe allergy: ask that person, and read every label.',
    ),
  ];
}

function probeWords(plan: Plan): string {
  const first = 'A probe thermometer decides when food is done, not the minutes of a plan.';
  const through = plan.components.some(({ steps }) => steps.some((step) => step.cooksThrough !== undefined));
  if (!through) return first;
  return `${first} The plan keeps a minute for each reading; it does not claim that a temperature is reached. Cook on until it is.`;
}

function rulesWords(rules: SafetyRules): string {
  const held =
    rules.id === STRICTEST
      ? `Nobody has picked an authority, so the strictest built-in rules hold (${rules.region}).`
      : `Made under the safety rules “${rules.name}” (${rules.authority}; ${rules.region}).`;
  return `${held} Local food-safety rules and what the label says come first; this tool replaces neither.`;
}

const rulesOf = <K extends RuleKind>(rules: SafetyRules, kind: K): readonly RuleOf<K>[] =>
  rules.rules.filter((rule): rule is RuleOf<K> => rule.kind === kind);

function rawWords({ components }: Plan, rules: SafetyRules): string | null {
  const raw = new Set<RawKind>(components.flatMap(({ ingredients }) => ingredients.flatMap((each) => each.raw ?? [])));
  if (raw.size === 0) return null;
  const wash = handWash(rules);
  const unwashed = raw.has('poultry') ? rulesOf(rules, 'rinsing').filter(({ rinse }) => !rinse) : [];
  return [
    `After raw ${list([...raw])}, wash hands with soap${wash === null ? '' : ` for ${wash.value} s or longer`}, and board and knife in hot soapy water.`,
    ...unwashed.map(({ says }) => says),
  ].join(' ');
}

/** Components that are kept and have been hot. */
const keptHot = (plan: Plan, rules: SafetyRules): readonly Component[] => {
  const boxed = new Set(packedDishes(plan.session));
  return plan.components.filter(
    (component) =>
      ((plan.session.packing !== undefined && boxed.has(component.id)) ||
        component.steps.some((step) => step.putsAway === true)) &&
      lastHeat(component, hotHolding(rules)?.value ?? 0).length > 0,
  );
};

const putAway = (plan: Plan, component: Component): boolean =>
  component.steps.some((step) => step.putsAway === true) || plan.session.packing?.putAway !== undefined;

function coolingWords(plan: Plan, rules: SafetyRules): string | null {
  const kept = keptHot(plan, rules).filter((component) => putAway(plan, component));
  if (kept.length === 0) return null;
  const deadlines = kept.flatMap((each) => fridgeDeadline(rules, each.storage, plan.kitchen.roomC)?.value ?? []);
  const fridge = coldHolding(rules, 'fridge');
  const stages = rulesOf(rules, 'cooling').flatMap(({ start, end, mostMinutes }) =>
    start.event === 'core-below' && end.event === 'core-at-most'
      ? [`to ${Math.floor(end.celsius)} °C within ${mostMinutes / 60} h`]
      : [],
  );
  return [
    deadlines.length === 0
      ? ''
      : `Food that is kept goes into the fridge within ${Math.min(...deadlines)} min of the heat: the plan keeps to that, and does not know how warm the food is.`,
    stages.length === 0 ? '' : `Its core should fall from hot holding ${list(stages)}.`,
    fridge === null ? '' : `The fridge is at ${Math.floor(fridge.value)} °C or below.`,
  ]
    .filter((words) => words !== '')
    .join(' ');
}

function leftOutWords(plan: Plan, rules: SafetyRules): string | null {
  const left = keptHot(plan, rules).filter((component) => !putAway(plan, component));
  if (left.length === 0) return null;
  const deadlines = left.flatMap((each) => fridgeDeadline(rules, each.storage, plan.kitchen.roomC)?.value ?? []);
  const within = deadlines.length === 0 ? 'soon' : `within ${Math.min(...deadlines)} min of the heat`;
  return `Nothing in this plan puts ${names(left)} into the fridge: what is not eaten must be there ${within}.`;
}

function keepingWords({ components }: Plan, rules: SafetyRules): string | null {
  const guessed = components.filter(({ storage }) => fridgeDays(rules, storage)?.assumed !== undefined);
  const days = fridgeDays(rules, undefined)?.value;
  if (days === undefined || guessed.length === 0) return null;
  return `${names(guessed)}: no storage class that the rules know, so counted as cooked leftovers, ${days} ${days === 1 ? 'day' : 'days'} in the fridge at most.`;
}

function reheatingWords(plan: Plan, rules: SafetyRules): string | null {
  const [rule] = rulesOf(rules, 'reheating');
  if (rule === undefined || keptHot(plan, rules).length === 0) return null;
  const times = rule.times === undefined ? '' : rule.times === 1 ? ' once' : ` at most ${rule.times} times`;
  return `Reheat${times}, to ${pairsInWords(rule.pairs).replaceAll(', ', ', or ')} in the core.`;
}

function holdingWords({ components }: Plan, rules: SafetyRules): string | null {
  const limit = hotHolding(rules);
  const held = components.some(({ steps }) => steps.some((step) => step.hotHold !== undefined));
  return limit === null || !held
    ? null
    : `Food that is kept hot stays at ${limit.value} °C or hotter: check it with the probe.`;
}

function toxinWords({ components }: Plan, rules: SafetyRules): string | null {
  const held = new Set(components.flatMap((each) => each.ingredients.flatMap(({ toxin }) => toxin?.kind ?? [])));
  const told = rulesOf(rules, 'toxin').filter(({ toxin }) => held.has(toxin));
  if (told.length === 0) return null;
  return told
    .map(
      ({ name, soakMinutes, boilMinutes }) =>
        `The ${name} is destroyed only by soaking for ${soakMinutes / 60} h, fresh water, and a full boil for ${boilMinutes} min; a slow cooker alone is not hot enough.`,
    )
    .join(' ');
}

function pulseWords({ components }: Plan): string | null {
  const pulses = components.flatMap(({ ingredients }) =>
    ingredients.filter(({ group, toxin }) => group === 'pulse' && toxin === undefined),
  );
  if (pulses.length === 0) return null;
  return `Dried kidney beans and their like hold a toxin until soaked and boiled. Of ${list([...new Set(pulses.map(({ name }) => name))])} the recipes name none: see that they are no such beans, or come cooked.`;
}

function unsourcedWords({ rules }: SafetyRules): string | null {
  const unsourced = rules.filter(({ source }) =>
    ['from-memory', 'invented', 'common-practice'].includes(source.standing),
  );
  return unsourced.length === 0
    ? null
    : `No published source stands behind the rules ${list(unsourced.map(({ id }) => id))}.`;
}
