/** Days of the calendar as text, `2026-03-08`, reckoned without a clock. */

/**
 * The day some days after another, in the Gregorian calendar.
 *
 * @param day `YYYY-MM-DD`, from year 1 on
 * @param days whole days, negative for before
 * @see source: ISO 8601-1:2019 for the form; days are numbered as Julian day numbers by H. F. Fliegel and T. C. Van Flandern, "A
 *   machine algorithm for processing calendar dates", Communications of the ACM 11 (1968), 657
 */
export function dayAfter(day: string, days: number): string {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  const { trunc } = Math;
  const early = trunc((month - 14) / 12);
  const julian =
    date -
    32075 +
    trunc((1461 * (year + 4800 + early)) / 4) +
    trunc((367 * (month - 2 - early * 12)) / 12) -
    trunc((3 * trunc((year + 4900 + early) / 100)) / 4) +
    days;
  let l = julian + 68569;
  const n = trunc((4 * l) / 146097);
  l -= trunc((146097 * n + 3) / 4);
  const i = trunc((4000 * (l + 1)) / 1461001);
  l = l - trunc((1461 * i) / 4) + 31;
  const j = trunc((80 * l) / 2447);
  const k = trunc(j / 11);
  const text = (number: number, width: number): string => String(number).padStart(width, '0');
  return `${text(100 * (n - 49) + i + k, 4)}-${text(j + 2 - 12 * k, 2)}-${text(l - trunc((2447 * j) / 80), 2)}`;
}

/** The earlier of two days. */
export const earlier = (a: string, b: string): string => (a < b ? a : b);
