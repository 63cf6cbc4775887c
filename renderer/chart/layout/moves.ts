/** Where the arrow keys lead: along a lane by time, and to the lane above or below at about the same time. */
import type { Bar, Group } from './lane-model.ts';

export type Move = 'earlier' | 'later' | 'up' | 'down' | 'first' | 'last';

const byTime = (bars: readonly Bar[]): readonly Bar[] => [...bars].sort((a, b) => a.start - b.start || a.row - b.row);

/** Minutes between two stretches; 0 where they overlap. */
const apart = (a: Bar, b: Bar): number => Math.max(0, b.start - a.end, a.start - b.end);

/** @returns the id of the bar to go to; the same where there is none that way; null where the chart has no bars */
export function moveFrom(groups: readonly Group[], current: string | null, move: Move): string | null {
  const lanes = groups
    .flatMap((group) => group.lanes.map((lane) => byTime(lane.bars)))
    .filter((bars) => bars.length > 0);
  if (lanes.length === 0) return null;
  const laneIndex = lanes.findIndex((bars) => bars.some((bar) => bar.id === current));
  if (laneIndex === -1) return lanes[0]![0]!.id;
  const lane = lanes[laneIndex]!;
  const index = lane.findIndex((bar) => bar.id === current);
  const bar = lane[index]!;
  switch (move) {
    case 'earlier':
      return lane[Math.max(0, index - 1)]!.id;
    case 'later':
      return lane[Math.min(lane.length - 1, index + 1)]!.id;
    case 'first':
      return lane[0]!.id;
    case 'last':
      return lane.at(-1)!.id;
    case 'up':
    case 'down': {
      const next = lanes[laneIndex + (move === 'up' ? -1 : 1)];
      if (next === undefined) return bar.id;
      return [...next].sort(
        (a, b) => apart(bar, a) - apart(bar, b) || Math.abs(a.start - bar.start) - Math.abs(b.start - bar.start),
      )[0]!.id;
    }
  }
}
