/** RFC 8259 says what JSON is; `JSON.parse` is the outside word on it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readJson } from '../../../app/documents/json-text.ts';

const faultOf = (text: string) => {
  const read = readJson(text);
  if (read.ok) throw new Error(`read as ${JSON.stringify(read.value)}`);
  return read.fault;
};

const BROKEN = [
  { name: 'a comma too many', text: '{\n  "a": 1,\n}', line: 3, column: 1, found: '`}`' },
  { name: 'a comma too few', text: '[1\n 2]', line: 2, column: 2, found: '`2]`' },
  { name: 'a key without quotes', text: '{a: 1}', line: 1, column: 2, found: '`a:`' },
  { name: 'a string over two lines', text: '{"a": "b\nc"}', line: 1, column: 7, found: '`"b`' },
  { name: 'an end too early', text: '{"a": [1, 2', line: 1, column: 12, found: 'the end of the file' },
  { name: 'nothing', text: '', line: 1, column: 1, found: 'the end of the file' },
  { name: 'two documents', text: '{} {}', line: 1, column: 4, found: '`{}`' },
  { name: 'a number with a leading nought', text: '[01]', line: 1, column: 3, found: '`1]`' },
];

describe('broken JSON', () => {
  test.each(BROKEN)('$name is found at its line and column', ({ text, line, column, found }) => {
    expect(faultOf(text)).toMatchObject({ line, column, found });
  });

  test('a key given twice is a fault, since one of the values would be lost', () => {
    expect(faultOf('{"a": 1,\n "\\u0061": 2}')).toMatchObject({
      line: 2,
      column: 2,
      found: 'the key `a` for the second time',
    });
  });

  test('nesting beyond a hundred brackets is a fault, however deep', () => {
    expect(faultOf('['.repeat(100_000)).wanted).toBe('at most 100 brackets within each other');
  });
});

test('a byte order mark before the text is passed over', () => {
  expect(readJson('\uFEFF{"a": 1}')).toEqual({ ok: true, value: { a: 1 } });
});

test('a value written by JSON.stringify is read as JSON.parse reads it', () => {
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 6 }), fc.constantFrom(0, 2), (value, indent) => {
      const text = JSON.stringify(value, null, indent);
      expect(readJson(text)).toEqual({ ok: true, value: JSON.parse(text) as unknown });
    }),
    { numRuns: 300 },
  );
});

test('text with a character changed is taken exactly where JSON.parse takes it, keys given twice apart', () => {
  const parses = (text: string): boolean => {
    try {
      JSON.parse(text);
      return true;
    } catch {
      return false;
    }
  };
  fc.assert(
    fc.property(
      fc.jsonValue({ maxDepth: 3 }),
      fc.nat(),
      fc.constantFrom(
        '',
        '"',
        '{',
        '}',
        '[',
        ']',
        ',',
        ':',
        '0',
        '-',
        '.',
        'e',
        '\\',
        ' ',
        '\n',
        't',
        '\u0001',
        '\u00a0',
      ),
      (value, at, put) => {
        const text = JSON.stringify(value);
        const index = at % (text.length + 1);
        const changed = text.slice(0, index) + put + text.slice(index + 1);
        const read = readJson(changed);
        if (!read.ok && read.fault.wanted === 'each key once') return;
        expect(read.ok, changed).toBe(parses(changed));
      },
    ),
    { numRuns: 1000 },
  );
});
