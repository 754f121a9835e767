/** Reading a file that someone else may have made. Nothing is taken from it unless all of it is understood. */
import * as v from 'valibot';
import type { PlannedCheck } from '../plan/plan.ts';
import type { Entry, Round, UnitEvent } from '../round/entry.ts';
import type { Unit } from '../unit/unit.ts';
import { DATASET_SCHEMA, type Dataset, EMPTY_DATASET } from './dataset.ts';
import { EXPORT_FORMAT, EXPORT_VERSION, type PackedRound } from './exportAll.ts';
import { exportFileSchema } from './exportSchema.ts';
import { merge } from './merge.ts';

export type ParsedExport =
  | { readonly ok: true; readonly data: Dataset; readonly warnings: readonly string[] }
  | { readonly ok: false; readonly sentence: string };

/** Twelve years of three units are about 40 million characters. */
const LONGEST_TEXT = 256 * 1024 * 1024;
const DEEPEST = 24;
const MOST_VALUES = 20_000_000;
/** Names that reach into the language instead of into the data. */
const FORBIDDEN_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/**
 * The data of an exported file, or a sentence that says what to do. Never throws, never changes anything.
 *
 * Cost: linear in the text. Hostile files end early: length, depth and number of values are limited, keys that would reach
 * a prototype and numbers that are not finite refuse the file.
 * @param text the whole file
 */
export function parseExport(text: string): ParsedExport {
  if (text.length > LONGEST_TEXT) return refuse('The file is too large to be one of ours. Choose the file that this app saved.');
  if (tooDeep(text)) return refuse('The file is not one of ours: it is nested too deeply. Choose the file that this app saved.');
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return refuse(
      'The file is damaged or is not one of ours: it can not be read as JSON. Copy it again from where it was saved, and try once more.',
    );
  }
  const odd = oddity(raw);
  if (odd) return refuse(odd);
  const wrongFile = wrongKindOfFile(raw);
  if (wrongFile) return refuse(wrongFile);
  const checked = v.safeParse(exportFileSchema, raw, { abortEarly: true });
  if (!checked.success) {
    const where = v.getDotPath(checked.issues[0]) ?? 'the file';
    return refuse(
      `The file holds something that this version does not understand, at ${shortened(where)}. Nothing was taken from it. Update the app, or save the file anew where it came from.`,
    );
  }
  return assemble(raw as Parsed);
}

/** The raw value once the schema has passed it: nothing is rewritten, so that an export comes back as it was. */
interface Parsed {
  readonly units: readonly Unit[];
  readonly parts: { readonly checks: readonly PlannedCheck[]; readonly units: readonly Unit[] };
  readonly rounds: readonly PackedRound[];
  readonly entries: readonly Entry[];
  readonly events: readonly UnitEvent[];
  readonly deleted: Dataset['deleted'];
  readonly settings?: NonNullable<Dataset['settings']>;
}

function assemble(file: Parsed): ParsedExport {
  const rounds: Round[] = [];
  for (const packed of file.rounds) {
    const unit = file.parts.units[packed.plan.unit];
    const checks = packed.plan.checks.map((place) => file.parts.checks[place]);
    if (!unit || !checks.every((check): check is PlannedCheck => check !== undefined))
      return refuse(damaged(`round ${packed.id} lacks parts of its plan`));
    rounds.push({ ...packed, plan: { ...packed.plan, unit, checks } });
  }
  const { data, warnings } = tidied({
    schema: DATASET_SCHEMA,
    units: file.units,
    rounds,
    entries: file.entries,
    events: file.events,
    deleted: file.deleted,
    ...(file.settings ? { settings: file.settings } : {}),
  });
  const gap = firstGap(data);
  return gap ? refuse(damaged(gap)) : { ok: true, data, warnings };
}

/** Doubles become one, and what belongs to nothing is left out; each is told. */
function tidied(data: Dataset): { data: Dataset; warnings: string[] } {
  const warnings: string[] = [];
  let clean = data;
  const doubles = [data.units, data.rounds, data.entries, data.events, data.deleted].reduce(
    (sum, items) => sum + items.length - new Set(items.map((item) => item.id)).size,
    0,
  );
  if (doubles > 0) {
    clean = merge(data, EMPTY_DATASET);
    warnings.push(`${doubles} ${doubles === 1 ? 'thing was' : 'things were'} in the file twice and taken once.`);
  }
  const known = new Set(clean.rounds.map((round) => round.id));
  const entries = clean.entries.filter((entry) => known.has(entry.round));
  const orphans = clean.entries.length - entries.length;
  if (orphans > 0) {
    clean = { ...clean, entries };
    warnings.push(
      `${orphans} ${orphans === 1 ? 'entry belongs' : 'entries belong'} to no round in the file and ${orphans === 1 ? 'was' : 'were'} left out.`,
    );
  }
  return { data: clean, warnings };
}

/** A round whose entries do not count from nought without a gap has lost some. */
function firstGap(data: Dataset): string | null {
  const seen = new Map<string, Set<number>>(data.rounds.map((round) => [round.id, new Set<number>()]));
  for (const entry of data.entries) {
    const places = seen.get(entry.round);
    if (places?.has(entry.seq)) return `round ${entry.round} has two entries in one place`;
    places?.add(entry.seq);
  }
  for (const [round, places] of seen) {
    for (let seq = 0; seq < places.size; seq++) if (!places.has(seq)) return `round ${round} lacks entry ${seq}`;
  }
  return null;
}

function refuse(sentence: string): ParsedExport {
  return { ok: false, sentence };
}

function damaged(what: string): string {
  return `The file is damaged: ${shortened(what)}. Nothing was taken from it. Save it anew where it came from.`;
}

function shortened(text: string): string {
  return text.length > 120 ? `${text.slice(0, 117)}…` : text;
}

function wrongKindOfFile(raw: unknown): string | null {
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw))
    return 'The file is not one of ours. Choose the file that this app saved.';
  const { format, version, schema } = raw as Record<string, unknown>;
  if (format !== EXPORT_FORMAT) return 'The file is not one of ours. Choose the file that this app saved.';
  const newer = (value: unknown, known: number) => typeof value === 'number' && value > known;
  if (newer(version, EXPORT_VERSION) || newer(schema, DATASET_SCHEMA)) {
    return 'The file was saved by a newer version of this app. Update the app here, then import it again. Nothing was taken from it.';
  }
  if (version !== EXPORT_VERSION || schema !== DATASET_SCHEMA) {
    return 'The file says that it is of a version which never was. It may be damaged: save it anew where it came from.';
  }
  return null;
}

/** Depth by counting brackets outside strings, before anything is built from the text. */
function tooDeep(text: string): boolean {
  let depth = 0;
  let quoted = false;
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index);
    if (quoted) {
      if (code === 0x5c) index++;
      else if (code === 0x22) quoted = false;
    } else if (code === 0x22) quoted = true;
    else if (code === 0x7b || code === 0x5b) {
      if (++depth > DEEPEST) return true;
    } else if (code === 0x7d || code === 0x5d) depth--;
  }
  return false;
}

/** What must be nowhere in the file, as a sentence; null where all is well. */
function oddity(raw: unknown): string | null {
  const left: unknown[] = [raw];
  let values = 0;
  while (left.length > 0) {
    const value = left.pop();
    if (++values > MOST_VALUES) return 'The file is too large to be one of ours. Choose the file that this app saved.';
    if (typeof value === 'number' && !Number.isFinite(value)) return damaged('a number in it is out of all range');
    if (typeof value !== 'object' || value === null) continue;
    if (Array.isArray(value)) {
      for (const item of value) left.push(item);
      continue;
    }
    for (const key of Object.keys(value)) {
      if (FORBIDDEN_KEYS.has(key))
        return 'The file holds names that do not belong in it, and may mean harm. Nothing was taken from it.';
      left.push((value as Record<string, unknown>)[key]);
    }
  }
  return null;
}
