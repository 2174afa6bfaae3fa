/** `npm start`: builds the site if needed, serves it and says where. PORT=8080 and --host are understood. */
import { parseArgs } from 'node:util'
import { buildSite, serveSite, siteIsFresh } from './site.mjs'

const USUAL_PORT = 4321

function wishedPort() {
  const text = process.env.PORT ?? ''
  if (text === '') return USUAL_PORT
  const port = Number(text)
  if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port
  console.error(`PORT must be a whole number from 0 to 65535, got ${text}`)
  process.exit(1)
}

/** `--host` alone means every network of this machine, as it does for vite. */
function wishedHost() {
  const flag = process.argv.indexOf('--host')
  const next = process.argv[flag + 1]
  if (flag !== -1 && (next === undefined || next.startsWith('-'))) return true
  const { values } = parseArgs({ options: { host: { type: 'string' } } })
  return values.host ?? '127.0.0.1'
}

const port = wishedPort()
const host = wishedHost()
if (!siteIsFresh()) {
  console.log('Building Counterturn, which takes some seconds ...')
  await buildSite()
}
const { addresses } = await serveSite({ port, host })
console.log('\nCounterturn is ready. Open this address in a browser:\n')
for (const address of addresses) console.log(`  ${address}`)
console.log('\nCtrl+C stops it.')
