import { inOtherWater } from '../core/analysis/analyse.ts';
import type { Analysis } from '../core/analysis/analysis.ts';
import { waterOfKind } from '../core/boat/readWater.ts';
import { type FileInside, fileIn } from '../core/drawing/print/fileInside.ts';
import { reportPage } from '../core/drawing/print/reportPage.ts';
import { type SheetPaper, sheetDocument } from '../core/drawing/print/sheetDocument.ts';
import { standaloneSvg } from '../core/drawing/standaloneSvg.ts';
import { PICTURES, type PictureId, pictureNamed, trimSheet } from '../core/drawing/trimSheet.ts';
import type { Change, Finding } from '../core/findings/finding.ts';
import { takeTrials } from '../core/poolside/take.ts';
import { correctText, waterSetText } from '../core/report/correctText.ts';
import { jsonReport } from '../core/report/jsonReport.ts';
import { learnedJson } from '../core/report/learnedJson.ts';
import { learnText } from '../core/report/learnText.ts';
import { type Paint, plainPaint } from '../core/report/rows.ts';
import { sectionSteps } from '../core/report/sections.ts';
import { textReport } from '../core/report/textReport.ts';
import { trialsJson } from '../core/report/trialsJson.ts';
import { waterSetJson } from '../core/report/waterSetJson.ts';
import { inSteps, through, type Working } from '../core/steps/steps.ts';
import { applyChanges, splice } from '../core/text/editing/edit.ts';
import { positionAt } from '../core/text/reading/lines.ts';
import { rangeOf } from '../core/text/reading/rangeOf.ts';

/** What is made of a whole boat file, uncertainties and trials heard: for the terminal, for machines and for the bench. */
export interface Documents {
  /** The same boat in other water, fresh or sea, of the temperature of its file. */
  inWater(analysis: Analysis, kind: 'fresh' | 'sea'): Analysis;
  /** In the order of the text, lines and characters counted from 1. */
  findings(analysis: Analysis): readonly PlacedFinding[];
  hasErrors(analysis: Analysis): boolean;
  report(analysis: Analysis, paint?: Paint): string;
  /** The report as text, and as HTML, the content of a page; in steps. */
  reports(analysis: Analysis): Working<{ readonly text: string; readonly html: string }>;
  reportData(analysis: Analysis): unknown;
  /** The corrections for the bench, or why there is none. */
  correct(analysis: Analysis, options: { readonly explain: boolean; readonly paint: Paint }): string;
  correctData(analysis: Analysis): unknown;
  /** The pieces that change between fresh and sea water. */
  waterSet(analysis: Analysis, paint: Paint): string;
  waterSetData(analysis: Analysis): unknown;
  /** What the trials tell. */
  learn(analysis: Analysis, paint: Paint): string;
  learnData(analysis: Analysis): unknown;
  /** The text of the file with the best correction, or what its trials teach, written into it. */
  written(analysis: Analysis, what: 'correction' | 'learned'): Rewritten;
  /** The file with the trials of a text, as the poolside page gives it, and what of it is new. */
  taken(analysis: Analysis, text: string): Taken;
  /** The names of the drawings of the sheet. */
  readonly drawings: readonly PictureId[];
  /** The drawing of a name; null for a name that is none. */
  drawingNamed(name: string): PictureId | null;
  /** A drawing with the best correction, as a file of its own; null where there is nothing to draw. */
  drawing(analysis: Analysis, id: PictureId): string | null;
  /** The sheet for the bench, as one HTML page. */
  printedSheet(analysis: Analysis, paper: SheetPaper): Working<string>;
  /** The boat file in a printed sheet; null where there is none. */
  fileIn(html: string): FileInside | null;
}

interface PlacedFinding extends Pick<Finding, 'severity' | 'message' | 'code'> {
  readonly line: number;
  readonly character: number;
}

/** `none`: there is nothing to write; `refused`: the file is written such that it cannot be put in. */
export type Rewritten =
  | { readonly status: 'done'; readonly text: string }
  | { readonly status: 'none' }
  | { readonly status: 'refused' };

/** `added` is empty where all of them stand in the file already; `words` say how many there are. */
type Taken =
  | { readonly status: 'done'; readonly text: string; readonly added: string; readonly words: string }
  | { readonly status: 'refused'; readonly reason: string };

export const documents: Documents = {
  inWater: (analysis, kind) => inOtherWater(analysis, waterOfKind(kind, analysis.boat.water.temperature)),
  findings: analysis => placed(toldOf(analysis)),
  hasErrors: analysis => toldOf(analysis).findings.some(({ severity }) => severity === 'error'),
  report: (analysis, paint = plainPaint) => textReport(analysis.settled.all(), paint),
  reports: analysis =>
    inSteps(function* () {
      const settled = yield* through(analysis.settled);
      yield* through(settled.corrections);
      yield* through(settled.offers);
      const sections = yield* sectionSteps(settled);
      yield;
      const text = textReport(settled, plainPaint, sections);
      yield;
      return { text, html: reportPage(settled, sections) };
    }),
  reportData: analysis => jsonReport(analysis.settled.all()),
  correct: (analysis, { explain, paint }) => correctText(analysis.settled.all(), explain, paint),
  correctData: analysis => jsonReport(analysis.settled.all()).corrections,
  waterSet: (analysis, paint) => waterSetText(analysis.settled.all(), paint),
  waterSetData: analysis => {
    const set = analysis.settled.all().waterSet.all();
    return set && waterSetJson(set, analysis.scheme.figures);
  },
  learn: (analysis, paint) => learnText(analysis.settled.all(), paint),
  learnData: analysis => {
    const settled = analysis.settled.all();
    return { trials: trialsJson(settled), ...learnedJson(settled) };
  },
  written(analysis, what) {
    const settled = analysis.settled.all();
    const offers = what === 'correction' ? settled.corrections.all() : settled.offers.all();
    return writtenInto(settled, offers[0]?.changes);
  },
  taken({ syntax }, text) {
    const taking = takeTrials(syntax, text);
    if (taking.status === 'refused') return taking;
    const { splices, words } = taking;
    const added = splices.map(({ text: piece }) => piece.replace(/^\n/, '')).join('');
    return { status: 'done', text: splice(syntax.text, splices), added, words };
  },
  drawings: PICTURES,
  drawingNamed: pictureNamed,
  drawing(analysis, id) {
    const settled = analysis.settled.all();
    const correction = settled.corrections.all()[0] ?? null;
    const [picture] = trimSheet(settled, { only: [id], correction }).pictures;
    return picture ? standaloneSvg(picture) : null;
  },
  printedSheet: (analysis, paper) =>
    inSteps(function* () {
      return yield* sheetDocument(yield* through(analysis.settled), paper);
    }),
  fileIn,
};

/** With all its findings: only trials have more to say of what is wrong than is known at once. */
const toldOf = (analysis: Analysis): Analysis => (analysis.trials.length > 0 ? analysis.settled.all() : analysis);

function placed({ findings, syntax }: Analysis): readonly PlacedFinding[] {
  const starts = new Map(findings.map(finding => [finding, rangeOf(syntax, finding.place)[0]]));
  return [...starts]
    .sort(([, a], [, b]) => a - b)
    .map(([{ severity, message, code }, start]) => {
      const { line, character } = positionAt(syntax.lineStarts, start);
      return { severity, message, code, line: line + 1, character: character + 1 };
    });
}

function writtenInto({ syntax }: Analysis, changes: readonly Change[] | undefined): Rewritten {
  if (!changes) return { status: 'none' };
  const splices = applyChanges(syntax, changes);
  return splices ? { status: 'done', text: splice(syntax.text, splices) } : { status: 'refused' };
}
