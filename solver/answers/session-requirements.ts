/** What the session document asks: pins, table, absences, how long it may last, when people are there, its pools and boxes. */
import type { Lag } from '../engine/problem.ts';
import { pinName, poolName, tableName, byTableName } from '../translate/requirement-names.ts';
import type { SessionInput } from '../translate/session-to-problem.ts';
import { DEFAULT_TABLE_ALLOWANCE } from '../translate/orders.ts';
import { packingComponent, clearingComponent } from '../kitchen/session-components.ts';
import { minutesDown } from '../kitchen/scaling.ts';
import { durationMinutes, minutesDuration } from '../kitchen/values.ts';
import type { Session } from '../kitchen/session.ts';
import type { Requirement } from './requirement.ts';
import { clockAt, listed, minutesInWords } from './session-words.ts';
import { nameOfThing } from './thing-names.ts';
import { withoutLags } from './without-lags.ts';

/** A session without its longest length may last this much more, minutes: longer than any day in a kitchen. */
const MUCH_LONGER = 12 * 60;

type Part = Omit<Requirement, 'id' | 'document'>;

/** Every requirement of the session document, in its order. */
export function sessionRequirements(input: SessionInput): readonly Requirement[] {
  const document = `session ${input.session.id}`;
  return [
    longest(input.session),
    ...hours(input),
    ...table(input),
    ...absences(input),
    ...pins(input),
    ...pools(input.session),
    ...ownWork(input),
  ].map((part) => ({ id: `${document} ${part.path}`, document, ...part }));
}

const inSession =
  (change: (session: Session) => Session) =>
  (input: SessionInput): SessionInput => ({ ...input, session: change(input.session) });

function longest(session: Session): Part {
  const minutes = durationMinutes(session.longest);
  return {
    kind: 'length',
    path: 'longest',
    words: `everything, with what cools at the end, is done within ${minutesInWords(minutes)}, by ${clockAt(session, session.longest)}`,
    mend: 'let the session last longer',
    relaxInput: inSession((given) => ({ ...given, longest: minutesDuration(minutes + MUCH_LONGER) })),
    byMinutes: {
      asked: minutes,
      relaxTo: (more) => inSession((given) => ({ ...given, longest: minutesDuration(more) })),
      mendTo: (more, least) =>
        `let the session last ${least ? 'at least ' : ''}${minutesInWords(more)}, until ${clockAt(session, minutesDuration(more))}${least ? '' : ', which is enough'}`,
    },
  };
}

function hours({ session, crew }: SessionInput): readonly Part[] {
  const cooks = crewOf(session, crew);
  return session.people.flatMap((person, index): Part[] => {
    if (person.there === undefined || !cooks.includes(person.id)) return [];
    const spans = person.there.map(({ from, until }) => `${clockAt(session, from)} to ${clockAt(session, until)}`);
    return [
      {
        kind: 'hours',
        path: `people[${index}].there`,
        words: `${person.name} is there ${spans.length === 0 ? 'at no time' : `from ${listed(spans)}`} only`,
        mend: `have ${person.name} there all the time`,
        relaxInput: inSession((given) => ({
          ...given,
          people: given.people.map((each) => {
            if (each.id !== person.id) return each;
            const { there: _, ...always } = each;
            return always;
          }),
        })),
      },
    ];
  });
}

/** Ids of those who cook. */
export function crewOf(session: Session, crew: string | undefined): readonly string[] {
  const chosen = crew === undefined ? session.crews?.[0] : session.crews?.find(({ id }) => id === crew);
  return chosen?.people ?? session.people.map(({ id }) => id);
}

function table({ session, components }: SessionInput): readonly Part[] {
  const { table: wanted } = session;
  if (wanted === undefined) return [];
  const served = components.filter(({ id }) => wanted.dishes.includes(id));
  const names = new Set(served.map(tableName));
  const others = new Set(
    [...components, ...ownComponents(session, components)]
      .filter(({ id }) => !wanted.dishes.includes(id))
      .flatMap((component) => component.steps.map((step) => byTableName(step, component))),
  );
  const earliest = (lag: Lag): boolean => lag.from === 'origin';
  const allowance =
    wanted.allowance === undefined ? DEFAULT_TABLE_ALLOWANCE : minutesDown(durationMinutes(wanted.allowance));
  const at = clockAt(session, wanted.at);
  const dishes = listed(served.map(({ name }) => name));
  return [
    {
      kind: 'table',
      path: 'table.at',
      words: `${dishes} ${served.length === 1 ? 'is' : 'are'} on the table at ${at}`,
      mend: 'put it on the table later',
      relaxProblem: withoutLags((lag, name) => (names.has(name) && !earliest(lag)) || others.has(name)),
    },
    {
      kind: 'table',
      path: 'table.allowance',
      words: `what is for the table is done no more than ${minutesInWords(allowance)} before ${at}`,
      mend: 'let dishes be done longer before the table',
      relaxProblem: withoutLags((lag, name) => names.has(name) && earliest(lag)),
    },
    ...(wanted.othersMayRunPast === true
      ? []
      : [
          {
            kind: 'table' as const,
            path: 'table.othersMayRunPast',
            words: `all other work is done by table time, ${at}`,
            mend: 'let other work run past the table',
            relaxProblem: withoutLags((_, name) => others.has(name)),
          },
        ]),
  ];
}

function absences({ session, kitchen }: SessionInput): readonly Part[] {
  return (session.absences ?? []).map((absence, index) => ({
    kind: 'absence',
    path: `absences[${index}]`,
    words: `${nameOfThing(kitchen, absence.what)} is not there from ${clockAt(session, absence.from)} to ${clockAt(session, absence.until)}${
      absence.why === undefined ? '' : ` (${absence.why})`
    }`,
    mend: `have ${nameOfThing(kitchen, absence.what)} there then too`,
    relaxInput: inSession((given) => ({
      ...given,
      absences: (given.absences ?? []).filter((other) => !same(other, absence)),
    })),
  }));
}

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

function pins({ session, kitchen, components }: SessionInput): readonly Part[] {
  return (session.pins ?? []).flatMap((pin, index): Part[] => {
    const step = components.find(({ id }) => id === pin.component)?.steps.find(({ id }) => id === pin.step);
    const batch = pin.batch === undefined || pin.batch === 1 ? '' : `, batch ${pin.batch},`;
    const what = `${step?.name ?? pin.step}${batch}`;
    // The pin keeps its place in the list, for others are told by theirs.
    const without = (field: 'person' | 'place') =>
      inSession((given) => ({
        ...given,
        pins: (given.pins ?? []).map((other, at) => {
          if (at !== index) return other;
          const { [field]: _, ...rest } = other;
          return rest;
        }),
      }));
    const mend = `take the pin of ${what} out`;
    const name = pinName(index, pin);
    const person = session.people.find(({ id }) => id === pin.person)?.name ?? pin.person;
    return [
      ...(pin.start === undefined
        ? []
        : [
            {
              kind: 'pin' as const,
              path: `pins[${index}].start`,
              words: `${what} is pinned to start at ${clockAt(session, pin.start)}`,
              mend,
              relaxProblem: withoutLags((_, requirement) => requirement === name),
            },
          ]),
      ...(pin.person === undefined
        ? []
        : [
            {
              kind: 'pin' as const,
              path: `pins[${index}].person`,
              words: `${what} is pinned to ${person}`,
              mend,
              relaxInput: without('person'),
            },
          ]),
      ...(pin.place === undefined
        ? []
        : [
            {
              kind: 'pin' as const,
              path: `pins[${index}].place`,
              words: `${what} is pinned to ${nameOfThing(kitchen, pin.place)}`,
              mend,
              relaxInput: without('place'),
            },
          ]),
    ];
  });
}

const pools = (session: Session): readonly Part[] =>
  (session.pools ?? []).map((pool, index) => ({
    kind: 'limit',
    path: `pools[${index}]`,
    words: `${pool.name} is used only while it is hot`,
    mend: `allow ${pool.name} more boils`,
    relaxProblem: withoutLags((_, name) => name === poolName(pool)),
  }));

/** Packing and clearing, as components. */
export function ownComponents(
  session: Session,
  components: SessionInput['components'],
): readonly SessionInput['components'][number][] {
  const cooked = components.filter(({ id }) => session.dishes.some((dish) => dish.component === id));
  const boxes = packingComponent(session, cooked);
  const clearing = clearingComponent(session, boxes === null ? cooked : [...cooked, boxes]);
  return [boxes, clearing].filter((each) => each !== null);
}

/** The session's own work and its order: one requirement for the boxes and one for the clearing. */
function ownWork({ session, components }: SessionInput): readonly Part[] {
  return ownComponents(session, components).map((own) => {
    const packing = own.id === 'boxes';
    const suffix = ` (${own.name}) follows `;
    return {
      kind: 'order',
      path: packing ? 'packing' : 'clearing',
      words: packing
        ? 'boxes are filled when every dish is ready, then cool, then are put away at once'
        : 'the kitchen is cleared after all other work',
      mend: packing ? 'fill boxes as dishes get ready' : 'clear the kitchen as you go',
      relaxProblem: withoutLags((_, name) => name.includes(suffix)),
    };
  });
}
