/** Stands for an entry that is on the page as it is: nothing of it is read again. */
export const SAME = 'data-same';

/** An entry as the server draws it: a group without groups in it. */
const ENTRY = /<g class="(entry [^"]*)" data-path="([^"]*)".*?<\/g>/gs;

/** A picture with no more than a mark for each entry that the page shows already, in the picture that it shows. */
export function withoutSame(svg: string, shown: string): string {
  const known = new Set(shown.match(ENTRY));
  return svg.replace(ENTRY, (entry, kind: string, path: string) =>
    known.has(entry) ? `<g class="${kind}" data-path="${path}" ${SAME}=""/>` : entry,
  );
}
