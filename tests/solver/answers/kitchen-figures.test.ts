import { describe, expect, test } from 'vitest';
import { kitchenFigures } from '../../../solver/answers/kitchen-figures.ts';
import { boilMinutesOnBurner } from '../../../solver/water/boil.ts';
import type { Working } from '../../../solver/working.ts';
import { byId, demoKitchens } from '../../support/demo-documents.ts';

const flat = (working: Working): readonly Working[] => [working, ...(working.parts ?? []).flatMap(flat)];

describe.each(demoKitchens().map((kitchen) => [kitchen.id, kitchen] as const))('the figures of %s', (_, kitchen) => {
  const figures = kitchenFigures(kitchen);
  const things = [
    ...figures.ovens,
    ...figures.burners,
    ...figures.pans,
    ...(figures.kettle === null ? [] : [figures.kettle]),
  ];

  test('tell of every oven, of every burner that a pan fits, and of the pans with a lid', () => {
    expect(figures.ovens.map(({ id }) => id)).toEqual(kitchen.ovens.map(({ id }) => id));
    expect(figures.pans.length).toBe(kitchen.pans.filter(({ lid }) => lid).length);
    expect(figures.burners.length).toBeGreaterThan(0);
  });

  test('have each label once, and workings whose numbers and sources are there', () => {
    for (const { figures: list } of things) {
      expect(new Set(list.map(({ label }) => label)).size).toBe(list.length);
      for (const working of list.flatMap((each) => flat(each.working))) {
        expect(Number.isFinite(working.value), working.name).toBe(true);
        expect(
          working.inputs.every(({ value }) => Number.isFinite(value)),
          working.name,
        ).toBe(true);
        expect(working.source.cite, working.name).not.toBe('');
      }
    }
  });
});

test('a boil is told exactly where a plan rounds it up', () => {
  const kitchen = byId(demoKitchens(), 'harbour-one-oven');
  const burner = kitchen.hob.burners[0]!;
  const pan = kitchen.pans.find(({ acrossCm }) => acrossCm >= burner.leastPanCm && acrossCm <= burner.mostPanCm)!;
  const told = kitchenFigures(kitchen).burners.find(({ id }) => id === burner.id)!.figures[0]!.working.value;
  expect(Math.ceil(told)).toBe(boilMinutesOnBurner(kitchen, burner, pan, 1000, true));
});

test('the energy of a boil is its minutes at the rated power, by hand: 4 min at 2,000 W are 133 Wh', () => {
  const kitchen = byId(demoKitchens(), 'harbour-one-oven');
  for (const { id, figures } of kitchenFigures(kitchen).burners) {
    const { powerW } = kitchen.hob.burners.find((burner) => burner.id === id)!;
    const energy = figures.find(({ label }) => label.startsWith('energy of it'))!.working;
    expect(energy.value).toBeCloseTo((energy.parts![0]!.value * powerW) / 60, 9);
  }
  expect((4 * 2000) / 60).toBeCloseTo(133.3, 1);
});
