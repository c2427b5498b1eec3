import { FluentResource } from '@fluent/bundle';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const src = join(import.meta.dirname, '../src');
const lang = (name: string) => readFileSync(join(src, 'lang', `${name}.ftl`), 'utf8');
const keys = (name: string) => new FluentResource(lang(name)).body.map((message) => message.id);
/** Variables that a language's text uses, by text. */
const variables = (name: string) =>
  Object.fromEntries(lang(name).split(/^(?=[a-z])/m).map((text) => [text.split(' ')[0], [...new Set(text.match(/\$\w+/g))].sort().join()]));
const code = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.(svelte|ts)$/.test(file))
  .map((file) => readFileSync(join(src, file), 'utf8'))
  .join('\n');

describe('languages', () => {
  it('have the same texts, each once', () => {
    expect(keys('de')).toEqual(keys('en'));
    expect(new Set(keys('en')).size).toBe(keys('en').length);
  });
  it('use the same variables in each text', () => {
    expect(variables('de')).toEqual(variables('en'));
  });
  it('have words of their own for every error that the reference names', () => {
    const reference = readFileSync(join(src, '../../docs/reference.md'), 'utf8').split(/^## /m).find((part) => part.startsWith('Errors'))!;
    const codes = [...reference.matchAll(/`(\w+)`/g)].map((found) => found[1]!).filter((code) => code !== 'capture.toml');
    expect(codes.length).toBeGreaterThan(25);
    const named = keys('de.trouble');
    expect(codes.flatMap((code) => [`trouble-${code}`, `trouble-${code}-next`]).filter((name) => !named.includes(name))).toEqual([]);
  });
  it('have words of their own for every remark that the reference names', () => {
    const row = readFileSync(join(src, '../../docs/reference.md'), 'utf8').split('\n').find((line) => line.startsWith('| `notes` |'))!;
    const codes = [...row.matchAll(/`(\w+)`/g)].map((found) => found[1]!).filter((code) => !['notes', 'code', 'text'].includes(code));
    expect(codes.length).toBeGreaterThan(4);
    expect(codes.filter((code) => !keys('de.notes').includes(`note-${code}`))).toEqual([]);
  });
  it('have every text that a page asks for by its whole name', () => {
    const asked = [...code.matchAll(/\bt\(\s*'([a-z][\w-]*)'\s*[,)]/g)].map((found) => found[1]!);
    expect(asked.length).toBeGreaterThan(150);
    const known = new Set(keys('en'));
    expect(asked.filter((name) => !known.has(name))).toEqual([]);
  });
  it('have every panel, kind, stage, metal, access and place', () => {
    const names = [...code.matchAll(/export const (KINDS|METALS|ACCESSES|PLACES|STAGES)[^=]*= \[([^\]]+)\]/g)].flatMap(([, group, list]) =>
      [...list!.matchAll(/'(\w+)'/g)].map((found) => `${{ KINDS: 'kind', METALS: 'metal', ACCESSES: 'access', PLACES: 'place', STAGES: 'stage' }[group!]}-${found[1]}`),
    );
    expect(names).toHaveLength(24);
    const known = keys('en');
    expect(names.filter((name) => !known.includes(name))).toEqual([]);
  });
});
