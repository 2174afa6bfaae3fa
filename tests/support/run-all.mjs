/**
 * `npm test`: runs every check in order, also after a failure, and counts. Named steps run alone:
 * `node tests/support/run-all.mjs types unit`. A step without tests of its own counts as one failure when it fails.
 */
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { ROOT, cacheFolder } from './project.mjs'

const unitReport = join(cacheFolder(), 'unit.json')
const browserReport = join(cacheFolder(), 'browser.json-report')

const readReport = (path) => (existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : undefined)

function unitCount() {
  const report = readReport(unitReport)
  if (report === undefined) return { passed: 0, failed: 0, skipped: 0 }
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests } = report
  return { passed: numPassedTests, failed: numFailedTests, skipped: numPendingTests + numTodoTests }
}

function browserCount() {
  const report = readReport(browserReport)
  if (report === undefined) return { passed: 0, failed: 0, skipped: 0 }
  const { expected, unexpected, flaky, skipped } = report.stats
  return { passed: expected, failed: unexpected + flaky, skipped }
}

const STEPS = [
  { name: 'types', script: 'types' },
  { name: 'lint', script: 'lint' },
  { name: 'format', script: 'format:check' },
  {
    name: 'unit',
    script: 'test:unit',
    args: ['--reporter=default', '--reporter=json', `--outputFile.json=${unitReport}`],
    count: unitCount,
  },
  { name: 'build', script: 'build' },
  {
    name: 'browser',
    script: 'e2e',
    args: ['--reporter=list,json'],
    env: { PLAYWRIGHT_JSON_OUTPUT_FILE: browserReport },
    count: browserCount,
  },
]

function chosenSteps(names) {
  const unknown = names.filter((name) => !STEPS.some((step) => step.name === name))
  if (unknown.length > 0) {
    console.error(`steps are ${STEPS.map((step) => step.name).join(', ')}, got ${unknown.join(', ')}`)
    process.exit(1)
  }
  return STEPS.filter((step) => names.length === 0 || names.includes(step.name))
}

function run(step) {
  console.log(`\n== ${step.name}`)
  const started = performance.now()
  const { status } = spawnSync('npm', ['run', '--silent', step.script, '--', ...(step.args ?? [])], {
    cwd: ROOT,
    env: { ...process.env, ...step.env },
    stdio: 'inherit',
  })
  const seconds = (performance.now() - started) / 1000
  const count = step.count?.() ?? { passed: 0, failed: 0, skipped: 0 }
  const broken = status !== 0 || (step.count !== undefined && count.passed === 0)
  return { name: step.name, seconds, ...count, failed: broken ? Math.max(1, count.failed) : count.failed }
}

function line({ name, seconds, passed, failed, skipped }) {
  const tests = passed > 0 ? `  ${passed} passed` : ''
  const left = skipped > 0 ? `  ${skipped} skipped` : ''
  const verdict = failed > 0 ? `FAILED (${failed})` : 'ok'
  return `${name.padEnd(10)}${seconds.toFixed(1).padStart(7)} s  ${verdict}${tests}${left}`
}

for (const report of [unitReport, browserReport]) rmSync(report, { force: true })
const results = chosenSteps(process.argv.slice(2)).map(run)
const total = (key) => results.reduce((sum, result) => sum + result[key], 0)
console.log(`\n${results.map(line).join('\n')}\n`)
console.log(`${total('passed')} passed, ${total('failed')} failed`)
process.exitCode = total('failed') > 0 ? 1 : 0
