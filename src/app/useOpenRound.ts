/** Opens a round when its screen is shown and closes it when the screen is left. */
import { useEffect, useState } from 'react';
import type { OpenResult, OpenRound } from './openRound.ts';

export type Opening =
  | { readonly state: 'opening' }
  | { readonly state: 'open'; readonly open: OpenRound }
  | { readonly state: 'refused'; readonly sentence: string };

/** @param key one round, once; @param start begins or resumes it */
export function useOpenRound(key: string, start: () => Promise<OpenResult>): Opening {
  const [opening, setOpening] = useState<Opening>({ state: 'opening' });
  // biome-ignore lint/correctness/useExhaustiveDependencies: `start` is new at every render; the key says which round it is
  useEffect(() => {
    let wanted = true;
    let mine: OpenRound | null = null;
    setOpening({ state: 'opening' });
    start().then(
      (result) => {
        if (result.kind === 'refused') {
          if (wanted) setOpening({ state: 'refused', sentence: result.sentence });
          return;
        }
        if (!wanted) {
          result.open.close();
          return;
        }
        mine = result.open;
        setOpening({ state: 'open', open: result.open });
      },
      (error: unknown) => {
        if (wanted)
          setOpening({ state: 'refused', sentence: error instanceof Error ? error.message : 'The round could not be opened.' });
      },
    );
    return () => {
      wanted = false;
      mine?.close();
    };
  }, [key]);
  return opening;
}
