import { createMemoryRecord } from '../../../src/record/memoryRecord.ts';
import { acceptRecord } from './acceptance.ts';

acceptRecord('memory', async () => createMemoryRecord());
