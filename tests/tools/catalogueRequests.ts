/** Every request that a round can give rise to: each check on each kind of unit, in both systems of units, and its own calls. */
import { CATALOGUE } from '../../src/domain/checks/catalogue.ts';
import type { CheckScope } from '../../src/domain/checks/check.ts';
import type { Expects, Position } from '../../src/domain/checks/expects.ts';
import { CALLS } from '../../src/domain/round/calls.ts';
import { createUnit } from '../../src/domain/unit/createUnit.ts';
import { DEMO_UNITS } from '../../src/domain/unit/demo.ts';
import { TEMPLATES } from '../../src/domain/unit/templates.ts';
import type { ListenRequest } from '../../src/domain/voice/ports.ts';
import { withEachChoice } from './withEachChoice.ts';

export interface CatalogueRequest {
  readonly check: string;
  readonly names: readonly string[];
  readonly request: ListenRequest;
}

const PLACES: Readonly<Record<string, readonly Position[]>> = {
  unit: [],
  cylinder: [],
  side: ['left', 'right'],
  wheel: ['left-front', 'right-front', 'left-rear', 'right-rear'],
};
const AT = Date.UTC(2026, 0, 15);

let made: readonly CatalogueRequest[] | null = null;

/** Distinct by check and by what is expected. */
export function catalogueRequests(): readonly CatalogueRequest[] {
  made ??= makeRequests();
  return made;
}

function makeRequests(): readonly CatalogueRequest[] {
  const templates = TEMPLATES.map((template) => createUnit(template, { id: template.id, name: 'Test unit', at: AT }));
  const units = [...templates, ...DEMO_UNITS].flatMap(withEachChoice);
  const found = new Map<string, CatalogueRequest>();
  for (const definition of CATALOGUE) {
    const positions = PLACES[definition.spread] ?? [];
    for (const unit of units) {
      for (const round of definition.rounds) {
        for (const display of ['us', 'metric'] as const) {
          const scope: CheckScope = { unit, round, position: positions[0] ?? null, index: 0, at: AT, display };
          if (!definition.applies(scope) && unit !== units[0]) continue;
          const expects: Expects = definition.expects(scope);
          found.set(`${definition.id} ${JSON.stringify(expects)}`, {
            check: definition.id,
            names: definition.names,
            request: { expects, position: positions[0] ?? null, positions, others: [], mode: 'answer' },
          });
        }
      }
    }
  }
  for (const [index, expects] of CALLS.entries()) {
    found.set(`call ${index}`, {
      check: `call-${index}`,
      names: [],
      request: { expects, position: null, positions: [], others: [], mode: 'answer' },
    });
  }
  return [...found.values()];
}

/** Every check as another that may be answered by name, as in a two-person round. */
export function namedRequest(requests = catalogueRequests()): ListenRequest {
  const [first] = requests;
  if (!first) throw new Error('the catalogue is empty');
  return {
    ...first.request,
    mode: 'confirm',
    others: requests.map(({ names, request }) => ({ names, position: request.position, expects: request.expects })),
  };
}
