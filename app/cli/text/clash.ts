/** What clashes where no plan is possible, and what mends it. */
import type { Clash } from '../../api.ts';

/** Lines for people: the requirements that clash and where they are written, then what could be given up. */
export function clashText({ members, minimal, singles, together }: Clash): string {
  return [
    members.length === 1
      ? 'No plan is possible, for this cannot be:'
      : `No plan is possible, for these cannot all be${minimal ? '' : ' (a small clash, not shown to be the smallest)'}:`,
    ...members.map(({ words, document, path }) => `  ${words}  [${document}, ${path}]`),
    ...(singles.length > 0
      ? [
          singles.length === 1 ? 'This makes a plan possible:' : 'Any one of these makes a plan possible:',
          ...singles.map(({ mend }) => `  ${mend}`),
        ]
      : together.length > 0
        ? [
            'No single change is enough; these together make a plan possible:',
            ...together.map(({ mend }) => `  ${mend}`),
          ]
        : ['No single change that makes a plan possible was found.']),
  ].join('\n');
}
