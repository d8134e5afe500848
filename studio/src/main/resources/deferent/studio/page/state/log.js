// The log of practice: what it holds, an entry that is written, a file of another device that is taken in.

/**
 * @typedef {{ key: string, tone?: string, text: string, why: string }} Told
 * @typedef {{ monday: string, minutes: number[], total_minutes: number, total_told: string }} Week
 * @typedef {{ pattern: string, told: Told, on_film?: string }} Practised
 * @typedef {{ today: string, weeks: Week[], patterns: Practised[], recent_work?: { told?: Told }, ahead_told?: string,
 *   entries: { date: string, said: string }[], not_listed: { file: string, why: string }[] }} Held
 * @typedef {{ part?: string, minutes: number, tempo_cycles_per_min?: number, went?: string, note?: string, date?: string }} Entry
 */

/** Whether a dropped file is meant for the log, and not as a film. @param {File} file */
export const mayBeLog = (file) => /\.(json|jsonl|txt)$/i.test(file.name) || /json|^text\//.test(file.type);

export class Log extends EventTarget {
  /** @type {Held | null} */
  held = null;
  /** @type {any} */
  error = null;
  /** What the last entry or file came to. @type {{ text?: string, error?: any } | null} */
  told = null;

  async look() {
    const answer = await asked('api/log');
    this.error = answer.error ?? null;
    if (!answer.error) this.held = answer;
    this.#tell('state');
  }

  /**
   * Writes that something was practised; resolves to whether it is in the log.
   *
   * @param {any} pattern
   * @param {Entry} entry
   */
  write(pattern, entry) {
    return this.#put('api/log', JSON.stringify({ pattern, ...entry }));
  }

  /**
   * Takes in a file that a hall file saved; resolves to whether it was taken.
   *
   * @param {File} file
   */
  async takeIn(file) {
    const path = `api/log/file?called=${encodeURIComponent(file.name)}&bytes=${file.size}`;
    const may = await asked(path);
    if (!may.error) return this.#put(path, file);
    this.#came(may);
    return false;
  }

  /** @param {string} path @param {string | Blob} body */
  async #put(path, body) {
    const answer = await asked(path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body });
    if (!answer.error) await this.look();
    this.#came(answer);
    if (!answer.error) this.#tell('grown');
    return !answer.error;
  }

  /** @param {any} answer */
  #came(answer) {
    this.told = answer.error ? { error: answer.error } : { text: answer.told };
    this.#tell('state');
  }

  /** @param {string} what */
  #tell(what) {
    this.dispatchEvent(new Event(what));
  }
}

/** @param {string} path @param {RequestInit} [init] @returns {Promise<any>} */
async function asked(path, init) {
  try {
    const reply = await fetch(path, init);
    return await reply.json();
  } catch {
    return { error: { what: 'does not answer', where: 'the studio', right: 'see that it still runs' } };
  }
}
