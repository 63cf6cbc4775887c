/** A pool's water as a body whose surface is its level, with its boils and what was ladled out. */
import { volumeWords } from './kitchen-names.ts';
import type { Draw, Lane } from './lane-model.ts';
import type { TimeScale } from './time-scale.ts';

export interface DrawMark {
  readonly draw: Draw;
  readonly x: number;
  /** Level before and after, px. */
  readonly from: number;
  readonly to: number;
  readonly label: string;
}

export interface WaterMark {
  readonly body: string;
  readonly surface: string;
  readonly boils: readonly { readonly x: number; readonly y: number; readonly until: number; readonly words: string }[];
  /** It is off the heat, but still hot enough. */
  readonly hot: readonly { readonly x: number; readonly w: number }[];
  readonly least: { readonly x1: number; readonly x2: number; readonly y: number } | null;
  readonly draws: readonly DrawMark[];
  readonly top: number;
  readonly bottom: number;
}

const round = (value: number): number => Math.round(value * 10) / 10;

export function waterMark(
  lane: Extract<Lane, { kind: 'water' }>,
  scale: TimeScale,
  top: number,
  bottom: number,
  clock: (minute: number) => string,
): WaterMark {
  const { level, boils } = lane.course;
  const y = (ml: number): number => bottom - (ml / lane.fullMl) * (bottom - top);
  const steps: string[] = [];
  let last = y(0);
  for (const change of level) {
    const x = round(scale.x(change.minute));
    steps.push(`L${x} ${round(last)}L${x} ${round(y(change.ml))}`);
    last = y(change.ml);
  }
  const first = level[0];
  const surface = first === undefined ? '' : `M${round(scale.x(first.minute))} ${bottom}${steps.join('')}`;
  const levelAt = (minute: number): number => level.filter((change) => change.minute <= minute).at(-1)?.ml ?? 0;
  return {
    body: surface === '' ? '' : `${surface}Z`,
    surface,
    boils: boils.map((boil) => ({
      x: scale.x(boil.boilsAt),
      y: y(levelAt(boil.boilsAt)),
      until: scale.x(boil.offHeat),
      words: `boils ${clock(boil.boilsAt)}`,
    })),
    hot: boils
      .map((boil) => ({ from: boil.offHeat, until: Math.min(boil.hotUntil, lane.course.until) }))
      .filter((span) => span.until > span.from)
      .map((span) => ({ x: scale.x(span.from), w: scale.x(span.until) - scale.x(span.from) })),
    least:
      first === undefined || lane.leastMl === 0
        ? null
        : { x1: scale.x(first.minute), x2: scale.x(level.at(-1)!.minute), y: y(lane.leastMl) },
    draws: lane.draws.map((draw) => ({
      draw,
      x: scale.x(draw.minute),
      from: y(levelAt(draw.minute - 1)),
      to: y(levelAt(draw.minute)),
      label: `−${volumeWords(draw.ml)}`,
    })),
    top,
    bottom,
  };
}
