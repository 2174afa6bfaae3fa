/** `npm start`: builds the site if needed, serves it and says where. PORT=8080 and --host are understood. */
import { buildSite, serveSite, siteIsFresh } from './site.mjs'

const USUAL_PORT = 4321

function refuse(message) {
  console.error(message)
  process.exit(1)
}

function wishedPort() {
  const text = process.env.PORT ?? ''
  if (text === '') return USUAL_PORT
  const port = Number(text)
  if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port
  return refuse(`PORT must be a whole number from 0 to 65535, got ${text}`)
}

/** `--host` alone means every network of this machine, as it does for vite. */
function wishedHost() {
  const words = process.argv.slice(2)
  const [flag, name, ...others] = words.flatMap((word) => word.split('='))
  if (flag === undefined) return '127.0.0.1'
  if (flag === '--host' && others.length === 0) return name ?? true
  return refuse(`start takes --host or --host <name>, got ${words.join(' ')}`)
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
