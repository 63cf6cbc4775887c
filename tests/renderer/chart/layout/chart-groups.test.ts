import { describe, expect, test } from 'vitest';
import { allBars, chartGroups } from '../../../../renderer/chart/layout/chart-groups.ts';
import { inRows, type Bar, type Lane } from '../../../../renderer/chart/layout/lane-model.ts';
import { supper } from '../../../support/supper.ts';

const groups = chartGroups(supper, false);
const lane = (id: string, from = groups): Lane => from.flatMap((group) => group.lanes).find((each) => each.id === id)!;
const bar = (start: string, from = groups): Bar => allBars(from).find((each) => each.id.startsWith(start))!;

describe('the lanes of a plan', () => {
  test('are grouped as the kitchen is', () => {
    expect(groups.map(({ name, lanes }) => [name, lanes.map((each) => each.name)])).toEqual([
      ['Hands', ['Ada', 'Bo']],
      ['the oven', ['top rack', 'low rack']],
      ['Hob', ['big burner', 'small burner']],
      ['Plugged in', ['kettle']],
      ['Water', ['the pot of water, 3\u00a0L']],
      ['Resting', ['resting', 'cooling']],
      ['Fridge', ['in the fridge by']],
    ]);
  });

  test('show boards, trays, pans, bowls, tools and sink only when asked', () => {
    const more = chartGroups(supper, true).map((group) => group.name);
    expect(more.slice(groups.length)).toEqual(['Boards', 'Trays', 'Pans', 'Bowls', 'Tools', 'Sink']);
  });

  test('an oven that stays cold has one lane that says so', () => {
    const cold = { ...supper.kitchen.ovens[0]!, id: 'cold', name: 'the cold oven' };
    const plan = { ...supper, kitchen: { ...supper.kitchen, ovens: [...supper.kitchen.ovens, cold] } };
    expect(chartGroups(plan, false).find((group) => group.name === 'the cold oven')).toMatchObject({
      hill: null,
      lanes: [{ name: 'not used', bars: [] }],
    });
  });

  test('hands are on for as many minutes as the plan says', () => {
    const hands = groups[0]!.lanes.flatMap((each) => each.bars);
    expect(hands.reduce((sum, each) => sum + each.end - each.start, 0)).toBe(supper.handsOnMinutes);
  });

  test('a rack is held from the hand that fills it to the hand that clears it, the look on the way is a check', () => {
    expect(bar('rack/top/chicken')).toMatchObject({
      look: 'off',
      start: 10,
      end: 43,
      hands: [
        { start: 10, end: 11, check: false },
        { start: 26, end: 27, check: true },
        { start: 41, end: 43, check: false },
      ],
    });
  });

  test('a board under the hand all the time is hands-on; one kept through two pieces is not', () => {
    const more = chartGroups(supper, true);
    expect(bar('board/board/chicken', more).look).toBe('on');
    expect(bar('board/board/salad', more)).toMatchObject({ look: 'off', start: 9, end: 20 });
  });

  test('a pan kept for the sauce is drawn as held', () => {
    expect(bar('hold/sauce', chartGroups(supper, true))).toMatchObject({ look: 'held', start: 22, end: 41 });
  });

  test('the whisker ends at the last minute the documents allow', () => {
    // The chicken rests 5 to 10 minutes from 10:43; the boxes cool 10 to 30 from 11:03.
    expect(bar('resting/').limit).toBe(53);
    expect(bar('cooling/').limit).toBe(93);
    // The sauce boils first, for minutes that the document does not name.
    expect(bar('burner/small/sauce').limit).toBeNull();
  });

  test('the water has its level, its boil, what steams over it and what was ladled out', () => {
    const water = lane('pool/pot-water');
    if (water.kind !== 'water') throw new Error('no water');
    expect(water.draws).toMatchObject([{ minute: 21, ml: 500, stepId: 'millet/soak' }]);
    expect(water.steamRows).toBe(1);
    expect(water.bars.map((each) => [each.stepId, each.row])).toEqual([
      ['greens/steam', 0],
      ['pasta/boil', 1],
    ]);
    expect(bar('boil/pot-water')).toMatchObject({ start: 1, end: 35, ticks: [{ minute: 13, words: 'boils 10:13' }] });
  });

  test('the way to the fridge runs from the heat to its limit', () => {
    const keeping = lane('keeping');
    if (keeping.kind !== 'keeping') throw new Error('no keeping');
    expect(keeping.keeping).toMatchObject([{ from: 43, until: 83, away: 77, stepId: 'chicken/roast' }]);
  });

  test('who is away and what is not there is marked', () => {
    const bo = lane('hands/bo');
    const small = lane('burner/small');
    if (bo.kind !== 'hands' || small.kind !== 'things') throw new Error('no lanes');
    expect(bo.gone).toEqual([{ from: 60, until: 77, words: 'Bo is away' }]);
    expect(small.gone).toMatchObject([{ from: 0, until: 5 }]);
  });

  test('every bar has a name of its own, a label and a sentence', () => {
    const bars = allBars(chartGroups(supper, true));
    expect(new Set(bars.map((each) => each.id)).size).toBe(bars.length);
    for (const each of bars) {
      expect(each.labels[0]).not.toBe('');
      expect(each.words).toMatch(/\d\d:\d\d/);
    }
  });
});

describe('bars that overlap', () => {
  test('take sub-rows, and one that begins where another ends does not', () => {
    const at = (start: number, end: number) => ({ start, end });
    const { bars, rows } = inRows([at(0, 10), at(10, 20), at(5, 15), at(15, 16)]);
    expect(rows).toBe(2);
    expect(bars.map((each) => [each.start, each.row])).toEqual([
      [0, 0],
      [5, 1],
      [10, 0],
      [15, 1],
    ]);
  });
});
