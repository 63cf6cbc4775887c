/** The user's own rules here are invented. */
import { describe, expect, test } from 'vitest';
import type { SafetyRules } from '../../../solver/kitchen/safety-rules.ts';
import {
  coreRule,
  fridgeDays,
  fridgeDeadline,
  handWash,
  hotHolding,
  leastOvenC,
  toxinRule,
} from '../../../solver/safety/limits.ts';
import { limitWorking, ruleBehind } from '../../../solver/safety/rule-behind.ts';
import { rulesInForce, STRICTEST_BUILT_IN } from '../../../solver/safety/rules-in-force.ts';

const own: SafetyRules = {
  kind: 'safety-rules',
  version: 1,
  id: 'our-canteen',
  name: 'our canteen',
  region: 'invented',
  authority: 'the canteen (invented)',
  rules: [
    {
      kind: 'hot-holding',
      id: 'hot',
      leastC: 65,
      source: { standing: 'invented', cite: 'invented for a test' },
      edition: 'invented',
    },
  ],
};
const inForce = (authority?: string, sets: readonly SafetyRules[] = []): SafetyRules => {
  const answer = rulesInForce(authority, sets);
  if (!answer.ok) throw new Error(answer.faults[0]!.found);
  return answer.rules;
};

describe('the rules in force', () => {
  test('are the strictest built-in ones until an authority is picked', () => {
    expect(inForce()).toBe(STRICTEST_BUILT_IN);
    expect(inForce('strictest')).toBe(STRICTEST_BUILT_IN);
  });

  test('are those of the authority picked, where the two differ', () => {
    const [us, uk] = [inForce('united-states'), inForce('united-kingdom')];
    expect([hotHolding(us)?.value, hotHolding(uk)?.value]).toEqual([60, 63]);
    expect([fridgeDeadline(us, undefined, 20)?.value, fridgeDeadline(uk, undefined, 20)?.value]).toEqual([120, 90]);
    expect([fridgeDays(us, 'cooked-rice')?.value, fridgeDays(uk, 'cooked-rice')?.value]).toEqual([4, 1]);
    expect([leastOvenC(us, { raw: 'poultry' })?.value, leastOvenC(uk, { raw: 'poultry' })]).toEqual([162.8, null]);
    expect(coreRule(uk, { raw: 'poultry' })?.pairs[0]).toEqual({ celsius: 60, holdSeconds: 5580 });
  });

  test('have what an authority is silent about from the strictest built-in rules', () => {
    const uk = inForce('united-kingdom');
    expect(handWash(uk)).toMatchObject({ value: 20, rule: { from: ['united-states'] } });
    expect(toxinRule(uk, 'kidney-beans')).toMatchObject({ boilMinutes: 30 });
    expect(fridgeDays(uk, 'vinaigrette')).toMatchObject({ value: 14 });
    expect(fridgeDays(uk, 'cooked-poultry')).toMatchObject({ value: 2, rule: { from: ['united-kingdom'] } });
  });

  test('can be the user’s own, alone: what it leaves open the built-in ones answer', () => {
    const rules = inForce('our-canteen', [own]);
    expect(hotHolding(rules)).toMatchObject({ value: 65, rule: { from: ['our-canteen'] } });
    expect(fridgeDeadline(rules, undefined, 20)?.value).toBe(90);
    expect(leastOvenC(rules, { raw: 'poultry' })).toBeNull();
  });

  test('can be the user’s own on top of an authority: the stricter of each two holds', () => {
    const rules = inForce('our-canteen', [{ ...own, and: ['united-states'] }]);
    expect(rules).toMatchObject({ id: 'our-canteen', name: 'our canteen' });
    expect(hotHolding(rules)).toMatchObject({ value: 65, rule: { from: ['our-canteen'] } });
    expect(fridgeDeadline(rules, undefined, 20)).toMatchObject({ value: 120, rule: { from: ['united-states'] } });
  });

  test('are refused with the known names where the authority is not one of them', () => {
    const answer = rulesInForce('atlantis', [own], 'session supper');
    expect(answer).toEqual({
      ok: false,
      faults: [
        {
          document: 'session supper',
          path: 'authority',
          found: 'no safety rules with the id "atlantis"',
          wanted: 'one of strictest, our-canteen, united-kingdom, united-states',
          mend: 'correct the id, or put the rule set into the data folder',
        },
      ],
    });
  });

  test('are refused where rule sets are added to each other in a circle', () => {
    const other = { ...own, id: 'other', and: ['our-canteen'] };
    const answer = rulesInForce('our-canteen', [{ ...own, and: ['other'] }, other]);
    expect(answer).toMatchObject({ ok: false, faults: [{ document: 'safety-rules other', path: 'and' }] });
  });
});

describe('the rule behind a limit', () => {
  const limit = fridgeDeadline(STRICTEST_BUILT_IN, undefined, 20)!;
  test('names its source, its edition and the rule sets that ask for it', () => {
    expect(ruleBehind(limit)).toMatchObject({
      from: ['united-kingdom'],
      source: { standing: 'secondary', region: 'United Kingdom' },
      edition: 'as reported, undated',
    });
  });
  test('is a working that a panel can show', () => {
    expect(limitWorking('into the fridge within', limit)).toMatchObject({ value: 90, unit: 'min' });
  });
});
