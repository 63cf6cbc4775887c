/** The bench beside other solvers that a JavaScript project could use: the same problems, the same plan known, in one run. */
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import type { Solve } from '../../solver/engine/outcome.ts';
import type { Problem } from '../../solver/engine/problem.ts';
import { listInstances } from './instances.ts';
import { compare, type Compared, type Comparing } from './peers/compare.ts';
import { comparedHeading, comparedRows, comparedSummary, contradictions } from './peers/compared-summary.ts';
import { kitchenProblems, type NamedProblem } from './peers/kitchen-problems.ts';
import { openMiniZinc, type MiniZincBrowser } from './peers/minizinc-browser.ts';
import { workerWarmed } from './worker-warmed.ts';

export interface PeersBench {
  readonly solve: Solve;
  /** Most seconds of search for each problem and solver. */
  readonly seconds: number;
  readonly seed: number;
  /** A folder of Patterson files, for classical projects beside the kitchen's; none where not given. */
  readonly projects: string | undefined;
  /** A folder of problems as `afterheat model` writes them (.json), in place of the kitchen's. */
  readonly problems: string | undefined;
  readonly solvers: readonly string[];
  readonly only: string;
  readonly every: number;
  readonly limit: number | undefined;
  readonly random: number;
  readonly generated: number;
  readonly out: string | undefined;
  /** A folder for problems on which two solvers contradict each other. */
  readonly found: string | undefined;
}

/** Small problems solved for nothing, so that the code of every solver is compiled before anything is timed; ours is warmed as the worker is, too. */
const WARM_UP = 4;

/** @returns the exit code: 1 where two answers cannot both be true */
export async function peersBench(asked: PeersBench): Promise<number> {
  const kitchen = asked.problems === undefined ? kitchenProblems(asked) : problemsIn(asked.problems);
  const projects =
    asked.projects === undefined
      ? []
      : listInstances('rcpsp', asked.projects, { blocking: false }).map(({ name, open }) => ({
          name,
          problem: open().problem,
        }));
  const cut = (list: readonly NamedProblem[]): NamedProblem[] =>
    list
      // Changes of group have no model in MiniZinc here; no session has them first unless it asks for calm above all.
      .filter(({ name, problem }) => name.includes(asked.only) && problem.tiers[0]?.kind !== 'changes')
      .filter((_, index) => index % asked.every === 0)
      .slice(0, asked.limit);
  const families = [
    { family: 'kitchen', problems: cut(kitchen) },
    { family: 'rcpsp', problems: cut(projects) },
  ];
  const within = asked.solvers.filter((solver) => solver !== 'highs');
  const browser = within.length === 0 ? null : await openedBrowser();
  const comparing: Comparing = { ...asked, browser, solvers: within, highs: asked.solvers.includes('highs') };
  const load = (): string => loadavg()[0]!.toFixed(1);
  const loadBefore = load();
  const compared: Compared[] = [];
  const rows: string[] = [];
  const row = (text: string): void => {
    rows.push(text);
    if (asked.out === undefined) console.log(text);
  };
  console.error(workerWarmed());
  try {
    for (const problem of kitchenProblems({ seed: 900, random: WARM_UP, generated: 0 }).slice(0, WARM_UP)) {
      if (problem.problem.tiers[0]?.kind === 'changes') continue;
      await compare(problem, 'warm-up', { ...comparing, seconds: Math.min(2, asked.seconds) });
    }
    row(comparedHeading);
    for (const { family, problems } of families)
      for (const problem of problems) {
        const one = await compare(problem, family, comparing);
        compared.push(one);
        row(comparedRows(one));
        if (asked.out !== undefined) console.error(sentence(one));
        if (asked.found !== undefined && contradictions([one]).length > 0)
          writeFileSync(join(asked.found, `${one.name.replaceAll(/\W+/g, '-')}.json`), JSON.stringify(problem.problem));
      }
  } finally {
    await browser?.close();
  }
  if (asked.out !== undefined) writeFileSync(asked.out, `${rows.join('\n')}\n`);
  console.error(`\n${asked.seconds} s each, seed ${asked.seed}, first tier only, every solver from the same plan`);
  console.error(
    `the machine's load, one minute's mean: ${loadBefore} before, ${load()} after (seconds are of the wall clock)`,
  );
  console.error(comparedSummary(compared));
  return contradictions(compared).length > 0 ? 1 : 0;
}

const sentence = ({ name, ours, others }: Compared): string =>
  `${name}: ${[ours, ...others].map((each) => `${each.engine} ${each.kind} ${each.value ?? ''} ${each.solveSeconds.toFixed(3)} s`).join(', ')}`;

async function openedBrowser(): Promise<MiniZincBrowser | null> {
  try {
    const browser = await openMiniZinc();
    console.error(`in the browser, loaded in ${browser.loadSeconds.toFixed(1)} s: ${browser.solvers.join(', ')}`);
    return browser;
  } catch (error) {
    console.error(`the MiniZinc build cannot be run here: ${String(error).split('\n')[0]}`);
    return null;
  }
}

function problemsIn(folder: string): NamedProblem[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .flatMap((file) => {
      const problem = JSON.parse(readFileSync(join(folder, file), 'utf8')) as Partial<Problem>;
      if (problem.format === 'afterheat.problem')
        return [{ name: file.replace(/\.json$/, ''), problem: problem as Problem }];
      console.error(`${file} is not a problem and is left out`);
      return [];
    });
}
