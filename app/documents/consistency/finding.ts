/** What the checks of a document's inner consistency find, and the small questions they share. */
import { durationMinutes } from '../../../solver/kitchen/values.ts';
import { nearest, pathText, valueText } from '../issue-faults.ts';

/** A fault but for the document's name. */
export interface Finding {
  readonly path: string;
  readonly found: string;
  readonly wanted: string;
  readonly mend: string;
}

type Keys = readonly (string | number)[];

/** Ids that are given more than once among things that must be told apart by them. */
export function repeatedIds(things: readonly { readonly id: string; readonly path: Keys }[]): readonly Finding[] {
  const seen = new Set<string>();
  return things.flatMap(({ id, path }) => {
    if (!seen.has(id)) {
      seen.add(id);
      return [];
    }
    return [
      {
        path: pathText([...path, 'id']),
        found: `the id ${valueText(id)} a second time`,
        wanted: 'an id of its own',
        mend: 'give one of the two another id',
      },
    ];
  });
}

/** The things of a list with their places, for `repeatedIds`. */
export const placed = (things: readonly { readonly id: string }[], ...path: Keys) =>
  things.map(({ id }, index) => ({ id, path: [...path, index] }));

/**
 * An id that names nothing.
 * @param what what it should name, such as "a step of this component"
 */
export function unknownId(
  id: string | undefined,
  known: readonly string[],
  what: string,
  path: Keys,
): readonly Finding[] {
  if (id === undefined || known.includes(id)) return [];
  const meant = nearest(id, known);
  return [
    {
      path: pathText(path),
      found: valueText(id),
      wanted: known.length > 0 && known.length <= 12 ? `${what}: one of ${known.join(', ')}` : what,
      mend: meant === null ? 'correct the id, or add what it names' : `write ${valueText(meant)}`,
    },
  ];
}

/** As `unknownId`, for a list of ids. */
export const unknownIds = (ids: readonly string[] | undefined, known: readonly string[], what: string, path: Keys) =>
  (ids ?? []).flatMap((id, index) => unknownId(id, known, what, [...path, index]));

/** A least that is over its most. */
export function crossed(least: number, most: number, unit: string, path: Keys): readonly Finding[] {
  if (least <= most) return [];
  return [
    {
      path: pathText(path),
      found: `a least of ${least} ${unit} over a most of ${most} ${unit}`,
      wanted: 'a least that is at most the most',
      mend: 'exchange the two, or correct one',
    },
  ];
}

/** As `crossed`, for durations, either of which may be absent. */
export function crossedDurations(
  shortest: string | undefined,
  longest: string | undefined,
  path: Keys,
): readonly Finding[] {
  if (shortest === undefined || longest === undefined) return [];
  if (durationMinutes(shortest) <= durationMinutes(longest)) return [];
  return [
    {
      path: pathText(path),
      found: `a shortest of ${shortest} over a longest of ${longest}`,
      wanted: 'a shortest that is no longer than the longest',
      mend: 'exchange the two, or correct one',
    },
  ];
}

/** A span that ends before it begins, or is empty. */
export function emptySpan(span: { readonly from: string; readonly until: string }, path: Keys): readonly Finding[] {
  if (durationMinutes(span.from) < durationMinutes(span.until)) return [];
  return [
    {
      path: pathText(path),
      found: `from ${span.from} until ${span.until}`,
      wanted: 'an until later than its from',
      mend: 'exchange the two, or correct one',
    },
  ];
}
