/** Numbers in words, as they are said in the trade: "one hundred ten", "twelve point six". */

const ONES = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
] as const;
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'] as const;
const SCALES = ['', 'thousand', 'million', 'billion'] as const;

function below1000(value: number): string {
  const hundreds = Math.floor(value / 100);
  const rest = value % 100;
  const small = rest < 20 ? ONES[rest] : `${TENS[Math.floor(rest / 10)]}${rest % 10 === 0 ? '' : `-${ONES[rest % 10]}`}`;
  if (hundreds === 0) return String(small);
  return rest === 0 ? `${ONES[hundreds]} hundred` : `${ONES[hundreds]} hundred ${small}`;
}

function whole(value: number): string {
  if (value < 1000) return below1000(value);
  const groups: string[] = [];
  let rest = value;
  for (let scale = 0; rest > 0; scale += 1) {
    const group = rest % 1000;
    if (group > 0) groups.unshift(`${below1000(group)} ${SCALES[scale] ?? ''}`.trim());
    rest = Math.floor(rest / 1000);
  }
  return groups.join(' ');
}

/**
 * A number in words. Decimals are read digit by digit, as written: 12.65 is "twelve point six five".
 * @param value finite, less than a trillion either way; a string is taken as written
 * @returns "minus" first for a negative one
 * @throws RangeError otherwise
 */
export function numberInWords(value: number | string): string {
  const text = typeof value === 'string' ? value : plainText(value);
  const parts = /^(-?)(\d{1,12})(?:\.(\d+))?$/.exec(text);
  if (!parts) throw new RangeError('numberInWords requires a finite number below a trillion');
  const [, sign, integer, decimals] = parts;
  const said = whole(Number(integer));
  const point = decimals ? ` point ${[...decimals].map((digit) => ONES[Number(digit)]).join(' ')}` : '';
  return `${sign === '-' ? 'minus ' : ''}${said}${point}`;
}

/** Without exponent, to six decimals. */
function plainText(value: number): string {
  if (!Number.isFinite(value) || Math.abs(value) >= 1e12) return '';
  return value
    .toFixed(6)
    .replace(/\.?0+$/, '')
    .replace(/^-0$/, '0');
}
