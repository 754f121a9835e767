/** How often a wrong value is kept and how often a question is asked, with and without this unit's own history. */
import { AT_5_DB, AT_10_DB, type EarsModel, NO_CONFIDENCE, simulate } from '../unit/language/hearings.ts';

const UNITS = Number(process.argv[2] ?? 120);
const ROUNDS = 30;
const EARS: readonly (readonly [string, EarsModel])[] = [
  ['built-in at 10 dB', AT_10_DB],
  ['built-in at 5 dB', AT_5_DB],
  ['no confidence given', NO_CONFIDENCE],
  ['  truth behind less', { ...NO_CONFIDENCE, truthBehind: 0.8 }],
];

console.log(`${UNITS} units, ${ROUNDS} rounds each, four tires; leaks, refills, true drops of 15 %; seed 1`);
console.log('ears                   history  readings  misheard in  wrong kept   questions   by buttons  drops  masked');
console.log('                                          10 000       per 10 000   per round   per 10 000');
for (const [name, ears] of EARS) {
  for (const withHistory of [false, true]) {
    const { readings, rounds, wrongKept, questions, unsettled, drops, dropsMasked } = simulate({
      units: UNITS,
      roundsEach: ROUNDS,
      ears,
      withHistory,
      seed: 1,
    });
    const per = (count: number) => ((10_000 * count) / readings).toFixed(1);
    console.log(
      [
        name.padEnd(22),
        (withHistory ? 'yes' : 'no').padEnd(8),
        String(readings).padEnd(9),
        (ears.wrong * 10_000).toFixed(0).padEnd(12),
        per(wrongKept).padEnd(12),
        (questions / rounds).toFixed(3).padEnd(11),
        per(unsettled).padEnd(11),
        String(drops).padEnd(6),
        String(dropsMasked),
      ].join(' '),
    );
  }
}
