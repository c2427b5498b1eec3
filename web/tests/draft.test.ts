import { beforeEach, describe, expect, it } from 'vitest';
import { dropDraft, keepDraft, loadDraft, type Shelf } from '../src/lib/draft';

class MapShelf extends Map<string, string> implements Shelf {
  getItem = (key: string) => this.get(key) ?? null;
  setItem = (key: string, value: string) => void this.set(key, value);
  removeItem = (key: string) => void this.delete(key);
}
const BLANK = { name: '', plate: '' };

describe('drafts', () => {
  let shelf: MapShelf;
  beforeEach(() => (shelf = new MapShelf()));

  it('come back after a reload and go when sent', () => {
    keepDraft('take-in', { name: 'Ada', plate: '' }, shelf);
    expect(loadDraft('take-in', BLANK, shelf)).toEqual({ name: 'Ada', plate: '' });
    expect(loadDraft('other', BLANK, shelf)).toEqual(BLANK);
    dropDraft('take-in', shelf);
    expect(loadDraft('take-in', BLANK, shelf)).toEqual(BLANK);
  });
  it('of an older form get the new fields blank', () => {
    keepDraft('take-in', { name: 'Ada' }, shelf);
    expect(loadDraft('take-in', { ...BLANK, vin: '' }, shelf)).toEqual({ name: 'Ada', plate: '', vin: '' });
  });
  it('that cannot be read or kept stop nothing', () => {
    shelf.set('dentwright.draft.take-in', '{"name": "A');
    expect(loadDraft('take-in', BLANK, shelf)).toEqual(BLANK);
    shelf.set('dentwright.draft.take-in', '[1, 2]');
    expect(loadDraft('take-in', BLANK, shelf)).toEqual(BLANK);
    const full: Shelf = { getItem: () => null, setItem: () => { throw new Error('full'); }, removeItem: () => { throw new Error('forbidden'); } };
    expect(() => keepDraft('take-in', BLANK, full)).not.toThrow();
    expect(() => dropDraft('take-in', full)).not.toThrow();
    expect(loadDraft('take-in', BLANK, null)).toEqual(BLANK);
  });
  it('never change the blank form', () => {
    const loaded = loadDraft('take-in', BLANK, shelf);
    loaded.name = 'Ada';
    expect(BLANK.name).toBe('');
  });
});
