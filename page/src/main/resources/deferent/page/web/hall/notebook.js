// What was practised, as entries of a log: kept in the browser where it allows that, else as long as the page is open, and written as
// a file that Deferent reads. Nothing is sent anywhere.

const PLACE = 'deferent-log';
const LETTERS = 'abcdefghijklmnopqrstuvwxyz0123456789';
const LONG = 12; // letters of an entry's own name
const MOST = 600; // minutes

/**
 * @typedef {{ id: string, date: string, pattern: string, part?: string, minutes: number, tempo_cycles_per_min?: number,
 *   went?: string, note?: string }} Entry
 */

export class Notebook {
  /** @param {Storage | null} storage where it is kept between two openings of the page */
  constructor(storage) {
    this.storage = storage;
    /** @type {Entry[]} */
    this.entries = [];
    this.kept = storage !== null; // whether it outlasts the page
    try {
      const text = storage && storage.getItem(PLACE);
      const { format, version, entries } = text ? JSON.parse(text) : {};
      if (format === 'deferent-log' && version === 1 && Array.isArray(entries)) this.entries = entries;
    } catch {
      this.kept = false;
    }
  }

  /**
   * Puts an entry in, under a name of its own.
   *
   * @param {Omit<Entry, 'id' | 'date'>} entry
   * @param {Date} when
   */
  add(entry, when = new Date()) {
    const minutes = Math.min(MOST, Math.max(0.1, Math.round(10 * entry.minutes) / 10));
    this.entries.push({ id: name(), date: day(when), ...entry, minutes });
    try {
      if (this.storage) this.storage.setItem(PLACE, this.text());
    } catch {
      this.kept = false;
    }
  }

  /** How long a pattern was practised in all, minutes. @param {string} pattern */
  minutes(pattern) {
    let sum = 0;
    for (const entry of this.entries) if (entry.pattern === pattern) sum += entry.minutes;
    return Math.round(10 * sum) / 10;
  }

  /** Whether a pattern was practised that day. @param {string} pattern @param {Date} when */
  ticked(pattern, when = new Date()) {
    return this.entries.some((entry) => entry.pattern === pattern && entry.date === day(when));
  }

  /** All of it as the file's text. */
  text() {
    return JSON.stringify({ format: 'deferent-log', version: 1, entries: this.entries }, null, 1) + '\n';
  }

  /** The file's name. @param {Date} when */
  file(when = new Date()) {
    return 'deferent-log-' + day(when) + '.json';
  }
}

/** The storage of this page, where its browser lets a file have one. */
export function ownStorage() {
  try {
    const own = globalThis.localStorage;
    own.setItem(PLACE + '-try', '1');
    own.removeItem(PLACE + '-try');
    return own;
  } catch {
    return null;
  }
}

/** The local calendar day. @param {Date} when */
function day(when) {
  return [when.getFullYear(), when.getMonth() + 1, when.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}

function name() {
  const drawn = crypto.getRandomValues(new Uint32Array(LONG));
  return Array.from(drawn, (number) => LETTERS[number % LETTERS.length]).join('');
}
