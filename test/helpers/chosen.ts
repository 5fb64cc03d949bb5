import { TextDocument } from 'vscode-languageserver-textdocument';
import type { CompletionItem } from 'vscode-languageserver-types';

/** The text after choosing an item, its snippet's places filled with what they suggest. */
export function chosen(text: string, items: readonly CompletionItem[], label: string): string {
  const item = items.find(each => each.label === label);
  if (!item?.textEdit || !('range' in item.textEdit)) throw new Error(`no “${label}” here`);
  const document = TextDocument.create('', 'boat', 1, text);
  const { range, newText } = item.textEdit;
  const [start, end] = [document.offsetAt(range.start), document.offsetAt(range.end)];
  const indent = /^ */.exec(text.split('\n')[range.start.line] ?? '')![0];
  const filled = newText
    .replace(/\$\{\d+\|((?:\\.|[^,|\\])*)[^}]*\}/g, '$1')
    .replace(/\$\{\d+:((?:\\.|[^}\\])*)\}/g, '$1')
    .replace(/\$\d/g, '')
    .replace(/\\(.)/g, '$1');
  return text.slice(0, start) + filled.replaceAll('\n', `\n${indent}`) + text.slice(end);
}
