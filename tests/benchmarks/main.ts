/** The bench command: solves families of published instances against the clock, row by row, and sums up. */
import { createWriteStream } from 'node:fs';
import { parseArgs } from 'node:util';
import type { Solve } from '../../solver/engine/outcome.ts';
import { crossCheck } from './cross-check.ts';
import { validateProblem } from '../../solver/engine/validate-problem.ts';
import { engines } from './engines.ts';
import { fuzz } from './fuzz.ts';
import { families, listInstances, type Listed } from './instances.ts';
import { kitchenBench } from './kitchen.ts';
import { measure, type Instance, type Row } from './measure.ts';
import { replanBench } from './replan.ts';
import { peersBench } from './peers.ts';
import { csvHeading, csvRow, summaryOf } from './summary.ts';
import { workerWarmed } from './worker-warmed.ts';

const help = `Usage: npm run bench -- FAMILY PATH [options]
       npm run bench -- kitchen [options]
       npm run bench -- peers [DIR] [options]
       npm run bench -- replan [SESSION …] [--effort N] [--out FILE]
       npm run bench -- random [FIRST] [--limit N] [--effort N] [--large | --out DIR]

Before anything of a family, of kitchen or of replan is measured, planner and engine are run warm as the program's own thread runs them at its start,
on small sessions and problems of its own; the summary says "worker warmed".

Families and what PATH is:
  rcpsp DIR        projects under limited resources (.rcp, Patterson)
  gaps DIR         projects with shortest and longest gaps (.sch, ProGen/max)
  modes DIR        projects with modes (.mm)
  reservoirs DIR   projects with reservoirs (.rcp, ConsProd)
  jobshop FILE     job shops (.json); --blocking: a job keeps its machine until the next takes it
  openshop FILE    open shops (.json)

kitchen plans the demo sessions and generated ones of 20, 40, 80, 160 and 320 steps (--sizes 20,40; --sizes none); further words
keep only the demo sessions whose id has one of them.

peers solves kitchen problems, and the Patterson files in DIR, through our engine and through other solvers, all from the same
plan: --solvers highs,chuffed (others: gecode, coin-bc). --random N and --generated N kitchen sessions are drawn beside the
demo's; --problems DIR takes problems written by "afterheat model" instead; --found DIR keeps those with contradictory answers.
The building of a model, ours as theirs, is told apart from the search.

replan lets each demo session and generated ones of 60 steps run, with one step at a time late, early or not begun, and tells how
long the new plan takes, of the processor and of the thread alone; with --effort N each is held beside a replan of N work units.

random solves N tiny random problems from seed FIRST on and holds each answer against complete enumeration; a wrong one is
shrunk and printed, or written to DIR. With --large it holds engines, seeds and efforts against each other on problems of up
to 30 tasks.

Options:
  --optima FILE    published bounds (CSV: file, lower_bound, upper_bound, critical_path);
                   without it bounds.csv in DIR or above it
  --seconds S      most seconds an instance (10)
  --effort N       most work units an instance (no limit)
  --seed N         seed (1)
  --engine NAME    ${Object.keys(engines).join(', ')}
  --only TEXT      only instances whose name has TEXT
  --every K        only every K-th instance
  --limit N        only the first N instances
  --out FILE       write the CSV rows there instead of to the screen

Examples:
  npm run bench -- rcpsp ../benchmarks/rcpsp/j30 --seconds 1 --every 10
  npm run bench -- jobshop ../benchmarks/jobshop.json --only ft --seconds 30 --out ft.csv
`;

const options = {
  optima: { type: 'string' },
  seconds: { type: 'string', default: '10' },
  effort: { type: 'string' },
  seed: { type: 'string', default: '1' },
  engine: { type: 'string' },
  only: { type: 'string', default: '' },
  every: { type: 'string', default: '1' },
  limit: { type: 'string' },
  out: { type: 'string' },
  sizes: { type: 'string', default: '20,40,80,160,320' },
  solvers: { type: 'string', default: 'highs,chuffed' },
  random: { type: 'string', default: '12' },
  generated: { type: 'string', default: '3' },
  problems: { type: 'string' },
  found: { type: 'string' },
  large: { type: 'boolean', default: false },
  blocking: { type: 'boolean', default: false },
  help: { type: 'boolean', default: false },
} as const;

/** Says what is wrong with what was asked, without a trace of the program, and ends. */
function refuse(error: unknown): never {
  console.error(`${error instanceof Error ? error.message : String(error)}\nnpm run bench -- --help tells more`);
  process.exit(2);
}

function parsed(): ReturnType<typeof parseArgs<{ allowPositionals: true; options: typeof options }>> {
  try {
    return parseArgs({ allowPositionals: true, options });
  } catch (error) {
    return refuse(error);
  }
}

const { values, positionals } = parsed();
for (const name of ['seconds', 'effort', 'seed', 'every', 'limit', 'random', 'generated'] as const)
  if (values[name] !== undefined && !(Number(values[name]) >= 0))
    refuse(new Error(`--${name} ${values[name]} is no number`));
if (!/^(none|\d+(,\d+)*)$/.test(values.sizes)) refuse(new Error(`--sizes ${values.sizes} is no list of numbers`));
const [family, path] = positionals;
if (values.help || family === undefined) {
  console.log(help);
} else if (family === 'kitchen') {
  process.exitCode = await kitchenBench({
    seconds: Number(values.seconds),
    seed: Number(values.seed),
    out: values.out,
    rest: positionals.slice(1),
    sizes: values.sizes === 'none' ? [] : values.sizes.split(',').map(Number),
  });
} else if (family === 'peers') {
  const { solve } = engineNamed(values.engine);
  process.exitCode = await peersBench({
    solve,
    seconds: Number(values.seconds),
    seed: Number(values.seed),
    projects: path,
    problems: values.problems,
    solvers: values.solvers.split(','),
    only: values.only,
    every: Number(values.every),
    limit: values.limit === undefined ? undefined : Number(values.limit),
    random: Number(values.random),
    generated: Number(values.generated),
    out: values.out,
    found: values.found,
  });
} else if (family === 'replan') {
  process.exitCode = replanBench({
    seed: Number(values.seed),
    long: values.effort === undefined ? undefined : Number(values.effort),
    out: values.out,
    rest: positionals.slice(1),
  });
} else if (family === 'random' && values.large) {
  const asked = {
    first: Number(path ?? 0),
    count: Number(values.limit ?? 100),
    effort: Number(values.effort ?? 2_000_000),
  };
  const { name, solve } = engineNamed(values.engine);
  process.exitCode = crossCheck(values.engine === undefined ? engines : { [name]: solve }, asked) > 0 ? 1 : 0;
} else if (family === 'random') {
  process.exitCode = fuzz(engineNamed(values.engine).solve, {
    first: Number(path ?? 0),
    count: Number(values.limit ?? 1000),
    effort: Number(values.effort ?? 200_000),
    seed: Number(values.seed),
    out: values.out,
  });
} else if (!families.includes(family) || path === undefined) {
  console.error(help);
  process.exitCode = 2;
} else {
  try {
    bench(family, path);
  } catch (error) {
    refuse(error);
  }
}

function bench(named: string, at: string): void {
  const { name: engineName, solve } = engineNamed(values.engine);
  const seconds = Number(values.seconds);
  const limits = {
    seconds,
    effort: values.effort === undefined ? Number.MAX_SAFE_INTEGER : Number(values.effort),
    seed: Number(values.seed),
  };
  const listed = listInstances(named, at, { optima: values.optima, blocking: values.blocking })
    .filter(({ name }) => name.includes(values.only))
    .filter((_, index) => index % Number(values.every) === 0)
    .slice(0, values.limit === undefined ? undefined : Number(values.limit));
  if (listed.length === 0) throw new Error(`no instances of ${named} in ${at}`);
  const unreadable: string[] = [];
  const opened = (each: Listed): Instance | null => {
    try {
      const instance = each.open();
      validateProblem(instance.problem);
      return instance;
    } catch (error) {
      unreadable.push(`${each.name} cannot be read: ${(error as Error).message.split('\n')[0]}`);
      return null;
    }
  };

  const warmed = workerWarmed();

  const out = values.out === undefined ? process.stdout : createWriteStream(values.out);
  out.write(`${csvHeading()}\n`);
  const rows: Row[] = [];
  for (const each of listed) {
    const instance = opened(each);
    if (instance === null) continue;
    const row = measure(solve, instance, limits);
    rows.push(row);
    out.write(`${csvRow(row)}\n`);
  }
  if (out !== process.stdout) out.end();
  console.error(`\n${named} ${at}, engine ${engineName}, ${seconds} s each, seed ${limits.seed}, ${warmed}`);
  if (rows.length > 0) console.error(summaryOf(rows, seconds));
  if (rows.every(({ published }) => published === undefined))
    console.error('no published bounds known: finishes are measured against the longest chain alone');
  for (const words of unreadable) console.error(words);
  if (unreadable.length > 0 || rows.some((row) => row.faults.length > 0)) process.exitCode = 1;
}

function engineNamed(wanted: string | undefined): { readonly name: string; readonly solve: Solve } {
  const name = wanted ?? Object.keys(engines)[0] ?? '';
  const solve = engines[name];
  if (!solve) throw new Error(`no engine "${name}"; there are ${Object.keys(engines).join(', ')}`);
  return { name, solve };
}
