/** Sessions for which there is no plan, each for another reason. All invented; what clashes is worked out by hand beside each. */
import type { Component } from '../../../solver/kitchen/component.ts';
import type { SessionInput } from '../../../solver/translate/session-to-problem.ts';
import type { Kitchen } from '../../../solver/kitchen/kitchen.ts';
import type { Session } from '../../../solver/kitchen/session.ts';
import { component, inOven, linearOven, off, on, session, smallKitchen, step } from '../../support/documents.ts';

export interface Impossible {
  readonly name: string;
  readonly given: SessionInput;
  /** Paths of a smallest clash. */
  readonly clash: readonly string[];
  /** Paths of the requirements that mend it alone. */
  readonly singles: readonly string[];
}

const given = (
  components: readonly Component[],
  changes: Partial<Session>,
  kitchen: Partial<Kitchen> = {},
): SessionInput => ({ session: session(components, changes), kitchen: smallKitchen(kitchen), components });

const bo = { id: 'bo', name: 'Bo', can: ['adult'] };
const ada = { id: 'ada', name: 'Ada', can: ['adult'] };
const work = (id: string, minutes: number): Component => component(id, [step('work', [on(minutes)])]);
const onBurner = (id: string): Component =>
  component(id, [
    step(
      'cook',
      [on(2), off(20), on(2)],
      [
        { use: 'pan', leastMl: 1000 },
        { use: 'burner', heat: 'full' },
      ],
    ),
  ]);
const baked = (id: string, celsius: number): Component =>
  component(id, [step('bake', [on(1), off(30), on(1)], [inOven(celsius)])]);

export const impossibleSessions: readonly Impossible[] = [
  {
    // 20 + 25 minutes by one person in 40; the order would ask for the same without her.
    name: 'work of one person that is longer than the session',
    given: given(
      [component('soup', [step('cut', [on(20)]), step('mix', [on(25)], [], { after: [{ step: 'cut' }] })])],
      {
        longest: 'PT40M',
      },
    ),
    clash: ['longest', 'people'],
    singles: ['longest'],
  },
  {
    // 3 × 6 minutes in 10 by two: one of them would need 12.
    name: 'three jobs for two people in less than two in a row',
    given: given([work('one', 6), work('two', 6), work('three', 6)], { longest: 'PT10M', people: [ada, bo] }),
    clash: ['longest', 'people'],
    singles: ['longest', 'people'],
  },
  {
    // 30 minutes in one go by one who is there for 20.
    name: 'a cook who is not there for long enough',
    given: given([work('dough', 30)], {
      longest: 'PT60M',
      people: [{ ...ada, there: [{ from: 'PT0M', until: 'PT20M' }] }],
    }),
    clash: ['people', 'people[0].there'],
    singles: ['people', 'people[0].there'],
  },
  {
    // Done after 60 minutes at the soonest; the table is at 50.
    name: 'a table earlier than the dish can be',
    given: given([component('pie', [step('bake', [on(5), off(50), on(5)])])], {
      longest: 'PT90M',
      table: { at: 'PT50M', dishes: ['pie'] },
    }),
    clash: ['table.at'],
    singles: ['table.at'],
  },
  {
    // Both wait to be done within 2 minutes of the table, and each needs 5 minutes of the one pair of hands.
    name: 'two dishes whose last minutes are one person’s',
    given: given([work('gravy', 5), work('greens', 5)], {
      longest: 'PT60M',
      table: { at: 'PT30M', dishes: ['gravy', 'greens'], allowance: 'PT2M', othersMayRunPast: true },
    }),
    clash: ['people', 'table.allowance', 'table.at'],
    singles: ['people', 'table.allowance', 'table.at'],
  },
  {
    // The oven is there from minute 30; 32 minutes in it and the table at 60.
    name: 'an oven that comes too late for the table',
    given: given(
      [baked('pie', 20)],
      {
        longest: 'PT90M',
        absences: [{ what: 'oven', from: 'PT0M', until: 'PT30M', why: 'bread of a neighbour' }],
        table: { at: 'PT60M', dishes: ['pie'] },
      },
      { ovens: [{ ...linearOven('oven'), dial: { leastC: 20, mostC: 250, stepC: 10 } }] },
    ),
    clash: ['absences[0]', 'ovens', 'table.at'],
    singles: ['absences[0]', 'ovens', 'table.at'],
  },
  {
    // The board is there from minute 30 of 40, and is needed for 20.
    name: 'a board that is away until too late',
    given: given([component('salad', [step('cut', [on(20)], [{ use: 'board' }])])], {
      longest: 'PT40M',
      absences: [{ what: 'board', from: 'PT0M', until: 'PT30M' }],
    }),
    clash: ['absences[0]', 'boards', 'longest'],
    singles: ['absences[0]', 'boards', 'longest'],
  },
  {
    // One person in two places at minute 10, though Bo is free.
    name: 'two pins of one person at one time',
    given: given([work('one', 10), work('two', 10)], {
      longest: 'PT60M',
      people: [ada, bo],
      pins: [
        { component: 'one', step: 'work', start: 'PT10M', person: 'ada' },
        { component: 'two', step: 'work', start: 'PT10M', person: 'ada' },
      ],
    }),
    clash: ['people', 'pins[0].person', 'pins[0].start', 'pins[1].person', 'pins[1].start'],
    singles: ['people', 'pins[0].person', 'pins[0].start', 'pins[1].person', 'pins[1].start'],
  },
  {
    // The first takes 30 minutes, and the second is pinned to minute 20 after it.
    name: 'a pin before what comes first can be done',
    given: given(
      [component('stew', [step('cut', [on(30)]), step('stir', [on(5)], [], { after: [{ step: 'cut' }] })])],
      {
        longest: 'PT60M',
        people: [ada, bo],
        pins: [{ component: 'stew', step: 'stir', start: 'PT20M' }],
      },
    ),
    clash: ['pins[0].start', 'steps[1].after[0]'],
    singles: ['pins[0].start', 'steps[1].after[0]'],
  },
  {
    // 10 minutes from minute 0, the next at once but pinned to minute 40.
    name: 'a pin later than the longest gap lets it be',
    given: given(
      [
        component('egg', [
          step('whisk', [on(10)]),
          step('fold', [on(5)], [], { after: [{ step: 'whisk', longest: 'PT0M' }] }),
        ]),
      ],
      {
        longest: 'PT60M',
        pins: [
          { component: 'egg', step: 'whisk', start: 'PT0M' },
          { component: 'egg', step: 'fold', start: 'PT40M' },
        ],
      },
    ),
    clash: ['pins[0].start', 'pins[1].start', 'steps[1].after[0].longest'],
    singles: ['pins[0].start', 'pins[1].start', 'steps[1].after[0].longest'],
  },
  {
    // Cools for 30 minutes on its way into a fridge that it must reach within 20.
    name: 'cooling longer than the way to the fridge may be',
    given: given(
      [
        component(
          'stock',
          [
            step('boil', [on(5)]),
            step('cool', [off(30)], [], { after: [{ step: 'boil' }] }),
            step('away', [on(2)], [], { after: [{ step: 'cool' }], putsAway: true }),
          ],
          { fridge: { from: 'boil', within: 'PT20M' } },
        ),
      ],
      { longest: 'PT80M' },
    ),
    clash: ['fridge.within', 'steps[1].after[0]', 'steps[2].after[0]'],
    singles: ['fridge.within', 'steps[1].after[0]', 'steps[2].after[0]'],
  },
  {
    // In water from 20:05 of the day before, for 12 hours at the most: until 08:05, and the session begins at 10:00.
    name: 'a soak that ends before the session begins',
    given: given(
      [
        component('beans', [step('boil', [on(5)])], {
          ahead: [
            {
              id: 'soak',
              name: 'soak the beans',
              daysBefore: 1,
              at: '20:00',
              hands: 'PT5M',
              shortest: 'PT8H',
              longest: 'PT12H',
              until: 'boil',
            },
          ],
        }),
      ],
      { longest: 'PT60M' },
    ),
    clash: ['ahead[0]'],
    singles: ['ahead[0]'],
  },
  {
    // Kept hot for at least 30 minutes, and for 20 at the most.
    name: 'a step that keeps food hot for longer than it may',
    given: given([component('rice', [step('keep', [off(30)], [], { hotHold: { leastC: 63, longest: 'PT20M' } })])], {
      longest: 'PT60M',
    }),
    clash: ['steps[0].hotHold.longest'],
    singles: ['steps[0].hotHold.longest'],
  },
  {
    // 3,000 W on a supply of 2,500 W. Put into the cold oven it would never be switched on.
    name: 'an oven that draws more than the home has',
    given: given(
      [baked('tart', 200)],
      { longest: 'PT90M' },
      { power: [{ id: 'home', name: 'the home', limitW: 2500 }] },
    ),
    clash: ['power[0]', 'steps[0].needs'],
    singles: ['power[0]', 'steps[0].needs'],
  },
  {
    // From 0 to 24 and from 10 to 34 on the only burner.
    name: 'two pots pinned to one burner',
    given: given(
      [onBurner('rice'), onBurner('peas')],
      {
        longest: 'PT60M',
        pins: [
          { component: 'rice', step: 'cook', start: 'PT0M' },
          { component: 'peas', step: 'cook', start: 'PT10M' },
        ],
      },
      { hob: { ...smallKitchen().hob, burners: [smallKitchen().hob.burners[0]!] } },
    ),
    clash: ['hob.burners', 'pins[0].start', 'pins[1].start'],
    singles: ['hob.burners', 'pins[0].start', 'pins[1].start'],
  },
  {
    // 200 °C from minute 20 to 52 and 100 °C from minute 30 to 62, in one oven of two racks.
    name: 'two temperatures at once in one oven',
    given: given([baked('bread', 200), baked('meringue', 100)], {
      longest: 'PT110M',
      pins: [
        { component: 'bread', step: 'bake', start: 'PT20M' },
        { component: 'meringue', step: 'bake', start: 'PT30M' },
      ],
    }),
    clash: ['ovens', 'pins[0].start', 'pins[1].start'],
    singles: ['ovens', 'pins[0].start', 'pins[1].start'],
  },
  {
    // A look at minute 40, 5 to either side, of what goes on for 30.
    name: 'a look on the way after the end',
    given: given(
      [
        component('roast', [
          step('bake', [
            on(1),
            off(30, 30, { checks: [{ name: 'turn', at: 'PT40M', within: 'PT5M', work: { fixed: 'PT1M' } }] }),
            on(1),
          ]),
        ]),
      ],
      { longest: 'PT90M' },
    ),
    clash: ['steps[0].segments'],
    singles: ['steps[0].segments'],
  },
  {
    // 2 × 6 minutes that Ada alone may do in 10, while the child is free.
    name: 'work that one of two may do',
    given: given(
      ['one', 'two'].map((id) => component(id, [step('drain', [on(6, { who: 'adult' })])])),
      { longest: 'PT10M', people: [ada, { id: 'kit', name: 'Kit', can: [] }] },
    ),
    clash: ['longest', 'people', 'steps[0].segments.who', 'steps[0].segments.who'],
    singles: ['longest', 'people', 'steps[0].segments.who', 'steps[0].segments.who'],
  },
  {
    // Two reasons that have nothing to do with each other: no single one mends both.
    name: 'a pin too early and a table too early',
    given: given(
      [
        component('stew', [step('cut', [on(30)]), step('stir', [on(5)], [], { after: [{ step: 'cut' }] })]),
        component('pie', [step('bake', [on(5), off(50), on(5)])]),
      ],
      {
        longest: 'PT120M',
        people: [ada, bo],
        pins: [{ component: 'stew', step: 'stir', start: 'PT20M' }],
        table: { at: 'PT50M', dishes: ['pie'], othersMayRunPast: true },
      },
    ),
    clash: ['table.at'],
    singles: [],
  },
];
