/**
 * The database's history, one numbered step after another from 1 on. A step that has shipped is never changed; a new
 * shape gets a new step. Steps work on the raw database, not on today's types, so that they still mean the same later.
 */
export interface Migration {
  /** 1, 2, 3 … without gaps. */
  readonly version: number;
  readonly what: string;
  /** May wait for requests of `transaction` and for nothing else: any other wait would end the transaction. */
  readonly up: (database: IDBDatabase, transaction: IDBTransaction) => void;
}

export const MIGRATIONS: readonly Migration[] = [
  {
    version: 1,
    what: 'Units with their revisions, rounds, plans, entries, events, clips, photos, settings, tombstones',
    up: (database) => {
      database.createObjectStore('units', { keyPath: ['id', 'revision'] });
      database.createObjectStore('rounds', { keyPath: 'id' }).createIndex('startedAt', 'startedAt');
      database.createObjectStore('plans', { keyPath: 'round' });
      const entries = database.createObjectStore('entries', { keyPath: ['round', 'seq'] });
      entries.createIndex('id', 'id', { unique: true });
      entries.createIndex('noteClip', 'clip');
      database.createObjectStore('events', { keyPath: 'id' }).createIndex('unit', 'unit');
      database.createObjectStore('clips', { keyPath: 'id' }).createIndex('keptAt', 'keptAt');
      database.createObjectStore('clipBytes', { keyPath: 'id' });
      database.createObjectStore('photos', { keyPath: 'id' });
      database.createObjectStore('photoBytes', { keyPath: 'id' });
      database.createObjectStore('settings', { keyPath: 'key' });
      database.createObjectStore('deleted', { keyPath: 'id' });
      database.createObjectStore('meta', { keyPath: 'key' });
    },
  },
  {
    version: 2,
    what: 'Entries of imported rounds together, a round to a row: a browser takes as long for one entry as for a hundred',
    up: (database) => {
      const sealed = database.createObjectStore('sealed', { keyPath: 'round' });
      sealed.createIndex('ids', 'ids', { unique: true, multiEntry: true });
      sealed.createIndex('noteClips', 'noteClips', { multiEntry: true });
    },
  },
  {
    version: 3,
    what: 'Parts that plans share, once each; plans written before stay as they are',
    up: (database) => {
      database.createObjectStore('parts', { keyPath: 'id' });
    },
  },
];

/**
 * The version that a list of migrations leads to.
 * @throws RangeError when the list is empty or its numbers are not 1, 2, 3 …
 */
export function targetVersion(migrations: readonly Migration[]): number {
  if (migrations.length === 0) throw new RangeError('targetVersion requires at least one migration');
  migrations.forEach((migration, index) => {
    if (migration.version !== index + 1) {
      throw new RangeError(
        `targetVersion requires migrations numbered 1, 2, 3: found ${migration.version} in place ${index + 1}`,
      );
    }
  });
  return migrations.length;
}

/** Take every step after `from`, in order, inside one upgrade transaction: all of them or none. */
export function migrate(
  migrations: readonly Migration[],
  from: number,
  database: IDBDatabase,
  transaction: IDBTransaction,
): void {
  for (const migration of migrations) {
    if (migration.version > from) migration.up(database, transaction);
  }
}
