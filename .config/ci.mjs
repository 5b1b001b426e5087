// Everything that must hold before a change is taken, each part counted. The last line is `N passed, N failed`.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { style, types } from './checks.mjs';
import { root } from './run.mjs';

const results = `${root}.data/ci`;
const counts = { passed: 0, failed: 0 };
/** What failed, and what was too slow at first, said again at the end. */
const remarks = [];

function count(name, good, seconds) {
  counts[good ? 'passed' : 'failed'] += 1;
  if (!good) remarks.push(`failed: ${name}`);
  console.log(`${good ? 'passed' : 'FAILED'}: ${name} (${seconds.toFixed(0)} s)`);
}

function node(args, env = {}) {
  const began = performance.now();
  const { status } = spawnSync(process.execPath, args, {
    cwd: root,
    env: { ...process.env, ...env },
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  return { good: status === 0, seconds: (performance.now() - began) / 1000 };
}

const ready = (...args) => ['.config/ready.mjs', ...args];

/** One part, counted as one. */
function part(name, args) {
  console.log(`\n== ${name}`);
  const { good, seconds } = node(args);
  count(name, good, seconds);
}

function remark({ testResults = [] }) {
  for (const { name: file, message, status, assertionResults } of testResults) {
    const where = file.replace(root, '');
    if (status === 'failed' && assertionResults.length === 0) remarks.push(`failed: ${where}\n${message}`);
    for (const { status: of, fullName, failureMessages } of assertionResults) {
      const why = failureMessages.map((each) => each.split('\n').slice(0, 12).join('\n')).join('\n');
      if (of === 'failed') remarks.push(`failed: ${where}: ${fullName}\n${why}`);
      else if (why) remarks.push(`too slow at first, passed the second time: ${where}: ${fullName}`);
    }
  }
}

/** A run of tests, each test counted; a run that fails without a failed test counts as one failure. */
function tests(name, env = {}) {
  console.log(`\n== ${name}`);
  const file = `${results}/${name.replaceAll(' ', '-')}.json`;
  const { good, seconds } = node(
    ready('test', '--reporter=default', '--reporter=json', `--outputFile.json=${file}`),
    env,
  );
  const report = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : { numPassedTests: 0, numFailedTests: 0 };
  counts.passed += report.numPassedTests;
  counts.failed += report.numFailedTests;
  if (!good && report.numFailedTests === 0) counts.failed += 1;
  remark(report);
  console.log(`${name}: ${report.numPassedTests} passed, ${report.numFailedTests} failed (${seconds.toFixed(0)} s)`);
}

rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

tests('tests');
for (const [name, args] of Object.entries({ ...types, ...style })) part(name, args);
part('build', ready('build'));
part('benches, short', ready('bench', '--json', '--short'));

const realData = resolve(root, '../shared/data');
if (existsSync(realData)) tests('real air', { DRUMKEEP_REAL_DATA: realData });
else {
  console.log(`\nmissing ${realData}, the folder of real room air that this run needs`);
  counts.failed += 1;
}

if (remarks.length > 0) console.log(`\n== remarks\n${remarks.join('\n')}`);
console.log(`\n${counts.passed} passed, ${counts.failed} failed`);
process.exitCode = counts.failed === 0 && counts.passed > 0 ? 0 : 1;
