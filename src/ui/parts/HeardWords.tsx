/** A transcript in which the words that counted stand out, by weight and line and not by color alone. */
import type { HeardWord } from '../../domain/round/heardWords.ts';

export function HeardWords({ words }: { readonly words: readonly HeardWord[] }) {
  const ignored = words.filter(({ counted, text }) => !counted && /\w/.test(text)).map(({ text }) => text);
  return (
    <>
      “
      {words.map(({ text, counted }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: words repeat and never move
        <span key={index}>
          {index > 0 && /^\w/.test(text) && ' '}
          {counted ? <b className="counted">{text}</b> : <span className="passed-over">{text}</span>}
        </span>
      ))}
      ”{ignored.length > 0 && <span className="unseen"> (passed over: {ignored.join(', ')})</span>}
    </>
  );
}
