// @vitest-environment happy-dom
import { render, screen } from '@testing-library/svelte';
import { describe, expect, test, vi } from 'vitest';
import HowSure from '../../../renderer/parts/HowSure.svelte';
import { chanceWords, sureWordsOf } from '../../../renderer/places/sure.ts';
import type { HowSure as Sure } from '../../../solver/answers/how-sure.ts';
import { supper } from '../../support/supper.ts';

const step = supper.steps.find(({ kind }) => kind === 'step')!;
const sure: Sure = {
  samples: 2000,
  plannedFinish: supper.finishMinutes,
  p50: supper.finishMinutes + 4,
  p90: supper.finishMinutes + 9,
  meanMinutes: supper.finishMinutes + 4.2,
  by: [
    { minute: supper.finishMinutes, chance: 0.004, give: 0.003 },
    { minute: supper.finishMinutes + 5, chance: 0.62, give: 0.02 },
    { minute: supper.finishMinutes + 10, chance: 1, give: 0 },
  ],
  steps: [
    { step: step.id, name: step.name, critical: 0.8, delayMinutes: 1.44 },
    { step: 'gone/away', name: 'of no plan', critical: 0.1, delayMinutes: 0.01 },
  ],
  limits: [{ step: step.id, since: 'start', requirement: 'soup is on the table in time', chance: 0.31 }],
  anyLimit: 0.31,
  stopped: false,
};

describe('the words of how sure a plan is', () => {
  test.each([
    [0, 'hardly ever'],
    [0.004, 'under 1 %'],
    [0.5, '50 %'],
    [0.996, 'over 99 %'],
    [1, 'nearly always'],
  ])('a share of %f is %s', (share, words) => {
    expect(chanceWords(share)).toBe(words);
  });

  test('tell the clock, what to leave, and only risks to speak of', () => {
    const words = sureWordsOf(supper, sure);
    expect(words.give).toBe('To be done nine times in ten, allow 9 min more than planned.');
    expect(words.rows.map(({ when, chance }) => `${when}: ${chance}`)).toEqual([
      'as planned: under 1 %',
      '5 min later: 62 %',
      '10 min later: nearly always',
    ]);
    expect(words.risks.map(({ stepId, brings }) => `${stepId} ${brings}`)).toEqual([`${step.id} 1.4 min`]);
    expect(words.limits).toEqual(['soup is on the table in time: missed 31 % of the time']);
    const never = sureWordsOf(supper, { ...sure, limits: [{ ...sure.limits[0]!, chance: 1 }] });
    expect(never.limits).toEqual(['soup is on the table in time: missed nearly always']);
  });
});

describe('the panel', () => {
  test('is a region with its name, a table of chances, and goes to a step that carries risk', () => {
    const ongo = vi.fn();
    render(HowSure, { plan: supper, sure, ongo });
    expect(screen.getByRole('region', { name: 'How sure?' })).toBeTruthy();
    expect(screen.getByRole('table', { name: /chance of the finish/i }).querySelectorAll('tr')).toHaveLength(3);
    screen.getByRole('button', { name: step.name }).click();
    expect(ongo).toHaveBeenCalledWith(step.id);
  });
});
