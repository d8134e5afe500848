// Numbers as people read them: centimetres, degrees, cycles a minute. SI and degrees come from the server.

/** @typedef {{ unit: string, value: number }} Size in SI, an angle in degrees */

const MINUS = '\u2212';
const THIN = '\u202f';

/** @param {number} metres */
export function cm(metres, digits = 1) {
  const text = (metres * 100).toFixed(digits);
  return signed(text) + THIN + 'cm';
}

/** @param {number} metres */
export function gap(metres) {
  return cm(metres, Math.abs(metres) < 0.0995 ? 1 : 0);
}

/**
 * A distance as sentences say it: 4 mm, 4.1 cm, 30 cm, 1.2 m.
 *
 * @param {number} metres
 */
export function length(metres) {
  const size = Math.abs(metres);
  if (size < 0.0005) return '0' + THIN + 'cm';
  if (size < 0.0095) return signed(String(Math.round(metres * 1000))) + THIN + 'mm';
  if (size < 0.0995) return signed(trimmed(metres * 100, 1)) + THIN + 'cm';
  if (size < 0.995) return signed(String(Math.round(metres * 100))) + THIN + 'cm';
  return signed(trimmed(metres, 2)) + THIN + 'm';
}

/** @param {number} value */
export function degrees(value) {
  return signed(trimmed(value, 1)) + '°';
}

/** @param {number} value */
export function seconds(value) {
  return value.toFixed(2) + THIN + 's';
}

/**
 * A size in the unit people type it in, with how it goes back.
 *
 * @param {{ unit: string }} size
 */
export function shown(size) {
  switch (size.unit) {
    case 'm':
      return { unit: 'cm', scale: 100, digits: 1, step: 0.5 };
    case 'deg':
      return { unit: '°', scale: 1, digits: 1, step: 5 };
    case 'cycles_per_min':
      return { unit: 'a minute', scale: 1, digits: 1, step: 1 };
    default:
      return { unit: size.unit === 'cycles' ? 'of a cycle' : size.unit, scale: 1, digits: 3, step: 0.25 };
  }
}

/**
 * The number alone, in the unit people read it in.
 *
 * @param {{ unit: string }} size
 * @param {number} value
 */
export function bare(size, value) {
  const { scale, digits } = shown(size);
  return signed(trimmed(value * scale, digits));
}

/** @param {Size} size */
export function withUnit(size, value = size.value) {
  const { unit, scale, digits } = shown(size);
  const number = signed(trimmed(value * scale, digits));
  return unit === '°' ? number + unit : number + THIN + unit;
}

/**
 * @param {number} value
 * @param {number} digits
 */
export function trimmed(value, digits) {
  return String(Number(value.toFixed(digits)));
}

/** @param {string} text */
export function signed(text) {
  return text.replace('-', MINUS);
}

/**
 * A table's cell: a minus that is one, a thin space before the unit, a dash for nothing.
 *
 * @param {string} text
 */
export function typeset(text) {
  return text.replace(/^-(?=\d)/, MINUS).replace(/(\d) (?=\D)/, '$1' + THIN) || '–';
}
