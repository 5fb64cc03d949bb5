/** What lets a page's own script run. It tells nobody anything: it only has to be another one each time. */
export function newNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map(byte => byte.toString(16).padStart(2, '0')).join('');
}
