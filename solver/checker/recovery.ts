/** Minutes in which the oven chosen for a step makes up for its cold load. */
import { recoveryOfNeed } from '../heat/oven-load.ts';
import { loadOfPart, type OffPart } from '../kitchen/expand.ts';
import type { PieceReading, Reading } from './reading.ts';

/** Minutes that a hands-off part lasts longer for the cold load put in; 0 without one, or where no oven of the kitchen has it. */
export function recoveryMinutes(piece: PieceReading, index: number, part: OffPart, reading: Reading): number {
  if (!part.recovers || piece.way === null) return 0;
  const need = loadOfPart(piece.way, index);
  const { kitchen } = reading.plan;
  const place = piece.uses.find((use) => use.need === need)?.place;
  const oven = kitchen.ovens.find(({ id }) => id === place?.oven);
  return need === null || oven === undefined ? 0 : recoveryOfNeed(oven, kitchen.roomC, need);
}
