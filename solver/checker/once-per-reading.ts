/** Keeps what is read out of a plan with its reading, where several rules ask for the same. */
import type { Reading } from './reading.ts';

/** @returns the function, that reads each reading once */
export function oncePerReading<T>(read: (reading: Reading) => T): (reading: Reading) => T {
  const known = new WeakMap<Reading, { readonly value: T }>();
  return (reading) => {
    let kept = known.get(reading);
    if (kept === undefined) known.set(reading, (kept = { value: read(reading) }));
    return kept.value;
  };
}
