/** Takes whole numbers out of a text in order, whatever stands between them. */
export interface Numbers {
  readonly next: () => number;
  readonly take: (count: number) => number[];
  /** @throws Error where numbers are left, so that this is not the format it was taken for */
  readonly end: () => void;
}

/**
 * Opens a text of whole numbers.
 *
 * @param text everything but digits and minus signs is skipped
 * @param name the file, for the error
 * @throws Error where a number is asked for and none is left
 */
export function numbersIn(text: string, name: string): Numbers {
  const found = text.match(/-?\d+/g) ?? [];
  let position = 0;
  const next = (): number => {
    const word = found[position];
    if (word === undefined) throw new Error(`${name}: ends after ${position} numbers`);
    position += 1;
    return Number(word);
  };
  const take = (count: number): number[] => {
    if (count < 0 || count > found.length - position)
      throw new Error(
        `${name}: wants ${count} numbers after number ${position}, but ${found.length - position} follow`,
      );
    return Array.from({ length: count }, next);
  };
  const end = (): void => {
    if (position < found.length) throw new Error(`${name}: ${found.length - position} numbers are left at the end`);
  };
  return { next, take, end };
}
