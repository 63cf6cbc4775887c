/** Sizes of the chart's marks, px, for a width and for how far away it is read. */

/** `near`: at arm's length; `far`: a tablet across the kitchen or a projector. */
export type Reading = 'near' | 'far';

export interface ChartSizes {
  readonly text: number;
  readonly small: number;
  readonly letter: number;
  /** Lane names stand in a column of this width; 0: above their lanes. */
  readonly gutter: number;
  readonly axis: number;
  readonly hands: number;
  readonly bar: number;
  readonly gap: number;
  /** Between two groups. */
  readonly between: number;
  /** Row above an oven's racks for the turns of its dial. */
  readonly dial: number;
  readonly water: number;
  readonly keeping: number;
  /** Height of a lane's name where it stands above the lane. */
  readonly caption: number;
  readonly radius: number;
  /** Thickness of lines, as a multiple of the usual. */
  readonly pen: number;
}

/** @param width of the whole chart, px, 200 or more */
export function chartSizes(width: number, reading: Reading): ChartSizes {
  const screen = width < 2200 ? 1 : Math.min(2.4, width / 1600);
  const k = screen * (reading === 'far' ? 1.4 : 1);
  const narrow = width < 700;
  const px = (value: number): number => Math.round(value * k * 2) / 2;
  return {
    text: px(14),
    small: px(13),
    letter: px(13.5),
    gutter: narrow ? 0 : px(172),
    axis: px(34),
    hands: px(92),
    bar: px(28),
    gap: px(5),
    between: px(13),
    dial: px(35),
    water: px(40),
    keeping: px(18),
    caption: narrow ? px(19) : 0,
    radius: px(4),
    pen: k,
  };
}
