/** What would help, as text. */
import type { HelpReport } from '../../../solver/answers/what-would-help.ts';
import { minutesText } from './figures.ts';

/** A line for each help that gains; the others by how much they could gain at most, and last those that gain nothing, by proof. */
export function helpsText({ measure, finish, bound, answers, open, stopped }: HelpReport): string {
  const way = measure === 'latest-start' ? 'later' : 'sooner';
  const proved = finish === bound ? 'proven the least' : `at least ${minutesText(bound)}`;
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
      : `Work is done after ${minutesText(finish)} (${proved}). What would make it sooner:`,
    ...gaining.map(({ help }, index) => `  ${gains[index]!.padEnd(width)}  ${help.words}${cautionOf(help.caution)}`),
    ...(gaining.length === 0 ? ['  nothing was found'] : []),
    ...most.map((minutes) => {
      const names = others.filter(({ mostGain }) => mostGain === minutes).map(({ help }) => help.words);
      return `${minutes === 0 ? 'No gain, proven' : `None found, at most ${minutes} min ${way}`}: ${names.join('; ')}.`;
    }),
    ...(open > 0 ? [`Not asked yet: ${open}${stopped ? ' (stopped, or the effort was spent)' : ''}.`] : []),
  ].join('\n');
}

const cautionOf = (caution: string): string => (caution === '' ? '' : ` (${caution})`);
