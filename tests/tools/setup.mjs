/**
 * Set-up for a fresh clone, run before `npm start` and `npm test`: installs the locked packages when they are missing or
 * older than the lock file. Plain JavaScript without dependencies, since nothing is installed yet.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';

const [major] = process.versions.node.split('.').map(Number);
if ((major ?? 0) < 20) {
  console.error(`Gloveside needs Node 20 or newer; this is ${process.versions.node}.`);
  process.exit(1);
}

const installed = 'node_modules/.package-lock.json';
const current = existsSync(installed) && statSync(installed).mtimeMs >= statSync('package-lock.json').mtimeMs;
if (!current) {
  console.log('Installing packages (first time, or the lock file changed) …');
  const result = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], { stdio: 'inherit', shell: process.platform === 'win32' });
  if (result.status !== 0) {
    console.error('Packages could not be installed. Check the network and run the command again.');
    process.exit(result.status ?? 1);
  }
}
