/** A fault in what the user gave: where it is, what was found, what is wanted, and the mend. */
export interface InputFault {
  /** Title of the document: `session harbour-sunday`. */
  readonly document: string;
  /** Place in it, such as `steps[3].needs[0]`; empty for the whole. */
  readonly path: string;
  readonly found: string;
  readonly wanted: string;
  readonly mend: string;
}
