/** Which screen is shown. Screens get data and callbacks; everything that acts is here or in the services. */
import { lazy, Suspense, startTransition, useEffect, useState } from 'react';
import type { RoundKind } from '../domain/checks/check.ts';
import { type OpenResult, resumeRound, startRound } from './openRound.ts';
import { RunRound } from './RunRound.tsx';
import { openRehearsal } from './rehearsal.ts';
import { hashOf, parseRoute, type Route } from './route.ts';
import { HomePlace } from './screens/HomePlace.tsx';
import { Missing } from './screens/Missing.tsx';
import type { ScreenProps } from './screens/screenProps.ts';
import type { Services } from './services.ts';
import { useStore } from './store.ts';
import { useOpenRound } from './useOpenRound.ts';

/** Everything but home and the round is loaded when it is first opened: a round on the road never waits for it. */
const UnitsPlace = lazy(async () => ({ default: (await import('./screens/UnitPlaces.tsx')).UnitsPlace }));
const UnitNewPlace = lazy(async () => ({ default: (await import('./screens/UnitPlaces.tsx')).UnitNewPlace }));
const UnitEditPlace = lazy(async () => ({ default: (await import('./screens/UnitPlaces.tsx')).UnitEditPlace }));
const SettingsPlace = lazy(async () => ({ default: (await import('./screens/SettingsPlace.tsx')).SettingsPlace }));
const UnitPlace = lazy(async () => ({ default: (await import('./screens/LookbackPlaces.tsx')).UnitPlace }));
const TrendsPlace = lazy(async () => ({ default: (await import('./screens/LookbackPlaces.tsx')).TrendsPlace }));
const RoundPlace = lazy(async () => ({ default: (await import('./screens/LookbackPlaces.tsx')).RoundPlace }));
const ReportPlace = lazy(async () => ({ default: (await import('./screens/LookbackPlaces.tsx')).ReportPlace }));
const ComparePlace = lazy(async () => ({ default: (await import('./screens/LookbackPlaces.tsx')).ComparePlace }));
const NumbersPlace = lazy(async () => ({ default: (await import('./screens/FigurePlaces.tsx')).NumbersPlace }));
const WeightsPlace = lazy(async () => ({ default: (await import('./screens/FigurePlaces.tsx')).WeightsPlace }));
const FilesPlace = lazy(async () => ({ default: (await import('./screens/FilesPlace.tsx')).FilesPlace }));

export function App({ services }: { readonly services: Services }) {
  const [route, setRoute] = useState(() => parseRoute(location.hash));
  useEffect(() => {
    // The page before stays until the next one has loaded: a stand-in for it would be kept for 300 ms, however soon that is.
    const onChange = () => startTransition(() => setRoute(parseRoute(location.hash)));
    window.addEventListener('hashchange', onChange);
    return () => window.removeEventListener('hashchange', onChange);
  }, []);
  const { voice } = services;
  useEffect(() => {
    // Browsers allow sound only after a press; the first one anywhere will do.
    const unlock = () => void voice.unlock();
    window.addEventListener('pointerdown', unlock, { once: true });
    window.addEventListener('keydown', unlock, { once: true });
    return () => {
      window.removeEventListener('pointerdown', unlock);
      window.removeEventListener('keydown', unlock);
    };
  }, [voice]);
  const { theme } = useStore(services.settings);
  useEffect(() => {
    if (theme === 'auto') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
  }, [theme]);
  const trouble = useStore(services.trouble);
  const go = (next: Route) => {
    location.hash = hashOf(next);
  };
  return (
    <>
      {trouble !== null && (
        <p className="app-trouble" role="alert">
          {trouble}
        </p>
      )}
      <Suspense fallback={<main className="page" aria-busy="true" />}>
        <Place services={services} go={go} route={route} />
      </Suspense>
    </>
  );
}

function Place({ route, ...screen }: ScreenProps & { readonly route: Route }) {
  switch (route.at) {
    case 'start':
      return (
        <Walk
          {...screen}
          walk={`start ${route.unit} ${route.kind}`}
          open={() => startFor(screen.services, route.unit, route.kind)}
        />
      );
    case 'run':
      return <Walk {...screen} walk={`run ${route.round}`} open={() => resumeRound(screen.services, route.round)} />;
    case 'rehearsal':
      return <Walk {...screen} walk="rehearsal" open={async () => openRehearsal(screen.services)} />;
    case 'units':
      return <UnitsPlace {...screen} />;
    case 'unit-new':
      return <UnitNewPlace {...screen} />;
    case 'unit-edit':
      return <UnitEditPlace {...screen} unit={route.unit} />;
    case 'settings':
      return <SettingsPlace {...screen} />;
    case 'unit':
      return <UnitPlace {...screen} unit={route.unit} />;
    case 'trends':
      return <TrendsPlace {...screen} unit={route.unit} />;
    case 'compare':
      return <ComparePlace {...screen} unit={route.unit} />;
    case 'round':
      return <RoundPlace {...screen} round={route.round} />;
    case 'report':
      return <ReportPlace {...screen} round={route.round} />;
    case 'numbers':
      return <NumbersPlace {...screen} />;
    case 'weights':
      return <WeightsPlace {...screen} unit={route.unit} />;
    case 'files':
      return <FilesPlace {...screen} />;
    case 'home':
      return <HomePlace {...screen} />;
  }
}

async function startFor(services: Services, id: string, kind: RoundKind): Promise<OpenResult> {
  const unit = (await services.record.units()).find((candidate) => candidate.id === id);
  return unit ? startRound(services, unit, kind) : { kind: 'refused', sentence: 'This unit is not on this device.' };
}

function Walk({ services, go, walk, open }: ScreenProps & { readonly walk: string; readonly open: () => Promise<OpenResult> }) {
  const opening = useOpenRound(walk, open);
  const { display } = useStore(services.settings);
  if (opening.state === 'opening') return <main className="page" aria-busy="true" />;
  if (opening.state === 'refused') return <Missing sentence={opening.sentence} onHome={() => go({ at: 'home' })} />;
  const { session, round, clock } = opening.open;
  return (
    <RunRound
      session={session}
      round={round}
      display={display}
      now={clock.now}
      onLeave={() => go({ at: 'home' })}
      onOpenRound={() => go({ at: 'round', round: round.id })}
    />
  );
}
