import { conditionsOf } from '../../conditions/loadingCondition.ts';
import { FIGURES } from '../../figures/table.ts';
import { judgeIn } from '../../judges/judge.ts';
import type { BoatToTrim } from '../room/boatToTrim.ts';
import { breaksLimit } from '../search/realise.ts';

/** It keeps every limit in every condition. */
export const isWithin = (boatToTrim: BoatToTrim): boolean =>
  !conditionsOf(boatToTrim)
    .flatMap(inCondition => judgeIn(boatToTrim.boat, inCondition, FIGURES))
    .some(breaksLimit);
