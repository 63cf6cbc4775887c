/** Curves between the chosen step and the steps that it waits for and that follow it. */
import type { BarMark } from './bar-marks.ts';
import type { ChartMarks } from './chart-layout.ts';
import type { Relation } from './relations.ts';

export interface LinkMark {
  readonly relation: Relation;
  readonly path: string;
  readonly end: { readonly x: number; readonly y: number };
}

/** A step shows in several lanes; links join where it spends its time: in the oven before a hand, on a shelf before a board. */
const HOME = ['rack', 'burner', 'pool', 'appliance', 'kettle', 'resting', 'cooling', 'hands', 'boil'];

/** Smaller: more where a step spends its time. */
export const homeRank = (mark: BarMark): number => {
  const at = HOME.indexOf(mark.bar.id.split('/')[0]!);
  return at === -1 ? HOME.length : at;
};

function home(bars: readonly BarMark[], stepId: string): BarMark | undefined {
  return bars
    .filter((mark) => mark.bar.stepId === stepId)
    .sort((a, b) => homeRank(a) - homeRank(b) || a.box.x - b.box.x)[0];
}

const round = (value: number): number => Math.round(value * 10) / 10;

/** Links of one step; `stepId` null gives none. */
export function linkMarks(
  marks: ChartMarks,
  relations: readonly Relation[],
  stepId: string | null,
): readonly LinkMark[] {
  if (stepId === null) return [];
  const bars = marks.groups.flatMap((group) => group.lanes.flatMap((lane) => lane.bars));
  return relations
    .filter((relation) => relation.from === stepId || relation.to === stepId)
    .flatMap((relation): LinkMark[] => {
      const from = home(bars, relation.from);
      const to = home(bars, relation.to);
      if (from === undefined || to === undefined) return [];
      const x1 = from.box.x + from.box.w;
      const y1 = from.box.y + from.box.h / 2;
      const x2 = to.box.x;
      const y2 = to.box.y + to.box.h / 2;
      const bend = Math.max(14, Math.min(70, Math.abs(x2 - x1) * 0.5));
      return [
        {
          relation,
          path: `M${round(x1)} ${round(y1)}C${round(x1 + bend)} ${round(y1)} ${round(x2 - bend)} ${round(y2)} ${round(x2)} ${round(y2)}`,
          end: { x: round(x2), y: round(y2) },
        },
      ];
    });
}
