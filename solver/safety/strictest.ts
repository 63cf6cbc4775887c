/** Several rule sets taken together: of each two rules about the same thing the stricter holds: hotter, longer, colder, sooner. */
import type { RuleKind, RuleOf, SafetyEvent, SafetyRule, SafetyRules } from '../kitchen/safety-rules.ts';
import { pairsForAll } from './lethality.ts';
import { storageRule } from './storage.ts';

/** Id of the rules in force while nobody has picked an authority. */
export const STRICTEST = 'strictest';

/** Characters that the schema allows in a name, and in a citation. */
const MOST_NAME = 120;
const MOST_CITE = 1000;

interface Owned<R extends SafetyRule = SafetyRule> {
  readonly set: SafetyRules;
  readonly rule: R;
}

/** What has `rule` in force once taken together: ids of the sets behind it. */
const ownersOf = ({ set, rule }: Owned): readonly string[] => rule.from ?? [set.id];

/**
 * The strictest of several rule sets, rule by rule.
 *
 * @param sets at least one
 * @returns a rule set in which each rule says from which sets it is; never laxer than any of the given ones
 */
export function strictestOf(sets: readonly SafetyRules[]): SafetyRules {
  const all = sets.flatMap((set) => set.rules.map((rule): Owned => ({ set, rule })));
  const groups = new Map<string, Owned[]>();
  for (const owned of all) {
    const key = keyOf(owned.rule);
    groups.set(key, [...(groups.get(key) ?? []), owned]);
  }
  return {
    kind: 'safety-rules',
    version: 1,
    id: STRICTEST,
    name: `the strictest of ${sets.map(({ name }) => name).join(' and ')}`.slice(0, MOST_NAME),
    region: [...new Set(sets.map(({ region }) => region))].join(', ').slice(0, MOST_NAME),
    authority: [...new Set(sets.map(({ authority }) => authority))].join('; ').slice(0, MOST_NAME),
    rules: [...groups].map(([key, group]): SafetyRule => {
      const merged =
        group[0]!.rule.kind === 'storage' ? storageOf(group as Owned<RuleOf<'storage'>>[], sets) : merge(group);
      return { ...merged, id: key.slice(0, MOST_NAME) };
    }),
  };
}

const eventKey = (event: SafetyEvent): string =>
  'celsius' in event ? `${event.event}-${slug(event.celsius)}` : event.event;
const slug = (number: number): string => String(number).replace('-', 'minus-').replace('.', '-');

/** Rules with one key are about the same thing; it is an id. */
function keyOf(rule: SafetyRule): string {
  switch (rule.kind) {
    case 'core':
    case 'oven-setting':
    case 'storage':
      return `${rule.kind}-${rule.food}`;
    case 'hot-holding':
    case 'reheating':
      return rule.kind;
    case 'cold-holding':
      return `cold-${rule.where}`;
    case 'cooling': {
      const room = rule.roomAboveC === undefined ? '' : `-room-above-${slug(rule.roomAboveC)}`;
      return `cooling-${rule.food ?? 'any-food'}-${eventKey(rule.start)}-to-${eventKey(rule.end)}${room}`;
    }
    case 'washing':
      return `washing-${rule.what}-after-${[...rule.after].sort().join('-')}`;
    case 'toxin':
      return `toxin-${rule.toxin}`;
    case 'separation':
    case 'rinsing':
      return `${rule.kind}-${rule.id}`;
  }
}

/** The rule with the smallest measure, as it stands, with the sets that ask for just as much. */
function pick<R extends SafetyRule>(group: readonly Owned<R>[], measure: (rule: R) => number): R {
  const best = Math.min(...group.map(({ rule }) => measure(rule)));
  const chosen = group.filter(({ rule }) => measure(rule) === best);
  return { ...chosen[0]!.rule, from: [...new Set(chosen.flatMap(ownersOf))] };
}

/** Rules of which each asks for something: their sources are told together. */
function together<R extends SafetyRule>(group: readonly Owned<R>[]): Pick<R, 'source' | 'edition' | 'from'> {
  const [first] = group;
  const list = (texts: readonly string[]): string => [...new Set(texts)].join('; ');
  const standings = [
    'reading',
    'published',
    'derived',
    'secondary',
    'common-practice',
    'from-memory',
    'invented',
  ] as const;
  const weakest = Math.max(...group.map(({ rule }) => standings.indexOf(rule.source.standing)));
  return {
    source: {
      ...first!.rule.source,
      standing: standings[weakest]!,
      cite: list(group.map(({ rule }) => rule.source.cite)).slice(0, MOST_CITE),
      region: list(group.map(({ set, rule }) => rule.source.region ?? set.region)).slice(0, MOST_NAME),
    },
    edition: list(group.map(({ rule }) => rule.edition)).slice(0, MOST_NAME),
    from: [...new Set(group.flatMap(ownersOf))],
  };
}

const as = <K extends RuleKind>(group: readonly Owned[]): readonly Owned<RuleOf<K>>[] =>
  group as readonly Owned<RuleOf<K>>[];

function merge(group: readonly Owned[]): SafetyRule {
  const [{ rule }] = group as [Owned];
  switch (rule.kind) {
    case 'core': {
      const cores = as<'core'>(group);
      const restSeconds = Math.max(...cores.map((each) => each.rule.restSeconds ?? 0));
      const pairs = pairsForAll(cores.map((each) => each.rule.pairs));
      return { ...rule, ...together(cores), pairs, ...(restSeconds > 0 ? { restSeconds } : {}) };
    }
    case 'reheating': {
      const ways = as<'reheating'>(group);
      const times = Math.min(...ways.map((each) => each.rule.times ?? Infinity));
      const pairs = pairsForAll(ways.map((each) => each.rule.pairs));
      return { ...rule, ...together(ways), pairs, ...(Number.isFinite(times) ? { times } : {}) };
    }
    case 'toxin': {
      const toxins = as<'toxin'>(group);
      const most = (of: (each: RuleOf<'toxin'>) => number): number => Math.max(...toxins.map((each) => of(each.rule)));
      const soakMinutes = most((each) => each.soakMinutes);
      return { ...rule, ...together(toxins), soakMinutes, boilMinutes: most((each) => each.boilMinutes) };
    }
    case 'oven-setting':
      return pick(as<'oven-setting'>(group), ({ leastC }) => -leastC);
    case 'hot-holding':
      return pick(as<'hot-holding'>(group), ({ leastC }) => -leastC);
    case 'cold-holding':
      return pick(as<'cold-holding'>(group), ({ mostC }) => mostC);
    case 'cooling':
      return pick(as<'cooling'>(group), ({ mostMinutes }) => mostMinutes);
    case 'washing':
      return pick(as<'washing'>(group), ({ leastSeconds }) => -(leastSeconds ?? 0));
    case 'storage':
    case 'separation':
    case 'rinsing':
      return pick(group, () => 0);
  }
}

/** A class of food keeps as long as the strictest set lets it, by what the set says of it or of its wider class. */
function storageOf(group: readonly Owned<RuleOf<'storage'>>[], sets: readonly SafetyRules[]): RuleOf<'storage'> {
  const food = group[0]!.rule.food;
  const broader = group.find(({ rule }) => rule.broader !== undefined)?.rule.broader;
  const said = sets.flatMap((set): Owned<RuleOf<'storage'>>[] => {
    const rule = storageRule(set, food, broader);
    return rule === null ? [] : [{ set, rule }];
  });
  const days = (rule: RuleOf<'storage'>): number => rule.fridgeDays?.least ?? Infinity;
  const [own] = group;
  const chosen = pick(said, days);
  const freezer = said.flatMap(({ rule }) => rule.freezerMonths ?? []).sort((a, b) => a.least - b.least)[0];
  return {
    ...chosen,
    food,
    name: own!.rule.name,
    ...(broader === undefined ? {} : { broader }),
    ...(freezer === undefined ? {} : { freezerMonths: freezer }),
  };
}
