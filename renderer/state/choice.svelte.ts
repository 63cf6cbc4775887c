/** Which bar has the keyboard, which one is looked at, whether its card stays, and which component stands out. */
export class ChoiceState {
  /** Id of the bar that takes the focus when the keyboard enters the chart. */
  current = $state<string | null>(null);
  /** Id of the bar whose card is shown. */
  shown = $state<string | null>(null);
  /** The card stays when the pointer leaves. */
  pinned = $state(false);
  /** Component, or other owner, that stands out in every lane. */
  component = $state<string | null>(null);

  show(bar: string): void {
    if (!this.pinned) this.shown = bar;
  }

  hide(): void {
    if (!this.pinned) this.shown = null;
  }

  pin(bar: string): void {
    this.pinned = true;
    this.shown = bar;
    this.current = bar;
  }

  dismiss(): void {
    this.pinned = false;
    this.shown = null;
  }

  toggleComponent(id: string): void {
    this.component = this.component === id ? null : id;
  }

  /** A new chart. */
  reset(): void {
    this.current = null;
    this.component = null;
    this.dismiss();
  }
}
