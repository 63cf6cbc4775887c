/** Which part of a step a planned hands-on segment carries out. */
import type { CheckPart, OnPart } from '../kitchen/expand.ts';
import type { PlannedSegment } from '../kitchen/plan.ts';
import type { PieceReading } from './reading.ts';

/**
 * The hands-on parts, or looks on the way, that a segment may be.
 *
 * @param segment one of the piece's own, hands-on
 * @returns one for a part; for a look all that fit its time and length; empty where the segment is none of the step's
 */
export function partsOf(piece: PieceReading, segment: PlannedSegment): readonly (OnPart | CheckPart)[] {
  const { way, main, spans } = piece;
  if (way === null || spans === null) return [];
  if (segment.check !== true) {
    const part = way.parts[main.indexOf(segment)];
    return part?.hands === 'on' ? [part] : [];
  }
  const index = spans.findIndex(({ start, end }) => segment.start >= start && segment.start < end);
  const part = way.parts[index];
  if (part?.hands !== 'off') return [];
  const at = segment.start - spans[index]!.start;
  const fitting = part.checks.filter(
    ({ earliest, latest, minutes }) => at >= earliest && at <= latest && minutes === segment.end - segment.start,
  );
  const named = fitting.filter(({ name }) => name === segment.name);
  return named.length > 0 ? named : fitting;
}
