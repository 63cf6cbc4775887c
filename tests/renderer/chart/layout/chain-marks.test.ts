import { describe, expect, test } from 'vitest';
import { chartGroups } from '../../../../renderer/chart/layout/chart-groups.ts';
import { chartLayout, wholeView } from '../../../../renderer/chart/layout/chart-layout.ts';
import { chainLines, chainTitle } from '../../../../renderer/chart/layout/chain-lines.ts';
import { chainMarks, chainSteps } from '../../../../renderer/chart/layout/chain-marks.ts';
import { hillMark } from '../../../../renderer/chart/layout/oven-marks.ts';
import { chartSizes } from '../../../../renderer/chart/layout/sizes.ts';
import { stepFacts } from '../../../../renderer/chart/layout/step-facts.ts';
import { timeScale } from '../../../../renderer/chart/layout/time-scale.ts';
import type { Plan } from '../../../../solver/kitchen/plan.ts';
import { supper } from '../../../support/supper.ts';

const cut = supper.steps.find((each) => each.id === 'chicken/cut')!;
const roast = supper.steps.find((each) => each.id === 'chicken/roast')!;

/** The supper with a chain of two steps and an oven between; invented. */
const plan: Plan = {
  ...supper,
  steps: supper.steps.map((each) => ({ ...each, slack: each === cut || each === roast ? 0 : 7 })),
  bindingChain: [
    { step: cut.id, name: cut.name, from: cut.start, until: cut.end, why: 'start', because: 'begins with the session' },
    {
      thing: 'oven',
      name: 'the oven heats',
      from: cut.end,
      until: roast.start,
      why: 'heat',
      because: 'for what goes in next',
    },
    {
      step: roast.id,
      name: roast.name,
      from: roast.start,
      until: roast.end,
      why: 'heat',
      because: 'waits for the oven',
    },
    { name: 'The table', from: roast.end, until: roast.end, why: 'table', because: 'is done in time' },
  ],
};
const marks = chartLayout(plan, chartGroups(plan, false), { width: 1200, view: wholeView(plan), reading: 'near' });
const chain = chainMarks(plan, marks);
const bars = marks.groups.flatMap((group) => group.lanes.flatMap((lane) => lane.bars));

describe('the binding chain on the chart', () => {
  test('is a heavy underline below the bar where each step spends its time, as long as what binds', () => {
    const inOven = bars.find((mark) => mark.bar.stepId === roast.id && mark.bar.id.startsWith('rack/'))!;
    const line = chain.underlines.at(-1)!;
    expect(line.y).toBeGreaterThanOrEqual(inOven.box.y + inOven.box.h);
    expect(line.x).toBeCloseTo(marks.scale.x(roast.start), 0);
    expect(line.x + line.w).toBeCloseTo(marks.scale.x(roast.end), 0);
    expect(line.h).toBeGreaterThanOrEqual(3.5);
  });

  test('goes below the racks of an oven that heats, and leaves out what takes no time', () => {
    expect(chain.underlines).toHaveLength(roast.start > cut.end ? 3 : 2);
    const oven = marks.groups.find(({ group }) => group.id === 'oven/oven')!;
    for (const line of chain.underlines.slice(1)) {
      expect(line.y).toBeGreaterThan(oven.y);
      expect(line.y + line.h).toBeLessThanOrEqual(oven.y + oven.h);
    }
  });

  test('joins each link to the next where it ends', () => {
    expect(chain.joins).toHaveLength(chain.underlines.length - 1);
    chain.joins.forEach((join, index) => {
      const from = chain.underlines[index]!;
      const [x] = /^M([\d.]+)/.exec(join)!.slice(1).map(Number);
      expect(x).toBeCloseTo(from.x + from.w, 0);
    });
  });

  test('is told in words, one line a link', () => {
    expect([...chainSteps(plan)]).toEqual([cut.id, roast.id]);
    const lines = chainLines(plan);
    expect(lines.map((line) => line.stepId)).toEqual([cut.id, null, roast.id, null]);
    expect(lines[2]).toMatchObject({ clock: '10:10–10:43', length: '33 min', because: 'waits for the oven' });
    expect(lines[3]).toMatchObject({ owner: null, length: '', name: 'The table' });
    expect(chainTitle(plan)).toMatch(
      /without a minute to spare: because of these, (the finish is|work begins) at 1\d:\d\d/,
    );
  });

  test('is nothing for a plan that carries none', () => {
    expect(chainMarks(supper, marks)).toEqual({ underlines: [], joins: [] });
    expect([chainLines(supper), [...chainSteps(supper)]]).toEqual([[], []]);
  });
});

describe('slack on the card', () => {
  test.each([
    {
      name: 'a step of the chain says why not',
      step: roast.id,
      words: /^May not start later, .*waits for the oven\.$/,
    },
    { name: 'another says until when', step: 'chicken/rest', words: /^May start up to 7 min later, by \d\d:\d\d\.$/ },
  ])('$name', ({ step, words }) => {
    expect(stepFacts(plan, step, [])!.slack).toMatch(words);
  });

  test('a plan that does not say leaves it out', () => {
    expect(stepFacts(supper, roast.id, [])!.slack).toBeNull();
  });
});

test('an oven without a temperature line is drawn with its dial and no hill', () => {
  const programme = { ...supper.ovens[0]!, line: [] };
  const scale = timeScale({ from: 0, to: 60 }, 0, 600);
  const hill = hillMark({ programme, roomC: 20, mostC: 200 }, scale, chartSizes(600, 'near'), 0, 100, String);
  expect([hill.hot, hill.line, hill.after]).toEqual(['', '', null]);
  expect(hill.dial).toHaveLength(programme.settings.length);
});
