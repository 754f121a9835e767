/** Registers the service worker and lets the update machine decide when a waiting version may take over. */
import { createActor } from 'xstate';
import { updateMachine } from '../../machines/updateMachine.ts';

/** `unsupported`: no service worker here, so the app needs the network to open. */
export type AppUpdate = 'preparing' | 'offline-ready' | 'waiting' | 'unsupported';

export interface UpdateHandle {
  current(): AppUpdate;
  subscribe(listener: () => void): () => void;
  roundOpened(): void;
  roundClosed(): void;
  /** The person agrees to the new version. Ignored while a round is open. */
  apply(): void;
}

export function startAppUpdate(enabled: boolean): UpdateHandle {
  const listeners = new Set<() => void>();
  let state: AppUpdate = enabled && 'serviceWorker' in navigator ? 'preparing' : 'unsupported';
  let registration: ServiceWorkerRegistration | null = null;
  const set = (next: AppUpdate) => {
    state = next;
    for (const listener of listeners) listener();
  };
  const actor = createActor(
    updateMachine.provide({
      actions: {
        applyUpdate: () => {
          navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
          registration?.waiting?.postMessage('apply-update');
        },
      },
    }),
  );
  actor.start();

  const found = () => {
    set('waiting');
    actor.send({ type: 'version.found' });
  };
  const watch = (worker: ServiceWorker) => {
    worker.addEventListener('statechange', () => {
      if (worker.state === 'installed' && navigator.serviceWorker.controller) found();
      if (worker.state === 'activated' && state === 'preparing') set('offline-ready');
    });
  };
  const register = async () => {
    try {
      registration = await navigator.serviceWorker.register('/serviceWorker.js');
      if (registration.waiting && navigator.serviceWorker.controller) found();
      else if (registration.active) set('offline-ready');
      if (registration.installing) watch(registration.installing);
      registration.addEventListener('updatefound', () => {
        if (registration?.installing) watch(registration.installing);
      });
    } catch {
      set('unsupported');
    }
  };
  // A slow phone draws its first screen before it is asked whether there is a newer version.
  if (state === 'preparing') setTimeout(() => void register(), 0);

  return {
    current: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    roundOpened: () => actor.send({ type: 'round.opened' }),
    roundClosed: () => actor.send({ type: 'round.closed' }),
    apply: () => actor.send({ type: 'update.requested' }),
  };
}
