import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fit, shorterNames, wrapped } from '../../../../renderer/chart/layout/label.ts';
import { textWidth } from '../../../../renderer/chart/layout/text-width.ts';

describe('labels shorten by words', () => {
  test.each([
    {
      name: 'fill the pot of water, on the heat',
      shorter: [
        'fill the pot of water, on the heat',
        'fill pot of water, on heat',
        'fill pot of water',
        'fill pot',
        'fill',
      ],
    },
    {
      name: 'trim and rub the thighs',
      shorter: ['trim and rub the thighs', 'trim and rub thighs', 'trim and rub', 'trim'],
    },
    { name: 'dress', shorter: ['dress'] },
    { name: 'into the oven', shorter: ['into the oven', 'into oven', 'into'] },
  ])('$name', ({ name, shorter }) => {
    expect(shorterNames(name)).toEqual(shorter);
  });

  const word = fc.stringMatching(/^[a-z]{1,9}$/);
  const sentence = fc.array(word, { minLength: 1, maxLength: 7 }).map((words) => words.join(' '));

  test('every word of a shorter name is a word of the name', () => {
    fc.assert(
      fc.property(sentence, (name) => {
        const words = new Set(name.split(' '));
        for (const shorter of shorterNames(name)) for (const each of shorter.split(' ')) expect(words).toContain(each);
      }),
    );
  });

  test('no line is wider than its box, and no word is broken', () => {
    fc.assert(
      fc.property(sentence, fc.integer({ min: 5, max: 200 }), fc.integer({ min: 1, max: 4 }), (text, width, most) => {
        const lines = wrapped(text, width, most, 13, 'bold');
        if (lines === null) return;
        expect(lines.length).toBeLessThanOrEqual(most);
        expect(lines.join(' ')).toBe(text);
        for (const line of lines) expect(textWidth(line, 13, 'bold')).toBeLessThanOrEqual(width);
      }),
    );
  });

  test('the fullest text that fits is taken', () => {
    expect(fit(['roast the thighs · 22 min', 'roast the thighs', 'roast'], 100, 1, 13, 'regular')).toEqual({
      lines: ['roast the thighs'],
      choice: 1,
    });
    expect(fit(['roast'], 10, 1, 13, 'regular')).toBeNull();
  });
});
