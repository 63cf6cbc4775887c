/** A list of literals (slot, value) in reused arrays: the reason for one bound, or the ground of a conflict. */
export class Explanation {
  size = 0;
  slots = new Int32Array(256);
  values = new Int32Array(256);

  clear(): void {
    this.size = 0;
  }

  add(slot: number, value: number): void {
    if (this.size === this.slots.length) {
      const slots = new Int32Array(this.size * 2);
      const values = new Int32Array(this.size * 2);
      slots.set(this.slots);
      values.set(this.values);
      this.slots = slots;
      this.values = values;
    }
    this.slots[this.size] = slot;
    this.values[this.size] = value;
    this.size++;
  }
}
