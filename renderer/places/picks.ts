/** What can be picked for a session, and the request that the picks make. */
import type { DocumentEntry, PlanRequest } from '../../app/api.ts';
import { Intent, type Session } from '../../solver/kitchen/session.ts';
import { BUILT_IN_RULES } from '../../solver/safety/built-in.ts';
import { STRICTEST } from '../../solver/safety/strictest.ts';

export interface Option {
  readonly value: string;
  readonly name: string;
  readonly disabled?: boolean;
}

export interface Options {
  readonly kitchens: readonly Option[];
  /** Empty where the session names no crews: everybody cooks. */
  readonly crews: readonly Option[];
  readonly intents: readonly Option[];
  /** Whose safety rules: the strictest first, then the user's own, then the built-in ones. */
  readonly authorities: readonly Option[];
  /** The one that holds while nobody picks another. */
  readonly authority: string;
}

const INTENTS: Readonly<Record<Intent, string>> = {
  soonest: 'finished soonest',
  freshest: 'freshest food',
  thriftiest: 'least energy',
  calmest: 'calmest hands',
};

export function optionsFor(session: Session, entries: readonly DocumentEntry[]): Options {
  const kitchen = (id: string): DocumentEntry | undefined =>
    entries.find((entry) => entry.kind === 'kitchen' && entry.id === id);
  return {
    kitchens: session.kitchens.map((id) => ({
      value: id,
      name: kitchen(id)?.name ?? id,
      disabled: (kitchen(id)?.faults.length ?? 0) > 0,
    })),
    crews: (session.crews ?? []).map((crew) => ({ value: crew.id, name: crew.name })),
    intents: Intent.options.map((intent) => ({ value: intent, name: INTENTS[intent] })),
    authorities: authoritiesOf(entries),
    authority: session.authority ?? STRICTEST,
  };
}

function authoritiesOf(entries: readonly DocumentEntry[]): readonly Option[] {
  const own = entries.filter(({ kind }) => kind === 'safety-rules');
  return [
    { value: STRICTEST, name: 'the strictest rules' },
    ...own.map(({ id, name, faults }) => ({ value: id, name, disabled: faults.length > 0 })),
    ...BUILT_IN_RULES.filter(({ id }) => !own.some((entry) => entry.id === id)).map(({ id, name }) => ({
      value: id,
      name,
    })),
  ];
}

/** The request of a session as it stands: its first kitchen, its first crew, its own intent. */
export function firstRequest(session: Session): PlanRequest {
  const crew = session.crews?.[0]?.id;
  return {
    session: session.id,
    kitchen: session.kitchens[0]!,
    ...(crew === undefined ? {} : { crew }),
    intent: session.intent ?? 'soonest',
  };
}

/** What differs first where there is a choice: another kitchen, another crew, another intent. */
export function otherRequest(session: Session, request: PlanRequest): PlanRequest {
  const kitchen = session.kitchens.find((id) => id !== request.kitchen);
  if (kitchen !== undefined) return { ...request, kitchen };
  const crew = session.crews?.find((each) => each.id !== request.crew)?.id;
  if (crew !== undefined) return { ...request, crew };
  return { ...request, intent: request.intent === 'thriftiest' ? 'soonest' : 'thriftiest' };
}
