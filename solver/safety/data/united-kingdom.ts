/** United Kingdom: what the Food Standards Agency and the National Health Service tell consumers, and the food hygiene regulations. */
import { CORE_FOODS, type CorePair, type RuleOf, type SafetyRules } from '../../kitchen/safety-rules.ts';

const region = 'United Kingdom';
const advice = (cite: string) =>
  ({ source: { standing: 'secondary', cite, region }, edition: 'as reported, undated' }) as const;

/**
 * The agency's pairs, at low heat the longer holds of its advisory committee (65 °C 14 min and 60 °C 93 min, against 10 and 45 min
 * in the ordinary advice).
 */
const PAIRS: readonly CorePair[] = [
  { celsius: 60, holdSeconds: 93 * 60 },
  { celsius: 65, holdSeconds: 14 * 60 },
  { celsius: 70, holdSeconds: 120 },
  { celsius: 75, holdSeconds: 30 },
  { celsius: 80, holdSeconds: 6 },
];
const CITE =
  'Food Standards Agency, cooking advice (70 °C 2 min, 75 °C 30 s, 80 °C 6 s); Advisory Committee on the Microbiological Safety of Food, report on the safe cooking of burgers, 2007 (65 °C 14 min, 60 °C 93 min)';

const storage = (food: string, name: string, days: number, cite: string): RuleOf<'storage'> => ({
  kind: 'storage',
  id: `keeps-${food}`,
  food,
  name,
  ...(food === 'leftovers' ? {} : { broader: 'leftovers' }),
  fridgeDays: { least: days, most: days },
  ...advice(cite),
});

export const UNITED_KINGDOM: SafetyRules = {
  kind: 'safety-rules',
  version: 1,
  id: 'united-kingdom',
  name: 'United Kingdom',
  region,
  authority: 'Food Standards Agency and NHS',
  rules: [
    ...CORE_FOODS.map((food): RuleOf<'core'> => ({
      kind: 'core',
      id: `core-${food}`,
      food,
      pairs: [...PAIRS],
      ...advice(CITE),
    })),
    {
      kind: 'hot-holding',
      id: 'hot-holding',
      leastC: 63,
      ...advice('Food hygiene regulations of the nations of the United Kingdom: hot holding'),
    },
    {
      kind: 'cold-holding',
      id: 'cold-fridge',
      where: 'fridge',
      mostC: 5,
      ...advice('Food Standards Agency, advice for a fridge at home (the law of England asks businesses for 8 °C)'),
    },
    {
      kind: 'cooling',
      id: 'ninety-minutes',
      start: { event: 'off-the-heat' },
      end: { event: 'into-the-fridge' },
      mostMinutes: 90,
      ...advice(
        'Food Standards Agency adviser: cooled and in the fridge within 90 min (other pages of the agency and the NHS say within 1 to 2 h)',
      ),
    },
    {
      kind: 'cooling',
      id: 'rice-within-an-hour',
      food: 'cooked-rice',
      start: { event: 'off-the-heat' },
      end: { event: 'into-the-fridge' },
      mostMinutes: 60,
      ...advice('Food Standards Agency adviser and NHS: cooked rice cooled within 1 h'),
    },
    storage('leftovers', 'Leftovers', 2, 'Food Standards Agency: leftovers eaten or frozen within 2 days'),
    storage('cooked-rice', 'Cooked rice', 1, 'Food Standards Agency adviser and NHS: cooked rice kept for 1 day'),
    {
      kind: 'reheating',
      id: 'reheating',
      pairs: [
        { celsius: 70, holdSeconds: 120 },
        { celsius: 75, holdSeconds: 30 },
      ],
      times: 1,
      ...advice('Food Standards Agency: reheated once, to 70 °C for 2 min or steaming hot at 75 °C'),
    },
  ],
};
