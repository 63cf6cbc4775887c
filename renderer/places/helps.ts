/** What would help, as rows and words for the screen. */
import type { HelpAnswer, HelpReport } from '../../solver/answers/what-would-help.ts';
import { minutesWords } from '../chart/layout/wall-clock.ts';

export interface HelpRow {
  readonly id: string;
  readonly words: string;
  readonly caution: string;
  /** `5 min sooner`. */
  readonly gain: string;
  /** `proven`, or `at most 20 min`. */
  readonly sure: string;
  /** Lengths of the bar, 0–1: what is gained, and how far the gain could go. */
  readonly share: number;
  readonly mostShare: number;
}

export interface HelpWords {
  /** What the gains are measured against. */
  readonly against: string;
  readonly gaining: readonly HelpRow[];
  /** Nothing found, but not ruled out: by how much they could gain at most. */
  readonly open: readonly { readonly most: string; readonly names: readonly string[] }[];
  /** Proven to gain nothing. */
  readonly useless: readonly string[];
}

/** Where not every gain is proven, bars end at twice the largest; what could go further is drawn to the end. */
const SCALE = 2;

/** Rows and words of a report. */
export function helpWordsOf({ measure, finish, bound, answers }: HelpReport): HelpWords {
  const way = measure === 'latest-start' ? 'later' : 'sooner';
  const proved = finish === bound ? 'proven the least' : `never under ${minutesWords(bound)}`;
  const scale = answers.some(({ gain, proven }) => gain > 0 && !proven) ? SCALE : 1;
  const longest = scale * Math.max(1, ...answers.map(({ gain }) => gain));
  const rest = answers.filter(({ gain, mostGain }) => gain === 0 && mostGain > 0);
  return {
    against:
      measure === 'latest-start'
        ? `Work begins ${minutesWords(finish)} before the table (${proved}). What would let it begin later:`
        : `Work takes ${minutesWords(finish)} (${proved}). What would make it shorter:`,
    gaining: answers.filter(({ gain }) => gain > 0).map((answer) => rowOf(answer, way, longest)),
    open: [...new Set(rest.map(({ mostGain }) => mostGain))].map((most) => ({
      most: `at most ${minutesWords(most)} ${way}`,
      names: rest.filter(({ mostGain }) => mostGain === most).map(({ help }) => help.words),
    })),
    useless: answers.filter(({ mostGain }) => mostGain === 0).map(({ help }) => help.words),
  };
}

const rowOf = ({ help, gain, mostGain, proven }: HelpAnswer, way: string, longest: number): HelpRow => ({
  id: help.id,
  words: help.words,
  caution: help.caution,
  gain: `${minutesWords(gain)} ${way}`,
  sure: proven ? 'proven' : `at most ${minutesWords(mostGain)}`,
  share: gain / longest,
  mostShare: Math.min(1, mostGain / longest),
});

/** `24 of 66 asked; most so far 5 min by another board`. */
export function askedWords({ answers, open }: HelpReport): string {
  const best = answers[0];
  const most =
    best === undefined || best.gain === 0
      ? 'nothing gained yet'
      : `most so far ${minutesWords(best.gain)} by ${best.help.words}`;
  return `${answers.length} of ${answers.length + open} asked; ${most}`;
}
