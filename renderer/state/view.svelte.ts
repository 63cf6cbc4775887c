/** What stretch of time is seen: zoom and pan, never wider than the whole and never closer than a few minutes. */
import type { View } from '../chart/layout/time-scale.ts';

/** Closest zoom: this many minutes across the plot. */
const CLOSEST = 8;

export class ViewState {
  #whole = $state.raw<View>({ from: 0, to: 60 });
  #seen = $state.raw<View>({ from: 0, to: 60 });

  get whole(): View {
    return this.#whole;
  }

  get seen(): View {
    return this.#seen;
  }

  get span(): number {
    return this.#seen.to - this.#seen.from;
  }

  /** 1 when everything is seen, 4 when a quarter is. */
  get zoom(): number {
    return (this.#whole.to - this.#whole.from) / this.span;
  }

  get fits(): boolean {
    return this.zoom < 1.001;
  }

  /** A new chart: everything there is, and how much of it to show at first from its start. */
  open(whole: View, first?: number): void {
    this.#whole = whole;
    this.#seen = whole;
    if (first !== undefined && first < whole.to - whole.from) this.#show(whole.from, first);
  }

  /** The same chart with another whole: what was seen stays where it is; all stays all. */
  renew(whole: View): void {
    const fitted = this.fits;
    this.#whole = whole;
    if (fitted) this.#seen = whole;
    else this.#show(this.#seen.from, this.span);
  }

  #show(from: number, span: number): void {
    const width = this.#whole.to - this.#whole.from;
    const wide = Math.min(width, Math.max(Math.min(CLOSEST, width), span));
    const start = Math.min(Math.max(from, this.#whole.from), this.#whole.to - wide);
    this.#seen = { from: start, to: start + wide };
  }

  fit(): void {
    this.#seen = this.#whole;
  }

  /** Zooms by a factor (2: twice as close) and keeps `around` where it stands on the screen. */
  zoomBy(factor: number, around: number = (this.#seen.from + this.#seen.to) / 2): void {
    const wide = Math.min(this.#whole.to - this.#whole.from, Math.max(CLOSEST, this.span / factor));
    const share = (around - this.#seen.from) / this.span;
    this.#show(around - share * wide, wide);
  }

  panBy(minutes: number): void {
    this.#show(this.#seen.from + minutes, this.span);
  }

  panTo(from: number): void {
    this.#show(from, this.span);
  }

  /** Moves as little as needed so that the stretch is seen; a stretch longer than the view is seen from its start. */
  reveal(from: number, until: number): void {
    const margin = this.span * 0.04;
    if (from - margin < this.#seen.from || until - from > this.span) this.#show(from - margin, this.span);
    else if (until + margin > this.#seen.to) this.#show(until + margin - this.span, this.span);
  }
}
