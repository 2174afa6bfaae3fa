/** Before the browser tests: a fresh site on a free port, and a browser that draws. Workers read both from the environment. */
import { findBrowser } from '../../support/browser.mjs'
import { buildSite, serveSite, siteIsFresh } from '../../support/site.mjs'

export default async function setUp() {
  if (!siteIsFresh()) await buildSite()
  process.env.COUNTERTURN_BROWSER = await findBrowser()
  const site = await serveSite({ port: 0, host: '127.0.0.1' })
  process.env.COUNTERTURN_ADDRESS = site.addresses[0]
  return () => site.close()
}
