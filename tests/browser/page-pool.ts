import type { Browser } from 'playwright-core'
import { type Look, openWatched, SIZES, type WatchedPage } from './watched-page'

/** What a page can not be rid of again: whoever calls it needs a page of its own. */
const LASTING = ['addInitScript', 'exposeBinding', 'exposeFunction', 'route'] as const
const LASTING_IN_CONTEXT = [...LASTING, 'grantPermissions'] as const

/** A renewed page that does not get this far in so many ms is closed, and the next test has a fresh one. */
const RENEW_WITHIN_MS = 60_000

interface Lent {
  readonly watched: WatchedPage
  readonly origin: string
  readonly look: Look
}

/**
 * The pages of one test file, one for each look, used again by test after test: a page in a fresh context
 * costs about three times the processor time, most of it for reading and compiling the same scripts anew.
 */
export class PagePool {
  readonly #browser: Browser
  readonly #idle = new Map<string, WatchedPage>()
  #lent: Lent[] = []

  constructor(browser: Browser) {
    this.#browser = browser
  }

  /** Opens an address in a page where nothing is kept, in the window as the look has it. */
  async open(url: string, look: Look): Promise<WatchedPage> {
    const idle = this.#idle.get(keyOf(look))
    this.#idle.delete(keyOf(look))
    const watched = idle ?? (await openWatched(this.#browser, 'about:blank', look))
    if (!look.own && !idle) refuseWhatLasts(watched)
    this.#lent.push({ watched, origin: new URL(url).origin, look })
    await watched.page.goto(url)
    return watched
  }

  /** Takes all pages back. Answers what went wrong in them. */
  async takeBack(): Promise<readonly string[]> {
    const lent = this.#lent
    this.#lent = []
    const renewed = await Promise.all(lent.map((one) => this.#renew(one)))
    return renewed.flat()
  }

  async close(): Promise<void> {
    await Promise.all([...this.#idle.values()].map((watched) => watched.close()))
  }

  /** Wipes a page for the next test, or closes it where it can not be used again. */
  async #renew(lent: Lent): Promise<readonly string[]> {
    const { watched, look } = lent
    const { page, complaints } = watched
    const alone = !page.isClosed() && page.context().pages().length === 1
    const wiped = alone && !look.own && (await wipe(lent))
    const told = [...complaints]
    watched.forget()
    if (wiped && !this.#idle.has(keyOf(look))) this.#idle.set(keyOf(look), watched)
    else await watched.close()
    return told
  }
}

const keyOf = (look: Look) => JSON.stringify(look)

/** Leaves the page, then takes away all that it kept. False where it does not answer, as after a crash. */
async function wipe({ watched: { page }, origin, look }: Lent): Promise<boolean> {
  const { size = 'desktop', theme, reducedMotion } = look
  try {
    await page.goto('about:blank', { timeout: RENEW_WITHIN_MS })
    await page.mouse.move(0, 0)
    await page.setViewportSize(SIZES[size])
    await page.emulateMedia({
      media: null,
      colorScheme: theme ?? 'light',
      reducedMotion: reducedMotion ? 'reduce' : 'no-preference',
    })
    const session = await page.context().newCDPSession(page)
    await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' })
    await session.detach()
    return true
  } catch {
    return false
  }
}

/** A page that is used again refuses what the next test would find still there. */
function refuseWhatLasts({ page }: WatchedPage): void {
  const refuse = (name: string) => () => {
    throw new Error(`${name} outlasts the test: open the page with { own: true } for it.`)
  }
  for (const name of LASTING) Object.assign(page, { [name]: refuse(name) })
  for (const name of LASTING_IN_CONTEXT) Object.assign(page.context(), { [name]: refuse(name) })
}
