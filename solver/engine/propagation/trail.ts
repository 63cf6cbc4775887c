/** Integer cells whose changes can be undone back to a mark, in one flat array with one flat log. */
export class Trail {
  readonly cells: Int32Array;
  private addresses = new Int32Array(4096);
  private olds = new Int32Array(4096);
  private length = 0;

  /** @param size number of cells, all 0 at first */
  constructor(size: number) {
    this.cells = new Int32Array(size);
  }

  /** Writes a cell and remembers what was there. */
  set(address: number, value: number): void {
    if (this.length === this.addresses.length) this.grow();
    this.addresses[this.length] = address;
    this.olds[this.length] = this.cells[address] as number;
    this.length++;
    this.cells[address] = value;
  }

  /** Where the log is now. */
  mark(): number {
    return this.length;
  }

  /**
   * Takes back every change since the mark, newest first.
   * @throws Error where the mark itself was taken back (a promise of our own broken)
   */
  undo(mark: number): void {
    const { cells, addresses, olds } = this;
    if (mark > this.length) throw new Error(`a mark at ${mark} is no longer in a log of ${this.length}`);
    let i = this.length;
    while (i > mark) {
      i--;
      cells[addresses[i] as number] = olds[i] as number;
    }
    this.length = mark;
  }

  /** Place in the log of the newest change of a cell, −1 when it was not changed since the log began. */
  lastChange(address: number): number {
    let i = this.length - 1;
    while (i >= 0 && this.addresses[i] !== address) i--;
    return i;
  }

  /** What a cell held when the log was at the mark. */
  valueAt(address: number, mark: number): number {
    for (let i = mark; i < this.length; i++) if (this.addresses[i] === address) return this.olds[i] as number;
    return this.cells[address] as number;
  }

  private grow(): void {
    const addresses = new Int32Array(this.addresses.length * 2);
    addresses.set(this.addresses);
    this.addresses = addresses;
    const olds = new Int32Array(this.olds.length * 2);
    olds.set(this.olds);
    this.olds = olds;
  }
}
