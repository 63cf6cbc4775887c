/** What would help, as text. */
import type { HelpWords } from '../../../solver/answers/help.ts';
import type { HelpReport } from '../../../solver/answers/what-would-help.ts';
import { minutesText } from './figures.ts';

/** Columns of a terminal that a list is wrapped to. */
const COLUMNS = 100;

/** A line for each help that gains, the largest gain first; the others by how much they could gain at most, and last those that gain nothing, by proof. */
export function helpsText({ measure, finish, bound, answers, open, stopped }: HelpReport): string {
  const way = measure === 'latest-start' ? 'later' : 'sooner';
  const proved = finish === bound ? 'proven the least' : `never under ${minutesText(bound)}`;
  const gaining = answers.filter(({ gain }) => gain > 0);
  const gains = gaining.map(
    ({ gain, mostGain, proven }) => `${gain} min ${way}, ${proven ? 'proven' : `at most ${mostGain}`}`,
  );
  const width = Math.max(0, ...gains.map((text) => text.length));
  const others = answers.filter(({ gain }) => gain === 0);
  const most = [...new Set(others.map(({ mostGain }) => mostGain))];
  return [
    measure === 'latest-start'
      ? `Work begins ${minutesText(finish)} before the table (${proved}). What would let it begin later:`
      : `Work takes ${minutesText(finish)} (${proved}). What would make it shorter:`,
    ...gaining.map(({ help }, index) => `  ${gains[index]!.padEnd(width)}  ${help.words}${cautionOf(help.caution)}`),
    ...(gaining.length === 0 ? ['  nothing was found'] : []),
    ...most.flatMap((minutes) => [
      '',
      minutes === 0 ? 'Proven to gain nothing' : `No gain found, at most ${minutes} min ${way}`,
      ...groupsOf(others.filter(({ mostGain }) => mostGain === minutes).map(({ help }) => help)),
    ]),
    ...(open > 0
      ? ['', `Not asked yet: ${open}${stopped ? ' (stopped, or the effort was spent; more --effort asks them)' : ''}.`]
      : []),
  ].join('\n');
}

/** Things first, then work, then what goes by itself: each a paragraph. */
function groupsOf(helps: readonly HelpWords[]): readonly string[] {
  const work = helps.filter(({ kind }) => kind === 'by-hand');
  const waiting = helps.filter(({ kind }) => kind === 'by-itself');
  const things = helps.filter((help) => !work.includes(help) && !waiting.includes(help));
  return [things, work, waiting].flatMap((group) => wrapped(group.map(({ words }) => words)));
}

/** Names with semicolons between them, in lines; a line that goes on is set in deeper. */
function wrapped(names: readonly string[]): readonly string[] {
  const lines: string[] = [];
  names.forEach((name, index) => {
    const text = `${name}${index + 1 < names.length ? ';' : ''}`;
    const last = lines.at(-1);
    if (last === undefined) lines.push(`  ${text}`);
    else if (last.length + 1 + text.length > COLUMNS) lines.push(`    ${text}`);
    else lines[lines.length - 1] = `${last} ${text}`;
  });
  return lines;
}

const cautionOf = (caution: string): string => (caution === '' ? '' : ` (${caution})`);
