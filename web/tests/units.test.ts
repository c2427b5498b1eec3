import { describe, expect, it } from 'vitest';
import { decimal, fromC, fromMm, height, hours, length, money, number, parseNumber, temperature, toC, toMm, together } from '../src/lib/units';

describe('units', () => {
  it('say heights in µm or mil, with a true minus sign', () => {
    expect(height(-0.0421, 'mm')).toBe('−42\u00a0µm');
    expect(height(0.0042, 'mm')).toBe('4.2\u00a0µm');
    expect(height(-1.25, 'mm')).toBe('−1.25\u00a0mm');
    expect(height(-0.0254, 'inch')).toBe('−1.0\u00a0mil');
    expect(height(0.00254, 'inch')).toBe('0.10\u00a0mil');
    expect(height(-0.0421, 'mm', 'de')).toBe('−42\u00a0µm');
    expect(height(0.0042, 'mm', 'de')).toBe('4,2\u00a0µm');
    expect(height(-0.00001, 'mm')).toBe('0.0\u00a0µm');
  });
  it('keep a number and its unit on one line', () => {
    expect(together('From 300 µm to 5.5 mm³ at −20 °C, 3 most, 2 mmm')).toBe('From 300\u00a0µm to 5.5\u00a0mm³ at −20\u00a0°C, 3 most, 2 mmm');
  });
  it('say lengths and temperatures', () => {
    expect(length(25, 'mm')).toBe('25\u00a0mm');
    expect(length(7.25, 'mm')).toBe('7.3\u00a0mm');
    expect(length(25.4, 'inch')).toBe('1.00\u00a0in');
    expect(temperature(24, 'c')).toBe('24\u00a0°C');
    expect(temperature(24, 'f')).toBe('75\u00a0°F');
  });
  it('read what was typed, comma or point', () => {
    expect(parseNumber(' 1,5 ')).toBe(1.5);
    expect(parseNumber('.5')).toBe(0.5);
    for (const text of ['', '1.2.3', '1e5', 'NaN', 'zwölf', '--1']) expect(parseNumber(text)).toBeNull();
    expect(toMm('1', 'inch')).toBe(25.4);
    expect(toMm('12,5', 'mm')).toBe(12.5);
    expect(toMm('x', 'mm')).toBeNull();
  });
  it('send decimals with a point', () => {
    expect(decimal(' +12,50 ', null)).toBe('12.50');
    for (const text of ['', '1.2.3', 'x']) expect(decimal(text, null)).toBeNull();
    expect(toC('50', 'f')).toBe(10);
    expect(fromC(10, 'f')).toBe('50');
  });
  it('come back as they went', () => {
    for (const unit of ['mm', 'inch'] as const) expect(toMm(fromMm(18.75, unit), unit)).toBeCloseTo(18.75, 2);
  });
  it('say money and hours', () => {
    expect(money('418.2', 'EUR', 'en')).toBe('€418.20');
    expect(money('418.2', 'NOT A CODE', 'en')).toBe('418.20 NOT A CODE');
    expect(hours(0.5)).toBe('30\u00a0min');
    expect(hours(1.999)).toBe('2\u00a0h');
    expect(hours(2.25)).toBe('2\u00a0h 15\u00a0min');
    expect(number(-0.04, 1)).toBe('0.0');
  });
});
