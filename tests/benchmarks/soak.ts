/** The soak command: random input for hours rather than minutes, to find what the tests' sample does not. */
import { parseArgs } from 'node:util';
import { REFERENCE_PROBLEMS } from '../support/random-problem-reference.ts';
import { soakAudit } from './soak-audit.ts';
import { soakForms } from './soak-forms.ts';
import { soakReference } from './soak-reference.ts';
import { soakReplans } from './soak-replans.ts';
import { run, SESSION_EFFORT } from './soak-sessions.ts';

const help = `Usage: npm run soak -- sessions [--count N] [--from SEED] [--size 1|2|3] [--effort E] [--seconds S]
       npm run soak -- reference [--count N] [--from INDEX] [--seconds S] [--out DIR]
       npm run soak -- replans [--count N] [--from SEED] [--size 1|2|3]
       npm run soak -- forms|audit [--count N] [--from INDEX] [--out DIR]

sessions plans N random sessions (2,000) with E work units each (2,000), holds every plan to the checker and to two walks through it,
and prints how many were at fault in which way; a long run tells now and then with which --from it can be gone on from.

replans plans N random sessions (500) and lives through each four times, with two to four things told one after another: late, shorter,
done, not begun, left out, out of turn. No replan may fail, and what the checker finds in its plan it must have told.

reference solves N small and N tiny random problems (300) by every engine and holds every proof against an integer program and
against complete enumeration; S is the most seconds of the integer program for a tier. Problems got wrong are written to DIR.

forms solves N small random problems (300) as they are, renamed, with time mirrored, with more room, with finer minutes and split, and
holds what is proved of one form against all others.

audit solves N tiny random problems (300), and brings the learning engine into random states on them, and holds every reason that it gives
and every clause that it learns against every plan there is.

Examples:
  npm run soak -- sessions --count 10000
  npm run soak -- sessions --count 500 --from 10000 --size 2 --effort 30000
  npm run soak -- replans --count 2000
  npm run soak -- reference --count 300
`;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    count: { type: 'string' },
    from: { type: 'string', default: '0' },
    size: { type: 'string' },
    effort: { type: 'string', default: String(SESSION_EFFORT) },
    seconds: { type: 'string', default: '10' },
    out: { type: 'string' },
    help: { type: 'boolean', default: false },
  },
});

const [what] = positionals;
if (values.help || !['sessions', 'replans', 'reference', 'forms', 'audit'].includes(what ?? '')) {
  console.log(help);
  process.exitCode = values.help ? 0 : 2;
} else if (what === 'reference') {
  const wrong = await soakReference({
    count: Number(values.count ?? REFERENCE_PROBLEMS),
    from: Number(values.from),
    seconds: Number(values.seconds),
    out: values.out,
  });
  process.exitCode = wrong > 0 ? 1 : 0;
} else if (what === 'replans') {
  const wrong = soakReplans({
    count: Number(values.count ?? 500),
    from: Number(values.from),
    ...(values.size === undefined ? {} : { size: Number(values.size) }),
  });
  process.exitCode = wrong > 0 ? 1 : 0;
} else if (what === 'forms' || what === 'audit') {
  const asked = { count: Number(values.count ?? REFERENCE_PROBLEMS), from: Number(values.from), out: values.out };
  process.exitCode = (what === 'forms' ? soakForms(asked) : soakAudit(asked)) > 0 ? 1 : 0;
} else {
  const bad = run(Number(values.count ?? 2000), {
    from: Number(values.from),
    effort: Number(values.effort),
    seconds: Number(values.seconds),
    ...(values.size === undefined ? {} : { size: Number(values.size) }),
  });
  process.exitCode = bad > 0 ? 1 : 0;
}
