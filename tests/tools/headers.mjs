/** What a host should send with the app: README lists it, `npm start` and the tests serve it. */

/** Scripts, styles and requests of our own alone: nothing leaves the phone, whatever gets into a page. */
export const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "media-src 'self' blob:",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types default',
]

/** A page in somebody's frame could be made to take hits; a page's own policy cannot forbid it. */
const FRAMES = "frame-ancestors 'none'"

/** Headers beside content type and cache rules. */
export const HEADERS = {
  'content-security-policy': [...CONTENT_POLICY, FRAMES].join('; '),
  'permissions-policy':
    'camera=(self), microphone=(self), accelerometer=(self), screen-wake-lock=(self), autoplay=(self), geolocation=(), payment=(), usb=(), serial=(), bluetooth=()',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'cross-origin-opener-policy': 'same-origin',
}
