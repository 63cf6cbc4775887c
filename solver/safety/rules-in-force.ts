/** Which rules hold for a session: those of the authority picked; until one is picked, the strictest of all that are built in. */
import type { InputFault } from '../kitchen/fault.ts';
import type { RuleKind, SafetyRule, SafetyRules } from '../kitchen/safety-rules.ts';
import { BUILT_IN_RULES } from './built-in.ts';
import { STRICTEST, strictestOf } from './strictest.ts';

/** In force until somebody picks an authority. */
export const STRICTEST_BUILT_IN: SafetyRules = strictestOf(BUILT_IN_RULES);

/** What every session needs an answer to: where an authority is silent, the strictest built-in rule stands in. */
const NEVER_SILENT: ReadonlySet<RuleKind> = new Set([
  'core',
  'hot-holding',
  'cold-holding',
  'cooling',
  'storage',
  'reheating',
  'washing',
  'toxin',
]);

export type RulesInForce =
  { readonly ok: true; readonly rules: SafetyRules } | { readonly ok: false; readonly faults: readonly InputFault[] };

/**
 * The rules in force.
 *
 * @param authority id of a rule set, built in or the user's own; `strictest` or absent: the strictest of the built-in ones
 * @param own the user's rule sets; one with the id of a built-in set stands for it
 * @param asker title of the document that names the authority, for faults
 * @returns one rule set, every rule with the sets that it is from; or what is wrong with the name
 */
export function rulesInForce(
  authority: string | undefined,
  own: readonly SafetyRules[] = [],
  asker = 'the request',
): RulesInForce {
  if (authority === undefined || authority === STRICTEST) return { ok: true, rules: STRICTEST_BUILT_IN };
  const known = knownRuleSets(own);
  const picked = gather(authority, known, []);
  if (!picked.ok)
    return {
      ok: false,
      faults: [
        {
          document: picked.by === null ? asker : `safety-rules ${picked.by}`,
          path: picked.by === null ? 'authority' : 'and',
          found: picked.why,
          wanted: `one of ${[STRICTEST, ...known.map(({ id }) => id)].join(', ')}`,
          mend: 'correct the id, or put the rule set into the data folder',
        },
      ],
    };
  const [first, ...more] = picked.sets;
  const rules =
    more.length === 0 ? withFrom(first!) : { ...strictestOf(picked.sets), id: authority, name: first!.name };
  return { ok: true, rules: { ...rules, rules: [...rules.rules, ...standIns(rules)] } };
}

/** The user's rule sets and the built-in ones that they do not stand for. */
export const knownRuleSets = (own: readonly SafetyRules[]): readonly SafetyRules[] => [
  ...own,
  ...BUILT_IN_RULES.filter(({ id }) => !own.some((set) => set.id === id)),
];

type Gathered =
  | { readonly ok: true; readonly sets: readonly SafetyRules[] }
  | { readonly ok: false; readonly why: string; readonly by: string | null };

/** A rule set with those that it is added to. */
function gather(id: string, known: readonly SafetyRules[], trail: readonly string[]): Gathered {
  const by = trail.at(-1) ?? null;
  if (trail.includes(id)) return { ok: false, why: `${[...trail, id].join(' is added to ')}, round in a circle`, by };
  const set = known.find((each) => each.id === id);
  if (set === undefined) return { ok: false, why: `no safety rules with the id "${id}"`, by };
  const sets = [set];
  for (const other of set.and ?? []) {
    const under = gather(other, known, [...trail, id]);
    if (!under.ok) return under;
    sets.push(...under.sets.filter((each) => !sets.includes(each)));
  }
  return { ok: true, sets };
}

const withFrom = (set: SafetyRules): SafetyRules => ({
  ...set,
  rules: set.rules.map((rule) => ({ ...rule, from: rule.from ?? [set.id] })),
});

/** What a rule answers: rules with one answer stand for each other. */
function question(rule: SafetyRule): string {
  switch (rule.kind) {
    case 'core':
    case 'storage':
      return `${rule.kind} ${rule.food}`;
    case 'washing':
      return `${rule.kind} ${rule.what}`;
    case 'toxin':
      return `${rule.kind} ${rule.toxin}`;
    case 'cooling':
      return `${rule.kind} ${rule.end.event}`;
    case 'cold-holding':
      return `${rule.kind} ${rule.where}`;
    default:
      return rule.kind;
  }
}

function standIns(rules: SafetyRules): readonly SafetyRule[] {
  const answered = new Set(rules.rules.map(question));
  const wider = new Set(rules.rules.flatMap((rule) => (rule.kind === 'storage' ? [rule.food] : [])));
  return STRICTEST_BUILT_IN.rules.filter((rule) => {
    if (!NEVER_SILENT.has(rule.kind) || answered.has(question(rule))) return false;
    // What the authority says of the wider class holds for this one.
    return !(rule.kind === 'storage' && rule.broader !== undefined && wider.has(rule.broader));
  });
}
