import { readFileSync } from 'node:fs';
import Ajv from 'ajv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EMPTY_DATASET } from '../../../src/domain/files/dataset.ts';
import { exportAll } from '../../../src/domain/files/exportAll.ts';
import { merge } from '../../../src/domain/files/merge.ts';
import { parseExport } from '../../../src/domain/files/parseExport.ts';
import { seeded } from '../trend/simulate.ts';
import { copies, demoDataset, smallDataset } from './givenDataset.ts';

const whole = demoDataset();
const text = exportAll(whole);
const small = exportAll(smallDataset());

function dataOf(file: string) {
  const parsed = parseExport(file);
  if (!parsed.ok) throw new Error(parsed.sentence);
  return parsed.data;
}

const refusal = (file: string) => {
  const parsed = parseExport(file);
  return parsed.ok ? 'accepted' : parsed.sentence;
};

type Raw = Partial<Record<string, object[]>>;
const changed = (change: (raw: Raw) => void, file = small) => {
  const raw = JSON.parse(file) as Raw;
  change(raw);
  return JSON.stringify(raw);
};

describe('export and import', () => {
  it('gives back exactly what was saved', () => {
    expect(dataOf(text)).toEqual(whole);
    expect(exportAll(dataOf(text))).toBe(text);
  });

  it('does so for any copy of a record', () => {
    fc.assert(
      fc.property(copies, (copy) => {
        const data = merge(copy, EMPTY_DATASET);
        expect(dataOf(exportAll(data))).toEqual(data);
      }),
      { numRuns: 200 },
    );
  });

  it('writes what many plans share once', () => {
    expect(text.length).toBeLessThan(JSON.stringify(whole).length / 2);
  });

  it('keeps fields that it does not know', () => {
    const later = changed((raw) => Object.assign(raw.units?.[0] ?? {}, { towedBy: 'sled' }));
    expect(dataOf(later).units[0]).toMatchObject({ towedBy: 'sled' });
  });
});

describe('JSON Schema', () => {
  const schema = JSON.parse(readFileSync('public/schema/gloveside-export-1.json', 'utf8'));
  const validate = new Ajv({ strict: true, allowUnionTypes: true }).compile(schema);

  it('agrees with real exports', () => {
    expect([validate(JSON.parse(text)), validate.errors]).toEqual([true, null]);
    expect(validate(JSON.parse(exportAll(EMPTY_DATASET)))).toBe(true);
  });

  it('and the app refuse the same files', () => {
    // Every value of a file in turn is replaced by what is not allowed there, or by something odd; both must agree.
    const odd = ['surprise', -1.5, true, null, [], {}];
    let refused = 0;
    const paths = leavesOf(JSON.parse(small));
    for (const [index, path] of paths.entries()) {
      const raw = JSON.parse(small);
      put(raw, path, odd[index % odd.length]);
      const bySchema = validate(raw);
      const parsed = parseExport(JSON.stringify(raw));
      if (!bySchema) refused++;
      if (parsed.ok !== bySchema && bySchema) {
        // The schema can not count or look up: gaps, places and doubles are the app's own.
        expect(parsed.ok ? '' : parsed.sentence).toMatch(/damaged/);
      } else expect([path.join('.'), parsed.ok]).toEqual([path.join('.'), bySchema]);
    }
    expect(paths.length).toBeGreaterThan(300);
    expect(refused).toBeGreaterThan(200);
  });
});

describe('a file that is not understood', () => {
  it.each([
    ['nothing', '', /can not be read as JSON/],
    ['half a file', text.slice(0, text.length / 2), /can not be read as JSON/],
    ['another kind of file', '{"hello":1}', /not one of ours/],
    ['a list', '[]', /not one of ours/],
    ['a newer version', changed((raw) => Object.assign(raw, { version: 2 })), /newer version.*Update the app/],
    ['a newer schema', changed((raw) => Object.assign(raw, { schema: 9 })), /newer version/],
    [
      'an unknown entry',
      changed((raw) => Object.assign(raw.entries?.[1] ?? {}, { kind: 'guessed' })),
      /does not understand, at entries\.1/,
    ],
    ['a number beyond all range', small.replace(/"revision":\d+/, '"revision":1e999'), /out of all range/],
    ['a missing entry', changed((raw) => raw.entries?.splice(2, 1)), /lacks entry 2/],
    [
      'a place that is not there',
      changed((raw) => Object.assign(raw, { parts: { checks: [], units: [] } })),
      /lacks parts of its plan/,
    ],
    ['a hundred thousand brackets', '['.repeat(100_000), /nested too deeply/],
    ['deep objects', '{"a":'.repeat(50_000), /nested too deeply/],
  ])('%s is refused with a sentence', (_, file, sentence) => {
    expect(refusal(file)).toMatch(sentence);
    expect(refusal(file)).toMatch(/^[A-Z].*\.$/);
  });

  it('can not reach a prototype', () => {
    for (const key of ['__proto__', 'constructor', 'prototype']) {
      expect(refusal(small.replace('"settings":{', `"settings":{"${key}":{"polluted":true},`))).toMatch(/do not belong/);
    }
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });

  it('takes doubles once and leaves out entries of no round, and says so', () => {
    const parsed = parseExport(
      changed((raw) => {
        raw.units?.push(raw.units[0] ?? {});
        raw.entries?.push({ ...raw.entries[0], id: 'stray', round: 'nowhere' });
      }),
    );
    expect(parsed.ok && parsed.warnings).toEqual([
      '1 thing was in the file twice and taken once.',
      '1 entry belongs to no round in the file and was left out.',
    ]);
  });
});

describe('ten thousand spoiled files', () => {
  it('never hang, throw or come through as something else than a whole record', { timeout: 60_000 }, () => {
    const random = seeded(41);
    const pick = (length: number) => Math.floor(random() * length);
    const base = small;
    const lists = ['units', 'rounds', 'entries', 'events', 'deleted', 'parts'];
    let accepted = 0;
    for (let run = 0; run < 10_000; run++) {
      const spoiled = run % 3 === 0 ? spoilStructure(base, random, lists) : spoilText(base, pick);
      const parsed = parseExport(spoiled);
      if (!parsed.ok) {
        expect(parsed.sentence.length).toBeLessThan(400);
        continue;
      }
      accepted++;
      // What comes through is a whole record: it can be saved and read again, and merges without loss.
      if (accepted % 20 === 0) expect(dataOf(exportAll(parsed.data))).toEqual(parsed.data);
      for (const round of parsed.data.rounds)
        expect(round.plan.checks.every((check) => typeof check.key === 'string')).toBe(true);
    }
    expect(accepted).toBeGreaterThan(100);
    expect(accepted).toBeLessThan(9900);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });
});

function spoilText(file: string, pick: (length: number) => number): string {
  const at = pick(file.length);
  switch (pick(6)) {
    case 0:
      return file.slice(0, at) + String.fromCharCode(pick(0x3000)) + file.slice(at + 1);
    case 1:
      return file.slice(0, at) + file.slice(at + 1 + pick(40));
    case 2:
      return file.slice(0, at);
    case 3:
      return file.slice(0, at) + file.slice(pick(file.length), pick(file.length)) + file.slice(at);
    case 4:
      return file
        .slice(0, at)
        .concat(file.slice(at).replace(/-?\d+(\.\d+)?/, ['-1', '1e400', '9007199254740993', '0.1', 'null'][pick(5)] ?? '0'));
    default:
      return file
        .slice(0, at)
        .concat(file.slice(at).replace(/"[^"]*":/, ['"__proto__":', '"id":', '"kind":', '"":'][pick(4)] ?? '"x":'));
  }
}

function spoilStructure(file: string, random: () => number, lists: readonly string[]): string {
  const raw = JSON.parse(file);
  const list = lists[Math.floor(random() * lists.length)] ?? 'units';
  const target = random() < 0.5 ? raw[list] : raw;
  const paths = leavesOf(target);
  const path = paths[Math.floor(random() * paths.length)];
  if (path)
    put(target, path, ['', 'x'.repeat(30_000), -1, 1e300, null, true, [], { id: 'x' }, undefined][Math.floor(random() * 9)]);
  return JSON.stringify(raw);
}

function leavesOf(value: unknown, path: readonly string[] = []): (readonly string[])[] {
  if (typeof value !== 'object' || value === null) return path.length > 0 ? [path] : [];
  return Object.entries(value).flatMap(([key, member]) => leavesOf(member, [...path, key]));
}

function put(target: unknown, path: readonly string[], value: unknown): void {
  let here = target as Record<string, unknown>;
  for (const key of path.slice(0, -1)) here = here[key] as Record<string, unknown>;
  const last = path.at(-1);
  if (last !== undefined) here[last] = value;
}
