import { describe, expect, test } from 'vitest';
import { fillingWashes, WASH_BETWEEN_MIN } from '../../../solver/boxes/filling-washes.ts';
import { packingComponent } from '../../../solver/kitchen/session-components.ts';
import { workMinutes } from '../../../solver/kitchen/scaling.ts';
import type { Component } from '../../../solver/kitchen/component.ts';
import type { Eater, Session } from '../../../solver/kitchen/session.ts';
import { component, on, session as sessionOf, step } from '../../support/documents.ts';

const dish = (id: string, ...allergens: Component['ingredients'][number]['allergens']): Component => ({
  ...component(id, [step('mix', [on(5)])]),
  ingredients: [{ id: 'a', name: 'a', massG: 100, allergens }],
});
const milky = dish('milky', 'milk');
const seedy = dish('seedy', 'sesame');
const plain = dish('plain');

const eater = (id: string, avoids: Eater['avoids'], ...eats: string[]): Eater => ({
  id,
  name: id,
  avoids,
  boxes: 2,
  eats,
});
const session = (...eaters: readonly Eater[]): Session => ({
  ...sessionOf([milky, seedy, plain]),
  eaters: [...eaters],
  packing: { name: 'fill the boxes', boxes: 4, work: { fixed: 'PT2M', perPortion: 'PT1M' } },
});
const washes = (...eaters: readonly Eater[]): number => fillingWashes(session(...eaters), [milky, seedy, plain]);

describe('washing while boxes are filled', () => {
  test('is not asked for where some order of filling keeps everything apart', () => {
    expect(washes(eater('ada', ['sesame'], 'milky'), eater('ben', [], 'seedy'))).toBe(0);
  });

  test('is asked for where each holds what the other avoids, whichever comes first', () => {
    expect(washes(eater('ada', ['sesame'], 'milky'), eater('ben', ['milk'], 'seedy'))).toBe(1);
  });

  test('has its minutes in the work of packing', () => {
    const packing = (...eaters: readonly Eater[]): number => {
      const boxes = packingComponent(session(...eaters), [milky, seedy, plain])!;
      const [segment] = boxes.steps[0]!.segments;
      if (segment?.hands !== 'on') throw new Error('packing is work by hand');
      return workMinutes(segment.work, boxes, 4);
    };
    const apart = packing(eater('ada', ['sesame'], 'milky'), eater('ben', [], 'seedy'));
    const crossed = packing(eater('ada', ['sesame'], 'milky'), eater('ben', ['milk'], 'seedy'));
    expect(apart).toBe(6);
    expect(crossed - apart).toBe(WASH_BETWEEN_MIN);
  });
});
