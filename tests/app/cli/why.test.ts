/** `afterheat why`, on a plan that carries its reasons and on one that does not. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { documentText } from '../../../app/documents/write-document.ts';
import type { Plan } from '../../../solver/kitchen/plan.ts';
import { component, inOven, off, on, step } from '../../support/documents.ts';
import { emptyFolder } from '../../support/folder.ts';
import { planned } from '../../support/planning.ts';
import { supper } from '../../support/supper.ts';
import { inTerminal } from './in-terminal.ts';

/** Peeled in 5, then roasted 40 in an oven that takes 18 min to heat; a salad beside it. All invented. */
const roots = component('roots', [
  step('peel', [on(5)], [{ use: 'board' }]),
  step('roast', [on(1, { name: 'into the oven' }), off(40), on(1, { name: 'take out' })], [inOven(200)], {
    after: [{ step: 'peel' }],
  }),
]);
const salad = component('salad', [step('toss', [on(4)], [{ use: 'bowl', leastMl: 1000 }])]);

let folder: string;
let plan: Plan;
beforeEach(async () => {
  folder = await emptyFolder();
  plan = planned({ components: [roots, salad] });
  const { bindingChain: _, ...bare } = plan;
  const old = { ...bare, steps: plan.steps.map(({ slack: __, ...own }) => own) };
  await writeFile(join(folder, 'new.plan.json'), documentText(plan));
  await writeFile(join(folder, 'old.plan.json'), documentText(old));
  await writeFile(join(folder, 'supper.plan.json'), documentText(supper));
  const moved = {
    ...plan,
    steps: plan.steps.map((each) => (each.step === 'peel' ? { ...each, start: 90, end: 95 } : each)),
  };
  await writeFile(join(folder, 'broken.plan.json'), documentText(moved));
});

const why = (...args: readonly string[]) => inTerminal(folder, ['why', ...args, '--data', folder]);

describe('why', () => {
  test('tells the chain with clock times, and what could start later', async () => {
    const { code, out } = await why('new.plan.json');
    expect(code).toBe(0);
    // Heating 18 min, in 1, roasting 40, out 1.
    expect(out).toContain('What decides the finish, first to last\n  10:00–10:18  ');
    expect(out).toMatch(/10:18–11:00 {2}roast \(roots\): waits until the oven is hot/);
    expect(out).toMatch(/What could start later\n( {2}.*\n)*.*toss \(salad\): up to \d+ min/);
  });

  test('tells the same of a plan that does not carry its reasons', async () => {
    const [now, old] = [await why('new.plan.json'), await why('old.plan.json')];
    expect(old).toEqual(now);
  });

  test('prints the chain as JSON, in minutes from the start', async () => {
    const { out } = await why('new.plan.json', '--json');
    const { chain, slack } = JSON.parse(out) as { chain: Plan['bindingChain']; slack: Record<string, number> };
    expect(chain!.at(-1)).toMatchObject({ step: 'roots/roast', until: plan.finishMinutes, why: 'heat' });
    // The oven may not wait; peeling has from 0 to 18 for its 5 minutes.
    expect(slack).toMatchObject({ 'roots/roast': 0 });
    const peel = plan.steps.find((each) => each.id === 'roots/peel')!;
    expect(slack['roots/peel']! + peel.start).toBeGreaterThanOrEqual(9);
  });

  test('underlines the chain on the chart, in a file', async () => {
    const chart = async (...more: readonly string[]): Promise<string> => {
      const { code, out } = await inTerminal(folder, ['chart', 'old.plan.json', '--data', folder, ...more]);
      expect(code).toBe(0);
      return out;
    };
    const [plain, marked] = [await chart(), await chart('--why')];
    expect(marked.match(/<rect/g)!.length).toBeGreaterThan(plain.match(/<rect/g)!.length);
  });

  test('says so of a plan that it cannot tell of', async () => {
    const { code, err } = await why('supper.plan.json');
    expect([code, err]).toEqual([1, expect.stringContaining('not the margins')]);
  });

  test('refuses a plan that breaks a rule, and says which', async () => {
    const { code, err } = await why('broken.plan.json');
    expect(code).toBe(1);
    expect(err).toMatch(/breaks a rule[\s\S]*Rule 2/);
  });
});
