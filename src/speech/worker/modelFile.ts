/** Fetches the model with progress and checks that it is the very file that this build was made with. */
import { ModelError } from '../recogniser/acousticModel.ts';
import { MODEL_BYTES, MODEL_SHA256 } from '../recogniser/modelDigest.ts';

const MISSING = 'The voice model is not on this device yet. Open the app once with a network; the buttons work meanwhile.';
const DAMAGED = 'The voice model on this device is damaged. Load the app again with a network; the buttons keep working.';

/**
 * @param onProgress 0..1
 * @throws ModelError with a sentence for the person
 */
export async function fetchModel(url: string, onProgress: (done: number) => void): Promise<Uint8Array<ArrayBuffer>> {
  let response: Response;
  try {
    response = await fetch(url);
  } catch {
    throw new ModelError(MISSING);
  }
  if (!response.ok || !response.body) throw new ModelError(MISSING);
  const bytes = new Uint8Array(MODEL_BYTES);
  let at = 0;
  const reader = response.body.getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) break;
      if (at + value.length > bytes.length) throw new ModelError(DAMAGED);
      bytes.set(value, at);
      at += value.length;
      onProgress(at / bytes.length);
    }
  } catch (error) {
    throw error instanceof ModelError ? error : new ModelError(MISSING);
  }
  if (at !== bytes.length) throw new ModelError(DAMAGED);
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  const text = Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
  if (text !== MODEL_SHA256) throw new ModelError(DAMAGED);
  return bytes;
}
