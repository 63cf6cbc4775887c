/**
 * source: USDA Food Safety and Inspection Service, storage-life open data set (data.gov, public domain), rows by item number; US
 * government, FoodSafety.gov, Cold Food Storage Chart; for rice and leftovers in the United Kingdom, the Food Standards Agency and the
 * NHS as reported.
 */
import { describe, expect, test } from 'vitest';
import { UNITED_KINGDOM } from '../../solver/safety/data/united-kingdom.ts';
import { UNITED_STATES } from '../../solver/safety/data/united-states.ts';
import { fridgeDays } from '../../solver/safety/limits.ts';
import { storageRule } from '../../solver/safety/storage.ts';

describe('how long food keeps in the United States', () => {
  test.each([
    { food: 'cooked-poultry', from: 'item 135', fridge: [3, 4], freezer: [4, 6] },
    { food: 'cooked-fish', from: 'item 148', fridge: [3, 4], freezer: [1, 2] },
    { food: 'leftovers', from: 'item 174', fridge: [3, 4], freezer: [1, 2] },
    { food: 'cooked-pasta', from: 'item 177', fridge: [3, 5], freezer: [1, 2] },
    { food: 'cooked-rice', from: 'item 178', fridge: [4, 6], freezer: [6, 6] },
    { food: 'egg-dish', from: 'item 24', fridge: [3, 4], freezer: [2, 3] },
    { food: 'hard-boiled-eggs', from: 'item 23', fridge: [7, 7], freezer: null },
    { food: 'yoghurt', from: 'item 33', fridge: [7, 14], freezer: [1, 2] },
    { food: 'vinaigrette', from: 'item 624', fridge: [14, 21], freezer: null },
    { food: 'bread', from: 'item 195', fridge: [14, 21], freezer: [3, 5] },
    { food: 'cooked-meat', from: 'Cold Food Storage Chart', fridge: [3, 4], freezer: [2, 6] },
    { food: 'soup-or-stew', from: 'Cold Food Storage Chart', fridge: [3, 4], freezer: [2, 3] },
    { food: 'raw-mince', from: 'Cold Food Storage Chart', fridge: [1, 2], freezer: [3, 4] },
  ])('$food: $fridge days in the fridge ($from)', ({ food, from, fridge, freezer }) => {
    const rule = storageRule(UNITED_STATES, food)!;
    expect(rule.fridgeDays).toEqual({ least: fridge[0], most: fridge[1] });
    expect(rule.freezerMonths).toEqual(freezer === null ? undefined : { least: freezer[0], most: freezer[1] });
    expect(rule.source.cite).toContain(from);
  });

  test('a range counts by its shorter end', () => {
    expect(fridgeDays(UNITED_STATES, 'cooked-rice')?.value).toBe(4);
  });
});

test('cooked rice keeps for 1 day in the United Kingdom, though 4 to 6 in the United States', () => {
  expect(fridgeDays(UNITED_KINGDOM, 'cooked-rice')?.value).toBe(1);
});
