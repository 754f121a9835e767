import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hashOf, parseRoute, type Route } from '../../../src/app/route.ts';

const id = fc.string({ minLength: 1 }).filter((text) => text !== 'new');
const route: fc.Arbitrary<Route> = fc.oneof(
  fc.constantFrom<Route>(
    { at: 'home' },
    { at: 'units' },
    { at: 'unit-new' },
    { at: 'rehearsal' },
    { at: 'files' },
    { at: 'settings' },
    { at: 'numbers' },
  ),
  fc.record({
    at: fc.constantFrom('unit' as const, 'unit-edit' as const, 'trends' as const, 'weights' as const, 'compare' as const),
    unit: id,
  }),
  fc.record({ at: fc.constantFrom('run' as const, 'round' as const, 'report' as const), round: id }),
  fc.record({
    at: fc.constant('start' as const),
    unit: id,
    kind: fc.constantFrom('before-towing' as const, 'stop-on-the-road' as const),
  }),
);

describe('addresses', () => {
  it('lead to the place they were made from, whatever an id contains', () => {
    fc.assert(
      fc.property(route, (place) => {
        expect(parseRoute(hashOf(place))).toEqual(place);
      }),
    );
  });

  it('lead home when they mean nothing', () => {
    for (const hash of ['', '#', '#/', '#/nowhere', '#/run/', '#/start/x/sideways', '#/unit/%E0%A4%A/edit']) {
      expect(['home', 'units']).toContain(parseRoute(hash).at);
    }
  });

  it('never throw', () => {
    fc.assert(
      fc.property(fc.string(), (hash) => {
        expect(parseRoute(hash).at).toBeTypeOf('string');
      }),
    );
  });
});
