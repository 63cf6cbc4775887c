/** A session with all that it is planned from: its kitchen, and the components of its dishes. */
import type { Answer, Fault, PlanRequest } from '../api.ts';
import type { Component } from '../../solver/kitchen/component.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { Session } from '../../solver/kitchen/session.ts';
import { isNotThere, type Library } from './library.ts';

export interface Gathered {
  readonly session: Session;
  readonly kitchen: Kitchen;
  /** Of the session's dishes, in their order. */
  readonly components: readonly Component[];
}

/**
 * Looks up a session and everything it names; the kitchen is the one asked for, else the session's first.
 *
 * @returns them, or every fault: of the session, of a document that it names, and of names that lead nowhere
 */
export async function gatherSession(
  library: Library,
  { session: id, kitchen }: PlanRequest,
): Promise<Answer<Gathered>> {
  const session = await library.find('session', id);
  if (!session.ok) return session;
  const { dishes, kitchens } = session.value;
  const [place, ...components] = await Promise.all([
    library.find('kitchen', kitchen ?? kitchens[0]!),
    ...dishes.map(({ component }) => library.find('component', component)),
  ]);
  const faults: readonly Fault[] = [
    ...(place.ok
      ? []
      : place.faults.map((fault) => (kitchen === undefined ? inSession(id, 'kitchens[0]', fault) : fault))),
    ...components.flatMap((answer, index) =>
      answer.ok ? [] : answer.faults.map((fault) => inSession(id, `dishes[${index}].component`, fault)),
    ),
  ];
  if (!place.ok || faults.length > 0) return { ok: false, faults };
  return {
    ok: true,
    value: {
      session: session.value,
      kitchen: place.value,
      components: components.flatMap((answer) => (answer.ok ? [answer.value] : [])),
    },
  };
}

/** A name that leads nowhere is the session's fault; what is wrong within a document is that document's. */
function inSession(session: string, path: string, fault: Fault): Fault {
  return isNotThere(fault) ? { ...fault, document: `session ${session}`, path } : fault;
}
