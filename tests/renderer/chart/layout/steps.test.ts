import { describe, expect, test } from 'vitest';
import { chartGroups } from '../../../../renderer/chart/layout/chart-groups.ts';
import { chartLayout, wholeView } from '../../../../renderer/chart/layout/chart-layout.ts';
import { linkMarks } from '../../../../renderer/chart/layout/link-marks.ts';
import { moveFrom, type Move } from '../../../../renderer/chart/layout/moves.ts';
import { nowNext } from '../../../../renderer/chart/layout/now-next.ts';
import { relationsOf } from '../../../../renderer/chart/layout/relations.ts';
import { runningOrder } from '../../../../renderer/chart/layout/running-order.ts';
import { stepFacts } from '../../../../renderer/chart/layout/step-facts.ts';
import { supper } from '../../../support/supper.ts';

const relations = relationsOf(supper);
const groups = chartGroups(supper, false);

describe('what ties steps together', () => {
  test.each([
    {
      name: 'order with its gap',
      kind: 'order',
      from: 'chicken/cut',
      to: 'chicken/roast',
      words: 'at most 10 min later',
    },
    { name: 'what follows at once', kind: 'order', from: 'chicken/roast', to: 'chicken/rest', words: 'at once' },
    { name: 'a batch follows its own', kind: 'order', from: 'rolls/shape.2', to: 'rolls/flour.2', words: '' },
    {
      name: 'water ladled out',
      kind: 'water',
      from: 'pot-water/fill',
      to: 'millet/soak',
      words: '500 mL ladled out of the pot of water',
    },
    {
      name: 'heat left over',
      kind: 'heat',
      from: 'chicken/roast',
      to: 'croutons/crisp',
      words: 'heat left in the oven',
    },
    { name: 'a board washed', kind: 'wash', from: 'wash/board.1', to: 'salad/chop~1', words: 'the board clean' },
    {
      name: 'food into the boxes',
      kind: 'boxes',
      from: 'greens/steam',
      to: 'boxes/pack',
      words: 'goes into the boxes',
    },
    { name: 'boxes put away', kind: 'boxes', from: 'boxes/cool', to: 'boxes/put-away', words: 'the boxes' },
  ])('$name', ({ kind, from, to, words }) => {
    expect(relations.find((each) => each.kind === kind && each.from === from && each.to === to)?.words).toBe(words);
  });

  test('a batch does not follow another', () => {
    expect(relations.some((each) => each.from === 'rolls/shape.1' && each.to === 'rolls/flour.2')).toBe(false);
  });

  test('nothing follows what starts before it has ended, apart from water that is drawn on', () => {
    const step = (id: string) => supper.steps.find((each) => each.id === id)!;
    for (const { from, to } of relations) expect(step(to).start).toBeGreaterThanOrEqual(step(from).end);
  });

  test('links are drawn for the chosen step alone, from end to start', () => {
    const marks = chartLayout(supper, groups, { width: 1440, view: wholeView(supper), reading: 'near' });
    expect(linkMarks(marks, relations, null)).toEqual([]);
    const links = linkMarks(marks, relations, 'chicken/roast');
    expect(links.map((link) => link.relation.to).sort()).toEqual(['chicken/rest', 'chicken/roast', 'croutons/crisp']);
    const rest = links.find((link) => link.relation.to === 'chicken/rest')!;
    expect(rest.end.x).toBeCloseTo(marks.scale.x(43), 0);
  });
});

describe('the card of a step', () => {
  const facts = stepFacts(supper, 'chicken/roast', relations)!;

  test('says when, who and where', () => {
    expect(facts).toMatchObject({ name: 'roast the chicken', clock: '10:10–10:43', length: '33 min' });
    expect(facts.segments.map((each) => [each.clock, each.who])).toEqual([
      ['10:10–10:11', 'Ada'],
      ['10:11–10:41', null],
      ['10:26–10:27', 'Ada'],
      ['10:41–10:43', 'Ada'],
    ]);
    expect(facts.places).toEqual(['the oven, top rack, conventional at 180–200 °C, 60 % of the rack', 'first tray']);
  });

  test('says with what care', () => {
    expect(facts.cautions).toContain('Core 75 °C for 30 s: a probe thermometer decides, not the minutes.');
    expect(facts.cautions).toContain('In the fridge by 11:23, 40 min after it leaves the heat.');
    const bread = stepFacts(supper, 'croutons/crisp', relations)!;
    expect(bread.cautions).toContain('Contains gluten.');
    expect(bread.cautions.some((each) => each.startsWith('The oven is off'))).toBe(true);
  });

  test('says what it waits for and what follows', () => {
    expect(facts.waitsFor.map((tie) => tie.stepId)).toEqual(['chicken/cut']);
    expect(facts.followedBy.map((tie) => tie.stepId)).toEqual(['chicken/rest', 'croutons/crisp']);
  });

  test('is not there for a step that is not', () => {
    expect(stepFacts(supper, 'chicken/fly', relations)).toBeNull();
  });
});

describe('now and next', () => {
  test('tells each person apart from what goes by itself', () => {
    const now = nowNext(supper, 26);
    expect(now.people.map((person) => [person.name, person.now?.words, person.next?.start])).toEqual([
      ['Ada', 'roast the chicken', 28],
      ['Bo', 'brew the stock', 29],
    ]);
    expect(now.byItself.map((each) => [each.words, each.end])).toEqual([
      ['soak the millet', 28],
      ['boil the pasta', 33],
      ['simmer the sauce', 38],
      ['roast the chicken', 41],
    ]);
    expect(now.dials).toEqual([{ minute: 43, words: 'the oven off' }]);
  });

  test('a segment is over at its end', () => {
    expect(nowNext(supper, 29).people[0]!.now).toBeNull();
    expect(nowNext(supper, 77).people.map((person) => [person.now, person.next])).toEqual([
      [null, null],
      [null, null],
    ]);
  });
});

describe('the running order', () => {
  const lines = runningOrder(supper);

  test('has every segment of every step once, in order of time', () => {
    const segments = supper.steps.reduce((sum, step) => sum + step.segments.length, 0);
    expect(lines.filter((each) => each.kind !== 'mark')).toHaveLength(segments);
    expect(lines.map((each) => each.minute)).toEqual(lines.map((each) => each.minute).sort((a, b) => a - b));
  });

  test('has the turns of the dial, the boil, the finish and the end', () => {
    expect(lines.filter((each) => each.kind === 'mark').map((each) => [each.clock, each.words])).toEqual([
      ['10:00', 'the oven to 190 °C, conventional'],
      ['10:13', 'the pot of water boils'],
      ['10:43', 'the oven off'],
      ['11:06', 'finish'],
      ['11:17', 'all away'],
    ]);
  });
});

describe('the arrow keys', () => {
  const start = (id: string | null): string => id!.split('/').slice(0, 3).join('/');
  test.each<{ name: string; from: string | null; move: Move; to: string }>([
    { name: 'begin at the first bar', from: null, move: 'later', to: 'hands/ada/pot-water' },
    { name: 'go on along the lane', from: 'hands/ada/pot-water/fill/0', move: 'later', to: 'hands/ada/chicken' },
    { name: 'stay at its start', from: 'hands/ada/pot-water/fill/0', move: 'earlier', to: 'hands/ada/pot-water' },
    { name: 'jump to its end', from: 'hands/ada/pot-water/fill/0', move: 'last', to: 'hands/ada/boxes' },
    {
      name: 'go down to the bar at that time',
      from: 'hands/bo/croutons/crisp/49',
      move: 'down',
      to: 'rack/top/chicken',
    },
    { name: 'stay in the topmost lane', from: 'hands/ada/pot-water/fill/0', move: 'up', to: 'hands/ada/pot-water' },
  ])('$name', ({ from, move, to }) => {
    expect(start(moveFrom(groups, from, move))).toBe(to);
  });

  test('reach every lane that has bars', () => {
    const seen = new Set<string>();
    let at = moveFrom(groups, null, 'first');
    for (let turn = 0; turn < 30; turn += 1) {
      seen.add(groups.flatMap((group) => group.lanes).find((lane) => lane.bars.some((bar) => bar.id === at))!.id);
      at = moveFrom(groups, at, 'down');
    }
    const lanes = groups.flatMap((group) => group.lanes).filter((lane) => lane.bars.length > 0);
    expect(seen.size).toBe(lanes.length);
  });

  test('lead nowhere in an empty chart', () => {
    expect(moveFrom([], null, 'later')).toBeNull();
  });
});
