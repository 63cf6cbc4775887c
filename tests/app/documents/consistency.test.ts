/** Documents that keep their schema and still name nothing or contradict themselves. */
import { describe, expect, test } from 'vitest';
import { findingsOf } from '../../../app/documents/consistency/findings-of.ts';
import type { AnyDocument } from '../../../app/documents/kinds.ts';
import { demoComponents, demoKitchens, demoSessions } from '../../support/demo-documents.ts';
import { component, off, on, session as sessionOf, smallKitchen, step, inOven } from '../../support/documents.ts';
import { supper } from '../../support/supper.ts';

const peel = component('roots', [step('peel', [on(5)], [{ use: 'board' }])]);
const cook = sessionOf([peel]);
const small = smallKitchen();
const oven = small.ovens[0]!;

const beans = { ...peel.ingredients[0]!, toxin: { kind: 'kidney-beans', soak: 'soek', boil: 'peel' } };

const ODD: readonly { readonly name: string; readonly document: AnyDocument; readonly path: string }[] = [
  {
    name: 'a pan with the id of a board',
    document: { ...small, pans: [{ ...small.pans[0]!, id: small.boards[0]!.id }] },
    path: 'boards[0].id',
  },
  {
    name: 'a limit on an oven that is not there',
    document: { ...small, power: [{ id: 'left-half', name: 'left half', limitW: 3000, members: ['ovn'] }] },
    path: 'power[0].members[0]',
  },
  {
    name: 'a toxin that a step of no name soaks out',
    document: { ...peel, ingredients: [beans] },
    path: 'ingredients[0].toxin.soak',
  },
  {
    name: 'a dial from hot to cold',
    document: { ...small, ovens: [{ ...oven, dial: { leastC: 250, mostC: 50, stepC: 10 } }] },
    path: 'ovens[0].dial.leastC',
  },
  {
    name: 'an oven that cools while it heats',
    document: {
      ...small,
      ovens: [
        {
          ...oven,
          heating: [
            { minutes: 0, celsius: 200 },
            { minutes: 5, celsius: 20 },
          ],
        },
      ],
    },
    path: 'ovens[0].heating[1].celsius',
  },
  {
    name: 'readings out of order',
    document: {
      ...small,
      ovens: [
        {
          ...oven,
          cooling: [
            { minutes: 5, celsius: 200 },
            { minutes: 5, celsius: 100 },
          ],
        },
      ],
    },
    path: 'ovens[0].cooling[1].minutes',
  },
  {
    name: 'an oven that is hotter after it was switched off',
    document: {
      ...small,
      ovens: [{ ...oven, readings: { afterOff: [{ fromC: 200, minutes: 10, celsius: 205 }] } }],
    },
    path: 'ovens[0].readings.afterOff[0].celsius',
  },
  {
    name: 'an oven that is colder than its room',
    document: { ...small, ovens: [{ ...oven, readings: { toHeat: [{ minutes: 10, celsius: 15 }] } }] },
    path: 'ovens[0].readings.toHeat[0].celsius',
  },
  {
    name: 'a cold load in the afterheat',
    document: component('roots', [
      step('dry', [on(1), off(20), on(1)], [inOven(100, 150, { afterheat: true, load: { fromC: 5 } })]),
    ]),
    path: 'steps[0].needs[0].load',
  },
  {
    name: 'a cold load with no hands-off segment to lengthen',
    document: component('roots', [step('sear', [on(5)], [inOven(200, 200, { load: { fromC: 5 } })])]),
    path: 'steps[0].needs[0].load',
  },
  {
    name: 'a second cold load in one segment',
    document: component('roots', [
      step(
        'roast',
        [on(1), off(20), on(1)],
        [inOven(200, 200, { load: { fromC: 5 } }), inOven(200, 200, { load: { fromC: 5 } })],
      ),
    ]),
    path: 'steps[0].needs[1].load',
  },
  {
    name: 'a step after one that is not there',
    document: component('roots', [step('peel', [on(5)], [], { after: [{ step: 'wash' }] })]),
    path: 'steps[0].after[0].step',
  },
  {
    name: 'two steps of one name',
    document: component('roots', [step('peel', [on(5)]), step('peel', [on(5)])]),
    path: 'steps[1].id',
  },
  {
    name: 'an oven window from hot to cold',
    document: component('roots', [
      step('roast', [on(1), off(40), on(1)], [{ use: 'oven', function: 'fan', leastC: 210, mostC: 190, share: 50 }]),
    ]),
    path: 'steps[0].needs[0].leastC',
  },
  {
    name: 'a need during a segment that is not there',
    document: component('roots', [step('peel', [on(5)], [{ use: 'board', during: { from: 0, to: 1 } }])]),
    path: 'steps[0].needs[0].during',
  },
  {
    name: 'a shortest gap over the longest',
    document: component('roots', [
      step('peel', [on(5)]),
      step('cut', [on(5)], [], { after: [{ step: 'peel', shortest: 'PT1H', longest: 'PT30M' }] }),
    ]),
    path: 'steps[1].after[0].shortest',
  },
  {
    name: 'batches of no step',
    document: component('roots', [step('peel', [on(5)])], { batches: { steps: ['roast'], mostPortions: 4 } }),
    path: 'batches.steps[0]',
  },
  {
    name: 'a crew of nobody known',
    document: { ...cook, crews: [{ id: 'one', name: 'one', people: ['nobody'] }] },
    path: 'crews[0].people[0]',
  },
  {
    name: 'a table for what is not cooked',
    document: { ...cook, table: { at: 'PT1H', dishes: ['rots'] } },
    path: 'table.dishes[0]',
  },
  {
    name: 'a dish twice',
    document: { ...cook, dishes: [...cook.dishes, ...cook.dishes] },
    path: 'dishes[1].component',
  },
  {
    name: 'a zone that no map has',
    document: { ...cook, start: { ...cook.start, zone: 'Europe/Atlantis' } },
    path: 'start.zone',
  },
  {
    name: 'the thirtieth of February',
    document: { ...cook, start: { local: '2026-02-30T10:00', zone: 'Europe/Lisbon' } },
    path: 'start.local',
  },
  // source: Directive 2000/84/EC: summer time begins at 01:00 UTC on the last Sunday of March, so Lisbon's clocks skip 01:00–02:00.
  {
    name: 'an hour that is skipped',
    document: { ...cook, start: { local: '2026-03-29T01:30', zone: 'Europe/Lisbon' } },
    path: 'start.local',
  },
  {
    name: 'somebody who leaves before coming',
    document: { ...cook, people: [{ ...cook.people[0]!, there: [{ from: 'PT1H', until: 'PT30M' }] }] },
    path: 'people[0].there[0]',
  },
];

describe('what does not fit together', () => {
  test.each(ODD)('$name is found at its place', ({ document, path }) => {
    expect(findingsOf(document).map((finding) => finding.path)).toEqual([path]);
  });

  test('an id that is nearly right is told with the one that was meant', () => {
    const [finding] = findingsOf({ ...cook, table: { at: 'PT1H', dishes: ['rots'] } });
    expect(finding?.mend).toBe('write "roots"');
  });

  test('the documents frozen in a plan are looked through at their places in it', () => {
    const [first] = supper.session.people;
    const broken = { ...supper, session: { ...supper.session, people: [...supper.session.people, first!] } };
    expect(findingsOf(broken).map(({ path }) => path)).toEqual([`session.people[${supper.session.people.length}].id`]);
  });
});

test.each(
  [...demoKitchens(), ...demoComponents(), ...demoSessions(), small, peel, cook, supper].map(
    (document) => [document.kind, document.id, document] as const,
  ),
)('the %s %s fits together', (_kind, _id, document) => {
  expect(findingsOf(document)).toEqual([]);
});
