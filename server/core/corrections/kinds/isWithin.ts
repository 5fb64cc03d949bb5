import { conditionsOf, divesAtAll } from '../../conditions/loadingCondition.ts';
import { FIGURES } from '../../figures/table.ts';
import type { Finding } from '../../findings/finding.ts';
import { judgeIn } from '../../judges/judge.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { breaksLimit } from '../search/realise.ts';

/** What is out of its limits; of a boat without a tank nothing under water. */
export const brokenIn = (boatToTrim: BoatToTrim): readonly Finding[] =>
  conditionsOf(boatToTrim)
    .filter(({ where }) => where === 'afloat' || divesAtAll(boatToTrim.boat))
    .flatMap(inCondition => judgeIn(boatToTrim.boat, inCondition, FIGURES))
    .filter(breaksLimit);

/** The boat keeps every limit in the conditions that it is floated in. */
export const isWithin = (boatToTrim: BoatToTrim): boolean => brokenIn(boatToTrim).length === 0;
