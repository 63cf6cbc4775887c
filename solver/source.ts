/** Where a figure comes from, and how far it can be trusted. */

/**
 * `published`: read in the source itself or in an official copy. `secondary`: read in a text that reports the source.
 * `derived`: computed from published figures. `common-practice`: kitchen usage, no source claimed. `from-memory`: believed right,
 * not seen; never shown as sourced. `invented`: made up for a demo. `reading`: read by the user in the user's own kitchen.
 */
export type Standing =
  'published' | 'secondary' | 'derived' | 'common-practice' | 'from-memory' | 'invented' | 'reading';

export interface Source {
  readonly standing: Standing;
  /** Document, edition, table or clause; for what has no document, what it is ("common practice"). */
  readonly cite: string;
  /** Country or union it is from or holds in; absent: a fact of nature. */
  readonly region?: string;
}
