/** What the keys do in the lane chart. */
import type { Move } from './layout/moves.ts';

export type ChartAction =
  | { readonly kind: 'move'; readonly move: Move }
  | { readonly kind: 'open' }
  | { readonly kind: 'dismiss' }
  /** By a share of what is seen; negative: earlier. */
  | { readonly kind: 'pan'; readonly share: number }
  | { readonly kind: 'zoom'; readonly factor: number }
  | { readonly kind: 'fit' };

const MOVES: Readonly<Record<string, Move>> = {
  ArrowLeft: 'earlier',
  ArrowRight: 'later',
  ArrowUp: 'up',
  ArrowDown: 'down',
  Home: 'first',
  End: 'last',
};

type Key = Pick<KeyboardEvent, 'key' | 'shiftKey' | 'altKey' | 'ctrlKey' | 'metaKey'>;

/** @returns null for keys that the chart leaves to others */
export function actionOf({ key, shiftKey, altKey, ctrlKey, metaKey }: Key): ChartAction | null {
  if (altKey || ctrlKey || metaKey) return null;
  if (shiftKey && key === 'ArrowLeft') return { kind: 'pan', share: -0.25 };
  if (shiftKey && key === 'ArrowRight') return { kind: 'pan', share: 0.25 };
  const move = MOVES[key];
  if (move !== undefined) return { kind: 'move', move };
  switch (key) {
    case 'Enter':
    case ' ':
      return { kind: 'open' };
    case '+':
    case '=':
      return { kind: 'zoom', factor: 1.5 };
    case '-':
      return { kind: 'zoom', factor: 1 / 1.5 };
    case '0':
      return { kind: 'fit' };
    case 'Escape':
      return { kind: 'dismiss' };
    default:
      return null;
  }
}
