/** The kinds of document, their schemas and their file names. */
import { Component } from '../../solver/kitchen/component.ts';
import { Kitchen } from '../../solver/kitchen/kitchen.ts';
import { Plan } from '../../solver/kitchen/plan.ts';
import { SafetyRules } from '../../solver/kitchen/safety-rules.ts';
import { Session } from '../../solver/kitchen/session.ts';

export const SCHEMAS = {
  kitchen: Kitchen,
  component: Component,
  session: Session,
  plan: Plan,
  'safety-rules': SafetyRules,
} as const;

export type Kind = keyof typeof SCHEMAS;
export const KINDS = Object.keys(SCHEMAS) as readonly Kind[];

export interface Documents {
  readonly kitchen: Kitchen;
  readonly component: Component;
  readonly session: Session;
  readonly plan: Plan;
  readonly 'safety-rules': SafetyRules;
}
export type AnyDocument = Documents[Kind];

/** File name of a document: `harbour-sunday.session.json`. */
export const fileNameOf = (kind: Kind, id: string): string => `${id}.${kind}.json`;

/**
 * Kind and id as a file's name tells them.
 * @returns null where the name is none of ours
 */
export function kindOfFileName(name: string): { readonly kind: Kind; readonly id: string } | null {
  const match = /^(.+)\.(kitchen|component|session|plan|safety-rules)\.json$/.exec(name);
  return match === null ? null : { kind: match[2] as Kind, id: match[1]! };
}
