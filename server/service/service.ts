import type {
  CodeAction,
  CodeLens,
  CompletionItem,
  Diagnostic,
  DocumentHighlight,
  DocumentSymbol,
  FoldingRange,
  Hover,
  InlayHint,
  Location,
  Range,
} from 'vscode-languageserver-types';
import { createDescriber, type Describer } from '../../schema/describe.ts';
import { analyse, readText, type TextRead } from '../core/analysis/analyse.ts';
import { type Analysis, type AsRead, knownBy } from '../core/analysis/analysis.ts';
import { conclusion } from '../core/analysis/conclude.ts';
import { type LastKnown, lastKnown, readyToTell, type ToTell, toldMeanwhile } from '../core/analysis/meanwhile.ts';
import { waitingWords } from '../core/analysis/waitingWords.ts';
import { createDrawnEntries, type DrawEntry } from '../core/drawing/drawnEntries.ts';
import { type Glance, glanceAt } from '../core/drawing/gauges/gaugeStrip.ts';
import { type Names, pageFor } from '../core/drawing/page.ts';
import type { Picture } from '../core/drawing/picture.ts';
import { type PictureId, pictureSteps, picturesOf } from '../core/drawing/trimSheet.ts';
import type { FindingCode } from '../core/findings/catalogue/catalogue.ts';
import type { MeshLookup } from '../core/meshFiles/meshFile.ts';
import { type PoolBoatAsked, poolBoatOf } from '../core/poolside/poolBoat.ts';
import { type Taking, takeTrials } from '../core/poolside/take.ts';
import { findingLines } from '../core/report/reference.ts';
import { inSteps, type Steps, type Working } from '../core/steps/steps.ts';
import { splice } from '../core/text/editing/edit.ts';
import type { TextSplice } from '../core/text/reading/layout.ts';
import type { Span } from '../core/text/reading/lines.ts';
import { codeActionsAt, prepareCodeActions } from '../editor/answers/codeActions.ts';
import { codeLensesOf } from '../editor/answers/codeLenses.ts';
import { completionsAt } from '../editor/answers/completion.ts';
import { diagnosticsOf } from '../editor/answers/diagnostics.ts';
import type { EditedFile } from '../editor/answers/editedFile.ts';
import { foldingRangesOf } from '../editor/answers/foldingRanges.ts';
import { hoverReply } from '../editor/answers/hoverReply.ts';
import { inlayHintsIn } from '../editor/answers/inlayHints.ts';
import { type NewUnits, newBoatText } from '../editor/answers/newBoat.ts';
import { newTrial } from '../editor/answers/newTrial.ts';
import { type OwnFault, ownFault } from '../editor/answers/ownFault.ts';
import { type Planned, plannedBoat } from '../editor/answers/plannedBoat.ts';
import { definitionAt, highlightsAt, referencesAt } from '../editor/answers/references.ts';
import { type Rename, type Renaming, renameAt, renamingAt } from '../editor/answers/rename.ts';
import { correctionEdits, type Edits, movedWords, moveEdits, type WantedMove } from '../editor/answers/sheetEdits.ts';
import { entryKeyAt, rangeOfKey } from '../editor/answers/sheetPlaces.ts';
import { type Summary, summarise } from '../editor/answers/summary.ts';
import { symbolsOf } from '../editor/answers/symbols.ts';
import { type Documents, documents } from './documents.ts';

export type { TextRead } from '../core/analysis/analyse.ts';
export type { Analysis, AsRead } from '../core/analysis/analysis.ts';
export type { LastKnown } from '../core/analysis/meanwhile.ts';
export type { Paper } from '../core/drawing/print/printStyle.ts';
export type { PictureId } from '../core/drawing/trimSheet.ts';
export { type Paint, plainPaint } from '../core/report/rows.ts';
export { allDone, type Working } from '../core/steps/steps.ts';
export type { Edits } from '../editor/answers/sheetEdits.ts';
export type { Summary } from '../editor/answers/summary.ts';

/** The one door to the core: the language server, the command line and the browser worker come in by it. */
export interface BoatService extends EditorAnswers, Documents {
  /** Key help drawn from the schema. */
  readonly describer: Describer;
  /** Analyses a text; parts of the previous analysis of the same file are used again where they still hold. */
  /** `meshes` hands out the mesh files that the text names; without it they count as not read yet. */
  analyse(text: string, previous?: Analysis, meshes?: MeshLookup): Analysis;
  /** The two halves of that, in steps: a text is read, which is enough for what needs no figures; and all that follows from it. */
  read(text: string, previous?: Analysis, meshes?: MeshLookup): Working<TextRead>;
  conclude(read: TextRead, previous?: Analysis): Working<Analysis>;
}

/** What an editor asks. */
interface EditorAnswers {
  /** All that is known by now. */
  known(analysis: Analysis): Analysis;
  /** Some of the way to what must be found before a file is told of, `last` null where all of it never was; true when it is there. */
  readyToTell(analysis: Analysis, last: LastKnown | null): boolean;
  /** What is told until all is known, of a file of which all was known before. */
  meanwhile(analysis: Analysis, last: LastKnown): ToTell;
  /** What is known of a file now, what is not as it was known before; null where all of it never was. */
  lastKnown(analysis: Analysis, before: LastKnown | null): LastKnown | null;
  /**
   * `reference` is the address of `schema/REFERENCE.md`, for links to what each finding means; null without one, and no
   * links before `links` are made.
   */
  diagnostics(told: ToTell, reference: string | null): readonly Diagnostic[];
  /** The lines of the reference, which links need. */
  readonly links: Working<ReadonlyMap<FindingCode, number>>;
  /** What stands for diagnostics and summary when the analysis itself failed. */
  ownFault(reason: string): OwnFault;
  /** By what is known: uncertainties and trials are not waited for. */
  hover(analysis: Analysis, offset: number): Hover | null;
  completions(read: AsRead, offset: number): readonly CompletionItem[];
  /** What can be done about the findings that a span of the text touches. */
  codeActions(analysis: Analysis, span: Span, file: EditedFile): readonly CodeAction[];
  /** Does a little of the work for `codeActions`; true when the rest is short. */
  prepareCodeActions(analysis: Analysis, span: Span): boolean;
  symbols(analysis: Analysis): readonly DocumentSymbol[];
  /** Where the compartment, bay or other thing named at an offset gets its name. */
  definition(analysis: Analysis, offset: number, uri: string): Location | null;
  references(
    analysis: Analysis,
    offset: number,
    options: { readonly uri: string; readonly withDefinition: boolean },
  ): readonly Location[];
  highlights(analysis: Analysis, offset: number): readonly DocumentHighlight[];
  renaming(analysis: Analysis, offset: number): Renaming | null;
  rename(analysis: Analysis, offset: number, name: string, file: EditedFile): Rename;
  /** What each entry in a span of the text does to the submerged boat. */
  inlayHints(analysis: Analysis, span: Span): readonly InlayHint[];
  codeLenses(analysis: Analysis, uri: string): readonly CodeLens[];
  foldingRanges(analysis: Analysis): readonly FoldingRange[];
  summary(told: ToTell): Summary;
  /** All pictures with one of the proposals; or, without, those that are quickly drawn. */
  sheet(analysis: Analysis, wanted: SheetWanted): Working<SheetParts>;
  /** What could be done to mend the trim, in words, the best first. */
  proposals(analysis: Analysis): readonly string[];
  /** The boat with a part moved along it, read from the text as it would be; null when it cannot be moved. */
  moved(analysis: Analysis, move: WantedMove, meshes: MeshLookup): Analysis | null;
  moveEdits(analysis: Analysis, move: WantedMove): Edits;
  proposalEdits(analysis: Analysis, proposal: number): Edits;
  /** The entry at an offset, as the pictures name it, and where an entry of the pictures stands in the text. */
  entryKey(analysis: Analysis, offset: number): string | null;
  entryRange(analysis: Analysis, key: string): Range | null;
  /** A pool trial to fill in, as an editor's snippet. */
  newTrial(analysis: Analysis): TextSplice | null;
  /** What the page for the poolside has to know of the boat. */
  poolBoat(analysis: Analysis): Working<PoolBoatAsked>;
  /** The edits that add the trials of a text, as that page gives it. */
  takeTrials(analysis: Analysis, text: string): Taking;
  /** The text of a new boat file. */
  newBoat(name: string, units?: NewUnits): string;
  /** The text of a boat planned from length, beam, waterline and scale as they are typed: "900, 90, 62, 1:60". */
  plannedBoat(name: string, figures: string, units?: NewUnits): Planned;
}

/** Plots of figures that nothing else asks for at every keystroke. */
const SLOW: readonly PictureId[] = ['righting-lever', 'polygon', 'uncertainty', 'trials'];

interface SheetWanted {
  readonly proposal: number | null;
  /** Of the quickly drawn pictures only those that can be seen; all when left out. */
  readonly seen?: readonly string[];
  /** The part that a hand moves, for the words. */
  readonly moved?: string;
  /** What it is drawn for: room for the pictures, px, and what is named in them. */
  readonly width: number;
  readonly names: Names;
}

export interface SheetParts {
  readonly isWhole: boolean;
  readonly pictures: readonly Picture[];
  /** What a hand does; nothing while it does nothing. */
  readonly words: string;
  readonly glance: Glance;
}

function* sheetSteps(
  analysis: Analysis,
  { proposal, seen, moved, width, names }: SheetWanted,
  drawEntry: DrawEntry,
): Steps<SheetParts> {
  const isWhole = proposal !== null;
  // What is drawn within a frame: for every keystroke, and while a hand moves a part.
  const only = picturesOf(analysis).filter(id => !SLOW.includes(id) && (seen?.includes(id) ?? true));
  const page = pageFor(width, names);
  const correction = isWhole ? (analysis.corrections.all()[proposal] ?? null) : null;
  const known = isWhole ? analysis.settled.all() : knownBy(analysis);
  const pictures = yield* pictureSteps(known, { page, drawEntry, ...(isWhole ? { correction } : { only }) });
  const words = [waitingWords(known) ?? '', moved === undefined ? '' : movedWords(known, moved)];
  yield;
  return {
    isWhole,
    pictures,
    words: words.filter(each => each !== '').join(' '),
    glance: glanceAt(known, correction),
  };
}

export function createBoatService(): BoatService {
  const describer = createDescriber();
  const links = inSteps(() => findingLines(describer));
  const drawEntry = createDrawnEntries();
  return {
    ...documents,
    describer,
    analyse: (text, previous, meshes) => analyse(text, describer, previous, meshes),
    read: (text, previous, meshes) => inSteps(() => readText(text, describer, previous, meshes)),
    conclude: (read, previous) => inSteps(() => conclusion(read, previous)),
    known: knownBy,
    readyToTell,
    meanwhile: toldMeanwhile,
    lastKnown,
    diagnostics: (told, reference) => {
      const known = links.isDone() ? links.all() : null;
      const linkOf = (code: FindingCode) =>
        reference === null || known === null ? null : `${reference}#L${known.get(code)}`;
      return diagnosticsOf(told, linkOf);
    },
    links,
    ownFault,
    hover: (analysis, offset) => hoverReply(knownBy(analysis), describer, offset),
    completions: (read, offset) => completionsAt(read, describer, offset),
    codeActions: codeActionsAt,
    prepareCodeActions,
    symbols: symbolsOf,
    definition: definitionAt,
    references: referencesAt,
    highlights: highlightsAt,
    renaming: renamingAt,
    rename: renameAt,
    inlayHints: (analysis, span) => inlayHintsIn(knownBy(analysis), span),
    codeLenses: (analysis, uri) => codeLensesOf(knownBy(analysis), uri),
    foldingRanges: foldingRangesOf,
    summary: summarise,
    sheet: (analysis, wanted) => inSteps(() => sheetSteps(analysis, wanted, drawEntry)),
    proposals: analysis => analysis.corrections.all().map(({ title }) => title),
    moved: (analysis, move, meshes) => {
      const edits = moveEdits(analysis, move);
      if (edits.status === 'refused') return null;
      return analyse(splice(analysis.syntax.text, edits.splices), describer, analysis, meshes);
    },
    moveEdits,
    proposalEdits: correctionEdits,
    entryKey: entryKeyAt,
    entryRange: rangeOfKey,
    newTrial,
    poolBoat: analysis => inSteps(() => poolBoatOf(analysis)),
    takeTrials: (analysis, text) => takeTrials(analysis.syntax, text),
    newBoat: newBoatText,
    plannedBoat: (name, figures, units = 'metric') => plannedBoat(name, figures, units, describer),
  };
}
