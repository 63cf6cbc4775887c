/**
 * JSON text read strictly (RFC 8259), with the line and column of what is wrong. Says more than `JSON.parse`: a key given twice in
 * one object, and nesting too deep, are faults too, since one of two values typed would be lost without a word.
 */
export interface TextFault {
  /** From 1. */
  readonly line: number;
  /** From 1, in UTF-16 units. */
  readonly column: number;
  readonly found: string;
  readonly wanted: string;
}
export type JsonAnswer =
  { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly fault: TextFault };

const DEEPEST = 100;
const SPACE = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;

/** Ends the scan at its first fault; never leaves this file. */
class Stop extends Error {
  constructor(
    readonly at: number,
    readonly wanted: string,
    readonly found?: string,
  ) {
    super(wanted);
  }
}

/**
 * Reads JSON text; a byte order mark before it is passed over.
 * @returns the value, or the first place where the text is not JSON
 */
export function readJson(text: string): JsonAnswer {
  const source = text.startsWith('\uFEFF') ? text.slice(1) : text;
  try {
    scan(source);
    return { ok: true, value: JSON.parse(source) };
  } catch (stop) {
    if (!(stop instanceof Stop)) throw stop;
    const before = source.slice(0, stop.at);
    const line = before.split('\n').length;
    return {
      ok: false,
      fault: {
        line,
        column: stop.at - before.lastIndexOf('\n'),
        found:
          stop.found ??
          (stop.at >= source.length
            ? 'the end of the file'
            : `\`${source.slice(stop.at).split(/\s/, 1)[0]!.slice(0, 20) || 'a space'}\``),
        wanted: stop.wanted,
      },
    };
  }
}

/** Walks through the text once and throws `Stop` at the first fault. */
function scan(text: string): void {
  let at = 0;
  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = at;
    const match = pattern.exec(text);
    if (match === null) return null;
    at += match[0].length;
    return match[0];
  };
  const space = (): void => void take(SPACE);
  const sign = (wanted: string): string => {
    space();
    const found = text[at];
    if (found === undefined || !wanted.includes(found))
      throw new Stop(
        at,
        wanted
          .split('')
          .map((c) => `\`${c}\``)
          .join(' or '),
      );
    at += 1;
    return found;
  };
  const string = (wanted: string): string => {
    const start = at;
    const found = take(STRING);
    if (found !== null) return found;
    if (text[start] !== '"') throw new Stop(start, wanted);
    throw new Stop(start, 'a string closed on its line by `"`, with `\\` only before `"\\/bfnrtu`');
  };
  const value = (depth: number): void => {
    space();
    if (depth > DEEPEST) throw new Stop(at, `at most ${DEEPEST} brackets within each other`, 'deeper nesting');
    const first = text[at];
    if (first === '{') object(depth);
    else if (first === '[') array(depth);
    else if (first === '"') string('a string');
    else if (take(WORD) === null && take(NUMBER) === null)
      throw new Stop(at, 'a value: text in `"`, a number, `{`, `[`, true, false or null');
  };
  const object = (depth: number): void => {
    const keys = new Set<string>();
    at += 1;
    space();
    if (text[at] === '}') return void (at += 1);
    do {
      space();
      const start = at;
      const key = JSON.parse(string('a key in `"`')) as string;
      if (keys.has(key)) throw new Stop(start, 'each key once', `the key \`${key}\` for the second time`);
      keys.add(key);
      sign(':');
      value(depth + 1);
    } while (sign(',}') === ',');
  };
  const array = (depth: number): void => {
    at += 1;
    space();
    if (text[at] === ']') return void (at += 1);
    do value(depth + 1);
    while (sign(',]') === ',');
  };
  value(0);
  space();
  if (at < text.length) throw new Stop(at, 'nothing after the document');
}
