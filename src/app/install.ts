/** Whether the app is installed, and the browser's offer to install it where it makes one. */
import { useSyncExternalStore } from 'react';
import { createStore } from './store.ts';

interface InstallOffer extends Event {
  prompt(): Promise<void>;
}

const offer = createStore<InstallOffer | null>(null);

/** Call once, before anything is shown: the browser makes its offer early and only once. */
export function watchInstallOffer(): void {
  window.addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault();
    offer.set(event as InstallOffer);
  });
  window.addEventListener('appinstalled', () => offer.set(null));
}

export function useInstall(): { readonly state: 'possible' | 'by-hand' | 'done'; readonly ask: () => void } {
  const current = useSyncExternalStore(offer.subscribe, offer.get);
  const installed = window.matchMedia('(display-mode: standalone)').matches;
  return {
    state: installed ? 'done' : current ? 'possible' : 'by-hand',
    ask: () => {
      void current?.prompt();
      offer.set(null);
    },
  };
}
