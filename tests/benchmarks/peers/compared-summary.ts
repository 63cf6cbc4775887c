/** What comparisons come to: CSV rows, and who proved how much how fast. */
import type { Answer, Compared } from './compare.ts';

export const comparedHeading =
  'family,instance,tasks,start,engine,kind,value,solve seconds,flattening seconds,start-up seconds,words';

export function comparedRows({ family, name, tasks, start, ours, others }: Compared): string {
  return [ours, ...others]
    .map((each) =>
      [
        family,
        name,
        tasks,
        start ?? '',
        each.engine,
        each.kind,
        each.value ?? '',
        each.solveSeconds.toFixed(4),
        each.flatSeconds.toFixed(3),
        each.startSeconds.toFixed(3),
        `"${each.words.replaceAll('"', "'")}"`,
      ].join(','),
    )
    .join('\n');
}

/** Seconds below this are as good as none: no clock of a browser tells them apart. */
const LEAST_SECONDS = 0.001;

const proved = ({ kind }: Answer): boolean => kind === 'optimal' || kind === 'infeasible';

/** What is counted of the time, ours and another's. */
const counted: readonly { readonly what: string; readonly of: (answer: Answer) => number }[] = [
  { what: 'search alone', of: ({ solveSeconds }) => solveSeconds },
  { what: 'posting and search', of: ({ solveSeconds, startSeconds }) => solveSeconds + startSeconds },
  {
    what: 'flattening, posting and search',
    of: ({ solveSeconds, startSeconds, flatSeconds }) => solveSeconds + startSeconds + flatSeconds,
  },
];

/**
 * One paragraph an engine and family: proofs on either side; then, for each way of counting the time, the share of instances
 * where ours was faster to a proof and the geometric mean of how many times longer the other took. One without a proof counts with all
 * the time it had, so the ratio is at least what is told; instances that neither proved, and those that the other could not take, are
 * left out of the ratios and counted apart, and so are those where both took less than a clock can tell from the share.
 */
export function comparedSummary(compared: readonly Compared[]): string {
  const engines = [...new Set(compared.flatMap(({ others }) => others.map(({ engine }) => engine)))];
  const families = [...new Set(compared.map(({ family }) => family))];
  return engines
    .flatMap((engine) =>
      families.map((family) =>
        against(
          engine,
          family,
          compared.filter((each) => each.family === family),
        ),
      ),
    )
    .concat(contradictions(compared).map((words) => `WRONG ${words}`))
    .join('\n');
}

function against(engine: string, family: string, compared: readonly Compared[]): string {
  const pairs = compared.flatMap(({ ours, others }) => {
    const other = others.find((each) => each.engine === engine);
    return other === undefined ? [] : [{ ours, other }];
  });
  const count = (test: (pair: (typeof pairs)[number]) => boolean): number => pairs.filter(test).length;
  const untold = count(({ other }) => other.kind === 'too large' || other.kind === 'failed');
  const told = pairs.filter(
    ({ ours, other }) => other.kind !== 'too large' && other.kind !== 'failed' && (proved(ours) || proved(other)),
  );
  const both = told.filter(({ ours, other }) => proved(ours) && proved(other));
  const ratios = counted.map(({ what, of }) => {
    const ratio = ({ ours, other }: (typeof pairs)[number]): number =>
      Math.max(LEAST_SECONDS, of(other)) / Math.max(LEAST_SECONDS, of(ours));
    const faster = told.filter((pair) => proved(pair.ours) && (!proved(pair.other) || ratio(pair) > 1)).length;
    const level = both.filter((pair) => ratio(pair) === 1).length;
    const apart = told.length - level;
    const share = apart === 0 ? '–' : `${((faster / apart) * 100).toFixed(0)} %`;
    return (
      `  counting ${what}: ours faster on ${faster}/${apart} (${share}), ${level} more below ${LEAST_SECONDS} s on both sides; geometric mean of its seconds over ours ` +
      `${geometricMean(told.map(ratio))} (${geometricMean(both.map(ratio))} where both proved)`
    );
  });
  const average = (of: (pair: (typeof pairs)[number]) => number): string =>
    (told.reduce((sum, pair) => sum + of(pair), 0) / Math.max(1, told.length)).toFixed(3);
  return [
    `${family}, ours beside ${engine}, ${pairs.length} instances:`,
    `  proved by ours ${count(({ ours }) => proved(ours))}, by ${engine} ${count(({ other }) => proved(other))}, by both ${both.length}; ` +
      `too large or failed for ${engine} ${untold}`,
    ...ratios,
    `  mean seconds apart from the search: its flattening ${average(({ other }) => other.flatSeconds)}, its posting ` +
      `${average(({ other }) => other.startSeconds)}, our posting ${average(({ ours }) => ours.startSeconds)}`,
  ].join('\n');
}

const geometricMean = (values: readonly number[]): string =>
  values.length === 0
    ? '–'
    : Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length).toFixed(2);

/** Answers that cannot stand together: one of the engines, or the model of the problem for it, is wrong. */
export function contradictions(compared: readonly Compared[]): string[] {
  return compared.flatMap(({ name, ours, others }) =>
    others.flatMap((other) => {
      const faults: string[] = [];
      if (proved(ours) && proved(other) && ours.value !== other.value)
        faults.push(`${name}: ours proves ${ours.value ?? 'none'}, ${other.engine} ${other.value ?? 'none'}`);
      if (ours.kind === 'optimal' && other.kind === 'bounded' && other.value !== null && other.value < ours.value!)
        faults.push(`${name}: ours proves ${ours.value}, ${other.engine} has ${other.value}`);
      if (other.kind === 'optimal' && ours.kind === 'bounded' && ours.value! < other.value!)
        faults.push(`${name}: ${other.engine} proves ${other.value}, ours has ${ours.value}`);
      if (ours.words !== '') faults.push(`${name}: the plan of ours has faults: ${ours.words}`);
      if (other.kind === 'optimal' && other.words !== '')
        faults.push(`${name}: the plan of ${other.engine} has faults: ${other.words}`);
      return faults;
    }),
  );
}
