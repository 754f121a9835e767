/**
 * The walls of the architecture: who may import whom, and where neither the clock nor random numbers may be read.
 * Run by `npm run lint`; prints every breach with its reason and exits 1 when there is one.
 *
 * Works on the text of the import statements (comments removed); type checking by layer (`tsc -b`) is the second wall.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, sep } from 'node:path';

interface Layer {
  /** Path prefix; the longest matching one counts. */
  readonly path: string;
  /** Prefixes inside the project it may import from, beside itself. */
  readonly may: readonly string[];
  readonly packages: readonly string[];
  readonly why: string;
  /** Neither clock nor randomness: time and ids come in. */
  readonly pure?: boolean;
}

const LAYERS: readonly Layer[] = [
  {
    path: 'src/domain',
    may: [],
    packages: ['valibot', 'fflate'],
    why: 'domain code knows no React, no DOM, no storage',
    pure: true,
  },
  {
    path: 'machines',
    may: ['src/domain'],
    packages: ['xstate'],
    why: 'machines are pure: side effects come in as injected actors',
    pure: true,
  },
  { path: 'src/record', may: ['src/domain'], packages: ['idb'], why: 'the record knows only what it keeps' },
  {
    path: 'src/speech/recogniser',
    may: ['src/domain'],
    packages: ['fflate'],
    why: 'the decoder runs in Node, in a Worker and in tests',
    pure: true,
  },
  {
    path: 'src/speech/worker',
    may: ['src/domain', 'src/speech/recogniser'],
    packages: [],
    why: 'the Worker realm has no page',
  },
  { path: 'src/speech/worklet', may: ['src/speech/recogniser'], packages: [], why: 'the audio thread does one thing' },
  {
    path: 'src/speech',
    may: ['src/domain', 'src/speech/recogniser', 'src/speech/worklet', 'src/speech/worker'],
    packages: ['fflate'],
    why: 'speech knows neither screens nor the record',
  },
  {
    path: 'src/ui',
    may: ['src/domain'],
    packages: ['react', '@xstate/react'],
    why: 'screens take props and give events; they hold no rules and no storage',
  },
  { path: 'src/sw', may: [], packages: ['workbox-precaching'], why: 'the service worker stands alone' },
  {
    path: 'src/app',
    may: ['src', 'machines'],
    packages: ['react', 'react-dom', 'xstate', '@xstate/react', 'workbox-window', 'virtual:pwa-register'],
    why: 'the one place where things are put together',
  },
];

const IMPORT = /(?:^|[\s;])(?:import|export)\s(?:[^'";]*?\sfrom\s*)?['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]/g;
const READS: readonly { readonly pattern: RegExp; readonly what: string }[] = [
  { pattern: /\bDate\.now\s*\(/, what: 'reads the clock (Date.now)' },
  { pattern: /\bnew Date\(\s*\)/, what: 'reads the clock (new Date())' },
  { pattern: /\bperformance\.now\s*\(/, what: 'reads the clock (performance.now)' },
  { pattern: /\bMath\.random\s*\(/, what: 'draws random numbers (Math.random)' },
  { pattern: /\bcrypto\./, what: 'draws random numbers (crypto)' },
];

const starts = (path: string, prefix: string) => path === prefix || path.startsWith(`${prefix}/`);

const withoutComments = (text: string) => text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|[^:'"`])\/\/.*$/gm, '$1');

/** @returns one sentence for each breach in a file of the given path and text */
export function breachesIn(path: string, text: string): string[] {
  const layer = [...LAYERS].sort((a, b) => b.path.length - a.path.length).find((candidate) => starts(path, candidate.path));
  if (!layer) return [];
  const code = withoutComments(text);
  const breaches: string[] = [];
  for (const match of code.matchAll(IMPORT)) {
    const target = (match[1] ?? match[2] ?? '').replace(/\?.*$/, '');
    if (target.startsWith('.')) {
      const resolved = join(dirname(path), target).split(sep).join('/');
      if (
        starts(resolved, layer.path) &&
        !LAYERS.some((other) => other !== layer && other.path.startsWith(`${layer.path}/`) && starts(resolved, other.path))
      )
        continue;
      if (!layer.may.some((prefix) => starts(resolved, prefix))) breaches.push(`${path} imports ${resolved}: ${layer.why}.`);
    } else if (!layer.packages.some((name) => starts(target, name))) {
      breaches.push(`${path} imports the package ${target}: ${layer.why}.`);
    }
  }
  if (layer.pure) {
    for (const { pattern, what } of READS)
      if (pattern.test(code)) breaches.push(`${path} ${what}: time, ids and randomness come in.`);
  }
  return breaches;
}

if (process.argv[1]?.endsWith('walls.ts')) {
  const files = ['src', 'machines'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .map((name) => join(folder, name).split(sep).join('/'))
      .filter((name) => /\.tsx?$/.test(name)),
  );
  const breaches = files.flatMap((file) => breachesIn(file, readFileSync(file, 'utf8')));
  for (const breach of breaches) console.error(breach);
  console.log(`walls: ${files.length} files, ${breaches.length} breaches`);
  process.exit(breaches.length === 0 ? 0 : 1);
}
