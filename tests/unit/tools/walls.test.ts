import { describe, expect, it } from 'vitest';
import { breachesIn } from '../../tools/walls.ts';

describe('the walls', () => {
  it.each([
    ['src/domain/judge/judge.ts', "import { useState } from 'react';", 'react'],
    ['src/domain/judge/judge.ts', "import { openDB } from 'idb';", 'idb'],
    ['src/domain/judge/judge.ts', "import { record } from '../../record/record.ts';", 'src/record'],
    ['src/domain/judge/judge.ts', "const load = () => import('../../ui/home/HomeScreen.tsx');", 'src/ui'],
    ['src/domain/judge/judge.ts', 'const at = Date.now();', 'clock'],
    ['machines/roundMachine.ts', 'const at = new Date();', 'clock'],
    ['machines/roundMachine.ts', 'const id = Math.random();', 'random'],
    ['machines/roundMachine.ts', "import { useMachine } from '@xstate/react';", '@xstate/react'],
    ['src/ui/home/HomeScreen.tsx', "import { openRecord } from '../../record/openRecord.ts';", 'src/record'],
    ['src/record/openRecord.ts', "import { App } from '../app/App.tsx';", 'src/app'],
    ['src/speech/recogniser/viterbi.ts', "import { createCues } from '../cues.ts';", 'src/speech'],
  ])('%s may not say %s', (path, text, word) => {
    const breaches = breachesIn(path, text);
    expect(breaches).toHaveLength(1);
    expect(breaches[0]).toContain(word);
  });

  it.each([
    ['src/domain/judge/judge.ts', "import type { Unit } from '../unit/unit.ts';"],
    ['src/domain/judge/judge.ts', '// Date.now() is not read here\nconst at = new Date(given);'],
    ['machines/roundMachine.ts', "import { setup } from 'xstate';\nimport { replay } from '../src/domain/round/replay.ts';"],
    ['src/app/main.tsx', "import { openRecord } from '../record/openRecord.ts';\nconst at = Date.now();"],
  ])('%s may', (path, text) => {
    expect(breachesIn(path, text)).toEqual([]);
  });
});
