// Writes `sw.js` beside the built app: a service worker that holds every file of this build.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

const TEMPLATE = join(import.meta.dirname, 'worker.template.js');

/** A plugin of the build. */
export function worker(): Plugin {
  let dist = 'dist';
  return {
    name: 'service-worker',
    apply: 'build',
    configResolved: (config) => void (dist = config.build.outDir),
    closeBundle: () => {
      const all = readdirSync(dist, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
      const files = all.map((entry) => join(entry.parentPath, entry.name).slice(dist.length + 1).replaceAll('\\', '/')).filter((name) => name !== 'sw.js').sort();
      const hash = createHash('sha256');
      for (const file of files) hash.update(file).update(readFileSync(join(dist, file)));
      const paths = files.map((file) => (file === 'index.html' ? './' : `./${file}`));
      const code = readFileSync(TEMPLATE, 'utf8').replace('__VERSION__', hash.digest('hex').slice(0, 16)).replace('__FILES__', JSON.stringify(paths));
      writeFileSync(join(dist, 'sw.js'), code);
    },
  };
}
