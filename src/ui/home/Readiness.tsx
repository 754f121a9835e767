/** Whether the app will work on the lake: kept on the device, up to date, safe from being cleared. In words. */

export interface ReadinessProps {
  /** Everything that a round needs is on the device. `checking` until that is known. */
  readonly offline: 'ready' | 'loading' | 'checking' | 'not-possible';
  readonly update: 'none' | 'ready' | 'applying';
  /** `possible`: the browser offers it. `by-hand`: through its own menu. `done`: runs as an app. */
  readonly install: 'possible' | 'by-hand' | 'done';
  /** The browser will not clear the record by itself; null when it does not say. */
  readonly durable: boolean | null;
  readonly onInstall: () => void;
  readonly onUpdate: () => void;
}

const OFFLINE: Readonly<Record<ReadinessProps['offline'], string>> = {
  ready: 'Works with the network off.',
  loading: 'Still loading what a round needs. Stay on the network a moment.',
  checking: 'Checking whether it works with the network off.',
  'not-possible': 'This browser cannot keep the app. It works only with the network on.',
};

export function Readiness({ offline, update, install, durable, onInstall, onUpdate }: ReadinessProps) {
  return (
    <section className="readiness" aria-labelledby="readiness">
      <h2 id="readiness" className="h3">
        On this device
      </h2>
      <ul>
        <li>
          <ReadyShape good={offline === 'ready'} />
          {OFFLINE[offline]}
        </li>
        {durable !== null && (
          <li>
            <ReadyShape good={durable} />
            {durable
              ? 'The browser keeps your rounds until you delete them.'
              : 'The browser may clear your rounds when room is short. Install the app, and save a file now and then.'}
          </li>
        )}
        {install === 'by-hand' && (
          <li>
            <ReadyShape good={false} />
            Not installed. In the browser's menu: “Add to Home Screen” or “Install”.
          </li>
        )}
      </ul>
      <div className="row-buttons">
        {install === 'possible' && (
          <button type="button" className="slab" onClick={onInstall}>
            Install the app
          </button>
        )}
        {update !== 'none' && (
          <button type="button" className="slab" onClick={onUpdate} disabled={update === 'applying'}>
            {update === 'ready' ? 'A new version is ready: change over' : 'Changing over …'}
          </button>
        )}
      </div>
    </section>
  );
}

function ReadyShape({ good }: { readonly good: boolean }) {
  return (
    <svg viewBox="0 0 32 32" width="22" height="22" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth="4.5">
      {good ? <circle cx="16" cy="16" r="11" fill="currentColor" /> : <circle cx="16" cy="16" r="12" strokeDasharray="6 4" />}
    </svg>
  );
}
