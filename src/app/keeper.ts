/** Turns drafts into entries and appends them. Remembers what a draft became, so that a retry appends the very same entry. */
import type { Entry, EntryDraft, Round } from '../domain/round/entry.ts';
import type { Record } from '../record/record.ts';

export interface Keeper {
  /** Resolves when every draft is durably kept; safe to call again with the same drafts after a failure. */
  keep(drafts: readonly EntryDraft[]): Promise<readonly Entry[]>;
}

export interface KeeperOptions {
  readonly record: Record;
  readonly round: Round;
  /** The `seq` that the next entry must have. */
  readonly nextSeq: number;
  readonly now: () => number;
  readonly newId: () => string;
}

export function createKeeper({ record, round, nextSeq, now, newId }: KeeperOptions): Keeper {
  let seq = nextSeq;
  const stamped = new WeakMap<EntryDraft, Entry>();
  const kept = new WeakSet<EntryDraft>();
  let queue: Promise<unknown> = Promise.resolve();

  const keepOne = async (draft: EntryDraft): Promise<Entry> => {
    let entry = stamped.get(draft);
    if (!entry || (!kept.has(draft) && entry.seq !== seq)) {
      entry = { ...draft, id: newId(), round: round.id, seq, at: now() } as Entry;
      stamped.set(draft, entry);
    }
    if (kept.has(draft)) return entry;
    if (entry.seq === 0) await record.beginRound(round, entry);
    else await record.append(entry);
    kept.add(draft);
    seq = entry.seq + 1;
    return entry;
  };

  return {
    keep(drafts) {
      const run = queue.then(async () => {
        const entries: Entry[] = [];
        for (const draft of drafts) entries.push(await keepOne(draft));
        return entries;
      });
      // One write at a time; a failure is the caller's and must not stop the next one.
      queue = run.catch(() => {});
      return run;
    },
  };
}
