/** How far the making or the taking in of a file has come, told to whoever waits. */

export type FileStep =
  /** Making one. */
  | 'reading-record'
  | 'writing'
  | 'gathering-media'
  | 'packing'
  | 'looking-back'
  /** Taking one in. */
  | 'opening'
  | 'checking'
  | 'adding'
  | 'adding-media';

export interface FileProgress {
  readonly step: FileStep;
  readonly done: number;
  /** Null where it is not known beforehand how much there is. */
  readonly of: number | null;
}

export type TellProgress = (progress: FileProgress) => void;

/** One for each step, so that a screen reader is not told every hundredth. */
export const STEP_SENTENCES: Readonly<Record<FileStep, string>> = {
  'reading-record': 'Reading the record on this device.',
  writing: 'Writing the file.',
  'gathering-media': 'Gathering clips and pictures.',
  packing: 'Packing the file.',
  'looking-back': 'Working out what is due.',
  opening: 'Opening the file.',
  checking: 'Checking everything in the file.',
  adding: 'Adding to what is here. All of it is kept, or nothing.',
  'adding-media': 'Adding clips and pictures.',
};

/** Until something is written here, stopping leaves everything as it was. */
export function canStop({ step }: FileProgress): boolean {
  return step !== 'adding' && step !== 'adding-media';
}
