/** SVG as text: tags, escaped attributes and lines of text whose width holds whatever font the reader has. */
import { textWidth, type Weight } from '../chart/layout/text-width.ts';

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Text as XML wants it. */
export const escape = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

const written = (value: string | number): string =>
  typeof value === 'number' ? String(Math.round(value * 100) / 100) : escape(value);

/** One element; attributes that are undefined are left out. */
export function tag(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const list = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${written(value!)}"`)
    .join('');
  return children.length === 0 ? `<${name}${list}/>` : `<${name}${list}>${children.join('')}</${name}>`;
}

export const title = (words: string): string => tag('title', {}, escape(words));

/** A line of text as wide as the layout measured it, in whatever font it is drawn. */
export function line(text: string, size: number, weight: Weight, attributes: Attributes): string {
  return tag(
    'text',
    {
      ...attributes,
      'font-size': size,
      textLength: text.length < 2 ? undefined : textWidth(text, size, weight),
      lengthAdjust: text.length < 2 ? undefined : 'spacingAndGlyphs',
    },
    escape(text),
  );
}
