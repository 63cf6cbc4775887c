/** What can be picked for a session, and the request that the picks make. */
import type { DocumentEntry, PlanRequest } from '../../app/api.ts';
import { Intent, type Session } from '../../solver/kitchen/session.ts';

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
  };
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
