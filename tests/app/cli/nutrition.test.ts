/** The verb that prints nutrients and energy. The recipe is invented. */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { documentText } from '../../../app/documents/write-document.ts';
import type { Component } from '../../../solver/kitchen/component.ts';
import { component, on, session as sessionOf, smallKitchen, step } from '../../support/documents.ts';
import { emptyFolder } from '../../support/folder.ts';
import { inTerminal } from './in-terminal.ts';

const pot: Component = {
  ...component('pot', [step('mix', [on(3)])], { name: 'lentil pot' }),
  makes: { portions: 4, massG: 1000 },
  ingredients: [
    { id: 'lentils', name: 'lentils', massG: 1000, allergens: [], food: 'lentils-cooked' },
    { id: 'bay', name: 'bay leaves', massG: 2, allergens: [] },
  ],
};
const packing = { name: 'fill the boxes', boxes: 4, work: { fixed: 'PT2M' } };
const cook = sessionOf([pot], {
  id: 'cook',
  name: 'Sunday lentils',
  packing,
  dishes: [{ component: 'pot', portions: 4 }],
  eaters: [{ id: 'noor', name: 'Noor', avoids: [], boxes: 4 }],
});

let folder: string;
beforeEach(async () => {
  folder = await emptyFolder();
  for (const document of [pot, cook, smallKitchen()])
    await writeFile(join(folder, `${document.id}.${document.kind}.json`), documentText(document));
});
const afterheat = (...args: readonly string[]) => inTerminal(folder, [...args, '--data', folder]);

describe('nutrition', () => {
  test('prints a portion, a box with its share of a day, and what is not counted', async () => {
    const { code, out } = await afterheat('nutrition', 'cook.session.json');
    expect(code).toBe(0);
    // 250 g of boiled lentils at 438.51 kJ in 100 g: USDA SR28 NDB 16070 by the factors of Regulation (EU) 1169/2011
    expect(out).toMatch(/lentil pot +1096 +261 /);
    expect(out).toContain('not counted: bay leaves (no food of the table is named for it)');
    expect(out).toMatch(/Noor, 4 boxes +1096 /);
    expect(out).toContain("of an adult's day: energy 13 %");
    expect(out).toContain('not counted: bay leaves (lentil pot)');
    expect(out).toContain('Regulation (EU) No 1169/2011');
  });

  test('prints JSON with the working of the energy', async () => {
    const { code, out } = await afterheat('nutrition', 'cook', '--json');
    const told = JSON.parse(out) as {
      components: { per100g: { energyKJ: number }; energy: { unit: string; parts: unknown[] } }[];
      boxes: { eater: string; portions: Record<string, number>; ofReferenceIntake: { energyKJ: number } }[];
    };
    expect(code).toBe(0);
    expect(told.components[0]!.per100g.energyKJ).toBeCloseTo(438.51, 2);
    expect(told.components[0]!.energy.parts).toHaveLength(4);
    expect(told.boxes[0]).toMatchObject({ eater: 'noor', portions: { pot: 1 } });
    expect(told.boxes[0]!.ofReferenceIntake.energyKJ).toBeCloseTo(1096.3 / 8400, 4);
  });

  test('tells a session that is not there', async () => {
    const { code, err } = await afterheat('nutrition', 'brunch');
    expect(code).toBe(2);
    expect(err).toContain('brunch');
  });

  test('prints the demo', async () => {
    const { code, out } = await afterheat('nutrition', 'harbour-sunday');
    expect(code).toBe(0);
    expect(out).toMatch(/not counted: .*dried dulse/);
    expect(out).toMatch(/at least: \d+ % of the weight is counted/);
  });
});
