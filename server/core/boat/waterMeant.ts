import { wordMeant } from '../../../schema/tradeWords.ts';

/** What is meant by the water in a word or a figure, as it shall stand; a sentence where it must be measured. */
export function waterMeant(said: string): { readonly text: string | null; readonly hint: string } {
  const kind = wordMeant(said, ['fresh', 'sea']);
  if (kind !== null) return { text: kind, hint: `Did you mean “${kind}”?` };
  if (/^brackish/i.test(said))
    return {
      text: null,
      hint: 'Brackish water is anything between: measure its salinity or density, such as { salinity: 12 g/kg }.',
    };
  const key = /°|deg/i.test(said) ? 'temperature' : /‰|ppt|psu|g\/kg/i.test(said) ? 'salinity' : 'density';
  const text = /^[\d.]+/.test(said) ? `{ ${key}: ${said} }` : null;
  return { text, hint: text === null ? '' : `Did you mean “${text}”?` };
}
