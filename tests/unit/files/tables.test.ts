import fc from 'fast-check';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { cell, readingsCsv } from '../../../src/domain/files/csv.ts';
import { escapeText, folded, remindersCalendar } from '../../../src/domain/files/icalendar.ts';
import { remindersFor } from '../../../src/domain/files/reminders.ts';
import { packZip, TEXT_NAME, unpackZip } from '../../../src/domain/files/zip.ts';
import { buildSeries, type RoundRecord } from '../../../src/domain/history/series.ts';
import type { UnitEvent } from '../../../src/domain/round/entry.ts';
import { DAY, givenRound, givenUnit } from '../history/givenRounds.ts';

const LEFT = { check: 'tire-pressure', position: 'left', rule: 'tire-pressure' } as const;

describe('readings as CSV (RFC 4180)', () => {
  const series = buildSeries(
    [0, 1].map((day) =>
      givenRound({
        id: `r${day}`,
        at: Date.UTC(2026, 0, 1 + day),
        checks: [LEFT],
        answers: [{ key: 'tire-pressure@left', value: 65 - day }],
      }),
    ),
    [],
  );

  it('has the unit in the header, one row for each round, CRLF at every end', () => {
    expect(readingsCsv({ series, unitNames: new Map([['unit-1', 'Heron']]), display: 'us' })).toBe(
      'unit,first reading (UTC),round,data,left tire pressure [psi]\r\n' +
        'Heron,2026-01-01T00:01:00.000Z,r0,real,65\r\nHeron,2026-01-02T00:01:00.000Z,r1,real,64\r\n',
    );
  });

  it('converts to metric', () => {
    const csv = readingsCsv({ series, unitNames: new Map(), display: 'metric' });
    expect(csv).toContain('left tire pressure [kPa]');
    // 65 psi, NIST SP 811.
    expect(csv).toContain('448.159');
  });

  it('can not start a formula, whatever a unit is called', () => {
    for (const name of ['=1+1', '+A1', '-A1', '@SUM(A1)', '\t=1', '|cmd']) expect(cell(name).replace(/^"/, '')).toMatch(/^'/);
    expect(cell('-12.5')).toBe('-12.5');
    expect(cell('say "hi", then')).toBe('"say ""hi"", then"');
  });

  it('comes back out of a reader as it went in', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary' }), { minLength: 1, maxLength: 5 }), (fields) => {
        const back = readCsvLine(fields.map(cell).join(','));
        expect(back.map((field, index) => (fields[index] === field ? field : field.replace(/^'/, '')))).toEqual(fields);
      }),
    );
  });
});

/** A reader written from the grammar of RFC 4180. */
function readCsvLine(line: string): string[] {
  const fields: string[] = [];
  let at = 0;
  do {
    let field = '';
    if (line[at] === '"') {
      at++;
      while (at < line.length) {
        if (line[at] !== '"') field += line[at++];
        else if (line[at + 1] === '"') {
          field += '"';
          at += 2;
        } else break;
      }
      at++;
    } else while (at < line.length && line[at] !== ',') field += line[at++];
    fields.push(field);
  } while (line[at++] === ',');
  return fields;
}

describe('reminders as iCalendar (RFC 5545)', () => {
  const unit = givenUnit({
    name: 'Heron, the small one',
    alarms: {
      co: { fitted: true, date: '2021-06', dateMeans: 'made' },
      gas: { fitted: true, date: '2027-03', dateMeans: 'replace-by' },
      smoke: { fitted: null, date: null, dateMeans: null },
    },
    cylinders: [{ tareKg: null, capacityKg: null, date: '2015-04', dateSuffix: null }],
  });

  it('has every due date that is known, and none that is not', () => {
    const due = remindersFor(unit, { rounds: [], events: [] }, []).map(({ uid, due: at }) => [
      uid,
      new Date(at).toISOString().slice(0, 10),
    ]);
    expect(due).toEqual([
      ['unit-1-alarm-co', '2026-06-01'],
      ['unit-1-alarm-gas', '2027-03-01'],
      ['unit-1-cylinder-0', '2027-04-01'],
    ]);
  });

  it('dates a tire by its stamped week: 2619 is the Monday of June 24, 2019, six years on', () => {
    const tires = givenUnit({ wheels: { ...givenUnit().wheels, dotCodes: { left: '2619' } } });
    expect(
      remindersFor(tires, { rounds: [], events: [] }, []).map((one) => new Date(one.due).toISOString().slice(0, 10)),
    ).toEqual(['2025-06-24']);
  });

  it('asks for the lugs after a wheel was on, until a round has pulled them', () => {
    const event = { id: 'e', unit: 'unit-1', at: 5 * DAY, kind: 'wheel-mounted', position: 'left', odometerM: null } as const;
    const lugs = { check: 'lugs-moved', position: 'left', rule: 'lugs-moved', count: true } as const;
    const pulled = (day: number) =>
      givenRound({ at: day * DAY, checks: [lugs], answers: [{ key: 'lugs-moved@left', value: 0 }] });
    const asked = (day: number) =>
      remindersFor(givenUnit(), { rounds: [pulled(day)], events: [event] }, []).filter(({ uid }) => uid.includes('lugs'));
    expect(asked(4)).toHaveLength(1);
    expect(asked(6)).toHaveLength(0);
  });

  // EPA, A Brief Guide to Mold (from memory): 24 to 48 hours. Rolled up Friday at 18:00, due Saturday at 18:00.
  it('asks for a wet awning to be dried within a day, until it was', () => {
    const friday = Date.UTC(2026, 0, 9, 18);
    const said = (option: 'dry' | 'wet', at: number): RoundRecord => {
      const { round, entries } = givenRound({
        id: `round-${at}`,
        at,
        checks: [{ check: 'awning-dry', rule: 'choice', state: true }],
        answers: [{ key: 'awning-dry', value: 1 }],
      });
      const answer = { kind: 'choice', option, detail: null } as const;
      return { round, entries: entries.map((entry) => (entry.kind === 'answered' ? { ...entry, answer } : entry)) };
    };
    const happened = (kind: 'awning-wet' | 'awning-dried', at: number) => ({ id: `${kind} ${at}`, unit: 'unit-1', at, kind });
    const due = (rounds: RoundRecord[], events: UnitEvent[]) =>
      remindersFor(givenUnit(), { rounds, events }, [])
        .filter(({ uid }) => uid.endsWith('awning'))
        .map(({ due: at }) => at);
    expect(due([], [happened('awning-wet', friday)])).toEqual([Date.UTC(2026, 0, 10, 18)]);
    expect(due([], [happened('awning-wet', friday), happened('awning-dried', friday + DAY)])).toEqual([]);
    expect(due([], [happened('awning-dried', friday), happened('awning-wet', friday + DAY)])).toHaveLength(1);
    expect(due([said('wet', friday)], [])).toHaveLength(1);
    expect(due([said('wet', friday), said('dry', friday + DAY)], [])).toEqual([]);
    expect(due([said('wet', friday)], [happened('awning-dried', friday + DAY)])).toEqual([]);
    expect(due([], [{ ...happened('awning-wet', friday), unit: 'other' }])).toEqual([]);
  });

  it('asks for the work of each season once after the last round, with the points that this frame has', () => {
    const onlyAfter = (at: number, unitNow = givenUnit()) =>
      remindersFor(unitNow, { rounds: [givenRound({ at, checks: [], answers: [] })], events: [] }, []);
    const days = (at: number) => onlyAfter(at).map(({ uid, due }) => [uid, new Date(due).toISOString().slice(0, 10)]);
    expect(days(Date.UTC(2026, 0, 20))).toEqual([
      ['unit-1-off-season-2026', '2026-04-15'],
      ['unit-1-season-2026', '2026-10-15'],
    ]);
    expect(days(Date.UTC(2026, 11, 1))).toEqual([
      ['unit-1-off-season-2027', '2027-04-15'],
      ['unit-1-season-2027', '2027-10-15'],
    ]);
    expect(remindersFor(givenUnit(), { rounds: [], events: [] }, [])).toEqual([]);
    const { lift } = givenUnit();
    const season = (pulleys: typeof lift.pulleys) =>
      onlyAfter(0, givenUnit({ lift: { ...lift, pulleys } })).find(
        ({ uid }) => uid.includes('-season-1970') && !uid.includes('off'),
      );
    expect(season('greasable')?.description).toContain('every pulley pin');
    expect(season('plain')?.description).not.toContain('pulley');
  });

  const calendar = remindersCalendar(remindersFor(unit, { rounds: [], events: [] }, []), Date.UTC(2026, 0, 2, 3, 4, 5));

  it('has what an event must have, with text escaped and lines of at most 75 octets', () => {
    expect(calendar).toContain(
      'UID:unit-1-alarm-co@gloveside.invalid\r\nDTSTAMP:20260102T030405Z\r\nDTSTART;VALUE=DATE:20260601\r\n',
    );
    expect(calendar).toContain('SUMMARY:Heron\\, the small one: replace the carbon monoxide alarm\r\n');
    for (const line of calendar.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(calendar.replace(/\r\n/g, '')).not.toMatch(/[\r\n]/);
    expect(calendar.match(/BEGIN:/g)?.length).toBe(calendar.match(/END:/g)?.length);
  });

  it('folds any text so that unfolding gives it back, and never breaks a character', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (text) => {
        const escaped = escapeText(text);
        const lines = folded(`SUMMARY:${escaped}`);
        for (const line of lines.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
        expect(lines.replaceAll('\r\n ', '')).toBe(`SUMMARY:${escaped}`);
      }),
    );
    expect(escapeText('a;b,c\\d\ne')).toBe('a\\;b\\,c\\\\d\\ne');
  });

  it('lets no text end its line and begin a property of its own', () => {
    expect(escapeText('x\r\nATTACH:http')).toBe('x\\nATTACH:http');
  });
});

describe('zip of the record with clips and photos', () => {
  const media = [
    { kind: 'clip', id: 'round 1/é', type: 'audio/wav', bytes: new Uint8Array([1, 2, 3]) },
    { kind: 'photo', id: 'p', type: 'image/jpeg', bytes: new Uint8Array(1000) },
  ] as const;

  it('gives back the text and every clip and photo', () => {
    const back = unpackZip(packZip('{"a":1}', media));
    expect(back.ok && [back.text, back.media]).toEqual(['{"a":1}', media]);
    expect(packZip('x', media)).toEqual(packZip('x', media));
  });

  it('passes over names that are not ours, and never leaves its folder', () => {
    const back = unpackZip(
      zipSync({
        [TEXT_NAME]: strToU8('{}'),
        '../../evil.json': strToU8('x'),
        'clips/../x.wav': strToU8('x'),
        'photos/a.exe': strToU8('x'),
      }),
    );
    expect(back.ok && [back.media, back.warnings]).toEqual([[], ['3 files in the zip are not ours and were passed over.']]);
  });

  it('refuses a damaged zip, one without the record, and a small one that would become huge', () => {
    const whole = packZip('{"a":1}', media);
    const refusal = (bytes: Uint8Array) => {
      const back = unpackZip(bytes);
      return back.ok ? 'accepted' : back.sentence;
    };
    expect(refusal(new Uint8Array([1, 2, 3]))).toMatch(/damaged/);
    expect(refusal(whole.slice(0, whole.length - 30))).toMatch(/damaged/);
    expect(refusal(zipSync({ 'readme.txt': strToU8('x') }))).toMatch(/record is missing/);
    const bomb = zipSync({ [TEXT_NAME]: strToU8('{}'), 'photos/a.jpg': [new Uint8Array(40 * 1024 * 1024), { level: 9 }] });
    expect(bomb.length).toBeLessThan(100_000);
    expect(refusal(bomb)).toMatch(/more than this app ever saves/);
  });
});
