/** Gas cylinders: held fast, how much is left, in date, and the valve as it travels. */

import { choiceSpec, cylinderDateSpec, cylinderWeightSpec, stateSpec } from '../../judge/specs.ts';
import { fromSI } from '../../quantity/units.ts';
import type { CheckDefinition, CheckScope } from '../check.ts';
import { choice, date, defineCheck, option, reading, state } from '../define.ts';
import { hasCylinders } from '../has.ts';
import { isCylinderDateSettled } from '../known.ts';
import { capital, whichCylinder } from '../phrasing.ts';
import { BEFORE_TOWING, BOTH_DEPARTURES } from '../rounds.ts';
import { COMMON_PRACTICE, CYLINDERS, MAKERS_HANDBOOK } from '../sources.ts';

/** "second cylinder", to open a heading with. */
const bare = (scope: Pick<CheckScope, 'unit' | 'index'>) => whichCylinder(scope).replace('the ', '');

const CYLINDER_NAMES = ['cylinder', 'gas cylinder', 'tank', 'propane tank', 'propane', 'bottle'];
const named = (...more: readonly string[]) => CYLINDER_NAMES.flatMap((name) => more.map((suffix) => `${name} ${suffix}`));

export const GAS_CHECKS: readonly CheckDefinition[] = [
  defineCheck({
    id: 'cylinder-strapped',
    rounds: BOTH_DEPARTURES,
    spread: 'cylinder',
    station: 'tongue',
    applies: hasCylinders,
    names: [...CYLINDER_NAMES, ...named('strap')],
    after: ['cylinder-weight'],
    expects: state(
      [
        'strapped tight',
        'strapped',
        'tight',
        'held fast',
        'tied down',
        'secured',
        'does not move',
        'solid',
        'in its bracket',
        'clamped',
      ],
      [
        'loose',
        'not strapped',
        'strap is broken',
        'it moves',
        'no strap',
        'wobbles',
        'bracket is cracked',
        'not secured',
        'strap missing',
      ],
    ),
    lines: {
      name: (scope) => `${bare(scope)} strap`,
      ask: (scope) => `Push on ${whichCylinder(scope)}. Is it upright and strapped tight?`,
      askTerse: (scope) => `${capital(bare(scope))} strapped?`,
      hint: 'Say "strapped tight", or "loose".',
      why: 'A cylinder that comes off on the road breaks its valve and burns.',
      mend: 'Strap it upright before you go, or carry it secured in the open bed of the truck.',
      caution: null,
    },
    judge: stateSpec('hold'),
    takes: 15,
    worst: 'hold',
    sources: [COMMON_PRACTICE],
  }),
  defineCheck({
    id: 'cylinder-weight',
    rounds: BEFORE_TOWING,
    spread: 'cylinder',
    station: 'tongue',
    applies: ({ unit, index }) => typeof unit.cylinders[index]?.tareKg === 'number',
    names: named('weight'),
    // Not while the heater draws from it: weighed once it is off and the valve is shut.
    after: ['heater-off', 'cylinder-valve'],
    expects: (scope) => {
      const cylinder = scope.unit.cylinders[scope.index];
      const tare = Math.round(fromSI(cylinder?.tareKg ?? 7.7, 'lb'));
      const fuel = Math.round(fromSI(cylinder?.capacityKg ?? 9.07, 'lb'));
      return reading(
        {
          quantity: 'cylinder-weight',
          unit: 'lb',
          others: ['kg'],
          min: 1,
          max: 220,
          step: 0.5,
          forms: ['whole', 'half', 'tenth', 'spoken-decimal'],
          usual: [tare, tare + fuel],
          metric: { unit: 'kg', step: 0.1, forms: ['whole', 'half', 'tenth', 'spoken-decimal'] },
        },
        scope,
      );
    },
    lines: {
      name: (scope) => `${bare(scope)} weight`,
      ask: (scope) => `Hang ${whichCylinder(scope)} on the scale, or say skip. What does it weigh?`,
      askTerse: (scope) => `${capital(bare(scope))} weight?`,
      hint: 'Say the weight, like "twenty-nine and a half".',
      why: 'Weight less the empty weight in the collar is the gas that is left.',
      mend: 'Fill it before a cold night. In deep cold a low cylinder stops feeding before it is empty.',
      caution: 'Valve shut before you take it off, no flame near. Lift with your legs.',
    },
    judge: ({ unit, index }) => cylinderWeightSpec(unit, index),
    takes: 90,
    worst: 'watch',
    sources: [CYLINDERS, COMMON_PRACTICE],
  }),
  defineCheck({
    id: 'cylinder-date',
    rounds: BEFORE_TOWING,
    spread: 'cylinder',
    station: 'tongue',
    applies: ({ unit, index, at }) => hasCylinders({ unit }) && !isCylinderDateSettled(unit, index, at),
    names: named('date', 'stamp'),
    expects: (scope) => date('month-year', { back: 25, ahead: 0 }, scope),
    lines: {
      name: (scope) => `${bare(scope)} date`,
      ask: (scope) => `Read the latest month and year stamped in the collar of ${whichCylinder(scope)}.`,
      askTerse: (scope) => `${capital(bare(scope))} date?`,
      hint: 'Say the month and the year, like "June twenty eighteen".',
      why: 'A filler may refuse a cylinder whose date has run out.',
      mend: 'Use it up, then have it requalified or swap it. Dents, deep rust or fire marks: do not use it.',
      caution: null,
    },
    judge: ({ unit, index }) => cylinderDateSpec(unit, index),
    takes: 25,
    worst: 'fix',
    sources: [CYLINDERS],
  }),
  defineCheck({
    id: 'gas-hose',
    rounds: BEFORE_TOWING,
    station: 'tongue',
    applies: hasCylinders,
    names: ['gas hose', 'regulator', 'hose and regulator', 'gas line'],
    after: ['cylinder-weight'],
    expects: state(
      ['sound', 'dry and whole', 'no cracks', 'whole', 'hose is sound', 'tied up', 'all sound', 'no damage'],
      [
        'cracked',
        'rubbed through',
        'chafed',
        'leaking',
        'loose',
        'bent',
        'regulator loose',
        'hose is dragging',
        'frost on it',
        'hissing',
        'vent is plugged',
      ],
    ),
    lines: {
      name: 'gas hose and regulator',
      ask: 'Look at the gas hose and the regulator. Whole, tight and off the ground?',
      askTerse: 'Gas hose sound?',
      hint: 'Say "no damage", or what is wrong, like "chafed".',
      why: 'Cold makes rubber crack and ice plugs the vent of a regulator.',
      mend: 'Cylinder shut, replace the part, test the joint with soapy water. Never with a flame.',
      caution: null,
    },
    judge: stateSpec('hold'),
    takes: 25,
    worst: 'hold',
    sources: [COMMON_PRACTICE],
  }),
  defineCheck({
    id: 'cylinder-valve',
    rounds: BOTH_DEPARTURES,
    spread: 'cylinder',
    station: 'tongue',
    applies: hasCylinders,
    names: [...named('valve'), 'gas valve', 'gas shut off'],
    after: ['heater-off', 'stove-off'],
    expects: choice(
      option(
        'closed',
        'ok',
        'closed',
        'shut',
        'valve is shut',
        'shut off',
        'turned off',
        'off',
        'it is closed',
        'gas is off',
        'closed tight',
      ),
      option(
        'open',
        'problem',
        'open',
        'still open',
        'left open',
        'will not close',
        'stuck open',
        'on',
        'gas is on',
        'valve is open',
        'leaks',
        'not closed',
      ),
    ),
    lines: {
      name: (scope) => `${bare(scope)} valve`,
      ask: (scope) => `Set the valve of ${whichCylinder(scope)} for the road. Closed or open?`,
      askTerse: (scope) => `${capital(bare(scope))} valve?`,
      hint: 'Say "closed" or "open".',
      why: 'A torn line with an open valve feeds a fire. Local law comes first, and many ask for it shut.',
      mend: 'Close it for the road, unless the law where you are and the maker both allow it open.',
      caution: null,
    },
    judge: choiceSpec('fix', { closed: 'ok', open: 'fix' }),
    takes: 15,
    worst: 'fix',
    sources: [MAKERS_HANDBOOK, COMMON_PRACTICE],
  }),
];
