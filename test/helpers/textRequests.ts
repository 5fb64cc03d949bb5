/** What an editor asks of a text by the Language Server Protocol (3.17), of what the server answers. */
export const TEXT_REQUESTS = [
  'textDocument/hover',
  'textDocument/completion',
  'textDocument/codeAction',
  'textDocument/documentSymbol',
  'textDocument/definition',
  'textDocument/references',
  'textDocument/documentHighlight',
  'textDocument/prepareRename',
  'textDocument/rename',
  'textDocument/inlayHint',
  'textDocument/codeLens',
  'textDocument/foldingRange',
] as const;
