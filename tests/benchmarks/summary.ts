import type { Row } from './measure.ts';

const heading =
  'instance,kind,finish,bound,proven,seconds to best,seconds to proof,work,published lower,published upper,critical path,faults';

/** The rows as CSV lines, the heading first. */
export function csvHeading(): string {
  return heading;
}

export function csvRow(row: Row): string {
  const cells: readonly (string | number | null | undefined)[] = [
    row.instance,
    row.kind,
    row.finish,
    row.bound,
    row.proven ? 'yes' : 'no',
    row.bestSeconds?.toFixed(3),
    row.proofSeconds?.toFixed(3),
    row.work,
    shown(row.published?.lower),
    shown(row.published?.upper),
    shown(row.criticalPath),
    row.faults.length === 0 ? '' : `"${row.faults.join('; ').replaceAll('"', "'")}"`,
  ];
  return cells.map((cell) => cell ?? '').join(',');
}

const shown = (value: number | undefined): string =>
  value === undefined ? '' : value === Infinity ? 'inf' : `${value}`;

/**
 * What the rows come to: how many are proven, how far finishes are from the optimum and from the longest chain, seconds, memory.
 *
 * @param rows at least one
 * @param limit seconds counted for an instance that was not proven
 */
export function summaryOf(rows: readonly Row[], limit: number): string {
  const count = (test: (row: Row) => boolean): number => rows.filter(test).length;
  const planned = rows.filter((row) => row.finish !== null);
  const overOptimum = planned.flatMap(({ finish, published }) =>
    published && published.upper < Infinity && published.upper > 0 ? [((finish ?? 0) / published.upper - 1) * 100] : [],
  );
  const overPath = planned.flatMap(({ finish, criticalPath }) =>
    criticalPath > 0 && criticalPath < Infinity ? [((finish ?? 0) / criticalPath - 1) * 100] : [],
  );
  const seconds = rows.map((row) => Math.max(0.0005, row.proofSeconds ?? limit));
  const closed = rows.filter(({ published }) => published && published.lower === published.upper);
  const open = planned.filter((row) => !row.proven && row.criticalPath < Infinity);
  const faulty = rows.filter((row) => row.faults.length > 0);
  return [
    `proven ${count((row) => row.proven)}/${rows.length} (of them impossible ${count((row) => row.kind === 'impossible')})`,
    `unknown ${count((row) => row.kind === 'unknown')}, feasible by publication among them ${count(
      (row) => row.kind === 'unknown' && (row.published?.upper ?? Infinity) < Infinity,
    )}`,
    `equal to the published optimum ${closed.filter(same).length}/${closed.length}`,
    `mean over the best published finish ${mean(overOptimum)} %`,
    `mean over the longest chain ${mean(overPath)} %`,
    `mean gap between bound and finish ${mean(gaps(rows))} % (${mean(gaps(open))} % of the ${open.length} not proven, where the longest chain alone leaves ${mean(open.map((row) => gap(row.finish, row.criticalPath)))} %)`,
    `bounds below the longest chain ${count((row) => row.bound !== null && row.criticalPath < Infinity && row.bound < row.criticalPath)}`,
    `geometric mean of seconds to proof ${geometricMean(seconds).toFixed(4)} (${limit} where not proven)`,
    `mean seconds to best ${mean(
      planned.map((row) => row.bestSeconds ?? 0),
      3,
    )}`,
    `most memory ${Math.round(process.resourceUsage().maxRSS / 1024)} MiB`,
    `faulty answers ${faulty.length}${faulty.map((row) => `\n  ${row.instance}: ${row.faults.join('; ')}`).join('')}`,
  ].join('\n');
}

/** How far a finish is above a bound, in hundredths of the bound. */
const gap = (finish: number | null, bound: number | null): number =>
  finish === null || bound === null || bound <= 0 ? 0 : (finish / bound - 1) * 100;
const gaps = (rows: readonly Row[]): number[] =>
  rows.filter((row) => row.finish !== null).map((row) => gap(row.finish, row.bound));

function same({ finish, kind, published }: Row): boolean {
  return published?.upper === Infinity ? kind === 'impossible' : finish === published?.upper;
}

function mean(values: readonly number[], digits = 2): string {
  if (values.length === 0) return '–';
  return (values.reduce((sum, value) => sum + value, 0) / values.length).toFixed(digits);
}

function geometricMean(values: readonly number[]): number {
  return Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length);
}
