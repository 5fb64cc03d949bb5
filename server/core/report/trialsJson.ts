import type { Analysis } from '../analysis/analysis.ts';
import type { Reading } from '../boat/trial.ts';
import type { InclinedFigure } from '../trials/pool/inclining.ts';

/** The trials for machines: lengths mm, masses g, volumes mm3, angles degrees, fills 0..1; each reading beside what is predicted. */
export function trialsJson(analysis: Analysis) {
  if (analysis.trials.length === 0) return [];
  const { comparisons, verdict } = analysis.learned ?? { comparisons: [], verdict: null };
  const slips = verdict?.slips ?? [];
  return comparisons.map(({ trial, readings, inclined, isHeard }) => ({
    name: trial.name,
    condition: trial.condition,
    aboard: trial.aboard.map(({ entry }) => entry.name),
    without: trial.without,
    /** It teaches something: by the file the boat can lie so. */
    heard: isHeard,
    readings: readings.map(({ reading, predicted, uncertainty, sigma, score }) => {
      const slip = slips.find(each => each.reading === reading);
      const own = (value: number) => value * scaleOf(reading);
      return {
        of: reading.of,
        station: stationOf(reading),
        struckOut: reading.isSlip,
        read: own(reading.value),
        uncertainty: own(sigma),
        predicted: predicted === null ? null : own(predicted),
        predictedUncertainty: own(uncertainty),
        score: predicted === null ? null : score,
        slip: slip ? { expected: own(slip.expected), uncertainty: own(slip.sigma) } : null,
      };
    }),
    inclining: inclined && {
      gm: estimateMm(inclined.gm),
      heightOfG: estimateMm(inclined.heightOfG),
      gmOfFile: inclined.gmOfFile * 1e3,
      heightOfGOfFile: inclined.heightOfGOfFile * 1e3,
    },
  }));
}

function stationOf(reading: Reading): number | null {
  if ('station' in reading) return reading.station * 1e3;
  return 'pair' in reading && reading.pair ? reading.pair.station * 1e3 : null;
}

const estimateMm = ({ value, sigma }: InclinedFigure) => ({ value: value * 1e3, uncertainty: sigma * 1e3 });

function scaleOf({ of }: Reading): number {
  if (of === 'fill') return 1;
  if (of === 'water') return 1e9;
  return of === 'trim' || of === 'heel' || of === 'tilt' ? 180 / Math.PI : 1e3;
}
