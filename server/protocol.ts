/**
 * What client and server say to each other beyond the language server protocol: names and types only.
 * The one file of `server/` that the client may import, so it must not import anything itself.
 */

/** What the client tells the server at the start. */
export type StartOptions = {
  /** Address of the reference, for links to what each finding means. */
  readonly reference: string;
};

/** What the user has set, as the editor sends it; a setting that is missing has its default. */
export type Settings = {
  readonly trimwright?: {
    /** Figures behind the entries. */
    readonly hints?: boolean;
  };
};

/** Asks the server for the text of a new boat file. */
export const newBoatRequest = 'trimwright/newBoat';
export type NewBoatParams = { readonly name: string };
export type NewBoatResult = { readonly text: string };

/** Asks for the plain text report of an open boat file. */
export const reportRequest = 'trimwright/report';
export type ReportParams = { readonly uri: string };
export type ReportResult = { readonly text: string };

/**
 * Sent by the server whenever a document has been analysed anew.
 * `text` is one line with both conditions; `tooltip` is Markdown.
 */
export const summaryNotification = 'trimwright/summary';
export type SummaryState = 'inTrim' | 'outOfTrim' | 'faulty';
export type SummaryParams = {
  readonly uri: string;
  readonly text: string;
  readonly tooltip: string;
  /** `faulty`: the file has errors, so some figures are missing; `outOfTrim`: a limit is not kept. */
  readonly state: SummaryState;
};

/** Asked by the server: the bytes of a file that a boat file names; only from inside the workspace. */
export const readFileRequest = 'trimwright/readFile';
export type ReadFileParams = { readonly uri: string; readonly boatUri: string };
export type ReadFileResult =
  | { readonly status: 'read'; readonly base64: string }
  | { readonly status: 'missing' }
  | { readonly status: 'outside' }
  | { readonly status: 'unreadable'; readonly problem: string };
