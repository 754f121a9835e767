/** Digits for a mitten: the fallback for any number, and the way to enter a date. */
import type { ReactNode } from 'react';
import { Tile } from './Tile.tsx';

export interface DigitPadProps {
  readonly onDigit: (digit: string) => void;
  readonly onErase: () => void;
  /** Offer a decimal point or a minus sign; dates and counts need neither. */
  readonly point?: boolean;
  readonly minus?: boolean;
  /** Takes the place beside nought where no sign is needed. */
  readonly corner?: ReactNode;
}

const DIGITS = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const;

export function DigitPad({ onDigit, onErase, point = false, minus = false, corner = <span /> }: DigitPadProps) {
  return (
    <fieldset className="digit-pad">
      <legend className="unseen">Digits</legend>
      {DIGITS.map((digit, index) => (
        <Tile key={digit} quick ring={40 + index} onPress={() => onDigit(digit)}>
          {digit}
        </Tile>
      ))}
      {point ? (
        <Tile quick ring={50} name="Point" onPress={() => onDigit('.')}>
          .
        </Tile>
      ) : minus ? (
        <MinusKey onDigit={onDigit} />
      ) : (
        corner
      )}
      <Tile quick ring={49} onPress={() => onDigit('0')}>
        0
      </Tile>
      <Tile quick ring={51} name="Erase a digit" onPress={onErase}>
        <svg viewBox="0 0 32 32" width="36" height="36" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth="4">
          <path d="M30 16H4M14 6 4 16l10 10" />
        </svg>
      </Tile>
      {point && minus && <MinusKey onDigit={onDigit} wide />}
    </fieldset>
  );
}

function MinusKey({ onDigit, wide = false }: { readonly onDigit: (digit: string) => void; readonly wide?: boolean }) {
  return (
    <Tile quick ring={52} className={wide ? 'wide' : ''} name="Minus, below zero" onPress={() => onDigit('-')}>
      −
    </Tile>
  );
}

/** "Can't see it", small enough for the corner of the pad. */
export function UnseenKey({ name, onPress }: { readonly name: string; readonly onPress: () => void }) {
  return (
    <Tile ring={30} className="small-words" name={name} onPress={onPress}>
      Can't see it
    </Tile>
  );
}
