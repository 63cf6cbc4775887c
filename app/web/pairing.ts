/**
 * Who may ask: whoever has the start code, once. The code stands in the address that the program opens or prints, in the
 * fragment, which no browser sends; the page trades it for a cookie that scripts cannot read and other sites cannot send.
 */
import { randomBytes, timingSafeEqual } from 'node:crypto';

export interface Pairing {
  /** The start code, 128 random bits. */
  readonly code: string;
  /** Trades the code for a cookie's value; null: it is wrong, or was traded before. */
  readonly trade: (code: string) => string | null;
  /** Whether a cookie's value came of a trade. */
  readonly knows: (cookie: string | undefined) => boolean;
}

const secret = (bytes: number): string => randomBytes(bytes).toString('base64url');

/** Compares in a time that tells nothing of where they differ. */
function same(a: string, b: string): boolean {
  const [left, right] = [Buffer.from(a), Buffer.from(b)];
  return left.length === right.length && timingSafeEqual(left, right);
}

/** A new pairing, with nobody paired. */
export function createPairing(): Pairing {
  const code = secret(16);
  const cookie = secret(32);
  let traded = false;
  return {
    code,
    trade: (given) => {
      if (traded || !same(given, code)) return null;
      traded = true;
      return cookie;
    },
    knows: (given) => traded && given !== undefined && same(given, cookie),
  };
}
