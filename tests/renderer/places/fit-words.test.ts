import { expect, test } from 'vitest';
import { fitWords } from '../../../renderer/places/fit-words.ts';

test.each([
  [
    { rmsK: 0, capacityFrom: 'typical', timeConstantFrom: 'typical' },
    'No readings yet: a typical oven of this volume. Your own may be quite different.',
  ],
  [
    { rmsK: 2.44, capacityFrom: 'readings', timeConstantFrom: 'readings' },
    'Speeds of heating and cooling: from the readings. The readings lie 2.4 K from the fit on the mean.',
  ],
  [
    { rmsK: 0.01, capacityFrom: 'both', timeConstantFrom: 'both' },
    'Speeds of heating and cooling: from the readings, held near that of a typical oven. The readings lie on the fit.',
  ],
  [
    { rmsK: 0, capacityFrom: 'typical', timeConstantFrom: 'readings' },
    'Speed of heating: of a typical oven of this volume. Speed of cooling: from the readings. The readings lie on the fit.',
  ],
] as const)('%j is told as it is founded', (fit, words) => {
  expect(fitWords(fit)).toBe(words);
});
