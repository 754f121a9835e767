/** Why there is no picture: a closed set, each with a sentence that says what to do. */
export type PictureTrouble =
  /** This browser or this address gives no camera at all. */
  | 'no-camera'
  /** Permission refused, by the person or by the device. */
  | 'denied'
  /** Another app has it, or it gave no frame. */
  | 'busy'
  | 'empty'
  | 'heic'
  | 'unreadable'
  /** The browser has no memory left for it. */
  | 'too-large';

const BY_BUTTON = 'Press More, then Take a picture.';

const SENTENCES: Readonly<Record<PictureTrouble, string>> = {
  'no-camera': `There is no camera that I can use. ${BY_BUTTON}`,
  denied: `The camera is not allowed here. ${BY_BUTTON}`,
  busy: `The camera gives no picture; something else may be using it. ${BY_BUTTON}`,
  empty: 'That file is empty. No picture was kept. Take it again.',
  heic: 'This browser cannot read HEIC pictures. No picture was kept. Set the camera to JPEG, then take it again.',
  unreadable: 'That picture is damaged, or it is no picture. Nothing was kept. Take it again.',
  'too-large': 'That picture is too large for this device. Nothing was kept. Set the camera to a smaller size and take it again.',
};

export class PictureError extends Error {
  override readonly name = 'PictureError';
  readonly trouble: PictureTrouble;
  /** Short, for the ear and the screen. */
  readonly sentence: string;

  constructor(trouble: PictureTrouble, options: { readonly cause?: unknown } = {}) {
    super(SENTENCES[trouble], { cause: options.cause });
    this.trouble = trouble;
    this.sentence = SENTENCES[trouble];
  }
}
