// Names that nobody else has.
const BYTES = 16;

/** A fresh one. The browser's own identifiers are for pages by TLS alone; a shop's network often has none. */
export function fresh() {
  return Array.from(crypto.getRandomValues(new Uint8Array(BYTES)), byte => byte.toString(16).padStart(2, '0')).join('');
}
