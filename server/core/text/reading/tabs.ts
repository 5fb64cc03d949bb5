import { type Fault, fault, replacing } from './faults.ts';
import { lineStart } from './lines.ts';

/** Blanks with a tab among them, at the start of a line or after its dash. */
const tabbedLead = /^(?: *\t[ \t]*|[ \t]*-(?: *\t[ \t]*))(?=[^ \t\r\n])/;
const tabbedLeads = new RegExp(tabbedLead, 'gm');

/** Tabs used to indent: one finding for the whole file, as an editor's setting put them all there. */
export function explainTabs(text: string, at: number): Fault {
  const leads = [...text.matchAll(tabbedLeads)];
  const tabs = /\t+/g;
  tabs.lastIndex = lineStart(text, at);
  const first = tabs.exec(text);
  const more = leads.length > 1 ? `, as on ${leads.length - 1} more line${leads.length > 2 ? 's' : ''}` : '';
  return fault(
    'tab-indent',
    first ? [first.index, first.index + first[0].length] : [at, at + 1],
    `A tab is used to indent here${more}. YAML takes spaces only, for example two for each step.`,
    {
      mend: replacing(
        'Replace tabs by spaces',
        ...leads.map(
          ({ 0: lead, index }) =>
            [[index, index + lead.length], lead.replaceAll('\t', lead.includes('-') ? ' ' : '  ')] as const,
        ),
      ),
    },
  );
}

/** The same text with each indenting tab as one space, so that offsets stay. */
export const withoutTabs = (text: string): string => text.replace(tabbedLeads, lead => lead.replaceAll('\t', ' '));
