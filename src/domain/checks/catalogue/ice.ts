/** What a night on the lake adds: everything that freezes to something. */

import { stateSpec } from '../../judge/specs.ts';
import type { CheckDefinition } from '../check.ts';
import { defineCheck, state } from '../define.ts';
import { hasCableHere, hasLift } from '../has.ts';
import { at, place } from '../phrasing.ts';
import { BEFORE_LEAVING } from '../rounds.ts';
import { BLOCKING, COMMON_PRACTICE } from '../sources.ts';
import { liftStation } from './lift.ts';
import { sideStation } from './outside.ts';

export const ICE_CHECKS: readonly CheckDefinition[] = [
  defineCheck({
    id: 'frozen-frame',
    rounds: BEFORE_LEAVING,
    spread: 'side',
    station: sideStation,
    names: ['frozen frame', 'frame frozen', 'frozen down'],
    after: ['held-still'],
    expects: state(
      ['free', 'broken free', 'loose', 'it is free', 'not frozen', 'chipped free', 'free all along', 'freed'],
      [
        'frozen down',
        'frozen',
        'stuck',
        'frozen in',
        'still stuck',
        'will not come loose',
        'one corner stuck',
        'not free',
        'rear is frozen',
      ],
    ),
    lines: {
      name: (scope) => `${place(scope)} frame frozen down`,
      ask: (scope) => `${at(scope, 'side')}. Chip along the frame. Is it free of the ice from end to end?`,
      askTerse: (scope) => `${at(scope, 'frame')} free?`,
      hint: 'Say "free", or "frozen down".',
      why: 'Lifting against frozen ice bends the frame or breaks the cable.',
      mend: 'Chip and pry from outside, a little at a time. Warm water refreezes. Never yank it with the truck.',
      caution: 'Pry from the side, no hand or foot under it. It can drop or jump.',
    },
    judge: stateSpec('hold'),
    kneeling: true,
    takes: 180,
    worst: 'hold',
    sources: [COMMON_PRACTICE, BLOCKING],
  }),
  defineCheck({
    id: 'blocks-out',
    rounds: BEFORE_LEAVING,
    spread: 'side',
    station: sideStation,
    names: ['blocks', 'boards', 'blocking'],
    after: ['frozen-frame'],
    expects: state(
      ['out', 'all out', 'blocks are out', 'none', 'no blocks', 'picked up', 'loose and out', 'knocked out'],
      ['frozen in', 'still under', 'stuck', 'one is stuck', 'not out', 'frozen to the frame', 'will not come out'],
    ),
    lines: {
      name: (scope) => `${place(scope)} blocks`,
      ask: (scope) => `${at(scope, 'side')}. Are all blocks and boards out, none frozen to the frame?`,
      askTerse: (scope) => `${at(scope, 'blocks')} out?`,
      hint: 'Say "blocks are out", or "frozen in".',
      why: 'A block that hangs on the frame drops on the road.',
      mend: 'Knock it loose with a long bar from the side.',
      caution: 'Reach with a bar, not with your arm.',
    },
    judge: stateSpec('hold'),
    kneeling: true,
    takes: 60,
    worst: 'hold',
    sources: [COMMON_PRACTICE, BLOCKING],
  }),
  defineCheck({
    id: 'ice-lift',
    rounds: BEFORE_LEAVING,
    spread: 'side',
    station: liftStation,
    applies: hasLift,
    names: ['ice in the pulleys', 'lift ice', 'ice on the lift'],
    after: ['frozen-frame'],
    expects: (scope) =>
      hasCableHere(scope)
        ? state(
            ['clear of ice', 'clear', 'no ice', 'knocked off', 'thawed', 'clean', 'free'],
            [
              'frozen',
              'ice in the pulley',
              'ice on the cable',
              'iced up',
              'cable frozen in',
              'pulley frozen',
              'cannot clear it',
              'still frozen',
              'packed with ice',
            ],
          )
        : state(
            ['clear of ice', 'clear', 'no ice', 'knocked off', 'thawed', 'clean', 'free'],
            ['frozen', 'ice on the rod', 'iced up', 'ice in the pivot', 'cannot clear it', 'still frozen', 'packed with ice'],
          ),
    lines: {
      name: (scope) => `${place(scope)} lift ice`,
      ask: (scope) =>
        hasCableHere(scope)
          ? `${at(scope, 'lift')}. Are the pulleys, the cable and the wheel arm clear of ice?`
          : `${at(scope, 'lift')}. Are the pivots and the wheel arm clear of ice?`,
      askTerse: (scope) => `${at(scope, 'lift')} clear?`,
      hint: 'Say "clear of ice", or what is frozen.',
      why: 'Ice lifts a cable out of its groove, and the first pull cuts it.',
      mend: 'Tap it off with wood, or thaw it with warm air. No torch near cable, hose or tire.',
      caution: 'Do it now, while the lift carries nothing.',
    },
    judge: stateSpec('hold'),
    kneeling: true,
    takes: 60,
    worst: 'hold',
    sources: [COMMON_PRACTICE],
  }),
  defineCheck({
    id: 'ice-tongue',
    rounds: BEFORE_LEAVING,
    station: 'tongue',
    names: ['tongue ice', 'ice in the coupler', 'ice on the tongue'],
    after: ['held-still'],
    expects: state(
      ['clear of ice', 'clear', 'no ice', 'knocked out', 'clean', 'chipped out', 'dry and clean'],
      [
        'ice in it',
        'frozen',
        'ice in the coupler',
        'latch is frozen',
        'jack is frozen',
        'chains are frozen',
        'ice in the plug',
        'iced up',
      ],
    ),
    lines: {
      name: 'tongue ice',
      ask: 'Coupler socket, latch, jack, chains, plug: all clear of ice?',
      askTerse: 'Tongue clear?',
      hint: 'Say "clear of ice", or what is frozen.',
      why: 'Ice in the socket keeps the coupler from closing on the ball.',
      mend: 'Chip it out until the latch moves freely, then look again with the ball in.',
      caution: null,
    },
    judge: stateSpec('hold'),
    takes: 45,
    worst: 'hold',
    sources: [COMMON_PRACTICE],
  }),
  defineCheck({
    id: 'ice-lamps',
    rounds: BEFORE_LEAVING,
    station: 'rear',
    names: ['ice on the lamps', 'lamp ice', 'lens ice'],
    expects: state(
      ['wiped clean', 'clean', 'clear', 'no ice', 'scraped', 'lenses are clean', 'cleared'],
      ['iced over', 'covered', 'cannot clear them', 'ice on the lens', 'lens broke', 'lens cracked', 'still covered', 'frosted'],
    ),
    lines: {
      name: 'ice on the rear lamps',
      ask: 'Scrape the rear lamps, the reflectors and the plate. Are they clean?',
      askTerse: 'Rear lamps clean?',
      hint: 'Say "wiped clean", or "iced over".',
      why: 'A lamp behind ice is a lamp that is off.',
      mend: 'Warm it with a gloved hand and scrape with plastic, not with steel.',
      caution: null,
    },
    judge: stateSpec('hold'),
    takes: 30,
    worst: 'hold',
    sources: [COMMON_PRACTICE],
  }),
  defineCheck({
    id: 'ice-under',
    rounds: BEFORE_LEAVING,
    spread: 'side',
    station: sideStation,
    names: ['ice under the frame', 'ice underneath', 'hanging ice'],
    after: ['frame-raised', 'transport-pins'],
    expects: state(
      ['nothing hanging', 'clear', 'no ice', 'knocked off', 'clean', 'nothing', 'all knocked off'],
      [
        'ice hanging',
        'slabs hanging',
        'ice under it',
        'big chunks',
        'cannot reach it',
        'still ice',
        'hole sleeve is iced',
        'packed with ice',
      ],
    ),
    lines: {
      name: (scope) => `${place(scope)} ice under the frame`,
      ask: (scope) => `Light under the ${place(scope)} side, from outside. Is nothing hanging that can fall on the road?`,
      askTerse: (scope) => `${at(scope, 'underside')} clear?`,
      hint: 'Say "clear", or "slabs hanging".',
      why: 'Slabs let go at speed, and they weigh on the axle until they do.',
      mend: 'Knock it off with a long pole from outside the frame.',
      caution: 'Nobody goes under it, pinned or not.',
    },
    judge: stateSpec('hold'),
    kneeling: true,
    takes: 60,
    worst: 'hold',
    sources: [COMMON_PRACTICE],
  }),
];
