/** All rule sets here are built in or invented. */
import fc from 'fast-check';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import {
  CORE_FOODS,
  SafetyRules as SafetyRulesSchema,
  type CorePair,
  type RuleOf,
  type SafetyRule,
  type SafetyRules,
} from '../../../solver/kitchen/safety-rules.ts';
import { BUILT_IN_RULES } from '../../../solver/safety/built-in.ts';
import { meetsPairs } from '../../../solver/safety/lethality.ts';
import {
  coreRule,
  fridgeDays,
  fridgeDeadline,
  handWash,
  hotHolding,
  leastOvenC,
  toxinRule,
} from '../../../solver/safety/limits.ts';
import { STRICTEST_BUILT_IN } from '../../../solver/safety/rules-in-force.ts';
import { storageRule } from '../../../solver/safety/storage.ts';
import { strictestOf } from '../../../solver/safety/strictest.ts';

const source = { standing: 'invented', cite: 'invented for a test' } as const;
const invented = { source, edition: 'invented' } as const;

/** Pairs from cooler to hotter with shrinking holds. */
const somePairs: fc.Arbitrary<CorePair[]> = fc
  .array(fc.record({ celsius: fc.integer({ min: 50, max: 90 }), holdSeconds: fc.integer({ min: 0, max: 6000 }) }), {
    minLength: 1,
    maxLength: 5,
  })
  .map((pairs) => {
    const rising = [...new Map(pairs.map((pair) => [pair.celsius, pair])).values()].sort(
      (a, b) => a.celsius - b.celsius,
    );
    const holds = rising.map(({ holdSeconds }) => holdSeconds).sort((a, b) => b - a);
    return rising.map(({ celsius }, index) => ({ celsius, holdSeconds: holds[index]! }));
  });

const someRules: fc.Arbitrary<SafetyRule[]> = fc
  .record({
    pairs: somePairs,
    rest: fc.integer({ min: 0, max: 600 }),
    oven: fc.integer({ min: 100, max: 200 }),
    hot: fc.integer({ min: 50, max: 70 }),
    fridge: fc.integer({ min: 30, max: 240 }),
    rice: fc.integer({ min: 30, max: 240 }),
    days: fc.integer({ min: 1, max: 9 }),
    riceDays: fc.option(fc.integer({ min: 1, max: 9 })),
    wash: fc.integer({ min: 5, max: 90 }),
    soak: fc.integer({ min: 0, max: 900 }),
    boil: fc.integer({ min: 1, max: 60 }),
    keep: fc.array(fc.boolean(), { minLength: 9, maxLength: 9 }),
  })
  .map(({ pairs, rest, oven, hot, fridge, rice, days, riceDays, wash, soak, boil, keep }) => {
    const cooling = (id: string, mostMinutes: number, food?: string): SafetyRule => ({
      kind: 'cooling',
      id,
      ...(food === undefined ? {} : { food }),
      start: { event: 'off-the-heat' },
      end: { event: 'into-the-fridge' },
      mostMinutes,
      ...invented,
    });
    const keeps = (food: string, life: number, broader?: string): SafetyRule => ({
      kind: 'storage',
      id: food,
      food,
      name: food,
      ...(broader === undefined ? {} : { broader }),
      fridgeDays: { least: life, most: life },
      ...invented,
    });
    const rules: SafetyRule[] = [
      { kind: 'core', id: 'core', food: 'poultry', pairs, restSeconds: rest, ...invented },
      { kind: 'oven-setting', id: 'oven', food: 'poultry', leastC: oven, ...invented },
      { kind: 'hot-holding', id: 'hot', leastC: hot, ...invented },
      cooling('fridge', fridge),
      cooling('rice', rice, 'cooked-rice'),
      { kind: 'washing', id: 'hands', after: ['poultry'], what: 'hands', leastSeconds: wash, ...invented },
      { kind: 'toxin', id: 'beans', toxin: 'beans', name: 'beans', soakMinutes: soak, boilMinutes: boil, ...invented },
      keeps('leftovers', days),
      ...(riceDays === null ? [] : [keeps('cooked-rice', riceDays, 'leftovers')]),
    ];
    return rules.filter((_, index) => keep[index] !== false);
  });

const someSets: fc.Arbitrary<SafetyRules[]> = fc.array(someRules, { minLength: 1, maxLength: 3 }).map((sets) =>
  sets.map((rules, index): SafetyRules => ({
    kind: 'safety-rules',
    version: 1,
    id: `set-${index}`,
    name: `set ${index}`,
    region: 'nowhere',
    authority: 'nobody',
    rules,
  })),
);

describe('the strictest of several rule sets', () => {
  test('lets no core temperature and hold pass that one of them refuses', () => {
    fc.assert(
      fc.property(
        someSets,
        fc.integer({ min: 45, max: 95 }),
        fc.integer({ min: 0, max: 6500 }),
        (sets, celsius, hold) => {
          const merged = coreRule(strictestOf(sets), { raw: 'poultry' });
          for (const set of sets) {
            const own = coreRule(set, { raw: 'poultry' });
            if (own === null) continue;
            expect(merged).not.toBeNull();
            expect(merged!.restSeconds ?? 0).toBeGreaterThanOrEqual(own.restSeconds ?? 0);
            if (meetsPairs(merged!.pairs, celsius, hold)) expect(meetsPairs(own.pairs, celsius, hold)).toBe(true);
          }
          // And refuses none that they all let pass.
          const rules = sets.flatMap((set) => coreRule(set, { raw: 'poultry' }) ?? []);
          if (rules.length > 0 && rules.every(({ pairs }) => meetsPairs(pairs, celsius, hold)))
            expect(meetsPairs(merged!.pairs, celsius, hold)).toBe(true);
        },
      ),
    );
  });

  test('is never laxer than any of them in holding, cooling, keeping, washing and boiling', () => {
    fc.assert(
      fc.property(someSets, (sets) => {
        const all = strictestOf(sets);
        for (const set of sets) {
          const through = { raw: 'poultry' } as const;
          const atLeast = (mine?: number, theirs?: number): void => {
            if (theirs !== undefined) expect(mine ?? -Infinity).toBeGreaterThanOrEqual(theirs);
          };
          const atMost = (mine?: number, theirs?: number): void => {
            if (theirs !== undefined) expect(mine ?? Infinity).toBeLessThanOrEqual(theirs);
          };
          atLeast(leastOvenC(all, through)?.value, leastOvenC(set, through)?.value);
          atLeast(hotHolding(all)?.value, hotHolding(set)?.value);
          atLeast(handWash(all)?.value, handWash(set)?.value);
          atLeast(toxinRule(all, 'beans')?.soakMinutes, toxinRule(set, 'beans')?.soakMinutes);
          atLeast(toxinRule(all, 'beans')?.boilMinutes, toxinRule(set, 'beans')?.boilMinutes);
          for (const food of [undefined, 'cooked-rice']) {
            atMost(fridgeDeadline(all, food, 20)?.value, fridgeDeadline(set, food, 20)?.value);
            // A set that says nothing of it is spoken for by the built-in rules.
            const says = storageRule(set, food ?? 'leftovers', 'leftovers') !== null;
            const own = says ? fridgeDays(set, food)?.value : undefined;
            atMost(fridgeDays(all, food)?.value, own);
          }
        }
      }),
    );
  });

  test('says from which set each rule came', () => {
    fc.assert(
      fc.property(someSets, (sets) => {
        const ids = sets.map(({ id }) => id);
        for (const rule of strictestOf(sets).rules) {
          expect(rule.from?.length).toBeGreaterThan(0);
          for (const id of rule.from!) expect(ids).toContain(id);
        }
      }),
    );
  });

  test('is a document that its schema accepts', () => {
    fc.assert(
      fc.property(someSets, (sets) => {
        expect(v.safeParse(SafetyRulesSchema, strictestOf(sets)).success).toBe(true);
      }),
    );
    for (const rules of [...BUILT_IN_RULES, STRICTEST_BUILT_IN])
      expect(v.safeParse(SafetyRulesSchema, rules).issues ?? []).toEqual([]);
  });

  test('has each rule once', () => {
    const ids = STRICTEST_BUILT_IN.rules.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('the strictest of the built-in rules', () => {
  const from = (rule: SafetyRule | undefined): readonly string[] => rule?.from ?? [];

  test('takes the oven setting from the United States and the fridge deadline from the United Kingdom', () => {
    expect(from(leastOvenC(STRICTEST_BUILT_IN, { raw: 'poultry' })?.rule)).toEqual(['united-states']);
    expect(leastOvenC(STRICTEST_BUILT_IN, { raw: 'poultry' })?.value).toBe(162.8);
    expect(from(fridgeDeadline(STRICTEST_BUILT_IN, undefined, 20)?.rule)).toEqual(['united-kingdom']);
    expect(fridgeDeadline(STRICTEST_BUILT_IN, undefined, 20)?.value).toBe(90);
    expect(fridgeDeadline(STRICTEST_BUILT_IN, undefined, 35)?.value).toBe(60);
  });

  test('lets cooked rice keep for 1 day, and every other cooked food for 2, as the United Kingdom does', () => {
    expect(fridgeDays(STRICTEST_BUILT_IN, 'cooked-rice')).toMatchObject({
      value: 1,
      rule: { from: ['united-kingdom'] },
    });
    for (const food of ['leftovers', 'cooked-poultry', 'cooked-pasta', 'casserole', 'soup-or-stew'])
      expect(fridgeDays(STRICTEST_BUILT_IN, food)).toMatchObject({ value: 2, rule: { from: ['united-kingdom'] } });
  });

  test('lets a vinaigrette keep as long as the United States say, since the United Kingdom says nothing of it', () => {
    expect(fridgeDays(STRICTEST_BUILT_IN, 'vinaigrette')).toMatchObject({
      value: 14,
      rule: { from: ['united-states'] },
    });
  });

  test('counts food of no class or of an unknown one as leftovers, and says so', () => {
    expect(fridgeDays(STRICTEST_BUILT_IN, undefined)).toMatchObject({ value: 2, assumed: 'no class' });
    expect(fridgeDays(STRICTEST_BUILT_IN, 'marzipan')).toMatchObject({ value: 2, assumed: 'unknown class' });
  });

  test('asks poultry for 165 °F and for a pair of the United Kingdom at once', () => {
    const { pairs } = coreRule(STRICTEST_BUILT_IN, { raw: 'poultry' })!;
    expect(pairs).toEqual([
      { celsius: 73.9, holdSeconds: 120 },
      { celsius: 75, holdSeconds: 30 },
      { celsius: 80, holdSeconds: 6 },
    ]);
    expect(meetsPairs(pairs, 65, 0)).toBe(false);
  });

  test('asks whole meat to rest for 3 min, as the United States do', () => {
    expect(coreRule(STRICTEST_BUILT_IN, { raw: 'meat', cut: 'whole' })?.restSeconds).toBe(180);
  });
});

describe('every built-in rule', () => {
  const all = BUILT_IN_RULES.flatMap((set) => set.rules.map((rule) => ({ set: set.id, rule })));
  test.each(all.map(({ set, rule }) => [`${set}: ${rule.id}`, rule] as const))(
    '%s has a source that is not from memory',
    (_, rule) => {
      expect(['published', 'secondary', 'derived']).toContain(rule.source.standing);
      expect(rule.source.cite.length).toBeGreaterThan(10);
      expect(rule.source.region).toMatch(/^United (States|Kingdom)$/);
    },
  );
  test('is about one food of each kind where it is about core temperatures', () => {
    for (const set of BUILT_IN_RULES)
      expect(
        set.rules
          .filter((rule): rule is RuleOf<'core'> => rule.kind === 'core')
          .map(({ food }) => food)
          .sort(),
      ).toEqual([...CORE_FOODS].sort());
  });
});
