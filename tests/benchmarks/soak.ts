/** The soak command: random input for hours rather than minutes, to find what the tests' sample does not. */
import { parseArgs } from 'node:util';
import { run } from './soak-sessions.ts';

const help = `Usage: npm run soak -- sessions [--count N] [--from SEED] [--size 1|2|3] [--effort N] [--seconds S]

sessions plans N random sessions (2,000) and checks every plan.

Example:
  npm run soak -- sessions --count 500 --from 10000 --size 2
`;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    count: { type: 'string', default: '2000' },
    from: { type: 'string', default: '0' },
    size: { type: 'string' },
    effort: { type: 'string', default: '30000' },
    seconds: { type: 'string', default: '10' },
    help: { type: 'boolean', default: false },
  },
});

if (values.help || positionals[0] !== 'sessions') {
  console.log(help);
  process.exitCode = values.help ? 0 : 2;
} else {
  const bad = run(Number(values.count), {
    from: Number(values.from),
    effort: Number(values.effort),
    seconds: Number(values.seconds),
    ...(values.size === undefined ? {} : { size: Number(values.size) }),
  });
  process.exitCode = bad > 0 ? 1 : 0;
}
