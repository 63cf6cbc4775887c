/** A session with all that it is planned from: its kitchen, and the components of its dishes. */
import type { Answer, Fault, PlanRequest } from '../api.ts';
import type { Component } from '../../solver/kitchen/component.ts';
import type { Kitchen } from '../../solver/kitchen/kitchen.ts';
import type { SafetyRules } from '../../solver/kitchen/safety-rules.ts';
import type { Session } from '../../solver/kitchen/session.ts';
import { rulesInForce } from '../../solver/safety/rules-in-force.ts';
import { isNotThere, type Library } from './library.ts';

export interface Gathered {
  readonly session: Session;
  readonly kitchen: Kitchen;
  /** Of the session's dishes, in their order. */
  readonly components: readonly Component[];
  /** The safety rules in force: those of the authority asked for, else of the session's. */
  readonly rules: SafetyRules;
}

/**
 * Looks up a session and everything it names; the kitchen is the one asked for, else the session's first.
 *
 * @returns them, or every fault: of the session, of a document that it names, and of names that lead nowhere
 */
export async function gatherSession(
  library: Library,
  { session: id, kitchen, authority }: PlanRequest,
): Promise<Answer<Gathered>> {
  const session = await library.find('session', id);
  if (!session.ok) return session;
  const { dishes, kitchens } = session.value;
  const [rules, place, ...components] = await Promise.all([
    rulesOf(library, authority ?? session.value.authority, authority === undefined ? `session ${id}` : 'the request'),
    library.find('kitchen', kitchen ?? kitchens[0]!),
    ...dishes.map(({ component }) => library.find('component', component)),
  ]);
  const faults: readonly Fault[] = [
    ...(rules.ok ? [] : rules.faults),
    ...(place.ok
      ? []
      : place.faults.map((fault) => (kitchen === undefined ? inSession(id, 'kitchens[0]', fault) : fault))),
    ...components.flatMap((answer, index) =>
      answer.ok ? [] : answer.faults.map((fault) => inSession(id, `dishes[${index}].component`, fault)),
    ),
  ];
  if (!place.ok || !rules.ok || faults.length > 0) return { ok: false, faults };
  return {
    ok: true,
    value: {
      session: session.value,
      kitchen: place.value,
      rules: rules.value,
      components: components.flatMap((answer) => (answer.ok ? [answer.value] : [])),
    },
  };
}

/** The safety rules in force; where the one picked is a document with faults, those. */
async function rulesOf(library: Library, authority: string | undefined, asker: string): Promise<Answer<SafetyRules>> {
  const inForce = rulesInForce(authority, await library.all('safety-rules'), asker);
  if (inForce.ok) return { ok: true, value: inForce.rules };
  const found = await library.find('safety-rules', authority!);
  return found.ok || found.faults.every(isNotThere) ? inForce : found;
}

/** A name that leads nowhere is the session's fault; what is wrong within a document is that document's. */
function inSession(session: string, path: string, fault: Fault): Fault {
  return isNotThere(fault) ? { ...fault, document: `session ${session}`, path } : fault;
}
