import { FluentBundle, FluentResource, type FluentVariable } from '@fluent/bundle';
import de from './de.ftl?raw';
import deNotes from './de.notes.ftl?raw';
import deTrouble from './de.trouble.ftl?raw';
import en from './en.ftl?raw';
import { together } from '../lib/units';

/** Every language of the app; a new one is a file beside these and a line here. */
export const LANGUAGES = { en: 'English', de: 'Deutsch' } as const;
export type Language = keyof typeof LANGUAGES;

const bundles: Record<Language, FluentBundle> = { en: bundle('en', en), de: bundle('de', [de, deTrouble, deNotes].join('\n')) };
const spoken = $state<{ value: Language }>({ value: 'en' });

/** Turns to another language. */
export function speak(language: Language): void {
  spoken.value = language in bundles ? language : 'en';
  if (typeof document !== 'undefined') document.documentElement.lang = spoken.value;
}

/** The text of that name; the name itself where no language has it. */
export function t(name: string, values?: Record<string, FluentVariable>): string {
  for (const bundle of [bundles[spoken.value], bundles.en]) {
    const message = bundle.getMessage(name);
    if (message?.value) return together(bundle.formatPattern(message.value, values));
  }
  return name;
}

/** The text of that name in the language spoken now; none where it has none. */
export function own(name: string): string | null {
  const message = bundles[spoken.value].getMessage(name);
  return message?.value ? together(bundles[spoken.value].formatPattern(message.value)) : null;
}

/** Whether there is a text of that name. */
export function has(name: string): boolean {
  return bundles.en.hasMessage(name);
}

function bundle(language: string, text: string): FluentBundle {
  const made = new FluentBundle(language, { useIsolating: false });
  const problems = made.addResource(new FluentResource(text));
  if (problems.length > 0) throw problems[0];
  return made;
}
