/** The verb that prints how long food takes to cool. */
import { describe, expect, test } from 'vitest';
import { expandDish } from '../../../solver/kitchen/expand.ts';
import { byId, demoComponents } from '../../support/demo-documents.ts';
import { emptyFolder } from '../../support/folder.ts';
import { inTerminal } from './in-terminal.ts';

const afterheat = async (...args: readonly string[]) => {
  const folder = await emptyFolder();
  return inTerminal(folder, [...args, '--data', folder]);
};

describe('coolings', () => {
  test('prints each cooling of the demo with the minutes that are planned, and what shallower layers gain', async () => {
    const { code, out } = await afterheat('coolings', 'harbour-sunday');
    expect(code).toBe(0);
    const potatoes = byId(demoComponents(), 'shaken-potatoes');
    const [cool] = expandDish({ component: potatoes, portions: 8, splits: [[8]], kind: 'step' }, [8]).filter(
      ({ step }) => step.segments.some((segment) => segment.hands === 'off' && segment.cools !== undefined),
    );
    const planned = cool!.ways[0]!.parts.find((part) => part.hands === 'off')!;
    expect(out).toContain(
      `95 to 88 °C, pieces of 35 mm, open on a rack: ${planned.hands === 'off' ? planned.shortest : NaN} min`,
    );
    expect(out).toMatch(
      /90 to 75 °C, 8 mm deep, open on a rack: 4 min\n {3}shared out half as deep \d min, a third as deep \d min/,
    );
    expect(out).toContain('a probe thermometer');
  });

  test('prints JSON with the workings, those of the boxes too', async () => {
    const { code, out } = await afterheat('coolings', 'ten-box-hour', '--json');
    const { coolings } = JSON.parse(out) as {
      coolings: { step: string | null; minutes: number; working: { value: number; parts: unknown[] } }[];
    };
    expect(code).toBe(0);
    expect(coolings.at(-1)).toMatchObject({ step: null, minutes: 20, working: { value: 20 } });
    expect(coolings.at(-1)!.working.parts.length).toBeGreaterThan(0);
  });

  test('says so where no step tells how its food cools', async () => {
    const { out } = await afterheat('coolings', 'weeknight-roast');
    expect(out).toContain('no step says how its food cools');
  });
});
