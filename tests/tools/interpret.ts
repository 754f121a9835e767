/**
 * What a text means, as the app understands it:
 *   npm run -s interpret -- --check tire-pressure [--position left-front] [--last 62] "uh sixty two and a half"
 *   npm run -s interpret -- --batch lines.jsonl
 */
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { interpretLine } from './interpretLine.ts';

const USAGE =
  'interpret --check <id> [--position <p>] [--last <value>] [--unit <u>] [--total <n>] [--yes-means ok|problem] "text"\ninterpret --batch file.jsonl';

const { values, positionals } = parseArgs({
  args: joinValues(process.argv.slice(2)),
  allowPositionals: true,
  strict: false,
  options: {
    check: { type: 'string' },
    position: { type: 'string' },
    last: { type: 'string' },
    unit: { type: 'string' },
    total: { type: 'string' },
    'yes-means': { type: 'string' },
    expects: { type: 'string' },
    mode: { type: 'string' },
    batch: { type: 'string' },
    help: { type: 'boolean' },
  },
});

/** Negative values ("--last -12") belong to their option. */
function joinValues(args: readonly string[]): string[] {
  const joined: string[] = [];
  for (let index = 0; index < args.length; index += 1) {
    const arg = args[index] ?? '';
    const next = args[index + 1];
    if ((arg === '--last' || arg === '--total') && next !== undefined) {
      joined.push(`${arg}=${next}`);
      index += 1;
    } else if (index === args.length - 1 && arg.startsWith('-') && /^-[\d.]/.test(arg)) joined.push('--', arg);
    else joined.push(arg);
  }
  return joined;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

if (typeof values.batch === 'string') {
  const lines = readFileSync(values.batch === '-' ? 0 : values.batch, 'utf8')
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/);
  for (const text of lines) {
    if (text.trim() === '') continue;
    const line = parsed(text);
    const id = typeof line === 'object' && line !== null && 'id' in line ? line.id : null;
    console.log(JSON.stringify({ id, got: line === null ? { intent: 'unclear', why: 'not-json' } : interpretLine(line) }));
  }
} else if (values.help || positionals.length === 0) {
  console.error(USAGE);
  process.exitCode = values.help ? 0 : 2;
} else {
  console.log(
    JSON.stringify(
      interpretLine({
        check: values.check,
        position: values.position,
        last: values.last,
        unit: values.unit,
        total: values.total,
        yes_means: values['yes-means'],
        expects: typeof values.expects === 'string' ? parsed(values.expects) : undefined,
        mode: values.mode,
        text: positionals.join(' '),
      }),
    ),
  );
}
