/** What a schema has against a value, as faults that a person can mend. */
import type * as v from 'valibot';
import type { Fault } from '../api.ts';

/** Place in a document: `steps[3].needs[0].leastC`; keys that are no plain words in quotes. */
export function pathText(keys: readonly unknown[]): string {
  return keys.reduce<string>((path, key) => {
    if (typeof key === 'number') return `${path}[${key}]`;
    const name = String(key);
    if (!/^[A-Za-z_$][\w$-]*$/.test(name)) return `${path}[${JSON.stringify(name)}]`;
    return path === '' ? name : `${path}.${name}`;
  }, '');
}

/** A value as a fault shows it: short, on one line. */
export function valueText(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  const text = JSON.stringify(value) ?? `a ${typeof value}`;
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

const TYPES: Readonly<Record<string, string>> = {
  string: 'text in quotes',
  number: 'a number',
  boolean: 'true or false',
  Array: 'a list in [ ]',
  Object: 'an object in { }',
};

/** `("on" | "off")` becomes `one of "on", "off"`. */
function expectedText(expected: string): string {
  const plain = TYPES[expected];
  if (plain !== undefined) return plain;
  if (expected.startsWith('(') && expected.includes(' | '))
    return `one of ${expected.slice(1, -1).split(' | ').join(', ')}`;
  return expected;
}

/** Schemas carry what they want as their message; a message of the library's own is told in our words. */
function wantedText(issue: v.BaseIssue<unknown>): string {
  if (!/^Invalid \w+: /.test(issue.message)) return issue.message;
  return expectedText(issue.expected ?? 'another value');
}

/** Letters to change, add or drop to make one word of the other. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1)
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length]!;
}

/** The word among some that was likely meant, at most two letters away. */
export function nearest(word: string, words: readonly string[]): string | null {
  const ranked = words.map((other) => ({ other, far: distance(word, other) })).sort((a, b) => a.far - b.far);
  const best = ranked[0];
  return best !== undefined && best.far <= 2 && best.far < word.length ? best.other : null;
}

/**
 * One fault for each issue of a schema, the same place and wish only once.
 * An unknown key that is close to one which the same object lacks is told as its misspelling.
 *
 * @param document name of the document
 */
export function issueFaults(document: string, issues: readonly v.BaseIssue<unknown>[]): readonly Fault[] {
  const lacking = issues.filter(isMissingKey).map((issue) => ({ within: within(issue), key: lastKey(issue) }));
  const faults = issues.map((issue): Fault => {
    const path = pathText((issue.path ?? []).map((item) => item.key));
    if (isUnknownKey(issue)) {
      const key = lastKey(issue);
      const meant = nearest(
        key,
        lacking.filter((lack) => lack.within === within(issue)).map((lack) => lack.key),
      );
      return {
        document,
        path,
        found: `the key "${key}", which is not known here`,
        wanted: 'only the keys of the schema',
        mend: meant === null ? `take "${key}" out, or correct its spelling` : `write "${meant}"`,
      };
    }
    if (isMissingKey(issue))
      return {
        document,
        path,
        found: 'nothing',
        wanted: `the key "${lastKey(issue)}"`,
        mend: `add "${lastKey(issue)}"`,
      };
    const wanted = wantedText(issue);
    return { document, path, found: valueText(issue.input), wanted, mend: `write ${wanted}` };
  });
  const seen = new Set<string>();
  return faults.filter(({ path, wanted }) => {
    const mark = `${path}\n${wanted}`;
    return !seen.has(mark) && seen.add(mark);
  });
}

const lastKey = (issue: v.BaseIssue<unknown>): string => String(issue.path?.at(-1)?.key);
const within = (issue: v.BaseIssue<unknown>): string =>
  pathText((issue.path ?? []).slice(0, -1).map((item) => item.key));
const isUnknownKey = (issue: v.BaseIssue<unknown>): boolean => issue.expected === 'never';
const isMissingKey = (issue: v.BaseIssue<unknown>): boolean =>
  issue.message.startsWith('Invalid key: Expected ') && !isUnknownKey(issue);
