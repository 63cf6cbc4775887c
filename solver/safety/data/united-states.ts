/**
 * United States, at home: what the government tells consumers, and of the Food Code for food businesses what a home can meet:
 * hot holding, cooling in stages, and food made from room-temperature ingredients. Where a business may do less (shorter holds at
 * lower core temperatures), the consumer's figure stands. °C = (°F − 32) / 1.8, rounded up.
 */
import type { CoreFood, RuleOf, SafetyRules } from '../../kitchen/safety-rules.ts';
import { STORAGE_LIFE_US } from './storage-life-us.ts';

const region = 'United States';
const CHART = {
  source: {
    standing: 'published',
    cite: 'US government, FoodSafety.gov / USDA FSIS, Safe Minimum Internal Temperature Chart',
    region,
  },
  edition: 'undated reprint of the chart',
} as const;
const fsis = (what: string) =>
  ({
    source: { standing: 'secondary', cite: `USDA Food Safety and Inspection Service, ${what}`, region },
    edition: 'consumer advice, undated',
  }) as const;
const foodCode = (clause: string, copy: string) =>
  ({
    source: { standing: 'published', cite: `US FDA Food Code ${clause}, as adopted in ${copy}`, region },
    edition: '2022 (the clause is alike in 2013 and 2017)',
  }) as const;

const core = (food: CoreFood, celsius: number, fahrenheit: number, restSeconds?: number): RuleOf<'core'> => ({
  kind: 'core',
  id: `core-${food}`,
  food,
  pairs: [{ celsius, holdSeconds: 0 }],
  ...(restSeconds === undefined ? {} : { restSeconds }),
  source: { ...CHART.source, cite: `${CHART.source.cite}: ${fahrenheit} °F` },
  edition: CHART.edition,
});

const ovenSetting = (food: CoreFood): RuleOf<'oven-setting'> => ({
  kind: 'oven-setting',
  id: `oven-${food}`,
  food,
  leastC: 162.8,
  ...fsis('advice on roasting meat and poultry: an oven set no lower than 325 °F'),
});

export const UNITED_STATES: SafetyRules = {
  kind: 'safety-rules',
  version: 1,
  id: 'united-states',
  name: 'United States',
  note: 'Consumer advice of the US government, and of the Food Code what a home can meet: hot holding, cooling in stages, and food made from room-temperature ingredients.',
  region,
  authority: 'FoodSafety.gov, USDA FSIS and FDA',
  rules: [
    core('whole-meat', 62.8, 145, 180),
    core('minced-meat', 71.2, 160),
    core('poultry', 73.9, 165),
    core('fish', 62.8, 145),
    core('egg', 71.2, 160),
    ovenSetting('whole-meat'),
    ovenSetting('minced-meat'),
    ovenSetting('poultry'),
    {
      kind: 'hot-holding',
      id: 'hot-holding',
      // The consumer's danger zone ends at 140 °F, the Food Code's at 135 °F: the warmer one stands.
      leastC: 60,
      ...fsis('danger zone from 40 °F to 140 °F; Food Code 3-501.16 asks for 135 °F'),
    },
    {
      kind: 'cold-holding',
      id: 'cold-fridge',
      where: 'fridge',
      mostC: 4.4,
      source: { standing: 'published', cite: 'US government, FoodSafety.gov, Cold Food Storage Chart: 40 °F', region },
      edition: 'undated copy',
    },
    {
      kind: 'cold-holding',
      id: 'cold-freezer',
      where: 'freezer',
      mostC: -17.8,
      source: { standing: 'published', cite: 'US government, FoodSafety.gov, Cold Food Storage Chart: 0 °F', region },
      edition: 'undated copy',
    },
    {
      kind: 'cooling',
      id: 'two-hours',
      start: { event: 'off-the-heat' },
      end: { event: 'into-the-fridge' },
      mostMinutes: 120,
      ...fsis('two-hour rule'),
    },
    {
      kind: 'cooling',
      id: 'one-hour-when-hot',
      start: { event: 'off-the-heat' },
      end: { event: 'into-the-fridge' },
      mostMinutes: 60,
      roomAboveC: 32.2,
      ...fsis('two-hour rule: one hour above 90 °F'),
    },
    {
      kind: 'cooling',
      id: 'first-stage',
      start: { event: 'core-below', celsius: 57.2 },
      end: { event: 'core-at-most', celsius: 21.1 },
      mostMinutes: 120,
      ...foodCode('3-501.14 (A)(1): 135 °F to 70 °F', 'Maryland COMAR 10.15.03.11'),
    },
    {
      kind: 'cooling',
      id: 'both-stages',
      start: { event: 'core-below', celsius: 57.2 },
      end: { event: 'core-at-most', celsius: 5 },
      mostMinutes: 360,
      ...foodCode('3-501.14 (A)(2): 135 °F to 41 °F', 'Maryland COMAR 10.15.03.11'),
    },
    {
      kind: 'cooling',
      id: 'from-room-temperature',
      start: { event: 'made' },
      end: { event: 'core-at-most', celsius: 5 },
      mostMinutes: 240,
      ...foodCode('3-501.14 (B): food made from room-temperature ingredients', 'Maryland COMAR 10.15.03.11'),
    },
    ...STORAGE_LIFE_US,
    {
      kind: 'reheating',
      id: 'reheating',
      pairs: [{ celsius: 73.9, holdSeconds: 0 }],
      source: { ...CHART.source, cite: `${CHART.source.cite}: leftovers 165 °F` },
      edition: CHART.edition,
    },
    {
      kind: 'washing',
      id: 'wash-hands',
      after: ['meat', 'poultry', 'fish', 'egg'],
      what: 'hands',
      leastSeconds: 20,
      ...fsis('soap and water for 20 s before and after raw meat or poultry'),
    },
    {
      kind: 'washing',
      id: 'wash-board-and-knife',
      after: ['meat', 'poultry', 'fish', 'egg'],
      what: 'board-and-knife',
      source: {
        standing: 'published',
        cite: 'Minnesota Department of Health, advice on raw poultry: boards, knives, dishes and counters in hot soapy water',
        region,
      },
      edition: 'undated',
    },
    {
      kind: 'separation',
      id: 'separate-boards',
      says: 'One board for raw meat, poultry, fish and egg, another for food that is eaten as it is; cooked food never goes back onto what held it raw.',
      ...fsis('advice on cross-contamination'),
    },
    {
      kind: 'rinsing',
      id: 'no-rinsing-of-poultry',
      food: 'raw poultry',
      rinse: false,
      says: 'Raw poultry is not washed: it splashes.',
      source: { standing: 'published', cite: 'Minnesota Department of Health, advice on raw poultry', region },
      edition: 'undated',
    },
    {
      kind: 'toxin',
      id: 'kidney-beans',
      toxin: 'kidney-beans',
      name: 'lectin of raw kidney beans',
      soakMinutes: 300,
      boilMinutes: 30,
      source: {
        standing: 'secondary',
        cite: 'US FDA, Bad Bug Book, chapter on phytohaemagglutinin: soak for 5 h, pour the water away, boil in fresh water for 30 min (10 min at 100 °C destroy it)',
        region,
      },
      edition: 'as reported by Ohio State University Extension',
    },
  ],
};
