/** Radix-2 fast Fourier transform of a fixed size (Cooley and Tukey 1965), with its tables worked out once. */
export class Fft {
  readonly size: number;
  readonly #cos: Float64Array;
  readonly #sin: Float64Array;
  readonly #reversed: Uint32Array;

  /** @throws RangeError unless the size is a power of two */
  constructor(size: number) {
    const bits = Math.log2(size);
    if (!Number.isInteger(bits) || bits < 1) throw new RangeError('Fft requires a power of two');
    this.size = size;
    this.#cos = Float64Array.from({ length: size / 2 }, (_, k) => Math.cos((2 * Math.PI * k) / size));
    this.#sin = Float64Array.from({ length: size / 2 }, (_, k) => -Math.sin((2 * Math.PI * k) / size));
    this.#reversed = new Uint32Array(size);
    for (let index = 0; index < size; index += 1) {
      let reversed = 0;
      for (let bit = 0; bit < bits; bit += 1) if (index & (1 << bit)) reversed |= 1 << (bits - 1 - bit);
      this.#reversed[index] = reversed;
    }
  }

  /** In place. */
  transform(re: Float64Array, im: Float64Array): void {
    const { size } = this;
    const cos = this.#cos;
    const sin = this.#sin;
    for (let index = 0; index < size; index += 1) {
      const other = this.#reversed[index] as number;
      if (other > index) {
        const r = re[index] as number;
        const i = im[index] as number;
        re[index] = re[other] as number;
        im[index] = im[other] as number;
        re[other] = r;
        im[other] = i;
      }
    }
    for (let half = 1; half < size; half *= 2) {
      const step = size / (2 * half);
      for (let start = 0; start < size; start += 2 * half) {
        for (let k = 0, twiddle = 0; k < half; k += 1, twiddle += step) {
          const a = start + k;
          const b = a + half;
          const c = cos[twiddle] as number;
          const s = sin[twiddle] as number;
          const r = (re[b] as number) * c - (im[b] as number) * s;
          const i = (re[b] as number) * s + (im[b] as number) * c;
          re[b] = (re[a] as number) - r;
          im[b] = (im[a] as number) - i;
          re[a] = (re[a] as number) + r;
          im[a] = (im[a] as number) + i;
        }
      }
    }
  }
}
