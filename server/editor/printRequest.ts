import { ProgressToken, ProgressType } from 'vscode-languageserver';
import { guard } from './guard.ts';
import { makingOf } from './making.ts';
import { type PrintParams, type PrintResult, printRequest } from './protocol.ts';
import { sendOff } from './sendOff.ts';
import type { SheetRequestsHost } from './sheetRequests.ts';

/** UTF-16 units in one message: a page of a thousand parts has some ten times as many, too long to be written at a time. */
const PIECE = 500_000;

/** Answers with the sheet to print: to whom can take it so, all but its end ahead of the answer, a piece at a time. */
export function answerPrintRequest({
  connection,
  service,
  guard: host,
  fileAt,
}: Omit<SheetRequestsHost, 'meshesOf'>): void {
  connection.onRequest(printRequest, (...given: readonly unknown[]): Promise<unknown> => {
    const making = makingOf<PrintParams, string>(
      (analysis, { uri, paper, appendix }) =>
        service.printedSheet(analysis, { paper, appendix, fileName: fileNameOf(uri) }),
      host.now,
    );
    // Once begun to be sent it is not made anew, whatever is typed meanwhile.
    let rest: string | null = null;
    const made = (params: PrintParams): boolean => {
      const file = fileAt(params.uri);
      if (rest !== null || !file) return true;
      const work = file.step() ? making(file.analysis, params) : null;
      if (!work?.step()) return false;
      rest = work.all();
      return true;
    };
    const sent = ({ partialResultToken: token }: PrintParams): boolean => {
      if (rest === null || !ProgressToken.is(token) || rest.length <= PIECE) return true;
      const piece = rest.slice(0, PIECE);
      void sendOff(() => connection.sendProgress(new ProgressType<string>(), token, piece));
      rest = rest.slice(PIECE);
      return false;
    };
    return guard<PrintParams, PrintResult>(
      host,
      { name: printRequest, fallback: { html: null }, given },
      () => ({ html: rest }),
      params => made(params) && sent(params),
    );
  });
}

/** Null for a file that was never saved, or that has no name. */
function fileNameOf(uri: string): string | null {
  if (uri.startsWith('untitled:')) return null;
  // A coded stroke is one of a path all the same.
  const name = decoded(uri.split(/[?#]/)[0]!).split(/[/\\]/).at(-1)!;
  return name === '' ? null : name;
}

function decoded(name: string): string {
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}
