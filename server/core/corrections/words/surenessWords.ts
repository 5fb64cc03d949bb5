import { isForTheWaterFirst, isOpen, type Prospect } from '../balance/prospect.ts';
import { balanceName } from '../balance/row.ts';
import { inHand } from '../balance/sureness.ts';

/** A chance for people: "97 in 100". */
export const chanceWords = (chance: number): string =>
  chance > 0.99 ? 'over 99 in 100' : chance < 0.01 ? 'under 1 in 100' : `${Math.round(100 * chance)} in 100`;

/** How likely all limits are kept in the water, and what is kept in hand of each that is not in its middle. */
export function surenessLines(prospect: Prospect): readonly string[] {
  const { kept, chance, harm } = prospect;
  if (kept.length === 0) return [];
  const tightest = kept.filter(({ isLeast }) => !isLeast).sort((a, b) => inHand(a) - inHand(b));
  const left = tightest.map(each => `${balanceName(each)} ${Math.round(100 * inHand(each))} %`).join(', ');
  const isFirst = isForTheWaterFirst(prospect);
  const told =
    chance === null
      ? [
          'How likely it then is within all limits cannot be told: by the file as it is the boat does not yet float or hang neutral.',
        ]
      : isOpen(prospect)
        ? [
            'The file leaves so much open that nobody can tell whether it is then in trim in the water: weigh and measure what',
            `the uncertainties name, or ${isFirst ? firstWords(prospect) : 'try it and write the trial down'}.`,
          ]
        : [
            `Likely within all limits in the water, as well as the file is known: ${chanceWords(chance)}.`,
            ...(isFirst ? [`It may as well be further out (${chanceWords(harm)}): ${firstWords(prospect)}.`] : []),
          ];
  return [...told, `Kept in hand of the limits by the figures: ${left}.`];
}

const firstWords = ({ readSoFar }: Prospect): string =>
  readSoFar === 'nowhere'
    ? 'weigh it whole on two scales, or float it as it is first, if it floats already, and write that down as a trial'
    : 'float it as it is first, if it floats already, and write the trial down';
