/** Headers that every answer carries, to a browser and to the desktop window alike. */

/** What a page of ours may load and do: its own files, and nothing else. */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "frame-ancestors 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

const DENIED = ['camera', 'microphone', 'geolocation', 'display-capture', 'usb', 'serial', 'hid', 'midi', 'payment'];

export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': CONTENT_SECURITY_POLICY,
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': DENIED.map((feature) => `${feature}=()`).join(', '),
};
