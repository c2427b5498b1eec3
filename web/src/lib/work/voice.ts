/** Three spoken words, by the browser's own speech recognition where it has one, and the next move read aloud. */

export type Word = 'done' | 'back' | 'skip';

/** What is said for each, in the languages of the app; whole words. */
const SAID: Record<string, Record<Word, string[]>> = {
  en: { done: ['done', 'next', 'finished'], back: ['back', 'undo'], skip: ['skip', 'leave it'] },
  de: { done: ['fertig', 'erledigt', 'gemacht'], back: ['zurück', 'zurueck'], skip: ['weiter', 'überspringen', 'auslassen'] },
};

/** The word in what was heard; none where there is none, or more than one of them. */
export function wordIn(heard: string, language: string): Word | null {
  const words = ` ${heard.toLowerCase().replace(/[^\p{L}]+/gu, ' ').trim()} `;
  const of = SAID[language.slice(0, 2)] ?? SAID.en!;
  const found = (Object.keys(of) as Word[]).filter((word) => of[word].some((said) => words.includes(` ${said} `)));
  return found.length === 1 ? found[0]! : null;
}

/** Why speech cannot be heard; each is a text `voice-…`. */
export type NoVoice = 'none' | 'insecure' | 'denied' | 'failed';

interface Recognition extends EventTarget {
  lang: string;
  continuous: boolean;
  interimResults: boolean;
  onresult: ((event: { resultIndex: number; results: ArrayLike<ArrayLike<{ transcript: string }> & { isFinal: boolean }> }) => void) | null;
  onerror: ((event: { error: string }) => void) | null;
  onend: (() => void) | null;
  start(): void;
  abort(): void;
}

/** Begins to listen for the words; gives the way to stop. */
export function hearWords(language: string, said: (word: Word) => void, cannot: (why: NoVoice) => void): () => void {
  const own = globalThis as unknown as Record<'SpeechRecognition' | 'webkitSpeechRecognition', (new () => Recognition) | undefined>;
  const Made = own.SpeechRecognition ?? own.webkitSpeechRecognition;
  if (!Made) {
    cannot(isSecureContext ? 'none' : 'insecure');
    return () => {};
  }
  const ear = new Made();
  let on = true;
  const stop = (why?: NoVoice) => {
    on = false;
    ear.abort();
    if (why) cannot(why);
  };
  Object.assign(ear, { lang: language === 'de' ? 'de-DE' : 'en-US', continuous: true, interimResults: false });
  ear.onresult = ({ resultIndex, results }) => {
    // What the page itself reads aloud is no order.
    if (globalThis.speechSynthesis?.speaking) return;
    for (const result of Array.from(results).slice(resultIndex)) {
      const word = result.isFinal ? wordIn(result[0]?.transcript ?? '', language) : null;
      if (word) said(word);
    }
  };
  ear.onerror = ({ error }) => {
    if (['not-allowed', 'service-not-allowed', 'audio-capture'].includes(error)) stop('denied');
    else if (['network', 'language-not-supported'].includes(error)) stop('failed');
  };
  // Browsers end by themselves after silence.
  ear.onend = () => on && ear.start();
  try {
    ear.start();
  } catch {
    stop('failed');
  }
  return () => stop();
}

export const canSpeak = () => 'speechSynthesis' in globalThis;

/** Reads a text aloud; what was being read ends. */
export function speakText(text: string, language: string): void {
  if (!canSpeak()) return;
  const spoken = new SpeechSynthesisUtterance(text);
  spoken.lang = language === 'de' ? 'de-DE' : 'en-US';
  speechSynthesis.cancel();
  speechSynthesis.speak(spoken);
}
export const hush = () => void (canSpeak() && speechSynthesis.cancel());
