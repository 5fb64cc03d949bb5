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
import type { BoatService } from '../service/service.ts';
import { type GuardHost, guard } from './guard.ts';
import type { OpenFile } from './openFiles.ts';

export interface TextRequestsHost {
  readonly connection: Connection;
  readonly service: BoatService;
  readonly guard: GuardHost;
  readonly fileAt: (uri: string) => OpenFile | undefined;
  /** Whether the editor checks versions of edits. */
  readonly checksVersions: () => boolean;
  readonly showsHints: () => boolean;
}

const offset = ({ document }: OpenFile, { position }: { readonly position: Position }): number =>
  document.offsetAt(position);

/**
 * Makes the handler of a request about a file; the fallback where it is not open, or where our own code fails. `prepare` does
 * what takes long in steps, and says when it is done.
 */
type About = <P extends { readonly textDocument: TextDocumentIdentifier }, T>(
  name: string,
  fallback: T,
  answer: (file: OpenFile, params: P) => T,
  more?: {
    readonly prepare?: (file: OpenFile, params: P) => boolean;
    /** Somebody looks on: the answer goes before all that the change ahead of it asks for. */
    readonly isAtOnce?: true;
    /** It needs the text as it is read and no figure. */
    readonly isOfText?: true;
  },
) => (asked: P, ...more: readonly unknown[]) => Promise<T | ResponseError<void>>;

const aboutFiles =
  ({ fileAt, guard: guardHost }: TextRequestsHost): About =>
  (name, fallback, answer, { prepare = () => true, isAtOnce = false, isOfText = false } = {}) =>
  (asked, ...more) => {
    type Params = typeof asked;
    const withFile =
      <A>(run: (file: OpenFile, params: Params) => A, otherwise: A) =>
      (params: Params): A => {
        const file = fileAt(params.textDocument.uri);
        return file ? run(file, params) : otherwise;
      };
    return guard(
      guardHost,
      { name, fallback, given: [asked, ...more], isAtOnce },
      withFile(answer, fallback),
      withFile((file, params) => (isOfText ? file.step('read') : file.step() && prepare(file, params)), true),
    );
  };

/** Answers what an editor asks about the text: one line of the service for each request, each guarded. */
export function answerTextRequests(host: TextRequestsHost): void {
  const about = aboutFiles(host);
  answerAboutWords(host, about);
  answerAboutChanges(host, about);
  answerAboutNames(host, about);
  answerAboutOutline(host, about);
}

function answerAboutWords({ connection, service }: TextRequestsHost, about: About): void {
  // Of a boat that was in the water no figure is shown that the water has disproved.
  connection.onHover(
    about('hover', null, (file, at) => service.hover(file.analysis, offset(file, at)), {
      isAtOnce: true,
      prepare: ({ analysis }) => analysis.trials.length === 0 || analysis.settled.step(),
    }),
  );
  connection.onCompletion(
    about('completion', [], (file, at) => [...service.completions(file.read, offset(file, at))], {
      isAtOnce: true,
      isOfText: true,
    }),
  );
}

/** The file as an edit names it. */
const editedFile = ({ document: { uri, version } }: OpenFile, { checksVersions }: TextRequestsHost) => ({
  uri,
  version: checksVersions() ? version : null,
});

function answerAboutChanges(host: TextRequestsHost, about: About): void {
  const { connection, service } = host;
  const isAsked = ({ context: { only } }: CodeActionParams) =>
    only?.some(kind => CodeActionKind.QuickFix.startsWith(kind)) ?? true;
  const span = ({ document }: OpenFile, { range }: CodeActionParams) =>
    [document.offsetAt(range.start), document.offsetAt(range.end)] as const;
  connection.onCodeAction(
    about<CodeActionParams, CodeAction[]>(
      'code actions',
      [],
      (file, at) =>
        isAsked(at) ? [...service.codeActions(file.analysis, span(file, at), editedFile(file, host))] : [],
      { prepare: (file, at) => !isAsked(at) || service.prepareCodeActions(file.analysis, span(file, at)) },
    ),
  );
}

function answerAboutNames(host: TextRequestsHost, about: About): void {
  const { connection, service } = host;
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
      const rename = service.rename(file.analysis, offset(file, at), at.newName, editedFile(file, host));
      if (rename.status === 'done') return rename.edit;
      return new ResponseError<void>(ErrorCodes.InvalidRequest, rename.reason);
    }),
  );
}

function answerAboutOutline({ connection, service, showsHints }: TextRequestsHost, about: About): void {
  connection.onDocumentSymbol(about('symbols', [], ({ analysis }) => [...service.symbols(analysis)]));
  connection.languages.inlayHint.on(
    about('hints', [], ({ document, analysis }, { range }) =>
      showsHints()
        ? [...service.inlayHints(analysis, [document.offsetAt(range.start), document.offsetAt(range.end)])]
        : [],
    ),
  );
  connection.onCodeLens(
    about('lenses', [], ({ document, analysis }) => [...service.codeLenses(analysis, document.uri)]),
  );
  connection.onFoldingRanges(about('folding', [], ({ analysis }) => [...service.foldingRanges(analysis)]));
}
