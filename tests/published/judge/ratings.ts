import type { Ratings } from '../../../src/domain/weight/judgeLoad.ts';

/** A unit of which no rating is known. */
export const NO_RATINGS: Ratings = {
  gvwrKg: null,
  gawrKg: null,
  axles: 1,
  tiresKg: null,
  couplerKg: null,
  ballKg: null,
  receiverKg: null,
  chainKg: null,
  tongueKg: null,
};
