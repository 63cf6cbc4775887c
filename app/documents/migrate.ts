/** Documents of earlier versions, brought to the present one step at a time. */
import type { Kind } from './kinds.ts';

/** Turns a document of one version into the next; reads it without trust, and leaves its faults to the schema. */
export type MigrationStep = (document: Record<string, unknown>) => Record<string, unknown>;

/** For each kind the step from version 1 to 2, from 2 to 3, and so on. There is one version so far. */
export const MIGRATIONS: Readonly<Record<Kind, readonly MigrationStep[]>> = {
  kitchen: [],
  component: [],
  session: [],
  plan: [],
  'safety-rules': [],
};

export type Migrated =
  | { readonly kind: 'current'; readonly document: Record<string, unknown> }
  | { readonly kind: 'newer'; readonly known: number }
  | { readonly kind: 'no-version'; readonly known: number };

/**
 * Brings a document to the newest version.
 *
 * @param steps the migrations of its kind; the newest version is one more than their number
 * @returns the document as the newest version has it; `newer` where its version is of the future; `no-version` where it has none
 */
export function migrate(document: Record<string, unknown>, steps: readonly MigrationStep[]): Migrated {
  const known = steps.length + 1;
  const version = document['version'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) return { kind: 'no-version', known };
  if (version > known) return { kind: 'newer', known };
  const moved = steps
    .slice(version - 1)
    .reduce((older, step, index) => ({ ...step(older), version: version + index + 1 }), document);
  return { kind: 'current', document: moved };
}
