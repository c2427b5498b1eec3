// Writes src/api/schema.d.ts from the server's own description. `--check` only compares.
// DENTWRIGHT_BIN names the binary; without it the one built by `cargo build --release`.
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import openapiTS, { astToString } from 'openapi-typescript';

const web = join(dirname(fileURLToPath(import.meta.url)), '..');
const binary = process.env.DENTWRIGHT_BIN ?? join(web, '../target/release/dentwright');
const target = join(web, 'src/api/schema.d.ts');

const description = JSON.parse(execFileSync(binary, ['openapi'], { encoding: 'utf8', maxBuffer: 64e6 }));
const text = '// Written by `npm run api` from `dentwright openapi`; do not edit.\n' + astToString(await openapiTS(description));
if (!process.argv.includes('--check')) {
  writeFileSync(target, text);
  console.log('src/api/schema.d.ts written');
} else if (readFileSync(target, 'utf8') !== text) {
  console.error('src/api/schema.d.ts is older than the server: run `npm run api` in web/');
  process.exit(1);
}
