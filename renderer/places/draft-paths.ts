/** Places within a document that is being edited. */

export type Path = readonly (string | number)[];

/** A path as faults write it: `ovens[0].readings.toHeat[1].celsius`. */
export const pathWords = (path: Path): string =>
  path.map((step, index) => (typeof step === 'number' ? `[${step}]` : index === 0 ? step : `.${step}`)).join('');

/** The value at a path; undefined where there is none. */
export function valueAt(document: unknown, path: Path): unknown {
  let value = document;
  for (const step of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}

/**
 * The document with another value at a path; what lies on the way is made where it is missing.
 * @param value undefined: taken out, from a list too
 */
export function withAt(document: unknown, path: Path, value: unknown): unknown {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  const inner = withAt(valueAt(document, [step]), rest, value);
  // What is emptied goes with its last part: an optional part is there or not, and never there with nothing in it.
  if (value === undefined && typeof step === 'string' && isEmpty(inner)) return withAt(document, [step], undefined);
  if (typeof step === 'number') {
    const list = Array.isArray(document) ? [...(document as unknown[])] : [];
    if (inner === undefined) list.splice(step, 1);
    else list[step] = inner;
    return list;
  }
  const { [step]: _, ...others } = (document ?? {}) as Record<string, unknown>;
  // In its old place where it had one, so that a saved file changes in that line alone.
  if (inner === undefined) return others;
  return { ...((document ?? {}) as Record<string, unknown>), [step]: inner };
}

const isEmpty = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && Object.keys(value).length === 0;

/** What is typed into a field for a number: the number; nothing for an empty field; otherwise the text itself, for the host to fault. */
export function typedNumber(text: string): number | string | undefined {
  const trimmed = text.trim().replace(',', '.');
  if (trimmed === '') return undefined;
  const number = Number(trimmed);
  return Number.isFinite(number) ? number : text;
}

/** Two documents, or parts of one, that say the same, in whatever order their keys are. */
export function alike(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  const [mine, theirs] = [one as Record<string, unknown>, other as Record<string, unknown>];
  const keys = Object.keys(mine);
  return (
    Array.isArray(one) === Array.isArray(other) &&
    keys.length === Object.keys(theirs).length &&
    keys.every((key) => key in theirs && alike(mine[key], theirs[key]))
  );
}
