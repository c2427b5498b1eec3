/** Millimetres and degrees Celsius inside; what the technician chose on the screen. */
export type LengthUnit = 'mm' | 'inch';
export type TemperatureUnit = 'c' | 'f';

/** Exact by definition. */
export const MM_PER_INCH = 25.4;

/** A number and its unit, which stay on one line. */
export function amount(value: number | string, unit: string): string {
  return `${value}\u00a0${unit}`;
}

const APART = /(\d) (?=(?:µm|mm|cm|m|N|°C|°F|mil|mrad|MPa|min|h|s|%|px)(?![\p{L}\d]))/gu;

/** A text whose numbers stay on one line with their units. */
export function together(text: string): string {
  return text.replace(APART, '$1\u00a0');
}

/** A height as a technician says it: µm, or mil (a thousandth of an inch); in mm or inch where it is large. */
export function height(value_mm: number, unit: LengthUnit, language = 'en'): string {
  const [small, smallName, large, largeName] =
    unit === 'mm' ? [value_mm * 1000, 'µm', value_mm, 'mm'] : [(value_mm / MM_PER_INCH) * 1000, 'mil', value_mm / MM_PER_INCH, 'in'];
  const inSmall = unit === 'mm' ? Math.abs(small) < 1000 : Math.abs(small) < 100;
  return inSmall
    ? amount(number(small, unit === 'mm' ? digits(small, 10) : digits(small, 1, 2), language), smallName)
    : amount(number(large, unit === 'mm' ? 2 : 3, language), largeName);
}

/** A length or width. */
export function length(value_mm: number, unit: LengthUnit, language = 'en'): string {
  return unit === 'mm'
    ? amount(number(value_mm, value_mm < 10 && !Number.isInteger(value_mm) ? 1 : 0, language), 'mm')
    : amount(number(value_mm / MM_PER_INCH, 2, language), 'in');
}

/** What was typed in the chosen unit, as mm; `null` when it is no number. Takes a comma or a point. */
export function toMm(text: string, unit: LengthUnit): number | null {
  const value = parseNumber(text);
  return value === null ? null : unit === 'mm' ? value : value * MM_PER_INCH;
}

/** Millimetres as they stand in a field of the chosen unit. */
export function fromMm(value_mm: number, unit: LengthUnit): string {
  const value = unit === 'mm' ? value_mm : value_mm / MM_PER_INCH;
  return String(Number(value.toFixed(unit === 'mm' ? 2 : 4)));
}

/** A temperature. */
export function temperature(value_c: number, unit: TemperatureUnit, language = 'en'): string {
  return unit === 'c' ? amount(number(value_c, 0, language), '°C') : amount(number((value_c * 9) / 5 + 32, 0, language), '°F');
}

/** A number that was typed; `null` when it is none. */
export function parseNumber(text: string): number | null {
  const clean = text.trim().replace(',', '.');
  if (!/^[-+]?(\d+\.?\d*|\.\d+)$/.test(clean)) return null;
  return Number(clean);
}

/** A typed number as a decimal that is sent: a point, no spaces; the other where it is none. */
export function decimal<T>(text: string, otherwise: T): string | T {
  return parseNumber(text) === null ? otherwise : text.trim().replace(',', '.').replace(/^\+/, '');
}

/** What was typed in the chosen unit, as °C; `null` when it is no number. */
export function toC(text: string, unit: TemperatureUnit): number | null {
  const value = parseNumber(text);
  return value === null ? null : unit === 'c' ? value : ((value - 32) * 5) / 9;
}

/** Degrees Celsius as they stand in a field of the chosen unit. */
export function fromC(value_c: number, unit: TemperatureUnit): string {
  return String(Number((unit === 'c' ? value_c : (value_c * 9) / 5 + 32).toFixed(1)));
}

/** A number with a true minus sign, so that a low is not overlooked. */
export function number(value: number, decimals: number, language = 'en'): string {
  const text = new Intl.NumberFormat(language, { minimumFractionDigits: decimals, maximumFractionDigits: decimals }).format(value);
  return /^-0([.,]0*)?$/.test(text) ? text.slice(1) : text.replace('-', '−');
}

/** An amount of money that came as a decimal text. */
export function money(amount: string | number, currency: string, language = 'en'): string {
  try {
    return new Intl.NumberFormat(language, { style: 'currency', currency }).format(Number(amount));
  } catch {
    return `${number(Number(amount), 2, language)} ${currency}`;
  }
}

/** Hours in hours and minutes: 1 h 20 min. */
export function hours(value_h: number): string {
  const minutes = Math.round(value_h * 60);
  if (minutes < 60) return amount(minutes, 'min');
  const rest = minutes % 60;
  const whole = amount(Math.floor(minutes / 60), 'h');
  return rest === 0 ? whole : `${whole} ${amount(rest, 'min')}`;
}

/** Decimals that keep two or three figures: fewer for large numbers. */
function digits(value: number, oneBelow: number, most = 1): number {
  return Math.abs(value) < oneBelow ? most : most - 1;
}
