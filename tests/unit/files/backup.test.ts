import { describe, expect, it } from 'vitest';
import { backupState } from '../../../src/domain/files/backup.ts';

const DAY = 86_400_000;
const NOW = 1000 * DAY;
const rounds = (...daysAgo: number[]) => daysAgo.map((days) => ({ demo: false, lastAt: NOW - days * DAY }));

describe('asking for a backup', () => {
  it.each([
    ['no round yet', rounds(), null, 0, false],
    ['one round, never saved', rounds(1), null, 1, false],
    ['three rounds, never saved', rounds(1, 2, 3), null, 3, true],
    ['one round a month ago, never saved', rounds(31), null, 1, true],
    ['four rounds since the last', rounds(1, 2, 3, 4, 9), NOW - 5 * DAY, 4, false],
    ['five rounds since the last', rounds(1, 2, 3, 4, 4.5, 9), NOW - 5 * DAY, 5, true],
    ['saved long ago, nothing since', rounds(300), NOW - 200 * DAY, 0, false],
    ['saved long ago, one round of yesterday', rounds(1), NOW - 200 * DAY, 1, false],
    ['saved long ago, one round a month old', rounds(31), NOW - 200 * DAY, 1, true],
    ['a fact that is no time counts as never', rounds(1, 1, 1), 'yesterday', 3, true],
  ] as const)('%s', (_what, given, last, roundsSince, isDue) => {
    expect(backupState(given, last, NOW)).toMatchObject({ roundsSince, isDue });
  });

  it('does not ask for demo rounds', () => {
    const demo = rounds(40, 1, 2, 3, 4, 5).map((round) => ({ ...round, demo: true }));
    expect(backupState(demo, null, NOW)).toEqual({ lastAt: null, roundsSince: 0, isDue: false });
  });
});
