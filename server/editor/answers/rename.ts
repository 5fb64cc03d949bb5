import type { Range, WorkspaceEdit } from 'vscode-languageserver-types';
import { LONGEST_NAME } from '../../../schema/fields.ts';
import { UNSHOWN } from '../../../schema/quoted.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { rewriteScalars } from '../../core/text/editing/rewrite.ts';
import { type EditedFile, workspaceEdit } from './editedFile.ts';
import { lspRange } from './lspRange.ts';
import { namedAt, spansOf } from './names.ts';

/** A name that can be changed, as it stands in the file. */
export interface Renaming {
  readonly range: Range;
  readonly placeholder: string;
}

export type Rename =
  | { readonly status: 'done'; readonly edit: WorkspaceEdit }
  /** Why not, for the builder. */
  | { readonly status: 'refused'; readonly reason: string };

/** The name at an offset that can be changed everywhere at once; null where there is none. */
export function renamingAt({ syntax }: Analysis, offset: number): Renaming | null {
  const named = namedAt(syntax, offset);
  if (!named) return null;
  const span = spansOf(syntax, [named.given, ...named.uses]).find(each => each[0] <= offset && offset <= each[1]);
  return span ? { range: lspRange(syntax, span), placeholder: named.name } : null;
}

/** Gives the thing whose name is at an offset another one, wherever the file means it; nothing else changes. */
export function renameAt({ syntax }: Analysis, offset: number, wanted: string, file: EditedFile): Rename {
  const named = namedAt(syntax, offset);
  if (!named)
    return refused('Put the cursor on the name of a part, tank, compartment, shell or bay, or on what follows “in:”.');
  const name = wanted.trim();
  if (name === '') return refused('A name is at least one letter or figure, such as “dry cylinder”.');
  if (name.search(UNSHOWN) >= 0)
    return refused('A name stands on one line, without tabs and signs that cannot be seen.');
  if (name.length > LONGEST_NAME)
    return refused(`A name has ${LONGEST_NAME} characters at most, and this has ${name.length}.`);
  if (named.others.includes(name))
    return refused(`Something else is called “${name}” already. Each name stands for one thing only.`);
  const splices = rewriteScalars(syntax, [named.given, ...named.uses], name);
  if (!splices) return refused(`“${named.name}” cannot be changed here; change its text by hand.`);
  return { status: 'done', edit: workspaceEdit(syntax, splices, file) };
}

const refused = (reason: string): Rename => ({ status: 'refused', reason });
