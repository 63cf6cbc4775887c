import { describe, expect, test } from 'vitest';
import { numberWords, quantityWords, sourceWords } from '../../../renderer/places/working-words.ts';

describe('numbers of a working', () => {
  test.each([
    [0, '0'],
    [95, '95'],
    [4190, '4,190'],
    [0.0928, '0.0928'],
    [1.6249, '1.62'],
    [2.5, '2.5'],
    [103.4, '103'],
    [-3.456, '−3.46'],
    [1.41e-7, '1.41 × 10⁻⁷'],
    [1_420_400, '1.42 × 10⁶'],
  ])('%d is written %s', (value, words) => {
    expect(numberWords(value)).toBe(words);
  });

  test('a quantity has its unit, and a bare number none', () => {
    expect(quantityWords(0.0928, 'kWh')).toBe('0.0928 kWh');
    expect(quantityWords(0.84, '1')).toBe('0.84');
  });
});

test('a source says what it is, where it holds, and how far it can be trusted', () => {
  expect(sourceWords({ standing: 'secondary', cite: 'Some table', region: 'United States' })).toBe(
    'Some table, United States (as another text reports the source)',
  );
  expect(sourceWords({ standing: 'common-practice', cite: 'Kitchen usage' })).toBe(
    'Kitchen usage (common practice, no source claimed)',
  );
});
