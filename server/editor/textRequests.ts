import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type Connection,
  ErrorCodes,
  type Position,
  ResponseError,
  type TextDocumentIdentifier,
} from 'vscode-languageserver';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { Analysis } from '../core/analysis/analysis.ts';
import { type GuardHost, guard } from './guard.ts';
import type { BoatService } from './service.ts';

/** A file that is open in the editor. */
export interface OpenFile {
  readonly document: TextDocument;
  readonly analysis: Analysis;
}

export interface TextRequestsHost {
  readonly connection: Connection;
  readonly service: BoatService;
  readonly guard: GuardHost;
  readonly fileAt: (uri: string) => OpenFile | undefined;
  /** Whether the editor checks versions of edits. */
  readonly checksVersions: () => boolean;
  readonly showsHints: () => boolean;
}

/** Answers what an editor asks about the text: one line of the service for each request, each guarded. */
export function answerTextRequests(host: TextRequestsHost): void {
  const { connection, service, fileAt } = host;
  const versionOf = ({ version }: TextDocument): number | null => (host.checksVersions() ? version : null);

  /**
   * Answers for a file; the fallback where it is not open, or where our own code fails. `prepare` does what takes long in
   * steps, and says when it is done.
   */
  const about =
    <P extends { readonly textDocument: TextDocumentIdentifier }, T>(
      name: string,
      fallback: T,
      answer: (file: OpenFile, params: P) => T,
      prepare: (file: OpenFile, params: P) => boolean = () => true,
    ) =>
    (asked: P, ...more: readonly unknown[]) => {
      const withFile =
        <A>(run: (file: OpenFile, params: P) => A, otherwise: A) =>
        (params: P): A => {
          const file = fileAt(params.textDocument.uri);
          return file ? run(file, params) : otherwise;
        };
      return guard(
        host.guard,
        { name, fallback, given: [asked, ...more] },
        withFile(answer, fallback),
        withFile(prepare, true),
      );
    };
  const offset = ({ document }: OpenFile, { position }: { readonly position: Position }): number =>
    document.offsetAt(position);

  // Of a boat that was in the water no figure is shown that the water has disproved.
  connection.onHover(
    about(
      'hover',
      null,
      (file, at) => service.hover(file.analysis, offset(file, at)),
      ({ analysis }) => analysis.trials.length === 0 || analysis.settled.step(),
    ),
  );
  connection.onCompletion(
    about('completion', [], (file, at) => [...service.completions(file.analysis, offset(file, at))]),
  );
  const isAsked = ({ context: { only } }: CodeActionParams) =>
    only?.some(kind => CodeActionKind.QuickFix.startsWith(kind)) ?? true;
  const span = ({ document }: OpenFile, { range }: CodeActionParams) =>
    [document.offsetAt(range.start), document.offsetAt(range.end)] as const;
  connection.onCodeAction(
    about<CodeActionParams, CodeAction[]>(
      'code actions',
      [],
      (file, at) => {
        const { document, analysis } = file;
        const edited = { uri: document.uri, version: versionOf(document) };
        return isAsked(at) ? [...service.codeActions(analysis, span(file, at), edited)] : [];
      },
      (file, at) => !isAsked(at) || service.prepareCodeActions(file.analysis, span(file, at)),
    ),
  );
  connection.onDocumentSymbol(about('symbols', [], ({ analysis }) => [...service.symbols(analysis)]));
  connection.onDefinition(
    about('definition', null, (file, at) => service.definition(file.analysis, offset(file, at), file.document.uri)),
  );
  connection.onReferences(
    about('references', [], (file, at) => [
      ...service.references(file.analysis, offset(file, at), {
        uri: file.document.uri,
        withDefinition: at.context.includeDeclaration,
      }),
    ]),
  );
  connection.onDocumentHighlight(
    about('highlights', [], (file, at) => [...service.highlights(file.analysis, offset(file, at))]),
  );
  connection.onPrepareRename(about('renaming', null, (file, at) => service.renaming(file.analysis, offset(file, at))));
  connection.onRenameRequest(
    about('rename', null, (file, at) => {
      const { document, analysis } = file;
      const edited = { uri: document.uri, version: versionOf(document) };
      const rename = service.rename(analysis, offset(file, at), at.newName, edited);
      if (rename.status === 'done') return rename.edit;
      return new ResponseError<void>(ErrorCodes.InvalidRequest, rename.reason);
    }),
  );
  connection.languages.inlayHint.on(
    about('hints', [], ({ document, analysis }, { range }) =>
      host.showsHints()
        ? [...service.inlayHints(analysis, [document.offsetAt(range.start), document.offsetAt(range.end)])]
        : [],
    ),
  );
  connection.onCodeLens(
    about('lenses', [], ({ document, analysis }) => [...service.codeLenses(analysis, document.uri)]),
  );
  connection.onFoldingRanges(about('folding', [], ({ analysis }) => [...service.foldingRanges(analysis)]));
}
