import { type ScaleLinear, scaleLinear } from 'd3-scale';
import { pathKey } from '../../../../schema/path.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import type { ComparedReading, Comparison } from '../../trials/pool/compare.ts';
import { DIFFERS, readingName, readingText, scoreWords, sizeText, trialName } from '../../trials/pool/readingWords.ts';
import { capital } from '../../wording/capital.ts';
import { element, type Markup, short, svgText, together } from '../markup.ts';
import type { Picture } from '../picture.ts';
import { shortened } from '../textWidth.ts';
import { linesOf, textLines } from '../wrapped.ts';
import { plotPicture } from './plotPicture.ts';

const HEAD = 24;
const TOP = 74;
/** Scores beyond this stand at the edge, as an arrow. */
const FAR = 4;

const ROW = 46;

type Scale = ScaleLinear<number, number>;

/** Readings that are shown: the last ones, for a file grows at its end. */
const MOST = 18;

interface Row {
  readonly comparison: Comparison;
  /** Null stands for the trial's heading. */
  readonly compared: ComparedReading | null;
}

/**
 * Every reading of the trials against what the file says that it should have been, in uncertainties of both together; null for a
 * file without trials.
 */
export function trialPlot(analysis: Analysis, width: number): Picture | null {
  const scale = scaleLinear([-FAR, FAR], [30, width - 22]);
  if (analysis.trials.length === 0) return null;
  const { comparisons, verdict } = analysis.learned ?? { comparisons: [], verdict: null };
  const slips = verdict?.slips ?? [];
  const slipped = new Set(slips.map(({ reading }) => reading));
  const all = comparisons.flatMap(comparison => comparison.readings.map(compared => ({ comparison, compared })));
  const shown = all.slice(-MOST);
  if (shown.length === 0) return null;
  const rows: readonly Row[] = shown.flatMap((row, i) =>
    row.comparison === shown[i - 1]?.comparison ? [row] : [{ comparison: row.comparison, compared: null }, row],
  );
  let y = TOP;
  const drawn = rows.map(({ comparison, compared }) => {
    const at = y;
    y += compared ? ROW : HEAD;
    return compared
      ? readingRow(compared, {
          comparison,
          analysis,
          scale,
          y: at,
          isSlip: compared.reading.isSlip || slipped.has(compared.reading),
        })
      : trialHead(comparison, at);
  });
  const note = linesOf(
    'in uncertainties of reading and file; ○ a slip of tape or pen, as it seems; shaded: they differ',
    13,
    width - 24,
  );
  const differing = all.filter(
    ({ compared: { reading, score } }) => !reading.isSlip && Math.abs(score) > DIFFERS,
  ).length;
  return plotPicture(
    {
      id: 'trials',
      title: 'Trials against the file',
      description:
        differing === 0
          ? `All ${all.length} readings agree with the file as well as can be expected.`
          : `${differing} of ${all.length} readings differ from what the file says.`,
      width,
      height: Math.ceil((y + 10 + 16 * note.length) / 20) * 20,
    },
    ground(y, scale),
    together(drawn),
    textLines(note, { kind: 'note', x: 12, y: y + 16, leading: 16 }),
  );
}

function ground(bottom: number, scale: Scale): Markup {
  const edge = (score: number, from: number, to: number): Markup =>
    together([
      element('rect', { class: 'out', x: from, y: TOP - 14, width: to - from, height: bottom - TOP + 14 }),
      element('path', { class: 'limit', d: `M${short(scale(score))} ${TOP - 14}V${bottom}` }),
    ]);
  const tick = (score: number): Markup =>
    element(
      'text',
      { class: 'tick', x: scale(score), y: TOP - 20, 'text-anchor': 'middle' },
      svgText(score === 0 ? 'agree' : String(Math.abs(score))),
    );
  return together([
    edge(-DIFFERS, scale(-FAR), scale(-DIFFERS)),
    edge(DIFFERS, scale(DIFFERS), scale(FAR)),
    element('path', { class: 'zero', d: `M${short(scale(0))} ${TOP - 14}V${bottom}` }),
    ...[-4, -2, 0, 2, 4].map(tick),
    element('text', { class: 'end-words', x: scale(-FAR), y: 38 }, svgText('read less')),
    element('text', { class: 'end-words', x: scale(FAR), y: 38, 'text-anchor': 'end' }, svgText('read more')),
  ]);
}

function trialHead({ trial, floatedTrial }: Comparison, y: number): Markup {
  const words = `${capital(trialName(trial))}, ${trial.condition}${floatedTrial ? '' : ': by the file it could not be so'}`;
  return element(
    'g',
    { class: 'trial', 'data-path': pathKey(trial.path), role: 'img', 'aria-label': words },
    element(
      'text',
      { class: 'uncertainty-head haloed', 'aria-hidden': 'true', x: 12, y: y + 15 },
      svgText(shortened(words, 52)),
    ),
  );
}

interface Setting {
  readonly comparison: Comparison;
  readonly analysis: Analysis;
  readonly scale: Scale;
  readonly y: number;
  readonly isSlip: boolean;
}

function readingRow(compared: ComparedReading, { comparison, analysis, scale, y, isSlip }: Setting): Markup {
  const { reading, predicted, score, sigma, uncertainty } = compared;
  const { units } = analysis.boat;
  const read = `read ${readingText(reading, reading.value, units)}`;
  const filed =
    predicted === null ? 'not to be had from the file' : `file says ${readingText(reading, predicted, units)}`;
  const name = readingName(reading, units);
  const verdict = predicted === null ? '' : `; ${isSlip ? 'a slip, as it seems' : scoreWords(score)}`;
  // What is to be read in the picture stands first, as it stands there.
  const sizes = [sigma, ...(predicted === null ? [] : [uncertainty])].map(
    size => `± ${sizeText(reading, size, units)}`,
  );
  const words = `${name} ${read}, ${filed}; ${sizes.join(' and ')}${verdict}`;
  return element(
    'g',
    { class: 'reading', 'data-path': pathKey(comparison.trial.path), role: 'img', 'aria-label': words },
    element('text', { class: 'reading-name haloed', 'aria-hidden': 'true', x: 20, y: y + 12 }, svgText(`${name} `)),
    element('text', { class: 'tick haloed', 'aria-hidden': 'true', x: 20, y: y + 25 }, svgText(`${read}, ${filed}`)),
    predicted === null ? null : scoreMark(score, y + 35, isSlip, scale),
  );
}

function scoreMark(score: number, y: number, isSlip: boolean, scale: Scale): Markup {
  const x = scale(Math.max(-FAR, Math.min(FAR, score)));
  const stroke = element('path', { class: 'score', d: `M${short(scale(0))} ${y}H${short(x)}` });
  if (Math.abs(score) <= FAR) {
    return together([stroke, element('circle', { class: isSlip ? 'ring-mark' : 'dot-mark', cx: x, cy: y, r: 4 })]);
  }
  const tip = score > 0 ? 7 : -7;
  return together([
    stroke,
    element('path', { class: isSlip ? 'ring-mark' : 'dot-mark', d: `M${short(x + tip)} ${y}l${-tip} -5v10z` }),
  ]);
}
