/** FNV-1a, 32 bits (RFC 9923, the numbers from memory; test vectors beside it). */
const OFFSET = 0x811c9dc5;
const PRIME = 0x01000193;

/** Eight hexadecimal digits that tell one content of a file from another: "a1b2-c3d4". */
export function revisionOf(text: string): string {
  let hash = OFFSET;
  for (const byte of new TextEncoder().encode(text)) hash = Math.imul(hash ^ byte, PRIME) >>> 0;
  const digits = hash.toString(16).padStart(8, '0');
  return `${digits.slice(0, 4)}-${digits.slice(4)}`;
}
