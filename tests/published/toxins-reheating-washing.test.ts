/**
 * Sources: US FDA, Bad Bug Book, chapter on phytohaemagglutinin, as reported by Ohio State University Extension (secondary): soak red
 * kidney beans at least 5 h, pour the water away, boil in fresh water at least 30 min. FoodSafety.gov chart (read in a reprint): leftovers
 * to 165 °F. UK Food Standards Agency (secondary): reheat once, to 70 °C for 2 min or 75 °C. USDA (secondary): hands washed for 20 s.
 * Minnesota Department of Health (read in text): boards and knives in hot soapy water; raw chicken is not washed.
 */
import { describe, expect, test } from 'vitest';
import type { RuleKind, RuleOf, SafetyRules } from '../../solver/kitchen/safety-rules.ts';
import { UNITED_KINGDOM } from '../../solver/safety/data/united-kingdom.ts';
import { UNITED_STATES } from '../../solver/safety/data/united-states.ts';
import { meetsPairs } from '../../solver/safety/lethality.ts';

const rulesOf = <K extends RuleKind>({ rules }: SafetyRules, kind: K): readonly RuleOf<K>[] =>
  rules.filter((rule): rule is RuleOf<K> => rule.kind === kind);

describe('kidney beans', () => {
  test('are soaked for 5 h and boiled for 30 min', () => {
    expect(rulesOf(UNITED_STATES, 'toxin').map(({ soakMinutes, boilMinutes }) => [soakMinutes, boilMinutes])).toEqual([
      [5 * 60, 30],
    ]);
  });
});

describe('reheating', () => {
  test('in the United States is to 165 °F, with no hold', () => {
    const [rule] = rulesOf(UNITED_STATES, 'reheating');
    expect(rule!.pairs).toEqual([{ celsius: Math.round(((165 - 32) / 1.8) * 10) / 10, holdSeconds: 0 }]);
  });

  test('in the United Kingdom is to 70 °C for 2 min or as much as that at another temperature, and once only', () => {
    const [rule] = rulesOf(UNITED_KINGDOM, 'reheating');
    expect(meetsPairs(rule!.pairs, 70, 120)).toBe(true);
    expect(meetsPairs(rule!.pairs, 70, 60)).toBe(false);
    expect(meetsPairs(rule!.pairs, 75, 30)).toBe(true);
    expect(rule!.times).toBe(1);
  });
});

describe('after raw food', () => {
  test('hands are washed for 20 s, and board and knife too', () => {
    const washing = rulesOf(UNITED_STATES, 'washing');
    expect(washing.find(({ what }) => what === 'hands')).toMatchObject({ leastSeconds: 20 });
    expect(washing.find(({ what }) => what === 'board-and-knife')!.after).toContain('poultry');
  });

  test('raw poultry itself is not washed', () => {
    expect(
      rulesOf(UNITED_STATES, 'rinsing')
        .filter(({ rinse }) => !rinse)
        .map(({ food }) => food),
    ).toEqual(['raw poultry']);
  });
});
