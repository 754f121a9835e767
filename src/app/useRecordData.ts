/** Data read from the record for a screen; read again whenever the record changes. */
import { useEffect, useState } from 'react';
import type { Services } from './services.ts';
import { useStore } from './store.ts';

export type Loaded<T> =
  | { readonly state: 'loading' }
  | { readonly state: 'ready'; readonly value: T }
  | { readonly state: 'failed'; readonly sentence: string };

/** @param key the question; another key is another question */
export function useRecordData<T>(services: Services, key: string, load: () => Promise<T>): Loaded<T> {
  const changes = useStore(services.changes);
  const [loaded, setLoaded] = useState<{ key: string; result: Loaded<T> }>({ key, result: { state: 'loading' } });
  // biome-ignore lint/correctness/useExhaustiveDependencies: `load` is new at every render; the key says when the question changed
  useEffect(() => {
    let current = true;
    load().then(
      (value) => current && setLoaded({ key, result: { state: 'ready', value } }),
      (error: unknown) =>
        current &&
        setLoaded({
          key,
          result: { state: 'failed', sentence: error instanceof Error ? error.message : 'This could not be read.' },
        }),
    );
    return () => {
      current = false;
    };
  }, [key, changes]);
  return loaded.key === key ? loaded.result : { state: 'loading' };
}
