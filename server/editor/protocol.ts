/**
 * What client and server say to each other beyond the language server protocol: names and types only.
 * With `poolsidePage.ts` all of `server/` that the client may import, so it must not import anything itself.
 */

/** What the extension tells the server at the start; other editors tell nothing. */
export type StartOptions = {
  /** The editor runs the extension's commands, shows its summaries and reads files for the server. */
  readonly isExtension: true;
  /** Address of the reference, for links to what each finding means. */
  readonly reference?: string;
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
/** `units`: how the boat is measured; metric unless given. */
export type NewBoatParams = {
  readonly name: string;
  readonly units?: 'metric' | 'inches';
  /** Length, beam, waterline and scale as they are typed, to plan it from. */
  readonly plan?: string;
};
/** `problem`: what is wrong with the figures of a plan; there is no text then. */
export type NewBoatResult = { readonly text: string; readonly problem?: string };

/** Asks for the boat file that a printed sheet has in it; null where it has none. */
export const unpackRequest = 'trimwright/unpack';
export type UnpackParams = { readonly html: string };
export type UnpackResult = { readonly name: string; readonly text: string } | null;

/** Asks for a pool trial to fill in, as an editor's snippet and where it goes; null when it cannot be put in. */
export const newTrialRequest = 'trimwright/newTrial';
export type NewTrialParams = { readonly uri: string };
export type NewTrialResult = { readonly range: TextRange; readonly snippet: string } | null;

/** Asks for the boat as the poolside page has to know it; null when the file is not open. */
export const poolsideRequest = 'trimwright/poolside';
export type PoolsideParams = { readonly uri: string };
export type PoolsideResult = {
  readonly name: string;
  readonly text: string;
  /** The mesh files that it names, from the folder of the boat file. */
  readonly files: readonly string[];
  /** The page's first answer, as it is put into the page. */
  readonly view: unknown;
} | null;

/** Asks for the edit that adds the trials of a text, as the poolside page gives it. */
export const takeTrialsRequest = 'trimwright/takeTrials';
export type TakeTrialsParams = { readonly uri: string; readonly text: string };
/** `words`: how many trials there are to take, and how many stand in the file already. */
export type TakeTrialsResult = { readonly edit: EditResult; readonly words: string };

/** Asks for the report of an open boat file: as plain text, and as the content of a page. */
export const reportRequest = 'trimwright/report';
export type ReportParams = { readonly uri: string };
export type ReportResult = { readonly text: string; readonly html: string };

/**
 * Sent by the server whenever a document has been analysed anew.
 * `text` is one line with both conditions; `tooltip` is Markdown.
 */
export const summaryNotification = 'trimwright/summary';
export type SummaryState = 'inTrim' | 'outOfTrim' | 'faulty' | 'open';
export type SummaryParams = {
  readonly uri: string;
  readonly text: string;
  readonly tooltip: string;
  /** `faulty`: the file has errors, so some figures are missing; `outOfTrim`: a limit is not kept; `open`: none is
   * broken, but not all is known. */
  readonly state: SummaryState;
};

/** Asked by the server: bytes of a file that a boat file names, `from` one of them on; only from inside the workspace. */
export const readFileRequest = 'trimwright/readFile';
export type ReadFileParams = { readonly uri: string; readonly boatUri: string; readonly from?: number };
/** Why a file was not read. */
export type NotRead =
  | { readonly status: 'missing' | 'outside' }
  | { readonly status: 'unreadable'; readonly problem: string };
/** Where `more` of it is left, that is asked for next. */
export type ReadFileResult = { readonly status: 'read'; readonly base64: string; readonly more?: true } | NotRead;

/** One drawing of the trim sheet. */
export type SheetPicture = {
  readonly id: string;
  readonly title: string;
  /** What there is to see, for those who do not see it. */
  readonly description: string;
  /** A whole `<svg>` element. */
  readonly svg: string;
};

/** Pictures of one version of a boat file. */
type Sheet = {
  readonly version: number;
  /** All pictures; otherwise those that were quickly drawn. */
  readonly isWhole: boolean;
  readonly pictures: readonly SheetPicture[];
  /** Where the part is that a hand moves; empty while none does. */
  readonly words: string;
  /** The boat at a glance. */
  readonly glance: SheetGlance;
};

/** One line, and every limit with what stands against it. */
export type SheetGlance = {
  readonly verdict: { readonly state: 'in' | 'out' | 'open' | 'unknown'; readonly words: string };
  readonly gauges: readonly SheetGauge[];
  /** What the sign of an open figure says; empty where none is open. */
  readonly legend: string;
};

/** A figure against its limit: what it is called, says and shows. */
export type SheetGauge = {
  /** "surfaced trim": one gauge has it. */
  readonly name: string;
  /** The condition, and the figure's name within it. */
  readonly heading: string;
  readonly title: string;
  readonly value: string;
  /** With what is proposed; null without. */
  readonly proposed: string | null;
  readonly limit: string;
  /** What lies to the left and to the right on the bar. */
  readonly ends: readonly [left: string, right: string];
  readonly standing: 'in' | 'out' | 'open';
  /** The same by a sign and a word. */
  readonly verdict: string;
  /** Where a click goes in the file; null for nowhere. */
  readonly path: string | null;
  /** The bar: a whole `<svg>` element. */
  readonly svg: string;
};

/** What pictures are drawn for: room for them, px, and what is named in them. */
type SheetRoom = { readonly width: number; readonly names: 'few' | 'all' };

/** Asks for the trim sheet of an open boat file; null when it is not open. */
export const sheetRequest = 'trimwright/sheet';
export type SheetParams = {
  readonly uri: string;
  /** Which of the proposals to draw; null for what is quickly drawn only: some pictures, none with a proposal. */
  readonly proposal: number | null;
  /** Of what is quickly drawn only these pictures: those that can be seen. */
  readonly seen?: readonly string[];
} & SheetRoom;
export type SheetResult = (Sheet & { readonly proposals: readonly string[] }) | null;

/** Asks for the trim sheet as it would be with a part moved along the boat; null when that cannot be told. */
export const previewRequest = 'trimwright/preview';
export type PreviewParams = {
  readonly uri: string;
  /** The part, as the pictures name it. */
  readonly path: string;
  /** m, aft positive. */
  readonly metres: number;
  /** Only these pictures: those that can be seen. */
  readonly seen?: readonly string[];
} & SheetRoom;
export type PreviewResult = Sheet | null;

/** Asks for the edit that moves a part: by m, or by marks of the tape, aft positive. */
export const moveRequest = 'trimwright/move';
export type MoveParams = {
  readonly uri: string;
  readonly path: string;
  readonly by: { readonly metres: number } | { readonly marks: number };
};

/** Asks for the edit of a proposal: the same as its code action. */
export const proposalRequest = 'trimwright/proposal';
export type ProposalParams = { readonly uri: string; readonly proposal: number };

/** An edit of one version of a file; or why there is none. */
export type EditResult =
  | { readonly status: 'done'; readonly version: number; readonly edits: readonly RangeEdit[] }
  | { readonly status: 'refused'; readonly reason: string };
type RangeEdit = { readonly range: TextRange; readonly newText: string };
export type TextRange = { readonly start: TextPosition; readonly end: TextPosition };
/** Lines and UTF-16 units from 0. */
type TextPosition = { readonly line: number; readonly character: number };

/** Asks which entry a position in the text is in, as the pictures name it. */
export const entryAtRequest = 'trimwright/entryAt';
export type EntryAtParams = { readonly uri: string; readonly position: TextPosition };
export type EntryAtResult = { readonly path: string | null };

/** Asks where an entry of the pictures stands in the text: its name. */
export const entryRangeRequest = 'trimwright/entryRange';
export type EntryRangeParams = { readonly uri: string; readonly path: string };
export type EntryRangeResult = { readonly range: TextRange | null };

/** Asks for the sheet to print: one HTML page with everything in it; null when the file is not open. */
export const printRequest = 'trimwright/printSheet';
export type PrintParams = {
  readonly uri: string;
  readonly paper: 'a4' | 'letter';
  /** With all figures, views, plots and blank forms behind the two pages. */
  readonly appendix: boolean;
  /** Where it is given, the beginning of a long page is sent under it, as the protocol's partial results are, in order. */
  readonly partialResultToken?: string;
};
/** The page, or what is left of it after the pieces that were sent. */
export type PrintResult = { readonly html: string | null };
