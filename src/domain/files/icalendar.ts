/** Reminders as a calendar file. */

export interface Reminder {
  /** Stays the same when the reminder is made again, so that a calendar replaces the old one. */
  readonly uid: string;
  /** Day it is due, epoch milliseconds; the UTC day counts. */
  readonly due: number;
  readonly summary: string;
  readonly description: string;
}

/**
 * Reminders as all-day events, each with an alert a week ahead.
 *
 * Source: RFC 5545 (folding 3.1, text 3.3.11, event 3.6.1, alarm 3.6.6, UID 3.8.4.7, DTSTAMP 3.8.7.2).
 * @param stamp when the file was made, epoch milliseconds
 */
export function remindersCalendar(reminders: readonly Reminder[], stamp: number): string {
  const lines = ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Gloveside//Reminders//EN', 'CALSCALE:GREGORIAN', 'METHOD:PUBLISH'];
  for (const { uid, due, summary, description } of reminders) {
    lines.push(
      'BEGIN:VEVENT',
      `UID:${escapeText(uid)}@gloveside.invalid`,
      `DTSTAMP:${basicTime(stamp)}`,
      `DTSTART;VALUE=DATE:${basicTime(due).slice(0, 8)}`,
      `SUMMARY:${escapeText(summary)}`,
      `DESCRIPTION:${escapeText(description)}`,
      'TRANSP:TRANSPARENT',
      'BEGIN:VALARM',
      'ACTION:DISPLAY',
      'TRIGGER:-P7D',
      `DESCRIPTION:${escapeText(summary)}`,
      'END:VALARM',
      'END:VEVENT',
    );
  }
  lines.push('END:VCALENDAR');
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

/** Backslash, semicolon, comma and line end, as 3.3.11 asks; other control characters have no place in a text. */
export function escapeText(text: string): string {
  return text
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replace(/\r\n|\r|\n/g, '\\n')
    .replace(CONTROL, '');
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
const CONTROL = /[\u0000-\u0008\u000b-\u001f\u007f]/g;

/** Lines of at most 75 octets, never broken within a character. */
export function folded(line: string): string {
  const parts: string[] = [];
  let part = '';
  let octets = 0;
  for (const character of line) {
    const size = utf8Length(character);
    if (octets + size > 75) {
      parts.push(part);
      part = ' ';
      octets = 1;
    }
    part += character;
    octets += size;
  }
  return [...parts, part].join('\r\n');
}

function utf8Length(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x1_0000 ? 3 : 4;
}

function basicTime(at: number): string {
  return new Date(at).toISOString().replace(/[-:]|\.\d+/g, '');
}
