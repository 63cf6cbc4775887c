/** The documents that come with the program, read from disk as the host reads them. */
import { readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import * as v from 'valibot';
import { Component } from '../../solver/kitchen/component.ts';
import { Kitchen } from '../../solver/kitchen/kitchen.ts';
import { Session } from '../../solver/kitchen/session.ts';

export const DEMO = fileURLToPath(new URL('../../app/demo/', import.meta.url));

export interface RawDocument {
  readonly file: string;
  readonly text: string;
  readonly json: unknown;
}

/** Every document of one kind below a folder; file names sorted. */
export function rawDocuments(root: string, kind: 'kitchen' | 'component' | 'session'): readonly RawDocument[] {
  const folder = `${root}${kind}s/`;
  return readdirSync(folder)
    .filter((file) => file.endsWith(`.${kind}.json`))
    .sort()
    .map((file) => {
      const text = readFileSync(folder + file, 'utf8');
      return { file, text, json: JSON.parse(text) as unknown };
    });
}

const read = <T>(root: string, kind: 'kitchen' | 'component' | 'session', schema: v.GenericSchema<unknown, T>) =>
  rawDocuments(root, kind).map(({ json }) => v.parse(schema, json));

/** @throws v.ValiError where a document breaks its schema */
export const demoKitchens = (root = DEMO): readonly Kitchen[] => read(root, 'kitchen', Kitchen);
/** @throws v.ValiError where a document breaks its schema */
export const demoComponents = (root = DEMO): readonly Component[] => read(root, 'component', Component);
/** @throws v.ValiError where a document breaks its schema */
export const demoSessions = (root = DEMO): readonly Session[] => read(root, 'session', Session);

/** The one with this id. */
export function byId<T extends { readonly id: string }>(documents: readonly T[], id: string): T {
  const found = documents.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no document ${id}`);
  return found;
}
