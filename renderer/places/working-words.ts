/** Numbers, units and sources of a working, in words for a reader. */
import type { Source, Standing } from '../../solver/source.ts';

const FIGURES = 3;

/**
 * A number with its unit, three figures: `1.62 Wh`, `0.0928 kWh`, `103 min`, `4,190 J/K`. Whole numbers below 100,000 stay whole.
 * @param unit `1` for a bare number
 */
export function quantityWords(value: number, unit: string): string {
  const number = numberWords(value);
  return unit === '1' || unit === '' ? number : `${number} ${unit}`;
}

/** A number to three figures; `0` for what is nothing beside them. */
export function numberWords(value: number): string {
  if (value === 0) return '0';
  const size = Math.abs(value);
  if (!Number.isFinite(value)) return value > 0 ? 'without end' : '−without end';
  if (size >= 100_000 || size < 0.001) {
    const exponent = Math.floor(Math.log10(size));
    return `${minus(trim((value / 10 ** exponent).toPrecision(FIGURES)))} × 10${superscript(exponent)}`;
  }
  if (Number.isInteger(value) || size >= 100) return minus(Math.round(value).toLocaleString('en-GB'));
  return minus(trim(value.toPrecision(FIGURES)));
}

const trim = (digits: string): string => (digits.includes('.') ? digits.replace(/\.?0+$/, '') : digits);
const minus = (digits: string): string => digits.replace('-', '−');
const superscript = (exponent: number): string =>
  [...String(exponent)].map((digit) => (digit === '-' ? '⁻' : '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)])).join('');

const STANDING: Readonly<Record<Standing, string>> = {
  published: 'read in the source',
  secondary: 'as another text reports the source',
  derived: 'worked out from published figures',
  'common-practice': 'common practice, no source claimed',
  'from-memory': 'from memory, not verified',
  invented: 'invented',
  reading: 'read in this kitchen',
};

/** What a source is, where it holds, and how far it can be trusted. */
export function sourceWords({ standing, cite, region }: Source): string {
  const where = region === undefined ? '' : `, ${region}`;
  return `${cite}${where} (${STANDING[standing]})`;
}
