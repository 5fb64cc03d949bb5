import { type CompletionItem, CompletionItemKind, InsertTextFormat, MarkupKind } from 'vscode-languageserver-types';
import type { Describer, KeyInfo } from '../../../schema/describe.ts';
import type { Path } from '../../../schema/path.ts';
import type { AsRead } from '../../core/analysis/analysis.ts';
import type { Span } from '../../core/text/reading/lines.ts';
import type { Syntax } from '../../core/text/reading/syntax.ts';
import { entriesOf, keysOf } from '../../core/text/reading/values.ts';
import { type Writing, type WritingEntry, type WritingKey, writingAt } from '../../core/text/reading/writingAt.ts';
import { lspRange } from './lspRange.ts';
import type { EntrySnippet, SnippetBoat } from './snippetFields.ts';
import { entrySnippets, keySnippet, ownExample } from './snippets.ts';
import { snippetBoat } from './surroundings.ts';
import { payloadChoices, valueChoices } from './valueChoices.ts';

/** What can be written at an offset: keys, values and whole entries, also while the line is half typed. */
export function completionsAt(read: AsRead, describer: Describer, offset: number): readonly CompletionItem[] {
  const writing = writingAt(read.syntax, offset);
  if (writing === null) return [];
  const items = itemsFor(read, describer, writing, offset);
  return items.map((item, i) => ({ ...item, sortText: String(i).padStart(3, '0') }));
}

function itemsFor(read: AsRead, describer: Describer, writing: Writing, offset: number): readonly CompletionItem[] {
  const { syntax } = read;
  if (writing.on === 'value')
    return valueChoices(read, describer, writing.path, writing).map(choice => ({
      label: choice.label,
      kind: choice.isUnit ? CompletionItemKind.Unit : CompletionItemKind.Value,
      ...(choice.detail === undefined ? {} : { detail: choice.detail }),
      ...replacing(syntax, choice.isUnit ? [offset, offset] : writing.span, choice.text),
    }));
  const names = nameItems(read, writing);
  if (names.length > 0) return names;
  const of = snippetBoat(read, { list: listOf(writing.path), offset });
  if (writing.on === 'entry') return entryItems(syntax, writing, of);
  if (describer.describe(writing.path)?.holds === 'list' && !isEntry(writing.path))
    return entryItems(syntax, writing, of);
  return [...newEntryItems(syntax, writing, of), ...keyItems(syntax, describer, writing, of)];
}

/** Names of payload entries in a list of what is left ashore, without those that stand there. */
function nameItems(read: AsRead, { on, path, span, isFlow }: WritingKey | WritingEntry): readonly CompletionItem[] {
  const list = on === 'key' ? path.slice(0, -1) : path;
  if (list.at(-1) !== 'without') return [];
  const { syntax } = read;
  const written = entriesOf(syntax, list).map(({ value }) => value);
  const dash = on === 'entry' && !isFlow ? '- ' : '';
  return payloadChoices(read, isFlow)
    .filter(({ label }) => !written.includes(label))
    .map(({ label, text }) => ({ label, kind: CompletionItemKind.Value, ...replacing(syntax, span, dash + text) }));
}

/** The list that an entry is of, or the path of the list itself. */
const listOf = (path: Path): Path => (isEntry(path) ? path.slice(0, -1) : path);

const isEntry = (path: Path): boolean => typeof path.at(-1) === 'number';

function keyItems(
  syntax: Syntax,
  describer: Describer,
  writing: WritingKey,
  of: SnippetBoat,
): readonly CompletionItem[] {
  const infos = describer.keysAt(writing.path).filter(info => !writing.written.includes(info.key));
  return infos.map(info => ({
    label: info.key,
    kind: CompletionItemKind.Property,
    ...(info.required ? { detail: 'needed' } : {}),
    documentation: { kind: MarkupKind.Markdown, value: about(info, of) },
    ...(writing.hasColon
      ? replacing(syntax, writing.span, info.key)
      : snippet(syntax, writing.span, keySnippet(info, [...writing.path, info.key], writing.isFlow, of))),
  }));
}

function about(info: KeyInfo, of: SnippetBoat): string {
  const example = ownExample(info, of);
  return example === undefined ? info.description : `${info.description}\n\nExample: \`${info.key}: ${example}\``;
}

/** Whole entries where the list takes one more. */
const entryItems = (
  syntax: Syntax,
  { path, span, isFlow }: Pick<WritingEntry, 'path' | 'span' | 'isFlow'>,
  of: SnippetBoat,
) =>
  entrySnippets(path, of).map(entry => entryItem(syntax, span, entry, isFlow ? entry.flow : `- ${entry.block('  ')}`));

/** The rest of an entry beside its dash, while nothing of it is written. */
function newEntryItems(
  syntax: Syntax,
  { path, span, isFlow, written }: WritingKey,
  of: SnippetBoat,
): readonly CompletionItem[] {
  if (!isEntry(path) || isFlow || written.length > 0 || keysOf(syntax, path).length > 0) return [];
  return entrySnippets(path.slice(0, -1), of).map(entry => entryItem(syntax, span, entry, entry.block('  ')));
}

const entryItem = (syntax: Syntax, span: Span, entry: EntrySnippet, text: string): CompletionItem => ({
  label: entry.label,
  kind: CompletionItemKind.Snippet,
  detail: entry.detail,
  filterText: `name ${entry.label}`,
  ...snippet(syntax, span, text),
});

const replacing = (syntax: Syntax, span: Span, newText: string): Pick<CompletionItem, 'textEdit'> => ({
  textEdit: { range: lspRange(syntax, span), newText },
});

const snippet = (syntax: Syntax, span: Span, text: string) => ({
  ...replacing(syntax, span, text),
  insertTextFormat: InsertTextFormat.Snippet,
});
